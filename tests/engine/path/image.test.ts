import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { imageMotion } from '../../../src/engine/path/image.ts';
import type { StepColumns } from '../../../src/engine/path/pose.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { Room } from '../../../src/engine/room.ts';
import { PATIENCE_MS, settings } from '../../property/settings.ts';
import { rigs, sliding, stepsOf, turning } from '../../reference/path/rigs.ts';
import { plainPlan, straight } from '../../reference/plans.ts';
import { inImage, posesOf } from './slow.ts';

vi.setConfig({ testTimeout: PATIENCE_MS });

const columnsOf = (plan: Plan, axes: readonly StepColumns[]) => {
  const motion = imageMotion(plan, axes, new Room());
  if (!motion) throw new Error('no motion of the image');
  return motion;
};

/** Pixels of subject and background from a frame to the next, each projected by itself. */
function slowly(plan: Plan, axes: readonly StepColumns[], frames: number) {
  const poses = posesOf(plan, axes, frames);
  const { imageWidthPx, imageHeightPx } = plan.camera;
  const shown = poses.map(({ pose, subject }) => {
    const at = inImage(plan, pose, subject);
    return at && Math.abs(at.x) <= imageWidthPx / 2 && Math.abs(at.y) <= imageHeightPx / 2 ? at : null;
  });
  const next = poses.slice(1);
  const subjectPx = next.map(({ pose, subject }, k) => {
    const before = shown[k];
    if (!before) return 0;
    const after = inImage(plan, pose, subject);
    return after ? Math.hypot(after.x - before.x, after.y - before.y) : imageWidthPx;
  });
  const backgroundPx = next.map(({ pose }, k) => {
    const { position, direction } = (poses[k] as (typeof poses)[number]).pose;
    const far = plan.subject.backgroundM * 1000;
    const point = {
      x: position.x + far * direction.x,
      y: position.y + far * direction.y,
      z: position.z + far * direction.z,
    };
    const after = inImage(plan, pose, point);
    return after ? Math.hypot(after.x, after.y) : imageWidthPx;
  });
  return {
    subjectPx: [...subjectPx, 0],
    backgroundPx: [...backgroundPx, 0],
    outOfSightFrames: shown.filter((at) => at === null).length,
  };
}

test('agrees with every frame projected by itself', () => {
  let compared = 0;
  fc.assert(
    fc.property(rigs, ({ plan, frames }) => {
      if (plan.rig.axes.length === 0) return;
      const axes = stepsOf(plan, frames);
      const motion = columnsOf(plan, axes);
      const slow = slowly(plan, axes, frames);
      for (const name of ['subjectPx', 'backgroundPx'] as const)
        for (let k = 0; k < frames; k += 1) {
          const [got, want] = [motion[name][k] as number, slow[name][k] as number];
          // Columns are singles: 2^-24 of the value; and a difference of places of some thousand pixels.
          const agree = Math.abs(got - want) <= Math.abs(want) * 7e-8 + 1e-6;
          if (!agree) throw new Error(`${name}, frame ${k + 1}: ${got}, wanted ${want}`);
          if (want > 0) compared += 1;
        }
      expect(motion.outOfSightFrames).toBe(slow.outOfSightFrames);
      expect(motion.subject.px).toBe(Math.max(...motion.subjectPx));
      expect(motion.subjectPx[motion.subject.frame - 1]).toBe(motion.subject.px);
      expect(motion.background.px).toBe(Math.max(...motion.backgroundPx));
    }),
    settings(),
  );
  expect(compared).toBeGreaterThan(1000);
});

const camera = { imageWidthPx: 6000, imageHeightPx: 4000, sensorWidthMm: 36, focalLengthMm: 50 };
const seen = { used: true, rightMm: 0, forwardMm: 2000, heightMm: 1200 };

describe('by hand', () => {
  test('a pan of 1 deg moves what is far by the focal length times its tangent', () => {
    const plan = plainPlan(3, 10, {
      camera,
      subject: seen,
      rig: { axes: [turning('pan', { gearRatio: 360 })] },
      move: { mode: 'moveShootMove', tracks: [straight('pan', 0, 2)] },
    });
    const motion = columnsOf(plan, stepsOf(plan, 3));
    // OPT-04: f_px = 8333.33, 1 deg = 145.459 px.
    expect(motion.backgroundPx[0]).toBeCloseTo(145.459, 2);
    expect(motion.subjectPx[0]).toBeCloseTo(145.459, 2);
    expect(motion.backgroundPx[2]).toBe(0);
  });

  test('a turntable moves the subject, and not the background', () => {
    const plan = plainPlan(2, 10, {
      camera,
      subject: { ...seen, rightMm: 100, onTurntable: true },
      rig: { axes: [turning('turntable')], turntable: { rightMm: 0, forwardMm: 2000 } },
      move: { mode: 'moveShootMove', tracks: [straight('turntable', 0, 90)] },
    });
    const motion = columnsOf(plan, stepsOf(plan, 2));
    // From 100 mm right at 2000 to the middle at 1900.
    expect(motion.subjectPx[0]).toBeCloseTo((8333.333333 * 100) / 2000, 3);
    expect(motion.backgroundPx[0]).toBe(0);
  });

  test('a subject behind the camera is out of sight, and what a move turns the lens away from has left', () => {
    const plan = plainPlan(2, 10, {
      camera,
      subject: seen,
      rig: { axes: [turning('pan')] },
      move: { mode: 'moveShootMove', tracks: [straight('pan', 0, 180)] },
    });
    const motion = columnsOf(plan, stepsOf(plan, 2));
    expect([...motion.subjectPx, ...motion.backgroundPx]).toEqual([6000, 0, 6000, 0]);
    expect(motion.outOfSightFrames).toBe(1);
  });

  test('a subject right at the lens is out of sight and gives no NaN', () => {
    const plan = plainPlan(3, 10, {
      subject: { ...seen, forwardMm: 0 },
      rig: { axes: [sliding()] },
      move: { mode: 'moveShootMove', tracks: [straight('slide', -100, 100)] },
    });
    const motion = columnsOf(plan, stepsOf(plan, 3));
    expect(motion.outOfSightFrames).toBe(3);
    expect([...motion.subjectPx]).toEqual([0, 0, 0]);
    expect([...motion.backgroundPx].every(Number.isFinite)).toBe(true);
  });

  test('needs a subject, a move, and an axis that turns or carries something', () => {
    const plan = plainPlan(3, 10, {
      subject: seen,
      rig: { axes: [sliding()] },
      move: { mode: 'continuous' },
    });
    const none = (change: Partial<Plan>) =>
      expect(imageMotion({ ...plan, ...change }, stepsOf(plan, 3), new Room())).toBeNull();
    none({ subject: { ...plan.subject, used: false } });
    none({ move: { ...plan.move, mode: 'still' } });
    none({ rig: { ...plan.rig, axes: [turning('focus')] } });
    none({ rig: { ...plan.rig, axes: [sliding({ unit: 'deg' })] } });
    expect(columnsOf(plan, stepsOf(plan, 3)).subjectPx[0]).toBe(0);
  });
});

import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { aimer } from '../../../src/engine/path/aim.ts';
import { seenFrom } from '../../../src/engine/path/camera-pose.ts';
import { focalPx, type StepColumns } from '../../../src/engine/path/pose.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { Room } from '../../../src/engine/room.ts';
import { PATIENCE_MS, settings } from '../../property/settings.ts';
import { rigs, sliding, stepsOf, turning } from '../../reference/path/rigs.ts';
import { axisOf, plainPlan, straight } from '../../reference/plans.ts';
import { posesOf } from './slow.ts';

vi.setConfig({ testTimeout: PATIENCE_MS });

const DEG = 180 / Math.PI;

function aimed(plan: Plan, frames: number) {
  const axes = stepsOf(plan, frames);
  const aim = aimer(plan, axes, new Room());
  if (!aim) throw new Error('no aim');
  const column = (name: string): StepColumns => {
    const index = plan.rig.axes.findIndex((axis) => axis.name === name);
    return axes[index] as StepColumns;
  };
  return { ...aim, axes, column };
}

/** Degrees of an axis over the run. */
const degreesOf = ({ steps, stepsPerUnit }: StepColumns) => [...steps].map((step) => step / stepsPerUnit);

const keepFramed = (plan: Plan): Plan => ({ ...plan, subject: { ...plan.subject, aimed: true } });

/** Angle between the lens and the subject at every frame, radians; 0 where the subject is at the lens itself. */
const offAxis = (plan: Plan, axes: readonly StepColumns[], frames: number): number[] =>
  posesOf(plan, axes, frames).map(({ pose, subject }) => {
    const { x, y, z } = seenFrom(pose, subject);
    const distance = Math.hypot(x, y, z);
    return distance < 1 ? 0 : Math.atan2(Math.hypot(x, y), z);
  });

/** Dearer than a comparison, cheaper than an expectation a frame. */
function must(holds: boolean, what: () => string): void {
  if (!holds) throw new Error(what());
}

test('with pan and tilt free to turn, the lens is off by no more than half a step of each', () => {
  let looked = 0;
  fc.assert(
    fc.property(rigs, ({ plan, frames }) => {
      const kinds = plan.rig.axes.map(({ kind }) => kind);
      if (!kinds.includes('pan') || !kinds.includes('tilt')) return;
      const { axes, summary, missPx } = aimed(keepFramed(plan), frames);
      const most = Math.hypot(
        ...axes
          .filter((_, i) => kinds[i] === 'pan' || kinds[i] === 'tilt')
          .map(({ stepsPerUnit }) => 0.5 / stepsPerUnit / DEG),
      );
      for (const off of offAxis(plan, axes, frames)) {
        must(off <= most + 1e-9, () => `off by ${off}, at most ${most}`);
        looked += 1;
      }
      expect(summary).toMatchObject({ missFrames: 0, firstMissFrame: null, limits: [], lacks: [] });
      expect(missPx.every((px) => px === 0)).toBe(true);
    }),
    settings(3),
  );
  expect(looked).toBeGreaterThan(1000);
});

test('no move is longer than half a turn, where the subject is never straight above', () => {
  fc.assert(
    fc.property(rigs, ({ plan, frames }) => {
      const pan = plan.rig.axes.findIndex(({ kind }) => kind === 'pan');
      if (pan === -1) return;
      const { axes } = aimed(keepFramed(plan), frames);
      const { steps, stepsPerUnit } = axes[pan] as StepColumns;
      for (let k = 1; k < frames; k += 1) {
        const move = Math.abs((steps[k] as number) - (steps[k - 1] as number));
        must(move <= 180 * stepsPerUnit + 1, () => `${move} steps after frame ${k}`);
      }
    }),
    settings(),
  );
});

test('the miss is how far the subject is projected from the image centre', () => {
  let missed = 0;
  fc.assert(
    fc.property(rigs, fc.integer({ min: 1, max: 60 }), ({ plan, frames }, reach) => {
      const limited = keepFramed({
        ...plan,
        rig: {
          ...plan.rig,
          axes: plan.rig.axes.map((axis) =>
            axis.kind === 'pan' || axis.kind === 'tilt'
              ? { ...axis, travelMin: -reach, travelMax: reach }
              : axis,
          ),
        },
      });
      if (plan.rig.axes.length === 0) return;
      const { axes, summary, missPx } = aimed(limited, frames);
      const focal = focalPx(plan.camera);
      const px = offAxis(plan, axes, frames).map((off) => focal * Math.tan(Math.min(off, 89 / DEG)));
      for (const [k, want] of px.entries()) {
        const got = missPx[k] as number;
        const agree = got === 0 ? want < 1.5 : Math.abs(got / want - 1) < 1e-5;
        must(agree, () => `frame ${k + 1}: ${got} px, wanted ${want}`);
        missed += got > 0 ? 1 : 0;
      }
      const frame = [...missPx].findIndex((each) => each > 0) + 1;
      expect(summary.firstMissFrame).toBe(frame === 0 ? null : frame);
      expect(summary.missFrames).toBe(missPx.filter((each) => each > 0).length);
      expect(summary.worstPx).toBe(Math.max(...missPx));
      for (const [i, { kind }] of plan.rig.axes.entries()) {
        if (kind !== 'pan' && kind !== 'tilt') continue;
        for (const deg of degreesOf(axes[i] as StepColumns))
          must(Math.abs(deg) < reach + 0.001, () => `${kind} ${deg}`);
      }
    }),
    settings(),
  );
  expect(missed).toBeGreaterThan(1000);
});

const head = { unit: 'deg', gearRatio: 360, unitsPerTurn: 360 } as const;

/** A slide of 2 m to the right that passes a subject 1 m ahead of its middle. */
const passing = (axes: Plan['rig']['axes']) =>
  plainPlan(5, 10, {
    rig: { axes: [sliding(), ...axes], pivotHeightMm: 1000 },
    subject: { used: true, aimed: true, rightMm: 0, forwardMm: 1000, heightMm: 1000 },
    move: { mode: 'moveShootMove', tracks: [straight('slide', -1000, 1000)] },
  });

describe('by hand', () => {
  test('a slide past a subject: 45 deg to the right, straight ahead, 45 deg to the left', () => {
    const { column, summary } = aimed(passing([turning('pan', head)]), 5);
    expect(degreesOf(column('pan')).map((deg) => deg.toFixed(2))).toEqual([
      '45.00',
      '26.57',
      '0.00',
      '-26.57',
      '-45.00',
    ]);
    expect(summary).toMatchObject({ panFromDeg: -45, panToDeg: 45, tiltFromDeg: null, lacks: ['tilt'] });
    expect(summary.missFrames).toBe(0);
  });

  test('a pan without tilt misses a subject that is higher by its height over the distance', () => {
    const plan = passing([turning('pan', head)]);
    const higher = { ...plan, subject: { ...plan.subject, heightMm: 1100 } };
    const { missPx, summary } = aimed(higher, 5);
    const focal = focalPx(plan.camera);
    expect(missPx[2]).toBeCloseTo(focal * 0.1, 2);
    expect(missPx[0]).toBeCloseTo((focal * 0.1) / Math.SQRT2, 2);
    expect(summary).toMatchObject({ missFrames: 5, firstMissFrame: 1, worstFrame: 3, limits: [] });
    expect(summary.worstDeg).toBeCloseTo(Math.atan(0.1) * DEG, 2);
  });

  test('a tilt without pan keeps the subject at the height of the image centre', () => {
    const plan = passing([turning('tilt', head)]);
    const higher = { ...plan, subject: { ...plan.subject, heightMm: 1500, rightMm: 400 } };
    const { axes } = aimed(higher, 5);
    const { pose, subject } = posesOf(higher, axes, 5)[2] as ReturnType<typeof posesOf>[number];
    const { x, y, z } = seenFrom(pose, subject);
    expect(Math.abs(y / z)).toBeLessThan(1e-3);
    expect(x / z).toBeGreaterThan(0.3);
  });

  test('stops at the end of the travel, and says which axis does', () => {
    const { column, summary, missPx } = aimed(
      passing([turning('pan', { ...head, travelMin: -30, travelMax: 40 }), turning('tilt', head)]),
      5,
    );
    expect(degreesOf(column('pan')).map((deg) => deg.toFixed(1))).toEqual([
      '40.0',
      '26.6',
      '0.0',
      '-26.6',
      '-30.0',
    ]);
    expect(summary).toMatchObject({ missFrames: 2, firstMissFrame: 1, worstFrame: 5, limits: ['pan'] });
    expect(summary.worstDeg).toBeCloseTo(15, 1);
    expect(missPx[4]).toBeCloseTo(focalPx(passing([]).camera) * Math.tan(15 / DEG), 0);
  });

  test('beside a pan at its end the tilt keeps the subject at the height of the image centre', () => {
    const plan = passing([turning('pan', { ...head, travelMin: -10, travelMax: 10 }), turning('tilt', head)]);
    const higher = { ...plan, subject: { ...plan.subject, heightMm: 1500 } };
    const { axes } = aimed(higher, 5);
    const [{ pose, subject }] = posesOf(higher, axes, 5) as [ReturnType<typeof posesOf>[number]];
    const { x, y, z } = seenFrom(pose, subject);
    expect(Math.abs(y / z)).toBeLessThan(1e-3);
    expect(x / z).toBeGreaterThan(0.5);
  });

  test('a run that fits a full turn away is made there, from its first frame', () => {
    const travel = { ...head, travelMin: 300, travelMax: 420 };
    const { column, summary } = aimed(passing([turning('pan', travel), turning('tilt', head)]), 5);
    expect(degreesOf(column('pan')).map((deg) => deg.toFixed(1))).toEqual([
      '405.0',
      '386.6',
      '360.0',
      '333.4',
      '315.0',
    ]);
    expect(summary.limits).toEqual([]);
    const wide = { ...head, travelMin: -10, travelMax: 700 };
    const later = aimed(passing([turning('pan', wide), turning('tilt', head)]), 5);
    expect(degreesOf(later.column('pan'))[0]).toBeCloseTo(405, 6);
    expect(degreesOf(later.column('pan'))[4]).toBeCloseTo(315, 6);
    expect(later.summary.limits).toEqual([]);
  });

  test('where no turn holds the whole run, it goes a full turn back when the travel ends', () => {
    // Once round the subject: from -170 to 190 deg within a travel of -180 to 180.
    const round = plainPlan(37, 10, {
      rig: {
        axes: [
          turning('boom'),
          turning('pan', { ...head, travelMin: -180, travelMax: 180 }),
          turning('tilt'),
        ],
        arm: { lengthMm: 1000, planeTiltDeg: 90, zeroDeg: 0, keepsLevel: true },
        pivotHeightMm: 1000,
      },
      subject: { used: true, aimed: true, rightMm: 0, forwardMm: 0, heightMm: 1000 },
      move: { mode: 'moveShootMove', tracks: [straight('boom', 10, 370)] },
    });
    const { column, summary } = aimed(round, 37);
    const pan = degreesOf(column('pan'));
    expect(pan[0]).toBeCloseTo(-170, 2);
    expect(pan[35]).toBeCloseTo(180, 2);
    expect(pan[36]).toBeCloseTo(-170, 2);
    expect(summary.limits).toEqual([]);
    expect(summary.missFrames).toBe(0);
  });

  test('having gone a full turn back, it stays on that turn', () => {
    // The bearing goes from 170 to 230 deg and back to 170, within a travel of -185 to 205.
    const swing = { ...straight('boom', -10, 50), thereAndBack: true };
    const plan = plainPlan(13, 10, {
      rig: {
        axes: [
          turning('boom'),
          turning('pan', { ...head, travelMin: -185, travelMax: 205 }),
          turning('tilt'),
        ],
        arm: { lengthMm: 1000, planeTiltDeg: 90, zeroDeg: 0, keepsLevel: true },
        pivotHeightMm: 1000,
      },
      subject: { used: true, aimed: true, rightMm: 0, forwardMm: 0, heightMm: 1000 },
      move: { mode: 'moveShootMove', tracks: [swing] },
    });
    const pan = degreesOf(aimed(plan, 13).column('pan')).map(Math.round);
    expect(pan).toEqual([170, 180, 190, 200, -150, -140, -130, -140, -150, -160, -170, -180, 170]);
  });

  test('goes on through half a turn without a jump', () => {
    const behind = passing([turning('pan', { ...head, travelMin: -720, travelMax: 720 })]);
    const { column } = aimed({ ...behind, subject: { ...behind.subject, forwardMm: -1000 } }, 5);
    expect(degreesOf(column('pan')).map((deg) => deg.toFixed(1))).toEqual([
      '135.0',
      '153.4',
      '180.0',
      '206.6',
      '225.0',
    ]);
  });

  test('a head that turns with a flat arm turns back by the arm’s angle', () => {
    const arm = { lengthMm: 1000, planeTiltDeg: 90, zeroDeg: 0, keepsLevel: false };
    const plan = plainPlan(3, 10, {
      rig: { axes: [turning('boom'), turning('pan', head)], arm, pivotHeightMm: 1000 },
      subject: { used: true, aimed: true, rightMm: 0, forwardMm: 1e6, heightMm: 1000 },
      move: { mode: 'moveShootMove', tracks: [straight('boom', 0, 60)] },
    });
    // Far ahead: the bearing hardly changes, the arm goes right by 60 deg.
    const [a, b, c] = degreesOf(aimed(plan, 3).column('pan')) as [number, number, number];
    expect([a, b, c].map(Math.round)).toEqual([0, -30, -60]);
    const level = { ...plan, rig: { ...plan.rig, arm: { ...arm, keepsLevel: true } } };
    expect(degreesOf(aimed(level, 3).column('pan')).map((deg) => Math.round(deg) + 0)).toEqual([0, 0, 0]);
  });

  test('straight above and right at the lens: pan and tilt stay finite, and the pan waits', () => {
    const plan = passing([turning('pan', head), turning('tilt', { ...head, travelMin: -90, travelMax: 90 })]);
    const over = aimed({ ...plan, subject: { ...plan.subject, forwardMm: 0, heightMm: 2000 } }, 5);
    expect(degreesOf(over.column('pan')).slice(0, 3)).toEqual([90, 90, 90]);
    expect(degreesOf(over.column('tilt'))[2]).toBe(90);
    const at = aimed({ ...plan, subject: { ...plan.subject, forwardMm: 0 } }, 5);
    expect([...at.missPx].every(Number.isFinite)).toBe(true);
    expect(Object.values(at.summary).every((value) => !Number.isNaN(value))).toBe(true);
    expect(at.summary.missFrames).toBe(0);
  });

  test('a rig that stands still is aimed once', () => {
    const plan = passing([turning('pan', head)]);
    const still = { ...plan, move: { ...plan.move, tracks: [] } };
    const { column } = aimed({ ...still, subject: { ...still.subject, rightMm: 1000 } }, 5);
    expect(degreesOf(column('pan'))).toEqual([45, 45, 45, 45, 45]);
  });

  test('is not made where it is not wanted', () => {
    const plan = passing([turning('pan', head)]);
    const axes = stepsOf(plan, 5);
    const without = (change: Partial<Plan['subject']>) =>
      aimer({ ...plan, subject: { ...plan.subject, ...change } }, axes, new Room());
    expect(without({ aimed: false })).toBeNull();
    expect(without({ used: false })).toBeNull();
    expect([...(axes[1] as StepColumns).steps]).toEqual([0, 0, 0, 0, 0]);
  });

  test('with neither pan nor tilt, says how far the subject is off', () => {
    const { summary, missPx } = aimed(passing([axisOf({ name: 'pan', kind: 'pan', unit: 'mm' })]), 5);
    expect(summary.lacks).toEqual(['pan', 'tilt']);
    expect(summary.worstDeg).toBeCloseTo(45, 6);
    expect(missPx[2]).toBe(0);
  });
});

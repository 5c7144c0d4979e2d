import { describe, expect, test } from 'vitest';
import { aimer } from '../../../src/engine/path/aim.ts';
import { judgePath } from '../../../src/engine/path/findings.ts';
import { imageMotion } from '../../../src/engine/path/image.ts';
import { imageSummaryOf } from '../../../src/engine/path/image-summary.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { Room } from '../../../src/engine/room.ts';
import { stepsOf, turning } from '../../reference/path/rigs.ts';
import { plainPlan, type Some, straight } from '../../reference/plans.ts';

const FRAMES = 5;
const camera = { imageWidthPx: 6000, imageHeightPx: 4000, sensorWidthMm: 36, focalLengthMm: 50 };

/** A pan of 1 deg a frame but for the first, 25 frames a second, half of each 10 s exposed. */
const panning = (change: Some<Plan> = {}): Plan =>
  plainPlan(FRAMES, 10, {
    camera,
    rig: { axes: [turning('pan', { gearRatio: 360 })], pivotHeightMm: 1000 },
    subject: { used: true, rightMm: 0, forwardMm: 2000, heightMm: 1000 },
    move: { mode: 'continuous', tracks: [straight('pan', 0, FRAMES - 1)] },
    ...change,
  });

function judged(plan: Plan, exposureS = 5) {
  const axes = stepsOf(plan, FRAMES);
  const aim = aimer(plan, axes, new Room());
  const motion = imageMotion(plan, axes, new Room());
  const times = {
    exposureS: new Float64Array(FRAMES).fill(exposureS),
    intervalS: new Float64Array(FRAMES).fill(10),
    frameRate: 25,
  };
  const image = motion && imageSummaryOf(plan, motion, times);
  return { image, ...judgePath({ plan }, { aim: aim?.summary ?? null, image }) };
}

const ids = (plan: Plan, exposureS?: number) => judged(plan, exposureS).findings.map(({ id }) => id);

describe('blur', () => {
  test('is the motion for the share of the interval that the shutter is open', () => {
    const { image, findings, margins } = judged(panning());
    // 1 deg of the subject off the centre: at 4 deg, 8333.33 (tan 4 - tan 3).
    const px = 8333.3333 * (Math.tan(Math.PI / 45) - Math.tan(Math.PI / 60));
    expect(image?.blur?.px).toBeCloseTo(px / 2, 2);
    expect(image?.blur).toMatchObject({ frame: 4, of: 'subject', firstOver: 1 });
    expect(findings[0]).toMatchObject({ id: 'motion-blur', frame: 1, values: { worstFrame: 4 } });
    expect(margins.find(({ id }) => id === 'blur')?.left).toBeCloseTo(3 - px / 2, 2);
  });

  test('is allowed up to what the plan says, and is none where the rig stands still meanwhile', () => {
    expect(ids(panning(), 0.1)).not.toContain('motion-blur');
    expect(
      ids(panning({ subject: { used: true, forwardMm: 2000, heightMm: 1000, blurMaxPx: 100 } })),
    ).not.toContain('motion-blur');
    const between = panning();
    const { image, findings } = judged({ ...between, move: { ...between.move, mode: 'moveShootMove' } });
    expect(image?.blur).toBeNull();
    expect(findings.map(({ id }) => id)).toEqual(['panning-fast']);
  });
});

describe('crossing', () => {
  test('is the width over what the background moves, at the clip’s rate', () => {
    const { image, findings, margins } = judged(panning(), 0);
    const wanted = 6000 / 145.459 / 25;
    expect(image?.crossing?.shortestS).toBeCloseTo(wanted, 4);
    expect(findings[0]).toMatchObject({ id: 'panning-fast', frame: 1 });
    expect(margins.find(({ id }) => id === 'crossing')?.left).toBeCloseTo(wanted - 7, 4);
  });

  test('is twice as long on twos', () => {
    const plan = panning();
    const twos = judged({ ...plan, clip: { ...plan.clip, holdFrames: 2 } });
    expect(twos.image?.crossing?.shortestS).toBeCloseTo((2 * 6000) / 145.459 / 25, 4);
  });

  test('is long enough for a slow pan, and none where nothing moves', () => {
    const slow = panning({ move: { mode: 'continuous', tracks: [straight('pan', 0, 0.4)] } });
    expect(ids(slow, 0)).toEqual([]);
    const resting = panning({ move: { mode: 'continuous', tracks: [] } });
    expect(judged(resting).image).toMatchObject({ crossing: null, outOfSightFrames: 0 });
    expect(judged(resting).margins.map(({ id }) => id)).toEqual(['blur']);
  });
});

describe('aim', () => {
  const aiming = (change: Some<Plan['rig']['axes'][number]>, heightMm = 1000) =>
    panning({
      rig: {
        axes: [turning('pan', { gearRatio: 360, name: 'Head pan', ...change }), turning('turntable')],
        pivotHeightMm: 1000,
        turntable: { rightMm: 0, forwardMm: 3000 },
      },
      subject: { used: true, aimed: true, rightMm: 0, forwardMm: 2000, heightMm, onTurntable: true },
      move: { mode: 'moveShootMove', tracks: [straight('turntable', 0, 60)] },
    });

  test('says which axis ends, by how much and from where', () => {
    const [finding] = judged(aiming({ travelMin: -3, travelMax: 3 })).findings;
    expect(finding).toMatchObject({ id: 'aim-out-of-limits', severity: 'warning' });
    expect(finding?.message).toContain('Head pan is at the end of its travel');
    expect(finding?.values).toMatchObject({ limits: 'pan', worstFrame: FRAMES });
    expect(finding?.frame).toBe(2);
  });

  test('says that an axis is not there', () => {
    const [finding] = judged(aiming({}, 1500)).findings;
    expect(finding?.message).toContain('there is no tilt axis');
    expect(finding?.frame).toBe(1);
  });

  test('says nothing where it holds', () => {
    expect(ids(aiming({}))).not.toContain('aim-out-of-limits');
  });
});

test('without a subject there is nothing to say', () => {
  const plan = panning();
  expect(judged({ ...plan, subject: { ...plan.subject, used: false } })).toEqual({
    image: null,
    findings: [],
    margins: [],
  });
});

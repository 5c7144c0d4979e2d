import { describe, expect, test } from 'vitest';
import { ev100 } from '../../../src/engine/exposure/apex.ts';
import { fixedLadder, type Ladder, ladderOf } from '../../../src/engine/exposure/ladder.ts';
import type { Plan, RampStep } from '../../../src/engine/plan/schema.ts';
import { plainPlan, type Some } from '../../reference/plans.ts';

type Step = Partial<RampStep>;

const rampPlan = (steps: Step[], exposure: Some<Plan['exposure']> = {}, camera: Some<Plan['camera']> = {}) =>
  plainPlan(10, 60, {
    camera: { exactStops: true, ...camera },
    exposure: {
      shutterS: 1 / 60,
      apertureF: 8,
      iso: 100,
      timedBy: 'camera',
      ...exposure,
      ramp: {
        used: true,
        steps: steps.map((step) => ({ setting: 'shutter', to: 1, step: 'third', by: 'camera', ...step })),
      },
    },
  });

const ladder = (steps: Step[], exposure: Some<Plan['exposure']> = {}, ceilingS = Number.POSITIVE_INFINITY) =>
  ladderOf(rampPlan(steps, exposure), ceilingS);

const shutters = ({ rungs }: Ladder) => rungs.map(({ shutterMark }) => shutterMark);
const isos = ({ rungs }: Ladder) => rungs.map(({ iso }) => iso);

function expectFalling({ rungs, ev100: values }: Ladder) {
  expect([...values]).toEqual(rungs.map((rung) => rung.ev100));
  for (let i = 1; i < values.length; i += 1) expect(values[i]).toBeLessThan(values[i - 1] as number);
}

describe('the rungs of one step', () => {
  test('thirds go mark by mark', () => {
    expect(shutters(ladder([{ to: 1 / 15 }]))).toEqual([
      '1/60',
      '1/50',
      '1/40',
      '1/30',
      '1/25',
      '1/20',
      '1/15',
    ]);
  });

  test('halves go by the marks of half stops', () => {
    expect(shutters(ladder([{ to: 1 / 15, step: 'half' }]))).toEqual([
      '1/60',
      '1/45',
      '1/30',
      '1/20',
      '1/15',
    ]);
    expect(isos(ladder([{ setting: 'iso', to: 800, step: 'half' }]))).toEqual([
      100, 140, 200, 280, 400, 560, 800,
    ]);
  });

  test('full stops are every third mark from where the setting is', () => {
    expect(shutters(ladder([{ to: 1 / 4, step: 'full' }]))).toEqual(['1/60', '1/30', '1/15', '1/8', '1/4']);
    expect(shutters(ladder([{ to: 1 / 6, step: 'full' }], { shutterS: 1 / 50 }))).toEqual([
      '1/50',
      '1/25',
      '1/13',
      '1/6',
    ]);
  });

  test('the end is reached even if the last step is a smaller one', () => {
    expect(shutters(ladder([{ to: 0.3, step: 'full' }]))).toEqual([
      '1/60',
      '1/30',
      '1/15',
      '1/8',
      '1/4',
      '0.3',
    ]);
  });

  test('a setting between two marks goes on from the nearer one', () => {
    expect(shutters(ladder([{ to: 1 / 20 }], { shutterS: 1 / 55 }))).toEqual([
      '1/55',
      '1/40',
      '1/30',
      '1/25',
      '1/20',
    ]);
  });

  test('an aperture opens', () => {
    const { rungs } = ladder([{ setting: 'aperture', to: 5.6 }]);
    expect(rungs.map(({ apertureF }) => apertureF)).toEqual([8, 7.1, 6.3, 5.6]);
  });
});

describe('what a rung exposes rightly', () => {
  test('goes by the exact values behind the marks', () => {
    const { rungs } = ladder([{ setting: 'iso', to: 125 }], { shutterS: 30, apertureF: 11 });
    expect(rungs[0]?.ev100).toBeCloseTo(ev100(2 ** 3.5, 32, 100), 12);
    expect(rungs[1]?.ev100).toBeCloseTo(2 - 1 / 3, 12);
    expect(rungs[1]?.openS).toBe(32);
  });

  test('counts the filter: the scene has to be as much brighter', () => {
    const plain = ladder([{ to: 1 }]);
    const filtered = ladder([{ to: 1 }], { filterStops: 6 });
    filtered.rungs.forEach((rung, i) => {
      expect(rung.ev100).toBeCloseTo((plain.rungs[i]?.ev100 ?? 0) + 6, 12);
    });
  });

  test('knows a half stop from the third stop of the same mark', () => {
    const { rungs } = ladder([{ to: 20, step: 'half' }], { shutterS: 15 });
    expect(rungs.at(-1)).toMatchObject({ shutterS: 20, shutterMark: '20' });
    expect(rungs.at(-1)?.openS).toBeCloseTo(2 ** 4.5, 12);
  });

  test('follows the camera: measured correction, or no exact stops', () => {
    const slow = ladderOf(rampPlan([{ to: 1 / 50 }], {}, { shutterCorrection: 1.03 }), 99);
    expect(slow.rungs[0]?.openS).toBeCloseTo(1.03 / 64, 12);
    expect(slow.rungs[0]?.ev100).toBeCloseTo(12 - Math.log2(1.03), 12);
    const marked = ladderOf(rampPlan([{ to: 1 / 50 }], {}, { exactStops: false }), 99);
    expect(marked.rungs[0]?.openS).toBeCloseTo(1 / 60, 12);
  });

  test('falls from rung to rung by the step', () => {
    const { ev100: values } = ladder([{ to: 30 }, { setting: 'iso', to: 6400 }]);
    for (let i = 1; i < values.length; i += 1)
      expect((values[i - 1] as number) - (values[i] as number)).toBeCloseTo(1 / 3, 12);
  });
});

describe('steps in their order', () => {
  const both = ladder([
    { to: 1 / 30 },
    { setting: 'iso', to: 200, step: 'full', by: 'hand' },
    { to: 1 / 20 },
    { setting: 'iso', to: 400 },
    { setting: 'aperture', to: 4, step: 'full', by: 'hand' },
  ]);

  test('each goes on from where its setting is', () => {
    expect(
      both.rungs.map(({ shutterMark, apertureF, iso }) => `${shutterMark} f/${apertureF} ${iso}`),
    ).toEqual([
      '1/60 f/8 100',
      '1/50 f/8 100',
      '1/40 f/8 100',
      '1/30 f/8 100',
      '1/30 f/8 200',
      '1/25 f/8 200',
      '1/20 f/8 200',
      '1/20 f/8 250',
      '1/20 f/8 320',
      '1/20 f/8 400',
      '1/20 f/5.6 400',
      '1/20 f/4 400',
    ]);
    expectFalling(both);
    expect(both.idleSteps).toEqual([]);
    expect(both.cuts).toEqual([]);
  });

  test('each rung says what changed, in which step and by whom', () => {
    expect(both.rungs[0]).toMatchObject({ index: 0, setting: null, by: null, stepIndex: null });
    expect(both.rungs[4]).toMatchObject({ index: 4, setting: 'iso', by: 'hand', stepIndex: 1 });
    expect(both.rungs[5]).toMatchObject({ setting: 'shutter', by: 'camera', stepIndex: 2 });
  });
});

describe('steps that lead nowhere', () => {
  test('the wrong way, to where it is, and off the dial', () => {
    const { rungs, idleSteps } = ladder([
      { to: 1 / 125 },
      { setting: 'iso', to: 100 },
      { setting: 'aperture', to: 11 },
      { setting: 'iso', to: 110 },
    ]);
    expect(rungs).toHaveLength(1);
    expect(idleSteps).toEqual([
      { stepIndex: 0, setting: 'shutter', wanted: 1 / 125, reached: 1 / 60, why: 'brighter' },
      { stepIndex: 1, setting: 'iso', wanted: 100, reached: 100, why: 'already there' },
      { stepIndex: 2, setting: 'aperture', wanted: 11, reached: 8, why: 'brighter' },
      { stepIndex: 3, setting: 'iso', wanted: 110, reached: 100, why: 'dial' },
    ]);
  });

  test('a step ends at the last mark on its way', () => {
    const { rungs, idleSteps } = ladder([{ setting: 'iso', to: 700 }, { to: 60 }]);
    expect(rungs.at(-1)).toMatchObject({ iso: 640, shutterS: 30 });
    expect(idleSteps).toMatchObject([
      { stepIndex: 0, wanted: 700, reached: 640, why: 'dial' },
      { stepIndex: 1, wanted: 60, reached: 30, why: 'dial' },
    ]);
  });

  test('a trigger that holds the shutter open goes on beyond the dial, by its own seconds', () => {
    const { rungs, idleSteps } = ladder([{ to: 125 }], { shutterS: 15, timedBy: 'trigger' });
    expect(rungs.map(({ shutterMark }) => shutterMark)).toEqual('15 20 25 30 40 50 60 80 100 125'.split(' '));
    expect(rungs.map(({ openS }) => openS)).toEqual([15, 20, 25, 30, 40, 50, 60, 80, 100, 125]);
    expect(idleSteps).toEqual([]);
  });
});

describe('the ceiling', () => {
  test('cuts the shutter by the exact time, and what comes after goes on from there', () => {
    // 4 s are 4 s, a mark of 5 s is open for 5.04 s.
    const cut = ladder([{ to: 10 }, { setting: 'iso', to: 125 }], { shutterS: 2 }, 5.03);
    expect(shutters(cut)).toEqual(['2', '2.5', '3.2', '4', '4']);
    expect(cut.rungs.at(-1)).toMatchObject({ iso: 125 });
    expect(cut.cuts).toEqual([{ stepIndex: 0, wantedS: 10, reachedS: 4 }]);
    expect(cut.idleSteps).toEqual([]);
  });

  test('met exactly cuts nothing', () => {
    expect(ladder([{ to: 4 }], { shutterS: 2 }, 4).cuts).toEqual([]);
  });

  test('leaves the first settings alone, even beyond it', () => {
    const cut = ladder([{ to: 4 }], { shutterS: 2 }, 1);
    expect(shutters(cut)).toEqual(['2']);
    expect(cut.cuts).toEqual([{ stepIndex: 0, wantedS: 4, reachedS: 2 }]);
  });

  test('full steps under a ceiling still reach it', () => {
    expect(shutters(ladder([{ to: 30, step: 'full' }], { shutterS: 1 }, 7))).toEqual(['1', '2', '4', '6']);
  });
});

test('settings that stay are a ladder of one rung', () => {
  const fixed = fixedLadder(rampPlan([{ to: 30 }]));
  expect(fixed.rungs).toHaveLength(1);
  expect(fixed.rungs[0]).toMatchObject({ shutterMark: '1/60', apertureF: 8, iso: 100 });
  expect([...fixed.ev100]).toEqual([12]);
});

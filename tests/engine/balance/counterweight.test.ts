/** Cases of the counterweight that are not a plain lever, and what the motor then holds. */
import { describe, expect, test } from 'vitest';
import { balanceOf } from '../../../src/engine/balance/balance.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { armOf, balanced, rigOf, type Stretch } from '../../reference/balance/rigs.ts';
import type { Some } from '../../reference/plans.ts';

/** 2 kg at 1000 mm and an arm of 1 kg at 100 mm: 2100 kg mm. */
const arm = (balance: Some<Plan['balance']>, planeTiltDeg = 0) =>
  armOf(
    rigOf(
      { boom: [0, 0] },
      {
        rig: { arm: { lengthMm: 1000, planeTiltDeg } },
        balance: { payloadKg: 2, armKg: 1, armCentreMm: 100, counterweightMaxMm: 500, ...balance },
      },
    ),
  );

describe('place worked out', () => {
  test('on the rear arm nothing is left, not even a rounding', () => {
    expect(arm({ counterweightKg: 4.7 })).toMatchObject({
      counterweightMm: 2100 / 4.7,
      fits: true,
      needsNone: false,
      residualNm: 0,
      worstNm: 0,
      motor: { neededNm: 0, marginShare: null },
    });
  });

  test('exactly at the end of the rear arm it still fits', () => {
    expect(arm({ counterweightKg: 4.2 })).toMatchObject({ counterweightMm: 500, fits: true, residualNm: 0 });
  });

  test('a rounding is not beyond the end', () => {
    // 0.1 + 0.2 is a hair more than 0.3.
    const hair = armOf(
      rigOf(
        { boom: [0, 0] },
        {
          rig: { arm: { lengthMm: 300 } },
          balance: { payloadKg: 0.1 + 0.2, armKg: 0, counterweightKg: 0.3, counterweightMaxMm: 300 },
        },
      ),
    );
    expect(hair).toMatchObject({ counterweightMm: 300, fits: true, residualNm: 0 });
  });

  test('beyond the rear arm it sits at its end, and says what would balance', () => {
    const short = arm({ counterweightKg: 3 });
    expect(short).toMatchObject({ counterweightMm: 500, fits: false, balancedMm: 700, balancedKg: 4.2 });
    // 2100 - 3 x 500 = 600 kg mm.
    expect(short.residualNm).toBeCloseTo(0.6 * 9.80665, 12);
  });

  test('without any mass there is no place', () => {
    const none = arm({ counterweightKg: 0 });
    expect(none).toMatchObject({ counterweightMm: 500, fits: false, balancedMm: null, balancedKg: 4.2 });
    expect(none.residualNm).toBeCloseTo(2.1 * 9.80665, 12);
  });

  test('an arm that is heavier behind needs none, and carries none', () => {
    const light = arm({ armKg: 6, armCentreMm: -500 });
    expect(light).toMatchObject({ needsNone: true, counterweightKg: 0, counterweightMm: 0, fits: true });
    // 2000 - 3000 = -1000 kg mm: its rear drops.
    expect(light.residualNm).toBeCloseTo(-9.80665, 12);
    expect(light.aheadNm).toBeCloseTo(2 * 9.80665, 12);
  });

  test('an arm that balances by itself needs none, and nothing is left', () => {
    expect(arm({ armKg: 4, armCentreMm: -500 })).toMatchObject({
      needsNone: true,
      counterweightKg: 0,
      residualNm: 0,
    });
  });
});

describe('mass worked out', () => {
  test('for the place typed', () => {
    expect(arm({ workedOut: 'mass', counterweightMm: 300 })).toMatchObject({
      counterweightKg: 7,
      counterweightMm: 300,
      residualNm: 0,
      fits: true,
    });
  });

  test('a place beyond the rear arm is its end', () => {
    expect(arm({ workedOut: 'mass', counterweightMm: 700 })).toMatchObject({
      counterweightKg: 4.2,
      counterweightMm: 500,
      residualNm: 0,
      fits: false,
    });
  });

  test('at the pivot nothing balances', () => {
    const none = arm({ workedOut: 'mass', counterweightMm: 0 });
    expect(none).toMatchObject({ counterweightKg: 0, fits: false, balancedMm: null, balancedKg: null });
    expect(none.residualNm).toBeCloseTo(2.1 * 9.80665, 12);
  });

  test('none is needed where the rear is heavier', () => {
    expect(arm({ workedOut: 'mass', armKg: 6, armCentreMm: -500 })).toMatchObject({
      needsNone: true,
      counterweightKg: 0,
    });
  });
});

describe('both typed', () => {
  test('too much behind is negative', () => {
    const heavy = arm({ workedOut: 'residual', counterweightKg: 6, counterweightMm: 400 });
    expect(heavy.residualNm).toBeCloseTo(-0.3 * 9.80665, 12);
    expect(heavy.worstNm).toBeCloseTo(0.3 * 9.80665, 12);
  });

  test('a place beyond the rear arm is its end', () => {
    const beyond = arm({ workedOut: 'residual', counterweightKg: 3, counterweightMm: 700 });
    expect(beyond).toMatchObject({ counterweightKg: 3, counterweightMm: 500, fits: false });
    expect(beyond.residualNm).toBeCloseTo(0.6 * 9.80665, 12);
  });
});

describe('the lean of the arc', () => {
  const out = { workedOut: 'residual', counterweightKg: 4, counterweightMm: 400 } as const;

  test('takes the cosine off what the arm feels, and nothing off what is left', () => {
    const [upright, leaning] = [arm(out), arm(out, 60)];
    expect(leaning.residualNm).toBe(upright.residualNm);
    expect(leaning.worstNm).toBeCloseTo(upright.worstNm / 2, 12);
    expect(leaning.weightOff.armNm).toBeCloseTo(upright.weightOff.armNm / 2, 12);
  });

  test('on a flat arc gravity turns nothing', () => {
    const flat = arm(out, 90);
    expect(flat).toMatchObject({ worstNm: 0, motor: { neededNm: 0 }, weightOff: { armNm: 0 } });
    expect(Math.abs(flat.cameraOff.armNm)).toBe(0);
  });
});

describe('the move', () => {
  const out = { workedOut: 'residual', counterweightKg: 0, payloadKg: 1, armKg: 0 } as const;
  const moved = (boom: Stretch, zeroDeg = 0, axis = {}) =>
    armOf(rigOf({ boom, axis }, { rig: { arm: { lengthMm: 1000, zeroDeg } }, balance: out }));

  test('is worst where the arm is nearest to level', () => {
    const high = moved([80, 30]);
    expect(high.worstFrame).toBe(11);
    expect(high.worstNm).toBeCloseTo(9.80665 * Math.cos(Math.PI / 6), 3);
  });

  test('passes level between two frames', () => {
    // Ten moves from -45 to 55 degrees: -45, ..., -5, 5, ...; level between frames 5 and 6.
    const through = moved([-45, 55]);
    expect(through.worstNm).toBeCloseTo(9.80665, 12);
    expect([5, 6]).toContain(through.worstFrame);
  });

  test('counts from the angle at zero', () => {
    expect(moved([0, 20], -20).worstFrame).toBe(11);
    expect(moved([0, 20], -20).worstNm).toBeCloseTo(9.80665, 4);
  });

  test('knows the arm that has gone over to the other side', () => {
    expect(moved([100, 180]).worstFrame).toBe(11);
    expect(moved([100, 180]).worstNm).toBeCloseTo(9.80665, 12);
  });

  test('of a boom by the millimetre goes along the arc', () => {
    // 1000 mm of arc on an arm of 1000 mm: one radian.
    const arc = moved([-1000, -1500], 0, { unit: 'mm', unitsPerTurn: 40 });
    expect(arc.worstNm).toBeCloseTo(9.80665 * Math.cos(1), 5);
    expect(arc.motor.ratio).toBeCloseTo((50 * 2 * Math.PI * 1000) / 40, 9);
  });
});

test('a plan that does not ask for its balance has none', () => {
  const plan = rigOf({ boom: [0, 0] }, { balance: { used: false } });
  expect(balanceOf(plan, schedule(plan).columns.axes)).toBeNull();
});

test('without a boom there is no arm, and no counterweight on the support', () => {
  const kg = { payloadKg: 2, armKg: 30, counterweightKg: 40, baseKg: 1, ballastKg: 3, supportKg: 4 };
  const { arm: none, support, tip } = balanced(rigOf({ slide: [0, 100] }, { balance: kg }));
  expect(none).toBeNull();
  expect(support).toEqual({ loadKg: 6, ratedKg: null });
  expect(tip.totalKg).toBe(10);
});

test('a rig without any mass stands, and has no arm out of balance', () => {
  const kg = { payloadKg: 0, armKg: 0, counterweightKg: 0, baseKg: 0, ballastKg: 0, supportKg: 0 };
  const { arm: bare, tip } = balanced(rigOf({ boom: [0, 40] }, { balance: kg }));
  expect(bare).toMatchObject({ residualNm: 0, needsNone: true });
  expect(tip.farthestMm).toBe(0);
});

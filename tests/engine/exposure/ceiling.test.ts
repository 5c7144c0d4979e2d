import { describe, expect, test } from 'vitest';
import { cameraLane } from '../../../src/engine/cycle/cycle.ts';
import {
  intervalAtS,
  openSpanS,
  shutterAngleDeg,
  shutterCeiling,
} from '../../../src/engine/exposure/ceiling.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { plainPlan, type Some } from '../../reference/plans.ts';

const CLOCK = { intervalS: 10, dialS: 10 };

/** Every 10 s; lag 0.25, write 1.5, guard 0.5. */
const camera = (change: Some<Plan> = {}) =>
  plainPlan(10, 10, {
    camera: { shutterLagS: 0.25, writeS: 1.5, exactStops: true },
    cycle: { guardS: 0.5 },
    exposure: { timedBy: 'camera' },
    ...change,
  });

const withNoise = {
  shutterLagS: 0.25,
  writeS: 1.5,
  exactStops: true,
  noiseReduction: true,
  noiseReductionFromS: 1,
};
const endToStart = { counts: 'endToStart', stepS: 0.001, minS: 0.001 } as const;

describe('by the cycle', () => {
  test('interval less guard, lag and write', () => {
    // 10 - 0.5 - 0.25 - 1.5.
    expect(shutterCeiling(camera(), CLOCK, 0)).toMatchObject({
      cycleS: expect.closeTo(7.75, 12),
      ceilingS: expect.closeTo(7.75, 12),
      binds: 'cycle',
    });
  });

  test('a dark frame takes as long again', () => {
    expect(shutterCeiling(camera({ camera: withNoise }), CLOCK, 0).cycleS).toBeCloseTo(3.875, 9);
  });

  test('where only longer exposures get a dark frame, the last one without is the longest', () => {
    // From 6 s (really 6.35) a dark frame: 7.75 would need twice, so just under 6.35.
    const { cycleS } = shutterCeiling(camera({ camera: { ...withNoise, noiseReductionFromS: 6 } }), CLOCK, 0);
    expect(cycleS).toBeCloseTo(2 ** (8 / 3), 6);
    expect(cycleS).toBeLessThan(2 ** (8 / 3));
  });

  test('a bracket is given its middle: all its exposures, lags and writes', () => {
    // Middle x (1/2 + 1 + 2) + 3 x 1.75 = 9.5.
    const plan = camera({ exposure: { timedBy: 'camera', bracketCount: 3, bracketStops: 1 } });
    expect(shutterCeiling(plan, CLOCK, 0).cycleS).toBeCloseTo(4.25 / 3.5, 9);
  });

  test('moving between, the rig has its time as well, and the write does not delay it', () => {
    const plan = camera({ move: { mode: 'moveShootMove' } });
    // 10 - 0.5 - 0.25 - 4, and not - 1.5.
    expect(shutterCeiling(plan, CLOCK, 4).cycleS).toBeCloseTo(5.25, 9);
    // A short move is over before the camera is ready.
    expect(shutterCeiling(plan, CLOCK, 1).cycleS).toBeCloseTo(7.75, 9);
    // A rig that moves all the time does not count.
    expect(shutterCeiling(camera({ move: { mode: 'continuous' } }), CLOCK, 4).cycleS).toBeCloseTo(7.75, 9);
  });

  test('is nothing where nothing fits', () => {
    expect(shutterCeiling(camera({ cycle: { guardS: 9 } }), CLOCK, 0)).toMatchObject({
      cycleS: 0,
      ceilingS: 0,
    });
  });

  test('is really the end: the lane at the ceiling fits, a little more does not', () => {
    const plan = camera({
      camera: withNoise,
      exposure: { timedBy: 'camera', bracketCount: 2, bracketStops: 2 },
    });
    const { cycleS } = shutterCeiling(plan, CLOCK, 0);
    const need = (openS: number) => cameraLane(plan, openS).cameraS + plan.cycle.guardS;
    expect(need(cycleS)).toBeLessThanOrEqual(10);
    expect(need(cycleS * (1 + 1e-6))).toBeGreaterThan(10);
  });
});

describe('a trigger that counts end to start', () => {
  test('sets no ceiling: the interval grows with the exposure', () => {
    const plan = camera({ trigger: endToStart, move: { mode: 'moveShootMove' } });
    expect(shutterCeiling(plan, CLOCK, 4)).toMatchObject({
      cycleS: Number.POSITIVE_INFINITY,
      ceilingS: Number.POSITIVE_INFINITY,
      binds: null,
    });
    expect(intervalAtS(plan, CLOCK, cameraLane(plan, 30))).toBe(40);
  });

  test('but for a dark frame, which has to fit into the gap with lag, write and guard', () => {
    const plan = camera({ trigger: endToStart, camera: withNoise });
    expect(shutterCeiling(plan, CLOCK, 0).cycleS).toBeCloseTo(7.75, 8);
  });

  test('a gap too short for anything is not mended by a shorter exposure', () => {
    const plan = camera({ trigger: endToStart, camera: withNoise });
    expect(shutterCeiling(plan, { intervalS: 1, dialS: 1 }, 0).cycleS).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('by the shutter angle', () => {
  test('180 degrees are half the interval, and the shorter ceiling binds', () => {
    const exposure = { timedBy: 'camera', shutterAngleMaxDeg: 180 } as const;
    expect(shutterCeiling(camera({ exposure }), CLOCK, 0)).toEqual({
      cycleS: expect.closeTo(7.75, 12),
      angleS: 5,
      ceilingS: 5,
      binds: 'angle',
    });
    const wide = camera({ exposure: { ...exposure, shutterAngleMaxDeg: 300 } });
    expect(shutterCeiling(wide, CLOCK, 0)).toMatchObject({
      ceilingS: expect.closeTo(7.75, 12),
      binds: 'cycle',
    });
  });

  test('goes by the longest exposure of a bracket', () => {
    const exposure = {
      timedBy: 'camera',
      shutterAngleMaxDeg: 180,
      bracketCount: 3,
      bracketStops: 1,
    } as const;
    expect(shutterCeiling(camera({ exposure }), CLOCK, 0).angleS).toBeCloseTo(2.5, 9);
    expect(shutterAngleDeg(camera({ exposure }), CLOCK, 2.5)).toBeCloseTo(180, 9);
  });

  test('with a growing interval goes by that: 180 degrees are as long as the gap', () => {
    const exposure = { timedBy: 'camera', shutterAngleMaxDeg: 180 } as const;
    const plan = camera({ trigger: endToStart, exposure });
    expect(shutterCeiling(plan, CLOCK, 0)).toMatchObject({ angleS: 10, binds: 'angle' });
    const all = camera({ trigger: endToStart, exposure: { ...exposure, shutterAngleMaxDeg: 360 } });
    expect(shutterCeiling(all, CLOCK, 0).angleS).toBe(Number.POSITIVE_INFINITY);
  });
});

test('the span of a bracket goes from its first opening to its last closing', () => {
  const plan = camera({ exposure: { timedBy: 'camera', bracketCount: 2, bracketStops: 2 } });
  // 1 s, write 1.5, lag 0.25, 4 s.
  expect(openSpanS(plan, cameraLane(plan, 2))).toBeCloseTo(6.75, 12);
});

import { describe, expect, test } from 'vitest';
import type { MoveShape } from '../../../src/engine/motion/profile.ts';
import { quietSpeed, type Ringing, ringAfter, settleS } from '../../../src/engine/ringing/ring.ts';

const STANDING: MoveShape = { distance: 0, durationS: 0, peakSpeed: 0, accel: 0, accelS: 0, jerkS: 0 };

/** Rings once a second. */
const ONCE: Ringing = { omega: 2 * Math.PI, damping: 0 };

/** A trapezoid of acceleration 1. */
const trapezoid = (accelS: number, cruiseS: number): MoveShape => ({
  distance: accelS * (accelS + cruiseS),
  durationS: 2 * accelS + cruiseS,
  peakSpeed: accelS,
  accel: 1,
  accelS,
  jerkS: 0,
});

describe('ring after a move', () => {
  test('no move leaves none', () => {
    expect(ringAfter(STANDING, { omega: 30, damping: 0.02 })).toBe(0);
  });

  test('at most four deflections under its acceleration, and that where both halves last half a period', () => {
    expect(ringAfter(trapezoid(0.5, 0), ONCE)).toBeCloseTo(4 / (2 * Math.PI) ** 2, 12);
  });

  test('grows with the acceleration', () => {
    const one = trapezoid(0.3, 0.2);
    expect(ringAfter({ ...one, accel: 7 }, ONCE)).toBeCloseTo(7 * ringAfter(one, ONCE), 12);
  });

  test('of a move short beside the period is all the distance it goes', () => {
    // The base is away before the camera has moved: it hangs behind by the whole way, and swings.
    expect(ringAfter(trapezoid(1e-5, 1e-5), ONCE) / 2e-10).toBeCloseTo(1, 6);
  });

  test('does not overflow where damping and time are large', () => {
    const ring = ringAfter(trapezoid(400, 3000), { omega: 6000, damping: 0.9 });
    // Only the end of braking is left to see: one step of the acceleration.
    expect(ring * 6000 ** 2 * Math.sqrt(1 - 0.81)).toBeCloseTo(1, 12);
  });

  test('jerk phases of next to no length change nothing', () => {
    const sharp = trapezoid(0.3, 0.45);
    const ringing = { omega: 9, damping: 0.05 };
    expect(ringAfter({ ...sharp, jerkS: 1e-9 }, ringing)).toBeCloseTo(ringAfter(sharp, ringing), 8);
  });
});

describe('settle', () => {
  test('from 2 px to 0.1 px at 5 Hz and 0.02: ln 20 / (0.02 x 2 pi 5)', () => {
    expect(settleS(2, 0.1, { omega: 10 * Math.PI, damping: 0.02 })).toBeCloseTo(
      Math.log(20) / 0.6283185307,
      9,
    );
  });

  test('none where nothing shows, were it undamped or just at the tolerance', () => {
    expect(settleS(0, 0.5, { omega: 10, damping: 0.02 })).toBe(0);
    expect(settleS(0.4, 0.5, { omega: 10, damping: 0.02 })).toBe(0);
    expect(settleS(0.5, 0.5, { omega: 10, damping: 0 })).toBe(0);
  });

  test('never ends where nothing damps it', () => {
    expect(settleS(1, 0.5, { omega: 10, damping: 0 })).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('quiet move', () => {
  const fastest = (peakSpeed: number): MoveShape => ({ ...STANDING, distance: 10, peakSpeed });

  test('takes the next whole number of periods from start to braking', () => {
    expect(quietSpeed(10, fastest(20), ONCE)).toBeCloseTo(10, 12);
    expect(quietSpeed(10, fastest(9.9), ONCE)).toBeCloseTo(5, 12);
    expect(quietSpeed(10, fastest(4.9), ONCE)).toBeCloseTo(10 / 3, 12);
  });

  test('is the fastest where that is quiet already, to a rounding', () => {
    const peak = 5 * (1 - 1e-14);
    expect(quietSpeed(10, fastest(peak), ONCE)).toBe(peak);
  });

  test('is never faster than the fastest', () => {
    for (let peak = 0.5; peak < 40; peak += 0.37)
      expect(quietSpeed(10, fastest(peak), ONCE)).toBeLessThanOrEqual(peak);
  });

  test('counts damped periods', () => {
    expect(quietSpeed(10, fastest(20), { omega: 2 * Math.PI, damping: 0.6 })).toBeCloseTo(8, 12);
  });

  test('of no travel has no speed', () => {
    expect(quietSpeed(0, STANDING, ONCE)).toBe(0);
  });
});

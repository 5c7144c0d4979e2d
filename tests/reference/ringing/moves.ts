/** Random moves and oscillators, and the fastest move within limits, put together without the engine. */
import type { MoveShape } from '../../../src/engine/motion/profile.ts';
import type { Ringing } from '../../../src/engine/ringing/ring.ts';
import { dice } from '../sky/ephemeris.ts';

export interface Case {
  at: string;
  shape: MoveShape;
  ringing: Ringing;
}

/** The limits of an axis; no jerk is limited where it is Infinity. */
export interface Limits {
  speed: number;
  accel: number;
  jerk: number;
}

/** A move from its times: the rest follows. */
export function shapeOf(accel: number, accelS: number, cruiseS: number, jerkS: number): MoveShape {
  const peakSpeed = accel * (accelS - jerkS);
  const durationS = 2 * accelS + cruiseS;
  return { distance: peakSpeed * (durationS - accelS), durationS, peakSpeed, accel, accelS, jerkS };
}

/** The move over a distance that reaches a peak speed. */
export function moveAt(distance: number, peak: number, { accel, jerk }: Limits): MoveShape {
  const jerkS = Math.min(accel / jerk, Math.sqrt(peak / jerk));
  const reached = jerk === Number.POSITIVE_INFINITY ? accel : jerk * jerkS;
  const accelS = jerkS + peak / reached;
  const cruiseS = distance / peak - accelS;
  return { distance, durationS: cruiseS + 2 * accelS, peakSpeed: peak, accel: reached, accelS, jerkS };
}

/** The fastest: the highest peak speed that still leaves no negative cruise, found by halving. */
export function fastestMove(distance: number, limits: Limits): MoveShape {
  const fits = (peak: number) => distance / peak >= moveAt(distance, peak, limits).accelS;
  if (fits(limits.speed)) return moveAt(distance, limits.speed, limits);
  let [low, high] = [0, limits.speed];
  for (let round = 0; round < 200; round += 1) {
    const middle = (low + high) / 2;
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return moveAt(distance, low, limits);
}

/** A random oscillator. */
function ringingOf(throwDie: () => number, leastDamping: number, mostDamping: number): Ringing {
  const omega = 2 * Math.PI * 0.3 * 100 ** throwDie();
  return { omega, damping: leastDamping + (mostDamping - leastDamping) * throwDie() };
}

/**
 * Random moves of every kind beside the period of what they make ring: a third without cruise, half of limited jerk, of
 * which a quarter never hold their acceleration; one in ten undamped.
 */
export function* cases(count: number, seed: number): Generator<Case> {
  const throwDie = dice(seed);
  for (let n = 0; n < count; n += 1) {
    const ringing = ringingOf(throwDie, 0, 0.3);
    if (n % 10 === 0) ringing.damping = 0;
    const periodS = (2 * Math.PI) / ringing.omega;
    const accelS = periodS * 0.05 * 80 ** throwDie();
    const cruiseS = n % 3 === 0 ? 0 : periodS * 4 * throwDie();
    const jerkS = n % 2 === 0 ? 0 : accelS * (n % 4 === 1 ? 0.5 : 0.02 + 0.48 * throwDie());
    const shape = shapeOf(10 ** (4 * throwDie() - 1), accelS, cruiseS, jerkS);
    const { omega, damping } = ringing;
    const at = `w ${omega}, zeta ${damping}, a ${shape.accel}, ta ${accelS}, tc ${cruiseS}, tj ${jerkS}`;
    yield { at, shape, ringing };
  }
}

export interface QuietCase {
  at: string;
  distance: number;
  limits: Limits;
  ringing: Ringing;
}

// Longer moves, in radians of the ring, take long to integrate; they are drawn again.
const LONGEST_RAD = 100;

/** Random short moves of a motor, every other one of limited jerk. */
export function* quietCases(count: number, seed: number, mostDamping: number): Generator<QuietCase> {
  const throwDie = dice(seed);
  for (let n = 0; n < count; ) {
    const ringing = ringingOf(throwDie, mostDamping / 20, mostDamping);
    const distance = 0.05 * 2000 ** throwDie();
    const accel = 5 * 100 ** throwDie();
    const jerk = n % 2 === 0 ? Number.POSITIVE_INFINITY : accel * 2 * 50 ** throwDie();
    const limits = { speed: 100 ** throwDie(), accel, jerk };
    const { omega, damping } = ringing;
    if (fastestMove(distance, limits).durationS * omega > LONGEST_RAD) continue;
    n += 1;
    const at = `d ${distance}, v ${limits.speed}, a ${accel}, j ${jerk}, w ${omega}, zeta ${damping}`;
    yield { at, distance, limits, ringing };
  }
}

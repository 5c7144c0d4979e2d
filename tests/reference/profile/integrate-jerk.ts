/** Moves of limited jerk judged without their closed forms: integrated, and searched for. */
import type { MoveShape } from '../../../src/engine/motion/profile.ts';

/** What a move does on its way, and where it ends. */
export interface Travelled {
  distance: number;
  /** Speed and acceleration at the end. */
  endSpeed: number;
  endAccel: number;
  topSpeed: number;
  topAccel: number;
  topJerk: number;
  durationS: number;
}

const STEPS = 400;

/**
 * Integrates the jerk of a move, segment by segment, in steps: acceleration and speed by the trapezoid rule, which is
 * exact and nearly so here, position by Simpson's. Without jerk phases the acceleration itself jumps.
 */
export function travelledWithJerk({ accel, accelS, jerkS, durationS }: MoveShape): Travelled {
  const jerk = jerkS > 0 ? accel / jerkS : 0;
  const hold = accelS - 2 * jerkS;
  const cruise = durationS - 2 * accelS;
  // Length, jerk, and the acceleration that a segment begins with where jerk phases have no length.
  const segments: readonly (readonly [number, number, number])[] = [
    [jerkS, jerk, 0],
    [hold, 0, accel],
    [jerkS, -jerk, accel],
    [cruise, 0, 0],
    [jerkS, -jerk, 0],
    [hold, 0, -accel],
    [jerkS, jerk, -accel],
  ];
  let [a, v, x, t] = [0, 0, 0, 0];
  let [topSpeed, topAccel] = [0, 0];
  for (const [lengthS, j, from] of segments) {
    if (jerkS === 0) a = from;
    const h = lengthS / STEPS;
    for (let i = 0; i < STEPS; i += 1) {
      const middle = a + (j * h) / 2;
      const next = a + j * h;
      const vMiddle = v + ((a + middle) / 2) * (h / 2);
      const vNext = v + ((a + next) / 2) * h;
      x += (h / 6) * (v + 4 * vMiddle + vNext);
      [a, v, t] = [next, vNext, t + h];
      topSpeed = Math.max(topSpeed, Math.abs(v));
      topAccel = Math.max(topAccel, Math.abs(a));
    }
    if (jerkS === 0) a = 0;
  }
  return { distance: x, endSpeed: v, endAccel: a, topSpeed, topAccel, topJerk: jerk, durationS: t };
}

/**
 * Seconds of the shortest symmetric profile that a search finds: jerk phases and held acceleration of every length that
 * the limits allow, and as much cruising as the distance leaves; the grid is drawn together about the best again and
 * again.
 */
export function shortestFound(distance: number, maxSpeed: number, maxAccel: number, maxJerk: number): number {
  const seconds = (jerkS: number, holdS: number): number => {
    const peak = maxJerk * jerkS * (jerkS + holdS);
    const ramps = peak * (2 * jerkS + holdS);
    if (peak > maxSpeed || maxJerk * jerkS > maxAccel || ramps > distance) return Number.POSITIVE_INFINITY;
    return distance / peak + 2 * jerkS + holdS;
  };
  let best = Number.POSITIVE_INFINITY;
  let [atJerkS, atHoldS] = [0, 0];
  const rampS = Math.min(maxSpeed / maxAccel, Math.sqrt(distance / maxAccel));
  let [jerkSpan, holdSpan] = [Math.min(maxAccel / maxJerk, Math.cbrt(distance / maxJerk)), 2 * rampS];
  let [jerkFrom, holdFrom] = [0, 0];
  for (let round = 0; round < 80; round += 1) {
    for (let i = 0; i <= 40; i += 1) {
      for (let n = 0; n <= 40; n += 1) {
        const jerkS = jerkFrom + (jerkSpan * i) / 40;
        const holdS = holdFrom + (holdSpan * n) / 40;
        const found = seconds(jerkS, holdS);
        if (found < best) [best, atJerkS, atHoldS] = [found, jerkS, holdS];
      }
    }
    jerkSpan *= 0.8;
    holdSpan *= 0.8;
    jerkFrom = Math.max(0, Math.min(atJerkS - jerkSpan / 2, maxAccel / maxJerk - jerkSpan));
    holdFrom = Math.max(0, atHoldS - holdSpan / 2);
  }
  return best;
}

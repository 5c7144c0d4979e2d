/**
 * One move from rest to rest with constant acceleration, constant speed and constant deceleration.
 *
 * Source: the trapezoidal time scaling of the textbooks (Lynch & Park, Modern Robotics, ch. 9.2.2.2):
 * T = d/v + v/a where d > v^2/a, else the triangle T = 2 sqrt(d/a) with peak speed sqrt(d a).
 */

/** One move from rest to rest, in any unit of distance. */
export interface MoveShape {
  distance: number;
  durationS: number;
  /** The unit a second. distance / peakSpeed = durationS - accelS always. */
  peakSpeed: number;
  /** Peak acceleration, the unit a second squared. */
  accel: number;
  /** From rest to the peak speed, phases of jerk included; as long again from there to rest. */
  accelS: number;
  /** Length of each phase of jerk; 0 where only the acceleration is limited. */
  jerkS: number;
}

/**
 * Shortest time for a move.
 * @param distance - travel, any unit, at least 0
 * @param maxSpeed - that unit a second, positive
 * @param maxAccel - that unit a second squared, positive
 * @returns seconds; 0 for no travel
 */
export function moveDurationS(distance: number, maxSpeed: number, maxAccel: number): number {
  return distance > (maxSpeed * maxSpeed) / maxAccel
    ? distance / maxSpeed + maxSpeed / maxAccel
    : 2 * Math.sqrt(distance / maxAccel);
}

/** Highest speed in the shortest move, that unit a second. */
export const movePeakSpeed = (distance: number, maxSpeed: number, maxAccel: number): number =>
  Math.min(maxSpeed, Math.sqrt(distance * maxAccel));

/**
 * Cruising speed of a move that takes a given time with a given acceleration.
 * @param durationS - seconds, positive
 * @returns that unit a second; Infinity if the acceleration cannot do it in the time
 */
export function fixedTimeSpeed(distance: number, maxAccel: number, durationS: number): number {
  const rest = (maxAccel * durationS) ** 2 - 4 * maxAccel * distance;
  // The smaller root of d = v T - v^2/a, written so that nothing cancels.
  const sum = maxAccel * durationS + Math.sqrt(rest);
  return rest < 0 ? Number.POSITIVE_INFINITY : (2 * distance * maxAccel) / sum;
}

/** Least acceleration that does a move in a given time: a triangle. */
export const fixedTimeAccel = (distance: number, durationS: number): number =>
  (4 * distance) / (durationS * durationS);

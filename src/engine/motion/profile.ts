/**
 * One move from rest to rest within limits of speed, acceleration and jerk, as fast as they allow or slower.
 *
 * With a jerk limit the move has seven segments: jerk up, constant acceleration, jerk down, constant speed, and the same
 * in reverse. Segments that the move is too short for have no length. A jerk limit of Infinity leaves the three segments
 * of the trapezoid: both are one family, and every form here holds for both.
 *
 * Sources: trapezoid: Lynch & Park, Modern Robotics, ch. 9.2.2.2: T = d/v + v/a where d > v^2/a, else the triangle
 * T = 2 sqrt(d/a). Seven segments from rest to rest: Biagiotti & Melchiorri, Trajectory Planning for Automatic Machines
 * and Robots, sec. 3.4 (from memory): speeding up to v takes v/a + a/j, or 2 sqrt(v/j) where a is not reached.
 */
import type { Axis, Plan } from '../plan/schema.ts';

/** What a move has to keep to, in the axis's unit and seconds. */
export interface MoveLimits {
  maxSpeed: number;
  maxAccel: number;
  /** Infinity if it is not limited. */
  maxJerk: number;
}

/** The limits of an axis for moves of a profile. */
export const limitsOf = (
  { maxSpeed, maxAccel, maxJerk }: Pick<Axis, 'maxSpeed' | 'maxAccel' | 'maxJerk'>,
  profile: Plan['move']['profile'],
): MoveLimits => ({
  maxSpeed,
  maxAccel,
  maxJerk: profile === 'jerkLimited' ? maxJerk : Number.POSITIVE_INFINITY,
});

/** A move from rest to rest; distance / peakSpeed = durationS - accelS. All 0 for no travel. */
export interface MoveShape {
  /** Travel, in the axis's unit. */
  distance: number;
  durationS: number;
  /** Unit a second. */
  peakSpeed: number;
  /** Largest acceleration, unit a second squared. */
  accel: number;
  /** From rest to peak speed, jerk phases included. */
  accelS: number;
  /** Each jerk phase; 0 for a trapezoid. */
  jerkS: number;
}

const STANDING: MoveShape = { distance: 0, durationS: 0, peakSpeed: 0, accel: 0, accelS: 0, jerkS: 0 };

/** Seconds from rest to a speed. */
const accelTimeS = (speed: number, maxAccel: number, maxJerk: number): number =>
  speed * maxJerk >= maxAccel * maxAccel
    ? speed / maxAccel + maxAccel / maxJerk
    : 2 * Math.sqrt(speed / maxJerk);

/** Peak speed of a move that has no time to cruise: from v accelTime(v) = d. */
function crestSpeed(distance: number, maxAccel: number, maxJerk: number): number {
  if (distance * maxJerk * maxJerk < 2 * maxAccel ** 3) return Math.cbrt((distance * distance * maxJerk) / 4);
  const jerkS = maxAccel / maxJerk;
  return (2 * distance) / (jerkS + Math.sqrt(jerkS * jerkS + (4 * distance) / maxAccel));
}

/**
 * Highest speed in the shortest move.
 * @param distance - travel, any unit, at least 0
 * @param maxSpeed - that unit a second, positive
 * @param maxAccel - that unit a second squared, positive
 * @param maxJerk - that unit a second cubed, positive
 * @returns that unit a second
 */
export const movePeakSpeed = (
  distance: number,
  maxSpeed: number,
  maxAccel: number,
  maxJerk = Number.POSITIVE_INFINITY,
): number => (distance === 0 ? 0 : Math.min(maxSpeed, crestSpeed(distance, maxAccel, maxJerk)));

/** Shortest time for a move, seconds; 0 for no travel. Parameters as for {@link movePeakSpeed}. */
export function moveDurationS(
  distance: number,
  maxSpeed: number,
  maxAccel: number,
  maxJerk = Number.POSITIVE_INFINITY,
): number {
  if (distance === 0) return 0;
  const speed = movePeakSpeed(distance, maxSpeed, maxAccel, maxJerk);
  return distance / speed + accelTimeS(speed, maxAccel, maxJerk);
}

/** The shortest move over a distance, at least 0. */
export const fastestShape = (distance: number, limits: MoveLimits): MoveShape =>
  shapeAtSpeed(distance, movePeakSpeed(distance, limits.maxSpeed, limits.maxAccel, limits.maxJerk), limits);

/**
 * A move of a lower peak speed: speeding up as fast as the limits allow.
 * @param peakSpeed - at most that of the {@link fastestShape}; above 0 if there is travel
 */
export const shapeAtSpeed = (distance: number, peakSpeed: number, limits: MoveLimits): MoveShape =>
  cruising(
    distance,
    peakSpeed,
    distance / peakSpeed + accelTimeS(peakSpeed, limits.maxAccel, limits.maxJerk),
    limits,
  );

function cruising(
  distance: number,
  peakSpeed: number,
  durationS: number,
  { maxAccel, maxJerk }: MoveLimits,
): MoveShape {
  if (distance === 0) return STANDING;
  const accel = Math.min(maxAccel, Math.sqrt(peakSpeed * maxJerk));
  const accelS = accelTimeS(peakSpeed, maxAccel, maxJerk);
  return { distance, durationS, peakSpeed, accel, accelS, jerkS: accel / maxJerk };
}

/** Least jerk that does a move in a given time: four jerk phases and nothing else. */
export const fixedTimeJerk = (distance: number, durationS: number): number =>
  (32 * distance) / durationS ** 3;

/**
 * Least acceleration that does a move in a given time: no cruising.
 * @param maxJerk - where it does not suffice, as much more as is needed
 */
export function fixedTimeAccel(
  distance: number,
  durationS: number,
  maxJerk = Number.POSITIVE_INFINITY,
): number {
  const speed = (2 * distance) / durationS;
  const rest = durationS * durationS - (16 * speed) / maxJerk;
  return (4 * speed) / (durationS + Math.sqrt(Math.max(0, rest)));
}

/**
 * Cruising speed of a move that takes a given time with a given acceleration and jerk.
 * @param durationS - seconds, positive
 * @returns that unit a second; Infinity if they cannot do it in the time
 */
export function fixedTimeSpeed(
  distance: number,
  maxAccel: number,
  durationS: number,
  maxJerk = Number.POSITIVE_INFINITY,
): number {
  const share = distance / (maxJerk * durationS ** 3);
  if (share > 1 / 32) return Number.POSITIVE_INFINITY;
  // The smaller root of d = v T - 2 v sqrt(v/j): a cubic in sqrt(v), by the cosine of a third of an angle.
  const cosine = Math.cos(Math.acos(-3 * Math.sqrt(3 * share)) / 3);
  const gentle = (3 * distance) / (4 * cosine * cosine * durationS);
  if (gentle * maxJerk <= maxAccel * maxAccel) return gentle;
  const withoutJerkS = durationS - maxAccel / maxJerk;
  const rest = (maxAccel * withoutJerkS) ** 2 - 4 * maxAccel * distance;
  // The smaller root of d = v (T - a/j) - v^2/a, written so that nothing cancels.
  const sum = maxAccel * withoutJerkS + Math.sqrt(rest);
  return rest < 0 ? Number.POSITIVE_INFINITY : (2 * distance * maxAccel) / sum;
}

/**
 * The move that takes a given time, speeding up as fast as the limits allow; where they do not suffice, with as much
 * more as is needed, and no more.
 * @param durationS - seconds, positive
 */
export function fixedTimeShape(distance: number, durationS: number, limits: MoveLimits): MoveShape {
  const peakSpeed = fixedTimeSpeed(distance, limits.maxAccel, durationS, limits.maxJerk);
  if (peakSpeed < Number.POSITIVE_INFINITY) return cruising(distance, peakSpeed, durationS, limits);
  const accel = fixedTimeAccel(distance, durationS, limits.maxJerk);
  const jerkS = accel / Math.max(limits.maxJerk, fixedTimeJerk(distance, durationS));
  return {
    distance,
    durationS,
    peakSpeed: (2 * distance) / durationS,
    accel,
    accelS: durationS / 2,
    jerkS,
  };
}

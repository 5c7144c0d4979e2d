/** One move from rest to rest, put together from stretches, its speed found by halving. */
import type { Axis, Plan } from '../../../src/engine/plan/schema.ts';

/** Acceleration that changes evenly from one value to another. */
export interface Stretch {
  durationS: number;
  from: number;
  to: number;
}

export interface SlowLimits {
  speed: number;
  accel: number;
  /** Infinity if it is not limited. */
  jerk: number;
}

export const slowLimits = (plan: Plan, axis: Axis): SlowLimits => ({
  speed: axis.maxSpeed,
  accel: axis.maxAccel,
  jerk: plan.move.profile === 'jerkLimited' ? axis.maxJerk : Number.POSITIVE_INFINITY,
});

export const lasting = (move: readonly Stretch[]): number =>
  move.reduce((total, { durationS }) => total + durationS, 0);

/** Way and speed at the end of some stretches, from rest: each integrated twice. */
export function gone(move: readonly Stretch[]): { way: number; speed: number } {
  let [way, speed] = [0, 0];
  for (const { durationS: t, from, to } of move) {
    way += speed * t + (from * t * t) / 2 + ((to - from) * t * t) / 6;
    speed += ((from + to) / 2) * t;
  }
  return { way, speed };
}

/** The largest number up to `most` of which something holds, as it does of all below it. */
export function largest(most: number, holds: (x: number) => boolean): number {
  let [low, high] = [0, most];
  if (!Number.isFinite(most)) {
    high = 1;
    while (holds(high)) high *= 2;
  } else if (holds(most)) return most;
  // Down to the size of it, then to its last place.
  while (high > 1e-300 && !holds(high / 2)) high /= 2;
  low = high / 2;
  for (let i = 0; i < 60; i += 1) {
    const middle = (low + high) / 2;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** Speeding up from rest as fast as can be. */
function upTo(speed: number, { accel, jerk }: SlowLimits): Stretch[] {
  if (jerk === Number.POSITIVE_INFINITY) return [{ durationS: speed / accel, from: accel, to: accel }];
  const jerkS = Math.min(accel / jerk, Math.sqrt(speed / jerk));
  const most = jerk * jerkS;
  return [
    { durationS: jerkS, from: 0, to: most },
    { durationS: Math.max(0, speed / most - jerkS), from: most, to: most },
    { durationS: jerkS, from: most, to: 0 },
  ];
}

/** Slowing down is speeding up backwards. */
const downFrom = (speed: number, limits: SlowLimits): Stretch[] =>
  upTo(speed, limits)
    .map(({ durationS, from, to }) => ({ durationS, from: -to, to: -from }))
    .reverse();

/** Way of speeding up and slowing down again. */
const leastWay = (speed: number, limits: SlowLimits): number =>
  gone([...upTo(speed, limits), ...downFrom(speed, limits)]).way;

/** A move that goes at a speed on its way, if it is long enough. */
export function atSpeed(distance: number, speed: number, limits: SlowLimits): Stretch[] {
  const cruiseS = Math.max(0, distance - leastWay(speed, limits)) / speed;
  return [...upTo(speed, limits), { durationS: cruiseS, from: 0, to: 0 }, ...downFrom(speed, limits)];
}

export const topSpeed = (distance: number, limits: SlowLimits): number =>
  largest(limits.speed, (speed) => leastWay(speed, limits) <= distance);

/** The shortest move. */
export const fastest = (distance: number, limits: SlowLimits): Stretch[] =>
  atSpeed(distance, topSpeed(distance, limits), limits);

/** Whether acceleration and jerk suffice for a move in a time, whatever the speed: the shortest time it can take. */
export const leastS = (distance: number, limits: SlowLimits): number =>
  lasting(fastest(distance, { ...limits, speed: Number.POSITIVE_INFINITY }));

/** Lowest speed at which a move is made in a time. */
export function speedWithin(distance: number, durationS: number, limits: SlowLimits): number {
  const most = topSpeed(distance, { ...limits, speed: Number.POSITIVE_INFINITY });
  return largest(most, (speed) => lasting(atSpeed(distance, speed, limits)) >= durationS);
}

/** A move that takes a time; with as much more acceleration, and then jerk, as it needs if there is not enough. */
export function within(distance: number, durationS: number, limits: SlowLimits): Stretch[] {
  if (leastS(distance, limits) <= durationS)
    return atSpeed(distance, speedWithin(distance, durationS, limits), limits);
  const endless = { speed: Number.POSITIVE_INFINITY, accel: Number.POSITIVE_INFINITY };
  // Nothing but four jerks goes d in T with 32 d/T^3; then no acceleration helps.
  const least = (32 * distance) / durationS ** 3;
  if (least > limits.jerk) return fastest(distance, { ...endless, jerk: least });
  const accel = largest(endless.accel, (value) => leastS(distance, { ...limits, accel: value }) > durationS);
  return fastest(distance, { ...limits, ...endless, accel });
}

/**
 * Frequency and damping from what can be measured beside the rig.
 *
 * Sources: static deflection and logarithmic decrement of the textbooks on vibration (Rao, Mechanical Vibrations,
 * ch. 2: from memory). g is the standard 9.80665 m/s^2 (CGPM 1901).
 */

const GRAVITY_MM_S2 = 9806.65;

/** The value, if it is a number within a range. */
function within(value: number, field: string, lowest: number, highest: number, unit: string): number {
  if (value >= lowest && value <= highest) return value;
  throw new RangeError(`${field} is ${value}: allowed is ${lowest} to ${highest} ${unit}`.trimEnd());
}

/**
 * Natural frequency of a light arm with a mass at its tip, f = sqrt(g / sag) / 2 pi.
 *
 * An arm's own distributed mass follows another constant (a bare uniform cantilever rings 1.24 times as fast as its own
 * sag says by this form): measure the sag that the payload adds, with it and without it.
 * @param sagMm - how much lower the tip sits with the payload than without, mm, 0.001 to 1000
 * @returns Hz
 * @throws RangeError if the sag is outside that range
 */
export const frequencyFromSag = (sagMm: number): number =>
  Math.sqrt(GRAVITY_MM_S2 / within(sagMm, 'sagMm', 0.001, 1000, 'mm')) / (2 * Math.PI);

/**
 * Damping ratio by the logarithmic decrement: delta = ln(first / last) / swings,
 * zeta = delta / sqrt(4 pi^2 + delta^2).
 * @param first - height of a swing above rest, any unit, positive
 * @param last - height of a later swing, to either side, same unit, positive, below the first
 * @param swings - full periods between the two, 0.5 to 10,000; from the 1st swing to the 100th there are 99
 * @returns share of critical damping
 * @throws RangeError naming the one that is outside its range
 */
export function dampingFromSwings(first: number, last: number, swings: number): number {
  if (!(first > 0 && first < Number.POSITIVE_INFINITY))
    throw new RangeError(`first is ${first}: allowed is more than 0`);
  if (!(last > 0 && last < first))
    throw new RangeError(`last is ${last}: allowed is more than 0 and less than first, ${first}`);
  const decrement = Math.log(first / last) / within(swings, 'swings', 0.5, 10_000, '');
  return decrement / Math.sqrt(4 * Math.PI * Math.PI + decrement * decrement);
}

/**
 * Frequency of swings counted by eye or from a film.
 *
 * What is counted is the damped frequency, lower than the natural one by sqrt(1 - zeta^2): 0.02 % at a damping ratio
 * of 0.02.
 * @param swings - full periods counted, 0.5 to 10,000
 * @param seconds - that they took, 0.01 to 3600
 * @returns Hz
 * @throws RangeError naming the one that is outside its range
 */
export const frequencyFromSwings = (swings: number, seconds: number): number =>
  within(swings, 'swings', 0.5, 10_000, '') / within(seconds, 'seconds', 0.01, 3600, 's');

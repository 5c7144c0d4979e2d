/**
 * Exact ratios of whole numbers.
 *
 * A frame rate such as 24000/1001 has no exact binary form, and `12.012 s x 24000/1001` must give 288 frames,
 * not 289 because of a rounding in the last place. Counting is therefore done on ratios of big integers; a
 * number from a plan file stands for the decimal that was written in it.
 */

/** A ratio; the denominator is positive. Not necessarily in lowest terms. */
export interface Ratio {
  readonly num: bigint;
  readonly den: bigint;
}

/**
 * Reads a frame rate such as `25` or `24000/1001`.
 * @param rate - a whole number or a ratio of two whole numbers, frames a second
 * @returns the exact ratio
 * @throws RangeError if it is neither
 */
export function parseRate(rate: string): Ratio {
  const match = /^([1-9]\d*)(?:\/([1-9]\d*))?$/.exec(rate);
  if (!match?.[1]) throw new RangeError(`frame rate: found '${rate}', allowed: 25 or 24000/1001`);
  return { num: BigInt(match[1]), den: BigInt(match[2] ?? '1') };
}

/**
 * The decimal that a finite number is written as, as an exact ratio: 0.1 gives 1/10.
 * @throws RangeError if the value is not finite
 */
export function decimalRatio(value: number): Ratio {
  if (!Number.isFinite(value)) throw new RangeError(`ratio: found ${value}, allowed: a finite number`);
  const match = /^(-?)(\d+)(?:\.(\d+))?(?:e([+-]\d+))?$/.exec(String(value));
  if (!match) throw new RangeError(`ratio: cannot read ${value}`);
  const [, sign = '', whole = '0', fraction = '', exponent = '0'] = match;
  const digits = BigInt(`${sign}${whole}${fraction}`);
  const places = fraction.length - Number(exponent);
  return places > 0
    ? { num: digits, den: 10n ** BigInt(places) }
    : { num: digits * 10n ** BigInt(-places), den: 1n };
}

/** Product of two ratios. */
export const times = (a: Ratio, b: Ratio): Ratio => ({ num: a.num * b.num, den: a.den * b.den });

/** Quotient of two ratios; the second must be positive. */
export const over = (a: Ratio, b: Ratio): Ratio => ({ num: a.num * b.den, den: a.den * b.num });

/** A whole number as a ratio. */
export const wholeRatio = (value: number | bigint): Ratio => ({ num: BigInt(value), den: 1n });

/** Sum of two ratios. */
export const plus = (a: Ratio, b: Ratio): Ratio => ({
  num: a.num * b.den + b.num * a.den,
  den: a.den * b.den,
});

/** Difference of two ratios. */
export const minus = (a: Ratio, b: Ratio): Ratio => ({
  num: a.num * b.den - b.num * a.den,
  den: a.den * b.den,
});

/** Largest whole number not above the ratio. */
export function floor(a: Ratio): bigint {
  const quotient = a.num / a.den;
  return a.num % a.den < 0n ? quotient - 1n : quotient;
}

/** Smallest whole number not below the ratio. */
export const ceil = (a: Ratio): bigint => -floor({ num: -a.num, den: a.den });

const exactDouble = (value: bigint): boolean =>
  value <= BigInt(Number.MAX_SAFE_INTEGER) && value >= BigInt(Number.MIN_SAFE_INTEGER);

const bits = (value: bigint): number => (value < 0n ? -value : value).toString(2).length;

/** The ratio as a double, the nearest one. */
export function toNumber(a: Ratio): number {
  if (exactDouble(a.num) && exactDouble(a.den)) return Number(a.num) / Number(a.den);
  // 66 bits of the quotient are enough for the 53 of a double to be rounded rightly.
  const shift = Math.max(0, 66 + bits(a.den) - bits(a.num));
  return Number((a.num << BigInt(shift)) / a.den) / 2 ** shift;
}

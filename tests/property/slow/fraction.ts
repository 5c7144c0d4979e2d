/** Exact fractions, written for the tests alone. A number stands for the shortest decimal that names it. */

export interface Fraction {
  n: bigint;
  d: bigint;
}

export const whole = (value: number | bigint): Fraction => ({ n: BigInt(value), d: 1n });

/** The decimal of a finite number, through its exponential form. */
export function decimal(value: number): Fraction {
  const [mantissa = '0', exponent = '0'] = value.toExponential().split('e');
  const [head = '0', tail = ''] = mantissa.split('.');
  const power = Number(exponent) - tail.length;
  const digits = BigInt(head + tail);
  return power >= 0 ? whole(digits * 10n ** BigInt(power)) : { n: digits, d: 10n ** BigInt(-power) };
}

/** A frame rate such as 24000/1001. */
export function rateOf(text: string): Fraction {
  const [n = '1', d = '1'] = text.split('/');
  return { n: BigInt(n), d: BigInt(d) };
}

export const add = (a: Fraction, b: Fraction): Fraction => ({ n: a.n * b.d + b.n * a.d, d: a.d * b.d });
export const subtract = (a: Fraction, b: Fraction): Fraction => add(a, { n: -b.n, d: b.d });
export const multiply = (a: Fraction, b: Fraction): Fraction => ({ n: a.n * b.n, d: a.d * b.d });
export const divide = (a: Fraction, b: Fraction): Fraction =>
  b.n < 0n ? { n: -a.n * b.d, d: a.d * -b.n } : { n: a.n * b.d, d: a.d * b.n };

/** -1, 0 or 1. */
export function compare(a: Fraction, b: Fraction): number {
  const difference = a.n * b.d - b.n * a.d;
  return difference > 0n ? 1 : difference < 0n ? -1 : 0;
}

/** Whole part towards minus infinity. */
export function floorOf({ n, d }: Fraction): number {
  const towardsZero = n / d;
  return Number(n < 0n && towardsZero * d !== n ? towardsZero - 1n : towardsZero);
}

export const ceilOf = (a: Fraction): number => -floorOf({ n: -a.n, d: a.d });

/** A double near it: 25 digits are worked out and then read as a decimal. */
export function toDouble({ n, d }: Fraction): number {
  const negative = n < 0n;
  const size = negative ? -n : n;
  if (size === 0n) return 0;
  // Enough places that at least 25 digits stand before the division ends.
  const places = Math.max(0, 25 - (String(size).length - String(d).length));
  const digits = (size * 10n ** BigInt(places)) / d;
  return Number(`${negative ? '-' : ''}${digits}e-${places}`);
}

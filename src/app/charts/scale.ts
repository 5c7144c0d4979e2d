/** Linear scales and the round numbers on them. */
import { numberText } from '../format/numbers.ts';

/** From and to, in the unit of what is drawn. */
export type Domain = readonly [number, number];

/** A straight map of a domain onto pixels. A domain without width maps to the middle. */
export function linear([d0, d1]: Domain, [r0, r1]: Domain): (value: number) => number {
  if (d1 === d0) return () => (r0 + r1) / 2;
  const slope = (r1 - r0) / (d1 - d0);
  return (value) => r0 + (value - d0) * slope;
}

/** Lowest and highest finite value times `factor`; null if there is none. */
export function extent(values: ArrayLike<number>, factor = 1): Domain | null {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < values.length; i++) {
    const value = Number(values[i]) * factor;
    if (!Number.isFinite(value)) continue;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return low > high ? null : [low, high];
}

/** The domain with a share of its width added at both ends; one unit if it has no width. */
export function padded([low, high]: Domain, share: number): Domain {
  const margin = high > low ? (high - low) * share : 1;
  return [low - margin, high + margin];
}

/** Smallest of 1, 2, 5 times a power of ten that is at least `least`. */
export function niceStep(least: number): number {
  if (!(least > 0) || !Number.isFinite(least)) return 1;
  const power = 10 ** Math.floor(Math.log10(least));
  const factor = [1, 2, 5, 10].find((f) => f * power >= least * (1 - 1e-9)) ?? 10;
  return factor * power;
}

/** Round numbers within a domain, at most `most` + 1 of them. */
export function niceTicks([low, high]: Domain, most: number): number[] {
  const step = niceStep((high - low) / most);
  const ticks: number[] = [];
  const first = Math.ceil(low / step - 1e-9);
  for (let n = first; n * step <= high + step * 1e-9; n++) ticks.push(Number((n * step).toPrecision(12)));
  return ticks;
}

/** Nice ticks with their figures. */
export const labelledTicks = (domain: Domain, most: number, decimals: number) =>
  niceTicks(domain, most).map((value) => ({ value, label: numberText(value, decimals) }));

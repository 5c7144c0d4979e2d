/** Figures as they are drawn: with a fixed number of decimals, so that they do not jiggle under the cursor. */
import { MINUS, numberText } from '../format/numbers.ts';

/** Fixed decimals with a true minus sign; never a minus before zero. */
export function fixed(value: number, digits: number): string {
  const text = Math.abs(value).toFixed(digits);
  return value < 0 && Number(text) !== 0 ? MINUS + text : text;
}

/** As `fixed`, with a plus sign before what is above zero. */
export function signed(value: number, digits: number): string {
  const text = fixed(value, digits);
  return value > 0 && Number(text) !== 0 ? `+${text}` : text;
}

/** Decimals worth drawing of a quantity of that size: about two to three figures, at most four decimals. */
export function digitsFor(size: number): number {
  const magnitude = Math.abs(size);
  if (magnitude >= 100) return 0;
  if (magnitude >= 1 || magnitude === 0) return 1;
  if (magnitude >= 0.1) return 2;
  return magnitude >= 0.01 ? 3 : 4;
}

/** Seconds without their unit: 0.12, 0.5, 6.0, 12.7, 240. */
export const secondsText = (seconds: number): string =>
  (Math.abs(seconds) < 1 ? numberText : fixed)(seconds, digitsFor(seconds));

/** 'frame 3' or 'frames 3 to 8'. */
export const framesText = (first: number, last: number): string =>
  first === last ? `frame ${first}` : `frames ${first} to ${last}`;

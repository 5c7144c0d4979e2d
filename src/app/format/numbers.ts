/** Numbers as text and back: U+2212 for minus, a decimal point, no digit groups. */

/** U+2212, the minus sign: as wide as a digit, unlike the hyphen. */
export const MINUS = '\u2212';

/** U+00A0, between a number and its unit. */
export const NBSP = '\u00a0';

const formats = new Map<number, Intl.NumberFormat>();

function formatOf(decimals: number): Intl.NumberFormat {
  let format = formats.get(decimals);
  if (!format) {
    format = new Intl.NumberFormat('en', { maximumFractionDigits: decimals, useGrouping: false });
    formats.set(decimals, format);
  }
  return format;
}

/**
 * A number in as few digits as it needs.
 * @param decimals - most digits behind the point
 */
export function numberText(value: number, decimals = 6): string {
  const text = formatOf(decimals).format(value);
  return text === '-0' ? '0' : text.replace('-', MINUS);
}

/** Decimals that leave about three digits in sight: 0.123, 1.23, 12.3, 123. */
export function decimalsFor(value: number): number {
  const size = Math.abs(value);
  if (size >= 100) return 0;
  if (size >= 10) return 1;
  return size >= 1 ? 2 : 3;
}

/** A number in about three digits, for reading at a glance: 12.7, 0.024. */
export const shortNumber = (value: number): string => numberText(value, decimalsFor(value));

/** A number and its unit, joined by a no-break space; degrees of an angle stand close. */
export const withUnit = (text: string, unit: string): string =>
  unit === '' ? text : `${text}${/^°(?!C)/.test(unit) ? '' : NBSP}${unit}`;

/** `1 frame`, `2 frames`. */
export const plural = (count: number, one: string, many = `${one}s`): string =>
  `${count}${NBSP}${count === 1 ? one : many}`;

const PLAIN = /^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/;

/**
 * Reads a number as people type it: `2.5`, `2,5`, `−3`, `1/15`, `12 500`.
 * @returns the number, or null if the text is none
 */
export function readNumber(text: string): number | null {
  const clean = text.replace(/[\u2212\u2013]/g, '-').replace(/\s/g, '');
  const fraction = /^([+-]?[^/]+)\/([^/]+)$/.exec(clean);
  if (fraction) {
    const top = readNumber(fraction[1] ?? '');
    const bottom = readNumber(fraction[2] ?? '');
    return top === null || bottom === null || bottom === 0 ? null : top / bottom;
  }
  return PLAIN.test(clean) ? Number(clean.replace(',', '.')) : null;
}

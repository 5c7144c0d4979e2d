/**
 * RS-274 text: numbers, words, dwells, comments.
 *
 * Source: NIST RS274/NGC Interpreter, version 3 (NISTIR 6556): 3.3 lines, 3.3.2.1 numbers, 3.3.4 comments, 3.5.4 dwell.
 */
import { wrapped } from '../paragraphs.ts';

/** Lines end as on the oldest terminal that may read them. The standard takes either or both. */
export const LINE_END = '\r\n';

/** Widest comment: far within the 256 characters of a line, and readable on a small screen. */
const COMMENT_WIDTH = 96;

/** A plain decimal without zeros at its end. */
export function decimal(value: number, places: number): string {
  const fixed = value.toFixed(places);
  const trimmed = places > 0 ? fixed.replace(/\.?0+$/, '') : fixed;
  return trimmed === '-0' ? '0' : trimmed;
}

/** A positive number to so many significant digits, rounded down: a feed must not pass its limit. */
export function roundedDown(value: number, digits: number): string {
  const places = Math.min(20, Math.max(0, digits - Math.ceil(Math.log10(value))));
  const scale = 10 ** places;
  return decimal(Math.floor(value * scale * (1 + 1e-13)) / scale, places);
}

/** Decimals that place an axis to a twentieth of a microstep, and better. */
export const placesFor = (stepsPerWord: number): number =>
  Math.min(20, Math.max(0, Math.ceil(Math.log10(stepsPerWord * 10))));

/** Lines that keep the axes where they are; none for no time. */
export const dwell = (seconds: number): string =>
  seconds >= 1e-6 ? `G4 P${decimal(seconds, 6)}${LINE_END}` : '';

/** ASCII of any text: accents fall off, what is left over becomes a question mark. */
export const ascii = (text: string): string =>
  text
    .normalize('NFKD')
    .replace(/\p{Mark}/gu, '')
    .replace(/[\u2010-\u2015\u2212]/g, '-')
    .replace(/[\u2018\u2019\u201C\u201D]/g, "'")
    .replaceAll('\u00D7', 'x')
    .replace(/[^\x20-\x7E]/gu, '?');

/**
 * A comment, on as many lines as it takes. Parentheses would end it, or nest; a word of the plan at the beginning of a
 * line could be one that a controller acts upon, as on `MSG,` (3.3.4).
 */
export const comment = (text: string): string =>
  wrapped(ascii(text.replace(/\s+/g, ' ')).replaceAll('(', '[').replaceAll(')', ']'), COMMENT_WIDTH)
    .map((line, i) => `(${i === 0 ? '' : '.. '}${line})${LINE_END}`)
    .join('');

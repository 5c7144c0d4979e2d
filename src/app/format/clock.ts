/** Local clock and calendar out of ISO text with an offset, on the 24-hour clock. */
import { MINUS, NBSP } from './numbers.ts';

/** `20:31:10` of `2026-08-08T20:31:10+02:00`. */
export const clockOf = (iso: string): string => iso.slice(11, 19);

const dateFormat = new Intl.DateTimeFormat('en-GB', {
  weekday: 'short',
  day: 'numeric',
  month: 'short',
  year: 'numeric',
  timeZone: 'UTC',
});

/** `Sat 8 Aug 2026` of `2026-08-08T…`: the local date that stands in the text. */
export const dateOf = (iso: string): string =>
  dateFormat
    .format(Date.parse(`${iso.slice(0, 10)}T00:00:00Z`))
    .replace(',', '')
    .replaceAll(' ', NBSP);

/** Local days from the date of one moment to that of another. */
export const daysBetween = (fromIso: string, toIso: string): number =>
  Math.round((Date.parse(toIso.slice(0, 10)) - Date.parse(fromIso.slice(0, 10))) / 86_400_000);

const two = (value: number) => String(value).padStart(2, '0');

/** An offset from UTC in minutes as `+05:45`. */
export function offsetText(minutes: number): string {
  const size = Math.abs(minutes);
  return `${minutes < 0 ? MINUS : '+'}${two(Math.floor(size / 60))}:${two(Math.round(size % 60))}`;
}

/**
 * Reads a clock time: `20:31`, `20:31:10`, `8:05`, `2031`.
 * @returns the time as a plan writes it, or null
 */
export function readClock(text: string): string | null {
  const match = /^(\d{1,2})[:.h]?([0-5]\d)(?:[:.]([0-5]\d))?$/.exec(text.trim());
  if (!match || Number(match[1]) > 23) return null;
  return `${two(Number(match[1]))}:${match[2]}:${match[3] ?? '00'}`;
}

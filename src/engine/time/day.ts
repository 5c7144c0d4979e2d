/** Local calendar days: their first and last instant, whatever the clocks do. */
import type { OffsetSpan } from '../schedule-types.ts';
import { offsetSpans } from './clock.ts';

const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;

/** Minutes since midnight of a clock time such as `09:30`. */
export const clockMinutes = (clock: string): number =>
  Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3, 5));

/** A local calendar day: from its first instant up to, and not including, that of the next. */
export interface LocalDay {
  date: string;
  startMs: number;
  endMs: number;
}

/**
 * First instant at which the local clock shows a time, or a later one.
 *
 * A time that comes twice counts the first time; what the clocks skip is passed over.
 * @param localMs - date and time as if they were UTC, milliseconds of the epoch
 * @param offsets - of the zone, from a day before to a day after
 */
function firstInstant(localMs: number, offsets: readonly OffsetSpan[]): number {
  for (const [index, { fromMs, offsetMin }] of offsets.entries()) {
    const endMs = offsets[index + 1]?.fromMs ?? Number.POSITIVE_INFINITY;
    const ms = Math.max(fromMs, localMs - offsetMin * MINUTE_MS);
    if (ms < endMs) return ms;
  }
  throw new RangeError(`date: found ${localMs}, allowed: a day of the calendar`);
}

/**
 * The instant at which the local clock shows a time; where the clock skips it, the one that it would have been.
 * @param localMs - date and time as if they were UTC, milliseconds of the epoch
 * @param offsets - of the zone, from a day before to a day after
 * @param whenRepeated - which of two is meant
 */
export function instantOf(
  localMs: number,
  offsets: readonly OffsetSpan[],
  whenRepeated: 'first' | 'second',
): number {
  let skippedMs = localMs - (offsets[0]?.offsetMin ?? 0) * MINUTE_MS;
  const shown = offsets.flatMap(({ fromMs, offsetMin }, index) => {
    const ms = localMs - offsetMin * MINUTE_MS;
    const endMs = offsets[index + 1]?.fromMs ?? Number.POSITIVE_INFINITY;
    // The offset before a gap is the last that puts the time after its own end.
    if (ms >= endMs) skippedMs = ms;
    return (index === 0 || ms >= fromMs) && ms < endMs ? [ms] : [];
  });
  return (whenRepeated === 'second' ? shown.at(-1) : shown[0]) ?? skippedMs;
}

const midnight = (date: string): number => Date.parse(`${date}T00:00:00Z`);

/** The date so many days later. */
export const nextDate = (date: string, days = 1): string =>
  new Date(midnight(date) + days * DAY_MS).toISOString().slice(0, 10);

/**
 * Local calendar days, one after another.
 * @param date - the first, `yyyy-mm-dd`
 * @param zone - IANA name
 * @param overrideMin - an offset from UTC in minutes that replaces the zone's, or null
 * @returns each of 23 to 25 hours as a rule; of none where the calendar skips it
 */
export function localDays(
  date: string,
  count: number,
  zone: string,
  overrideMin: number | null = null,
): LocalDay[] {
  const firstMs = midnight(date);
  const offsets = offsetSpans(zone, firstMs - 2 * DAY_MS, firstMs + (count + 2) * DAY_MS, overrideMin);
  const starts = Array.from({ length: count + 1 }, (_, i) => firstInstant(firstMs + i * DAY_MS, offsets));
  return Array.from({ length: count }, (_, i) => ({
    date: nextDate(date, i),
    startMs: starts[i] as number,
    endMs: starts[i + 1] as number,
  }));
}

/** One local calendar day. See {@link localDays}. */
export const localDay = (date: string, zone: string, overrideMin: number | null = null): LocalDay =>
  localDays(date, 1, zone, overrideMin)[0] as LocalDay;

/** The local calendar day that an instant falls on. */
export function dayAt(ms: number, zone: string, overrideMin: number | null = null): LocalDay {
  const [span] = offsetSpans(zone, ms, ms, overrideMin);
  const local = new Date(ms + (span?.offsetMin ?? 0) * MINUTE_MS).toISOString();
  return localDay(local.slice(0, 10), zone, overrideMin);
}

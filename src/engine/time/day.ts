/** Local calendar days: their first and last instant, whatever the clocks do. */
import { DateTime } from 'luxon';
import { offsetSpans } from './clock.ts';

const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;

/** A local calendar day: from its first instant up to, and not including, that of the next. */
export interface LocalDay {
  date: string;
  startMs: number;
  endMs: number;
}

/**
 * First instant at which the local clock shows a date.
 *
 * Midnight may come twice (the first counts), or be skipped together with more of the day.
 * @param date - `yyyy-mm-dd`
 * @param overrideMin - an offset that replaces the zone's, or null
 */
function firstInstant(date: string, zone: string, overrideMin: number | null): number {
  const midnight = Date.parse(`${date}T00:00:00Z`);
  const spans = offsetSpans(zone, midnight - 2 * DAY_MS, midnight + 2 * DAY_MS, overrideMin);
  for (const [index, { fromMs, offsetMin }] of spans.entries()) {
    const endMs = spans[index + 1]?.fromMs ?? Number.POSITIVE_INFINITY;
    const ms = Math.max(fromMs, midnight - offsetMin * MINUTE_MS);
    if (ms < endMs) return ms;
  }
  throw new RangeError(`date: found ${date}, allowed: a day of the calendar`);
}

/** The day after, as a date. */
export const nextDate = (date: string, days = 1): string =>
  DateTime.fromISO(date, { zone: 'utc' }).plus({ days }).toISODate() ?? date;

/**
 * A local calendar day.
 * @param date - `yyyy-mm-dd`
 * @param zone - IANA name
 * @param overrideMin - an offset from UTC in minutes that replaces the zone's, or null
 * @returns 23 to 25 hours as a rule; none at all where the calendar skips the day
 */
export const localDay = (date: string, zone: string, overrideMin: number | null = null): LocalDay => ({
  date,
  startMs: firstInstant(date, zone, overrideMin),
  endMs: firstInstant(nextDate(date), zone, overrideMin),
});

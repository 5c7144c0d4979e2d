/** The lines of the carpet: the days of a year on the local clock of the place. */
import type { Plan } from '../../engine/plan/schema.ts';
import type { OffsetSpan } from '../../engine/schedule-types.ts';
import type { Span } from '../../engine/sky/spans.ts';
import { offsetInSpans, offsetSpans } from '../../engine/time/clock.ts';
import { type LocalDay, localDays } from '../../engine/time/day.ts';

const DAY_MS = 86_400_000;
const HOUR_MS = 3_600_000;
const MINUTE_MS = 60_000;

/** The clock jumps on a day of the year. */
export interface ClockChange {
  /** Place of the day in the year, from 0. */
  day: number;
  /** Minutes that the clock goes forward; negative is back. */
  byMin: number;
}

/** A year at a place. */
export interface Calendar {
  year: number;
  days: readonly LocalDay[];
  /** Offsets from UTC from a day before the year to a day after. */
  offsets: readonly OffsetSpan[];
  changes: readonly ClockChange[];
}

/** Days of a year by the calendar. */
export const daysIn = (year: number): number => (Date.UTC(year + 1, 0) - Date.UTC(year, 0)) / DAY_MS;

/** Place of the first day of each month in the year, from 0, and of the day after the last. */
export const monthStarts = (year: number): number[] =>
  Array.from({ length: 13 }, (_, month) => (Date.UTC(year, month) - Date.UTC(year, 0)) / DAY_MS);

/** Place of a date in its year, from 0. */
export const dayOf = (date: string): number =>
  (Date.parse(`${date}T00:00Z`) - Date.UTC(Number(date.slice(0, 4)), 0)) / DAY_MS;

/** The same day of another year; 28 February where that has no 29th. */
export function inYear(date: string, year: number): string {
  const day = date.endsWith('-02-29') && daysIn(year) === 365 ? '-02-28' : date.slice(4);
  return `${String(year).padStart(4, '0')}${day}`;
}

/** The calendar of a year in a plan's zone. */
export function calendarOf({ zone, utcOffsetMin }: Plan['place'], year: number): Calendar {
  const days = localDays(`${year}-01-01`, daysIn(year), zone, utcOffsetMin);
  const [fromMs, toMs] = [days[0]?.startMs ?? 0, days.at(-1)?.endMs ?? 0];
  const offsets = offsetSpans(zone, fromMs - DAY_MS, toMs + DAY_MS, utcOffsetMin);
  const changes = offsets.slice(1).flatMap(({ fromMs: atMs, offsetMin }, i) => {
    const day = days.findIndex(({ startMs, endMs }) => atMs >= startMs && atMs < endMs);
    return day < 0 ? [] : [{ day, byMin: offsetMin - (offsets[i] as OffsetSpan).offsetMin }];
  });
  return { year, days, offsets, changes };
}

export { isSkipped } from '../../engine/sky/aim.ts';

/** A stretch on the clock of a day, in hours from 0 to 24. */
export interface Stretch {
  fromH: number;
  toH: number;
}

/**
 * Where a span lies on the clock of a day. A clock that is put forward leaves a gap; one that is put back shows an
 * hour twice, and two stretches overlap.
 */
export function stretchesOf(span: Span, day: LocalDay, offsets: readonly OffsetSpan[]): Stretch[] {
  const fromMs = Math.max(span.fromMs, day.startMs);
  const toMs = Math.min(span.toMs, day.endMs);
  if (toMs <= fromMs) return [];
  const midnight = Date.parse(`${day.date}T00:00Z`);
  const jumps = offsets.map((offset) => offset.fromMs).filter((ms) => ms > fromMs && ms < toMs);
  const ends = [fromMs, ...jumps, toMs];
  return ends.slice(1).flatMap((endMs, i) => {
    const beginMs = ends[i] as number;
    const shiftMs = offsetInSpans(beginMs, offsets) * MINUTE_MS - midnight;
    const [fromH, toH] = [beginMs, endMs].map((ms) => within((ms + shiftMs) / HOUR_MS)) as [number, number];
    return toH > fromH ? [{ fromH, toH }] : [];
  });
}

const within = (hours: number): number => Math.max(0, Math.min(24, hours));

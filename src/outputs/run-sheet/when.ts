/** Local dates and clocks as they stand on a run sheet. */

import type { Plan } from '../../engine/plan/schema.ts';
import type { OffsetSpan, Schedule } from '../../engine/schedule-types.ts';
import { isoAt, offsetSpans } from '../../engine/time/clock.ts';

const MINUTE_MS = 60_000;

const dayName = new Intl.DateTimeFormat('en-GB', {
  weekday: 'short',
  day: 'numeric',
  month: 'short',
  year: 'numeric',
  timeZone: 'UTC',
});

/** `Sat 8 Aug 2026` of `2026-08-08`. */
export const dateWords = (date: string): string =>
  dayName.format(Date.parse(`${date}T00:00:00Z`)).replace(',', '');

/** Texts of instants, over as long as a plan's day lasts. */
export interface When {
  /** `2026-08-08`. */
  date: (ms: number) => string;
  /** `20:31:10`. */
  second: (ms: number) => string;
  /** `20:31`, the minute below. */
  minute: (ms: number) => string;
}

/** The local clock of a plan between two instants. */
export function whenOf({ place }: Plan, fromMs: number, toMs: number): When {
  const spans: readonly OffsetSpan[] = offsetSpans(place.zone, fromMs, toMs, place.utcOffsetMin);
  const iso = (ms: number) => isoAt(Math.round(ms / 1000) * 1000, spans);
  return {
    date: (ms) => iso(ms).slice(0, 10),
    second: (ms) => iso(ms).slice(11, 19),
    minute: (ms) => iso(Math.floor(ms / MINUTE_MS) * MINUTE_MS).slice(11, 16),
  };
}

/**
 * The date of each line where it is another than that of the line before, else null.
 * @param always - also if all lines are of one day
 */
export function newDates(lines: readonly { date: string }[], always: boolean): (string | null)[] {
  const several = always || lines.some(({ date }) => date !== lines[0]?.date);
  return lines.map(({ date }, i) => (several && date !== lines[i - 1]?.date ? date : null));
}

/** Opening of a frame counted from 1, milliseconds of the epoch. */
export const opensMs = ({ startMs, columns }: Schedule, frame: number): number =>
  startMs + (columns.elapsedS[frame - 1] ?? 0) * 1000;

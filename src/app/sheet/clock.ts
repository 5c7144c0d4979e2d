/** Local clock of the sheet's instants. */
import type { Plan } from '../../engine/plan/schema.ts';
import type { OffsetSpan } from '../../engine/schedule-types.ts';
import type { Sheet } from '../../engine/sheet/types.ts';
import { isoAt, offsetSpans } from '../../engine/time/clock.ts';
import { dateOf } from '../format/clock.ts';

const known = new WeakMap<Sheet, OffsetSpan[]>();

/** Offsets from UTC over all of the work. */
export function spansOf({ place }: Plan, sheet: Sheet): OffsetSpan[] {
  const found = known.get(sheet);
  if (found) return found;
  const { days, totals } = sheet;
  const fromMs = days[0]?.fromMs ?? totals.finishMs;
  const toMs = Math.max(fromMs, totals.finishMs, totals.finishAtPaceMs, days.at(-1)?.toMs ?? fromMs);
  const spans = offsetSpans(place.zone, fromMs, toMs, place.utcOffsetMin);
  known.set(sheet, spans);
  return spans;
}

const MINUTE_MS = 60_000;

/** To the minute that has begun: `14:05`. */
export const clockText = (ms: number, spans: readonly OffsetSpan[]): string =>
  Number.isFinite(ms) ? isoAt(Math.floor(ms / MINUTE_MS) * MINUTE_MS, spans).slice(11, 16) : '';

/** `Mon 30 Nov`, with the year where it is not that of another instant. */
export function dayText(ms: number, spans: readonly OffsetSpan[], besideMs = ms): string {
  const iso = isoAt(ms, spans);
  const sameYear = isoAt(besideMs, spans).slice(0, 4) === iso.slice(0, 4);
  return sameYear ? dateOf(iso).slice(0, -5) : dateOf(iso);
}

/** Clock, with the day where it is not that of another instant. */
export const momentText = (ms: number, spans: readonly OffsetSpan[], besideMs: number): string => {
  const day = dayText(ms, spans, besideMs);
  return day === dayText(besideMs, spans) ? clockText(ms, spans) : `${day}, ${clockText(ms, spans)}`;
};

/**
 * The local clock of a place: its moment of start, its offsets from UTC over a run, and ISO text.
 *
 * Zone data come from the machine (luxon over Intl) and can be out of date; a plan may override the offset.
 */
import { IANAZone } from 'luxon';
import type { Plan } from '../plan/schema.ts';
import type { OffsetSpan } from '../schedule-types.ts';

/** When a run starts. */
export interface Start {
  /** Milliseconds of the epoch. */
  startMs: number;
  offsetMin: number;
  /**
   * `repeated`: the clock shows this time twice that day, and the plan says which is meant.
   * `skipped`: the clock never shows it; the start has slid forward by as much as the clock does.
   */
  kind: 'plain' | 'repeated' | 'skipped';
}

const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;

/** Offset of the zone at an instant, minutes east of UTC. */
const offsetAt = (zone: IANAZone, ms: number): number => zone.offset(ms);

/**
 * The moment that the plan's local date and time name.
 *
 * Each offset of the days around is tried, so that an hour that comes twice is found twice; a time that the clock
 * skips goes by the offset before the gap (as in RFC 5545, section 3.3.5).
 */
export function startOf(plan: Plan): Start {
  const { date, time, whenRepeated } = plan.start;
  const localMs = Date.parse(`${date}T${time.length === 5 ? `${time}:00` : time}Z`);
  const { zone: name, utcOffsetMin } = plan.place;
  if (utcOffsetMin !== null) {
    return { startMs: localMs - utcOffsetMin * MINUTE_MS, offsetMin: utcOffsetMin, kind: 'plain' };
  }
  // No zone is more than a day from UTC: these are all offsets that can be meant.
  const spans = offsetSpans(name, localMs - DAY_MS, localMs + DAY_MS, null);
  const matches = [...new Set(spans.map(({ offsetMin }) => localMs - offsetMin * MINUTE_MS))]
    .filter((ms) => ms + offsetInSpans(ms, spans) * MINUTE_MS === localMs)
    .sort((a, b) => a - b);
  const first = matches[0];
  if (first === undefined) return skippedStart(IANAZone.create(name), localMs);
  const startMs = whenRepeated === 'second' ? (matches.at(-1) ?? first) : first;
  return {
    startMs,
    offsetMin: offsetInSpans(startMs, spans),
    kind: matches.length > 1 ? 'repeated' : 'plain',
  };
}

/** A local time within a gap, taken with the offset from before the gap. */
function skippedStart(zone: IANAZone, localMs: number): Start {
  // No zone is more than a day from UTC: a day before is safely before the gap, whatever the offset.
  const before = offsetAt(zone, localMs - 26 * 60 * MINUTE_MS);
  const startMs = localMs - before * MINUTE_MS;
  return { startMs, offsetMin: offsetAt(zone, startMs), kind: 'skipped' };
}

/** Offset at the beginning of a week counted from 1970, and the change within it, if there is one. */
interface Week {
  offsetMin: number;
  change: OffsetSpan | null;
}

// Clock changes of one zone lie weeks apart (the closest pair known is that around Ramadan in Morocco).
const WEEK_MS = 7 * DAY_MS;
// Asking a zone for its offset is slow, and a plan asks for the same weeks again and again.
const MOST_WEEKS = 4000;
const weeks = new Map<string, Week>();

function weekOf(zoneName: string, week: number): Week {
  const key = `${zoneName} ${week}`;
  const known = weeks.get(key);
  if (known) return known;
  const zone = IANAZone.create(zoneName);
  const [fromMs, toMs] = [week * WEEK_MS, (week + 1) * WEEK_MS];
  const offsetMin = offsetAt(zone, fromMs);
  const changes = offsetAt(zone, toMs) !== offsetMin;
  const atMs = changes ? changeBetween(zone, fromMs, toMs, offsetMin) : toMs;
  const found = { offsetMin, change: changes ? { fromMs: atMs, offsetMin: offsetAt(zone, atMs) } : null };
  if (weeks.size >= MOST_WEEKS) weeks.clear();
  weeks.set(key, found);
  return found;
}

/**
 * Offsets from UTC between two instants, each with the instant from which it holds.
 * @param fromMs - first instant; the first span begins there
 * @param toMs - last instant
 * @param overrideMin - an offset that replaces the zone's, or null
 */
export function offsetSpans(
  zoneName: string,
  fromMs: number,
  toMs: number,
  overrideMin: number | null,
): OffsetSpan[] {
  if (overrideMin !== null) return [{ fromMs, offsetMin: overrideMin }];
  const firstWeek = Math.floor(fromMs / WEEK_MS);
  const spans = [{ fromMs, offsetMin: weekOf(zoneName, firstWeek).offsetMin }];
  for (let week = firstWeek; week * WEEK_MS <= toMs; week += 1) {
    const { change } = weekOf(zoneName, week);
    if (change === null || change.fromMs > toMs) continue;
    if (change.fromMs <= fromMs) spans[0] = { fromMs, offsetMin: change.offsetMin };
    else spans.push(change);
  }
  return spans;
}

/** First whole millisecond after `lowMs` at which the offset is no longer `offsetMin`. */
function changeBetween(zone: IANAZone, lowMs: number, highMs: number, offsetMin: number): number {
  let low = lowMs;
  let high = highMs;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (offsetAt(zone, middle) === offsetMin) low = middle;
    else high = middle;
  }
  return high;
}

const TWO_DIGITS = Array.from({ length: 100 }, (_, value) => String(value).padStart(2, '0'));

/** A whole number below 100 in two digits. */
const two = (value: number): string => TWO_DIGITS[value] as string;

/** An offset as it is written after a clock time: `+02:00`. */
export function offsetText(offsetMin: number): string {
  const minutes = Math.abs(Math.round(offsetMin));
  return `${offsetMin < 0 ? '-' : '+'}${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}

/** Offset from UTC in force at an instant, minutes. Instants before the first span take the first. */
export function offsetInSpans(ms: number, spans: readonly OffsetSpan[]): number {
  let offsetMin = spans[0]?.offsetMin ?? 0;
  for (const span of spans) if (ms >= span.fromMs) offsetMin = span.offsetMin;
  return offsetMin;
}

/**
 * An instant as ISO 8601 with its local offset: `2026-08-08T20:31:10+02:00`, milliseconds only if there are any.
 * @param ms - milliseconds of the epoch, rounded to whole ones
 */
export function isoAt(ms: number, spans: readonly OffsetSpan[]): string {
  const whole = Math.round(ms);
  const offsetMin = Math.round(offsetInSpans(whole, spans));
  const localMs = whole + offsetMin * MINUTE_MS;
  const day = Math.floor(localMs / DAY_MS);
  return `${dayText(day)}${clockText(localMs - day * DAY_MS)}${zoneText(offsetMin)}`;
}

/** An instant as ISO 8601 with the offset of a place at that instant. */
export const isoIn = (
  ms: number,
  { zone, utcOffsetMin }: Pick<Plan['place'], 'zone' | 'utcOffsetMin'>,
): string => isoAt(ms, offsetSpans(zone, ms, ms, utcOffsetMin));

// A run asks for the same day and the same offset again and again.
const MIDNIGHT = '00:00:00.000Z';
let lastDay = { day: 0, text: '1970-01-01T' };
let lastZone = { offsetMin: 0, text: '+00:00' };

/** Date of a day counted from 1970, up to the clock. */
function dayText(day: number): string {
  if (lastDay.day !== day) {
    lastDay = { day, text: new Date(day * DAY_MS).toISOString().slice(0, -MIDNIGHT.length) };
  }
  return lastDay.text;
}

function zoneText(offsetMin: number): string {
  if (lastZone.offsetMin !== offsetMin) lastZone = { offsetMin, text: offsetText(offsetMin) };
  return lastZone.text;
}

function clockText(ms: number): string {
  const s = Math.floor(ms / 1000);
  const rest = ms % 1000;
  const text = `${two(Math.floor(s / 3600))}:${two(Math.floor(s / 60) % 60)}:${two(s % 60)}`;
  return rest === 0 ? text : `${text}.${String(rest).padStart(3, '0')}`;
}

/** The clock part of {@link isoAt}, to the second below: `20:31:10`. */
export const clockAt = (ms: number, spans: readonly OffsetSpan[]): string => isoAt(ms, spans).slice(11, 19);

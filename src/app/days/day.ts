/** One day of the year: when the run would start on it, and how the plan goes there. */

import type { Edit } from '../../engine/plan/paths.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import type { OffsetSpan } from '../../engine/schedule-types.ts';
import type { Span } from '../../engine/sky/spans.ts';
import { skyStart } from '../../engine/sky/start.ts';
import { type BestStart, bestStart } from '../../engine/sky/windows.ts';
import type { DayOfYear } from '../../engine/sky/year.ts';
import { clockAt, isoAt, offsetInSpans, startOf } from '../../engine/time/clock.ts';
import { instantOf } from '../../engine/time/day.ts';
import { isSkipped } from './calendar.ts';
import { haveText, lengthS, needText } from './words.ts';

const MINUTE_MS = 60_000;

/** The first shutter opening if the plan's date were another, milliseconds of the epoch. */
export function startOn(plan: Plan, date: string): number {
  const there = { ...plan, start: { ...plan.start, date } };
  const bySky = plan.start.tiedTo === 'sky' ? skyStart(there) : null;
  return bySky && 'ms' in bySky ? Math.round(bySky.ms / 1000) * 1000 : startOf(there).startMs;
}

/** Starts that are easy to say come first: whole five minutes, minutes, seconds. */
const HANDY_MS = [5 * MINUTE_MS, MINUTE_MS, 1000] as const;

/** A start near the best that is easy to say, still early and late enough. */
export function handyStart(
  { startMs, earliestMs, latestMs }: BestStart,
  offsets: readonly OffsetSpan[],
): number {
  const shiftMs = offsetInSpans(startMs, offsets) * MINUTE_MS;
  const rounded = HANDY_MS.map((step) => Math.round((startMs + shiftMs) / step) * step - shiftMs);
  return rounded.find((ms) => ms >= earliestMs && ms <= latestMs) ?? Math.floor(startMs / 1000) * 1000;
}

/**
 * Minutes from its event that a start tied to the sky would have to keep to fit on a day.
 * @param startMs - the start as planned
 * @returns whole minutes, those that change least; null if none fits
 */
export function betterOffsetMin(
  offsetMin: number,
  startMs: number,
  { earliestMs, latestMs }: BestStart,
): number | null {
  const least = offsetMin + (earliestMs - startMs) / MINUTE_MS;
  const most = offsetMin + (latestMs - startMs) / MINUTE_MS;
  const nearest = startMs < earliestMs ? Math.ceil(least) : Math.floor(most);
  return nearest >= least && nearest <= most && Math.abs(nearest) <= 1440 ? nearest : null;
}

/** The edits that put the plan on a day; the start stays tied to what it is tied to. */
export const dayEdits = (date: string): Edit[] => [['start.date', date]];

/** The edits that let the run start at an instant. */
export function startEdits(ms: number, offsets: readonly OffsetSpan[]): Edit[] {
  const iso = isoAt(ms, offsets);
  const localMs = Date.parse(`${iso.slice(0, 19)}Z`);
  const whenRepeated = instantOf(localMs, offsets, 'first') === ms ? 'first' : 'second';
  return [
    ['start.date', iso.slice(0, 10)],
    ['start.time', iso.slice(11, 19)],
    ['start.whenRepeated', whenRepeated],
  ];
}

/** Whether a start is one that fits. */
export const isWithin = (startMs: number, { earliestMs, latestMs }: BestStart): boolean =>
  startMs >= earliestMs && startMs <= latestMs;

/** How far a start is from those that fit, milliseconds; 0 if it fits. */
const distanceMs = (startMs: number, { earliestMs, latestMs }: BestStart): number =>
  Math.max(0, earliestMs - startMs, startMs - latestMs);

/**
 * The window that the plan's start aims at: one that is tied to the sky keeps to its part of the day, one by the
 * clock goes to where there is most to spare.
 * @param startMs - the start as planned on that day
 * @returns null if no window of the day holds the run
 */
export function aimOf(plan: Plan, day: DayOfYear, runS: number, startMs: number): BestStart | null {
  if (isSkipped(day)) return null;
  if (plan.start.tiedTo === 'clock' || day.best === null) return day.best;
  const [first, ...others] = day.windows.flatMap((span) => bestStart([span], runS, startMs) ?? []);
  if (!first) return day.best;
  return others.reduce(
    (near, one) => (distanceMs(startMs, one) < distanceMs(startMs, near) ? one : near),
    first,
  );
}

/**
 * What a window comes to for the run.
 * @param whole - the window with what lies on the days before and after
 * @param aim - the starts in it that fit; null if it does not hold the run
 */
export function lightText(
  whole: Span,
  day: DayOfYear,
  aim: BestStart | null,
  runS: number,
  offsets: readonly OffsetSpan[],
): string {
  const light = `${haveText(lengthS(whole))} of light, ${needText(runS)} needed.`;
  if (!aim) return light;
  const earliest = clockAt(Math.ceil(aim.earliestMs / 1000) * 1000, offsets);
  const latest = aim.latestMs >= day.endMs ? 'midnight' : clockAt(aim.latestMs, offsets);
  return `${light} Start between ${earliest} and ${latest}.`;
}

/** `starts at 20:31:10, 26 s before the latest`, `would start at 20:40:00, 9 min too late`. */
export function plannedText(startMs: number, aim: BestStart, offsets: readonly OffsetSpan[]): string {
  const at = clockAt(startMs, offsets);
  if (isWithin(startMs, aim)) {
    const leftS = (aim.latestMs - startMs) / 1000;
    return `starts at ${at}, ${leftS < 1 ? 'at the latest' : `${haveText(leftS)} before the latest`}`;
  }
  return `would start at ${at}, ${missText(startMs, aim)}`;
}

/** `9 min too late`. */
export const missText = (startMs: number, aim: BestStart): string =>
  `${needText(distanceMs(startMs, aim) / 1000)} too ${startMs < aim.earliestMs ? 'early' : 'late'}`;

/** Which part of the day a window belongs to, by solar noon. */
export function windowName({ fromMs, toMs }: Span, day: DayOfYear): string {
  const noonMs = day.events.find(({ name }) => name === 'solarNoon')?.ms;
  if (noonMs === null || noonMs === undefined) return 'Window';
  if (toMs <= noonMs) return 'Morning window';
  return fromMs >= noonMs ? 'Evening window' : 'Midday window';
}

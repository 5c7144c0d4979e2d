/**
 * The days of a year: light, windows, and whether the run fits.
 *
 * A start belongs to the day it falls on; a window that goes on past midnight is followed as far as the run needs.
 */
import type { Plan } from '../plan/schema.ts';
import type { OffsetSpan } from '../schedule-types.ts';
import { offsetSpans } from '../time/clock.ts';
import { instantOf, type LocalDay, localDay, localDays } from '../time/day.ts';
import { type BandSpan, bandsOn } from './bands.ts';
import { type SkyEvent, sunEventsOn } from './day.ts';
import { MOON_EVENTS, SUN_EVENTS, type SunEventName } from './names.ts';
import { moonLitShare } from './position.ts';
import { type Span, spanOf } from './spans.ts';
import { skyStart, startAt } from './start.ts';
import { type BestStart, bestStart, type Site, sceneOf, siteOf, sunWindow, withMoon } from './windows.ts';

/** Whether the run fits into a window of a day, or why not. */
export type DayVerdict =
  | 'fits'
  /** Windows that would hold it are cut by a bright moon. */
  | 'moon'
  | 'too short'
  | 'no window';

/** One day of a year. */
export interface DayOfYear extends LocalDay {
  /** The sun's events: those that happen in order of time, then the others. */
  events: SkyEvent<SunEventName>[];
  /** The light from the first to the last instant of the day, without gaps. */
  bands: BandSpan[];
  /** Windows that begin on the day, or go on from the day before; they may end after it. */
  windows: Span[];
  /** The longest of them. */
  longest: Span | null;
  verdict: DayVerdict;
  /** Best start on this day; null if the run does not fit. */
  best: BestStart | null;
  /** Lit share of the moon's disk in the middle of the day, 0 to 1. */
  moonLitShare: number;
}

const DAY_MS = 86_400_000;
/** What holds for longer than a year of sun and moon holds always. */
const LONGEST_MS = 400 * DAY_MS;

/** The start as planned, were the plan's date another. */
function plannedMs(
  plan: Plan,
  { date }: LocalDay,
  events: readonly SkyEvent[],
  offsets: readonly OffsetSpan[],
) {
  const { tiedTo, event, time, whenRepeated, offsetMin } = plan.start;
  if (tiedTo === 'clock') return instantOf(Date.parse(`${date}T${time}Z`), offsets, whenRepeated);
  const start = MOON_EVENTS.some((name) => name === event)
    ? skyStart({ ...plan, start: { ...plan.start, date } })
    : startAt(events, event, whenRepeated, offsetMin);
  return 'ms' in start ? start.ms : null;
}

/** The parts of spans in which a run could start on a day and go on. */
const fromDay = (spans: readonly Span[], { startMs, endMs }: LocalDay, runMs: number): Span[] =>
  spans
    .filter((span) => span.fromMs < endMs && span.toMs > startMs)
    .flatMap((span) => spanOf(Math.max(span.fromMs, startMs), Math.min(span.toMs, endMs + runMs)));

const longestOf = (spans: readonly Span[]): Span | null =>
  spans.reduce<Span | null>(
    (best, span) => (best !== null && best.toMs - best.fromMs >= span.toMs - span.fromMs ? best : span),
    null,
  );

function* daysAt(plan: Plan, site: Site, days: readonly LocalDay[], runS: number): Generator<DayOfYear> {
  const runMs = Math.min(runS * 1000, LONGEST_MS);
  const whole = { fromMs: days[0]?.startMs ?? 0, toMs: (days.at(-1)?.endMs ?? 0) + runMs };
  const scene = sceneOf(plan, site, whole);
  const sunlit = sunWindow(scene);
  const spans = withMoon(scene, sunlit);
  const { zone, utcOffsetMin } = plan.place;
  const offsets = offsetSpans(zone, whole.fromMs - DAY_MS, whole.toMs + DAY_MS, utcOffsetMin);
  for (const day of days) {
    const events = sunEventsOn(scene.sun, day, SUN_EVENTS);
    // Nothing happens on a day that the calendar skips.
    const onDay = (all: readonly Span[]) => (day.endMs > day.startMs ? fromDay(all, day, runMs) : []);
    const windows = onDay(spans);
    const best = bestStart(windows, runMs / 1000, plannedMs(plan, day, events, offsets));
    const longest = longestOf(windows);
    const butForMoon = best === null && bestStart(onDay(sunlit), runMs / 1000) !== null;
    yield {
      ...day,
      events,
      bands: bandsOn(scene.sun, day.startMs, day.endMs, plan.sky),
      windows,
      longest,
      verdict: best !== null ? 'fits' : butForMoon ? 'moon' : longest !== null ? 'too short' : 'no window',
      best,
      moonLitShare: moonLitShare((day.startMs + day.endMs) / 2),
    };
  }
}

/**
 * One local day.
 * @param date - `yyyy-mm-dd`
 * @param runS - from the first shutter opening to the last closing
 * @returns null if the plan has no place
 */
export function dayOfYear(plan: Plan, date: string, runS: number): DayOfYear | null {
  const site = siteOf(plan);
  if (site === null) return null;
  const day = localDay(date, plan.place.zone, plan.place.utcOffsetMin);
  return daysAt(plan, site, [day], runS).next().value ?? null;
}

/**
 * All days of a calendar year, one after another, worked out by the month: a caller may show its progress.
 * @returns 365 or 366 days; none if the plan has no place
 */
export function* yearOfDays(plan: Plan, year: number, runS: number): Generator<DayOfYear> {
  const site = siteOf(plan);
  if (site === null) return;
  for (let month = 0; month < 12; month += 1) {
    const first = new Date(Date.UTC(year, month, 1)).toISOString().slice(0, 10);
    const count = new Date(Date.UTC(year, month + 1, 0)).getUTCDate();
    yield* daysAt(plan, site, localDays(first, count, plan.place.zone, plan.place.utcOffsetMin), runS);
  }
}

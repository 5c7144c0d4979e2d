/** What the sky does over a run: windows, light, sun on the set, sun in the picture. */
import type { Plan } from '../plan/schema.ts';
import type { Columns } from '../schedule-types.ts';
import { dayAt, type LocalDay, localDays } from '../time/day.ts';
import { type BandSpan, bandsOn } from './bands.ts';
import { moonEventsOn, type SkyEvent, sunEventsOn } from './day.ts';
import { horizonOf } from './horizon.ts';
import { type MoonEventName, SUN_EVENTS, type SunEventName } from './names.ts';
import { refractionDeg } from './position.ts';
import type { Span } from './spans.ts';
import type { SkyTrack } from './track.ts';
import { cornerDeg, lensOver, SUN_RADIUS_DEG, sunFinder } from './view.ts';
import { type BestStart, bestStart, setHitSpans, windowSpans } from './windows.ts';

/** Frames one after another. */
export interface FrameStretch {
  /** Counted from 1. */
  firstFrame: number;
  lastFrame: number;
}

/** Frames with the sun in the picture. */
export interface SunStretch extends FrameStretch {
  /** Least angle between the lens axis and the middle of the sun, degrees, and its frame. */
  nearestDeg: number;
  nearestFrame: number;
}

/** What the sky does over a run. Of a run longer than {@link LONGEST_DAYS} days, over its beginning. */
export interface SkyRun {
  /** From the first to the last shutter opening. */
  run: Span;
  /** The local days that it touches. */
  days: Span;
  /** Sun and moon within the run, in order of time. */
  events: SkyEvent<SunEventName | MoonEventName>[];
  /** The light within the run, without gaps. */
  bands: BandSpan[];
  /** Windows from the beginning of the first day on; null if none is asked for. */
  windows: Span[] | null;
  /** Best start on the day of the first frame; null if no window holds the run, or none is asked for. */
  best: BestStart | null;
  /** First frame outside the windows, counted from 1, and how many there are; null if there are none. */
  outside: { frame: number; frames: number } | null;
  /** When the sun reaches the set through the pane. */
  setHits: Span[];
  /** Where the sun is in the picture; empty if that is not watched for. */
  inFrame: SunStretch[];
}

/** Days from the first frame that windows, light and the set are followed for. */
export const LONGEST_DAYS = 31;

const DAY_MS = 86_400_000;

/**
 * The sky over a run.
 * @param startMs - first shutter opening
 * @param columns - times, axes, and the sky's own columns filled
 * @param track - sun and moon from the beginning of the first day to the end of the last
 */
export function skyRunOf(
  plan: Plan,
  startMs: number,
  columns: Pick<Columns, 'elapsedS' | 'axes' | 'sky'>,
  track: SkyTrack,
): SkyRun {
  const lastMs = startMs + (columns.elapsedS.at(-1) ?? 0) * 1000;
  const run = { fromMs: startMs, toMs: Math.min(lastMs, startMs + LONGEST_DAYS * DAY_MS) };
  const calendar = daysOf(plan, run);
  const days = { fromMs: calendar[0]?.startMs ?? startMs, toMs: calendar.at(-1)?.endMs ?? lastMs };
  const events = calendar
    .flatMap((day) => eventsOf(track, day))
    .filter(({ ms }) => ms !== null && ms >= run.fromMs && ms <= run.toMs)
    .sort((a, b) => (a.ms ?? 0) - (b.ms ?? 0));
  return {
    run,
    days,
    events,
    bands: bandsOn(track.sun, run.fromMs, run.toMs, plan.sky),
    ...windowsOver(plan, calendar[0] as LocalDay, run, columns.elapsedS, track),
    setHits: setHitSpans(plan, run.fromMs, run.toMs, track),
    inFrame: sunStretches(plan, columns),
  };
}

/** The events of the days of whole tracks: most edits of a plan leave its days as they are. */
const known = new WeakMap<SkyTrack, Map<string, SkyRun['events']>>();

function eventsOf(track: SkyTrack, day: LocalDay): SkyRun['events'] {
  const byDay = known.get(track) ?? new Map<string, SkyRun['events']>();
  known.set(track, byDay);
  const key = `${day.startMs} ${day.endMs}`;
  const found = byDay.get(key);
  if (found) return found;
  const events = [...sunEventsOn(track.sun, day, SUN_EVENTS), ...moonEventsOn(track.moon, day)];
  byDay.set(key, events);
  return events;
}

function daysOf({ place: { zone, utcOffsetMin } }: Plan, { fromMs, toMs }: Span): LocalDay[] {
  const first = dayAt(fromMs, zone, utcOffsetMin);
  const count = Math.ceil((toMs - first.startMs) / DAY_MS) + 2;
  return localDays(first.date, count, zone, utcOffsetMin).filter(
    ({ startMs, endMs }) => startMs <= toMs && endMs > fromMs,
  );
}

function windowsOver(
  plan: Plan,
  day: LocalDay,
  { fromMs, toMs }: Span,
  elapsedS: Float64Array,
  track: SkyTrack,
): Pick<SkyRun, 'windows' | 'best' | 'outside'> {
  if (!plan.window.used) return { windows: null, best: null, outside: null };
  const runMs = toMs - fromMs;
  // A run that starts at the end of the day may still go on as long.
  const windows = windowSpans(plan, day.startMs, Math.max(day.endMs, fromMs) + runMs, track);
  const starts = windows.filter((span) => span.fromMs < day.endMs);
  return {
    windows,
    best: bestStart(starts, runMs / 1000, fromMs),
    outside: framesOutside(windows, fromMs, toMs, elapsedS),
  };
}

function framesOutside(
  windows: readonly Span[],
  startMs: number,
  toMs: number,
  elapsedS: Float64Array,
): SkyRun['outside'] {
  let frame: number | null = null;
  let frames = 0;
  let i = 0;
  for (let k = 0; k < elapsedS.length; k += 1) {
    const ms = startMs + (elapsedS[k] as number) * 1000;
    if (ms > toMs) break;
    while (i < windows.length && (windows[i] as Span).toMs < ms) i += 1;
    if (i < windows.length && (windows[i] as Span).fromMs <= ms) continue;
    frame ??= k + 1;
    frames += 1;
  }
  return frame === null ? null : { frame, frames };
}

/** Frames with the sun over the own horizon and in the picture. */
function sunStretches(
  plan: Plan,
  { elapsedS, axes, sky }: Pick<Columns, 'elapsedS' | 'axes' | 'sky'>,
): SunStretch[] {
  if (!plan.view.used || sky === null) return [];
  const horizon = horizonOf(plan.place.horizon);
  const lowest = Math.min(0, ...plan.place.horizon.map(({ altitudeDeg }) => altitudeDeg)) - 1;
  const lensAt = lensOver(plan, axes);
  const find = sunFinder(plan.camera);
  // Farther up or down from the lens axis than this, no part of the sun is in the picture.
  const farthest = cornerDeg(plan.camera) + SUN_RADIUS_DEG;
  const found: SunStretch[] = [];
  for (let k = 0; k < elapsedS.length; k += 1) {
    const geometricDeg = sky.sunAltitudeDeg[k] as number;
    if (geometricDeg < lowest) continue;
    const lens = lensAt(k);
    const altitudeDeg = geometricDeg + refractionDeg(geometricDeg);
    if (Math.abs(lens.altitudeDeg) <= 90 && Math.abs(altitudeDeg - lens.altitudeDeg) > farthest) continue;
    const azimuthDeg = sky.sunAzimuthDeg[k] as number;
    const { inside, fromAxisDeg } = find(lens, altitudeDeg, azimuthDeg);
    if (inside && altitudeDeg + SUN_RADIUS_DEG > horizon(azimuthDeg)) addFrame(found, k + 1, fromAxisDeg);
  }
  return found;
}

function addFrame(found: SunStretch[], frame: number, fromAxisDeg: number): void {
  const last = found.at(-1);
  if (last?.lastFrame !== frame - 1) {
    found.push({ firstFrame: frame, lastFrame: frame, nearestDeg: fromAxisDeg, nearestFrame: frame });
    return;
  }
  last.lastFrame = frame;
  if (fromAxisDeg < last.nearestDeg) {
    last.nearestDeg = fromAxisDeg;
    last.nearestFrame = frame;
  }
}

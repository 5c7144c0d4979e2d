/**
 * Windows: stretches of time in which everything holds that the plan asks of sun, moon and clock.
 *
 * Each condition that is on gives its spans; the window is what they share. Altitudes of the sun and azimuths are
 * found by root-finding on smooth curves, the dates of the clock from the zone's offsets; the own horizon and the
 * pane, whose edges are not smooth, by looking every minute where it matters, and halving. So a gap in the horizon that
 * the sun passes in less than that, half its own width, may be missed.
 */

import type { Plan } from '../plan/schema.ts';
import { offsetSpans } from '../time/clock.ts';
import { clockMinutes } from '../time/day.ts';
import { crossings } from './crossings.ts';
import { moonOver, sineDeg, sineOf, turnsOf } from './day.ts';
import { horizonOf } from './horizon.ts';
import { hitsSet } from './pane.ts';
import {
  altitudeOn,
  azimuthOn,
  type BodyPath,
  litShareSeries,
  type MoonPath,
  moonPath,
  sunPath,
} from './path.ts';
import { refractionDeg } from './position.ts';
import { valueAt } from './series.ts';
import { both, either, type Span, spanOf, spansAbove, spansWhere, without } from './spans.ts';

const DAY_MS = 86_400_000;
const MINUTE_MS = 60_000;
const RAD = Math.PI / 180;
const LOOK_EVERY_MS = MINUTE_MS;

/** What conditions are asked of over a stretch of time. */
export interface Scene {
  plan: Plan;
  whole: Span;
  sun: BodyPath;
  /** Where the sun turns, up and down. */
  sunTurns: readonly number[];
  /** The moon's path over a part of it; only if a condition asks for it. */
  moon: ((part: Span) => MoonPath) | null;
}

/** A place on the earth, as far as the sky goes. */
export interface Site {
  latitudeDeg: number;
  longitudeDeg: number;
}

/** The plan's place, or null if it has none. */
export function siteOf({ place: { latitudeDeg, longitudeDeg } }: Plan): Site | null {
  return latitudeDeg === null || longitudeDeg === null ? null : { latitudeDeg, longitudeDeg };
}

/** Sun and moon over a stretch of time, where they are known already. */
export interface Paths {
  sun: BodyPath;
  moon: MoonPath;
}

/**
 * The scene of a plan between two instants.
 * @param paths - over all of it; worked out if they are not given
 */
export function sceneOf(
  plan: Plan,
  { latitudeDeg, longitudeDeg }: Site,
  whole: Span,
  paths: Paths | null = null,
): Scene {
  const { fromMs, toMs } = whole;
  const sun = paths?.sun ?? sunPath(fromMs, toMs, latitudeDeg, longitudeDeg);
  const needsMoon = plan.window.used && plan.window.moon !== 'any';
  return {
    plan,
    whole,
    sun,
    sunTurns: turnsOf(sineOf(sun), fromMs, toMs),
    moon: needsMoon ? moonOf({ latitudeDeg, longitudeDeg }, whole, paths) : null,
  };
}

/** The moon's path over any part of a stretch: its position costs more than all that is asked of it. */
function moonOf({ latitudeDeg, longitudeDeg }: Site, { fromMs, toMs }: Span, paths: Paths | null) {
  if (paths) return () => paths.moon;
  const litShare = litShareSeries(fromMs, toMs);
  return (part: Span) => moonPath(part.fromMs, part.toMs, latitudeDeg, longitudeDeg, litShare);
}

/** Where the sun's geometric altitude is at least so high. */
const spansOver = ({ sun, sunTurns }: Scene, altitudeDeg: number): Span[] =>
  spansAbove(sineOf(sun), sunTurns, sineDeg(altitudeDeg));

/** Where the sun's altitude lies within the limits that are given. */
function altitudeSpans(scene: Scene): Span[] {
  const { sunAltitudeMinDeg: least, sunAltitudeMaxDeg: most } = scene.plan.window;
  const high = least === null ? [scene.whole] : spansOver(scene, least);
  return most === null ? high : without(high, spansOver(scene, most));
}

/** Instants at which a body passes an azimuth. */
function passes({ sun, whole }: Scene, azimuthDeg: number): number[] {
  const { east, north } = sun;
  const [sine, cosine] = [Math.sin(azimuthDeg * RAD), Math.cos(azimuthDeg * RAD)];
  // Its distance from the upright plane through the azimuth: nought there, and opposite.
  const aside = (ms: number) => valueAt(east, ms) * cosine - valueAt(north, ms) * sine;
  return crossings(aside, turnsOf(aside, whole.fromMs, whole.toMs), 0).map(({ ms }) => ms);
}

/** Where the sun's azimuth lies from one clockwise to another, all round if they are the same. */
function bearingSpans(scene: Scene, fromDeg: number, toDeg: number): Span[] {
  const { sun, whole } = scene;
  const turned = (deg: number) => deg - 360 * Math.floor(deg / 360);
  const widthDeg = turned(toDeg - fromDeg);
  if (widthDeg === 0) return [whole];
  const cuts = [fromDeg, toDeg].flatMap((deg) => passes(scene, deg)).sort((a, b) => a - b);
  const ends = [whole.fromMs, ...cuts, whole.toMs];
  const pieces = ends.flatMap((ms, i) => (i === 0 ? [] : spanOf(ends[i - 1] as number, ms)));
  const inside = ({ fromMs, toMs }: Span) =>
    turned(azimuthOn(sun, (fromMs + toMs) / 2) - fromDeg) <= widthDeg;
  return either(pieces.filter(inside), []);
}

/** Where the sun's azimuth lies within the limits; one that is not given is north. */
function azimuthSpans(scene: Scene): Span[] {
  const { sunAzimuthFromDeg, sunAzimuthToDeg } = scene.plan.window;
  return bearingSpans(scene, sunAzimuthFromDeg ?? 0, sunAzimuthToDeg ?? 360);
}

/** Where the local clock shows a time from one to another, past midnight if that is earlier. */
function clockSpans({ plan: { window, place }, whole: { fromMs, toMs } }: Scene): Span[] {
  if (window.clockFrom === '' && window.clockTo === '') return [{ fromMs, toMs }];
  const begin = clockMinutes(window.clockFrom || '00:00');
  const end = clockMinutes(window.clockTo || '24:00');
  const lengthMin = end > begin ? end - begin : end - begin + 1440;
  const offsets = offsetSpans(place.zone, fromMs, toMs, place.utcOffsetMin);
  const pieces = offsets.flatMap(({ fromMs: sinceMs, offsetMin }, i) => {
    const untilMs = offsets[i + 1]?.fromMs ?? toMs;
    const shiftMs = offsetMin * MINUTE_MS;
    const days: Span[] = [];
    // A span that began the evening before still counts.
    const firstDay = Math.floor((sinceMs + shiftMs) / DAY_MS) - 1;
    for (let midnight = firstDay * DAY_MS - shiftMs; midnight < untilMs; midnight += DAY_MS) {
      const beginMs = midnight + begin * MINUTE_MS;
      days.push({ fromMs: beginMs, toMs: beginMs + lengthMin * MINUTE_MS });
    }
    return both(either(days, []), [{ fromMs: sinceMs, toMs: untilMs }]);
  });
  return either(pieces, []);
}

/** Where the sun's centre, lifted by refraction, stands over the own horizon. */
function overHorizon(scene: Scene): Span[] {
  const { sun, plan } = scene;
  const horizon = horizonOf(plan.place.horizon);
  const heights = plan.place.horizon.map(({ altitudeDeg }) => altitudeDeg);
  const over = (ms: number) => {
    const geometricDeg = altitudeOn(sun, ms);
    return geometricDeg + refractionDeg(geometricDeg) >= horizon(azimuthOn(sun, ms));
  };
  // Over its highest point there is nothing to look for, nor so far under its lowest that refraction cannot help.
  const clear = spansOver(scene, Math.max(0, ...heights));
  const near = without(spansOver(scene, Math.min(0, ...heights) - 1), clear);
  return either(clear, spansWhere(near, LOOK_EVERY_MS, over));
}

/** Where the sun comes through the pane and its patch reaches the set, out of stretches over the own horizon. */
function onSet(scene: Scene, over: readonly Span[]): Span[] {
  const { sun, plan } = scene;
  const { facingDeg } = plan.pane;
  const inFront = both(over, bearingSpans(scene, facingDeg - 90, facingDeg + 90));
  return spansWhere(both(inFront, spansOver(scene, -1)), LOOK_EVERY_MS, (ms) => {
    const geometricDeg = altitudeOn(sun, ms);
    return hitsSet(plan.pane, geometricDeg + refractionDeg(geometricDeg), azimuthOn(sun, ms));
  });
}

/** Conditions without smooth edges, within what the others leave. */
function lookedFor(scene: Scene, within: readonly Span[]): Span[] {
  const { window, pane } = scene.plan;
  const asksPane = window.sunOnPane !== 'any' && pane.used;
  if (window.sunAndHorizon === 'any' && !asksPane) return [...within];
  const over = overHorizon(scene);
  let spans = [...within];
  if (window.sunAndHorizon !== 'any')
    spans = window.sunAndHorizon === 'above' ? both(spans, over) : without(spans, over);
  if (!asksPane) return spans;
  const on = onSet(scene, both(spans, over));
  return window.sunOnPane === 'onSet' ? on : without(spans, on);
}

/** The sun's and the clock's part of the window. */
export function sunWindow(scene: Scene): Span[] {
  if (!scene.plan.window.used) return [scene.whole];
  const smooth = both(altitudeSpans(scene), azimuthSpans(scene));
  return lookedFor(scene, both(smooth, clockSpans(scene)));
}

/** The parts of spans in which the moon is down, or lit little enough. */
export function withMoon({ plan: { window }, moon }: Scene, spans: readonly Span[]): Span[] {
  if (moon === null) return [...spans];
  return spans.flatMap((span) => {
    const path = moon(span);
    const over = moonOver(path);
    const up = spansAbove(over, turnsOf(over, span.fromMs, span.toMs), 0);
    if (window.moon === 'down' || up.length === 0) return without([span], up);
    const lit = (ms: number) => valueAt(path.litShare, ms);
    const bright = spansAbove(lit, turnsOf(lit, span.fromMs, span.toMs), window.moonLitMaxShare);
    return without([span], both(up, bright));
  });
}

/**
 * The windows between two instants.
 * @returns where every condition of the plan holds that is on, ends to the millisecond; all of it if none is on
 *   or no window is asked for; none if the plan has no place
 */
export function windowSpans(plan: Plan, fromMs: number, toMs: number, paths: Paths | null = null): Span[] {
  if (!plan.window.used) return spanOf(fromMs, toMs);
  const site = siteOf(plan);
  if (site === null || toMs <= fromMs) return [];
  const scene = sceneOf(plan, site, { fromMs, toMs }, paths);
  return withMoon(scene, sunWindow(scene));
}

/**
 * When the sun comes through the pane and reaches the set, clear sky taken for granted, over the own horizon.
 * @returns ends to the millisecond; none if the plan has no pane or no place
 */
export function setHitSpans(plan: Plan, fromMs: number, toMs: number, paths: Paths | null = null): Span[] {
  const site = siteOf(plan);
  if (site === null || !plan.pane.used || toMs <= fromMs) return [];
  const scene = sceneOf(plan, site, { fromMs, toMs }, paths);
  return onSet(scene, overHorizon(scene));
}

/** Where a run could start, and what there is to spare. */
export interface BestStart {
  /** First shutter opening. */
  startMs: number;
  /** Earliest and latest start within the same span. */
  earliestMs: number;
  latestMs: number;
  span: Span;
}

/**
 * The best start of a run: the planned one if its run lies within a span, else in the middle of the longest span
 * that holds it, the same time to spare before and after.
 * @param runS - first shutter opening to the last closing
 * @param plannedMs - the start as planned, or null
 * @returns null if no span holds the run
 */
export function bestStart(
  spans: readonly Span[],
  runS: number,
  plannedMs: number | null = null,
): BestStart | null {
  const runMs = runS * 1000;
  const lengthOf = (span: Span) => span.toMs - span.fromMs;
  const holding = spans.filter((span) => lengthOf(span) >= runMs);
  const planned = holding.find(
    ({ fromMs, toMs }) => plannedMs !== null && plannedMs >= fromMs && plannedMs + runMs <= toMs,
  );
  const longest = holding.reduce<Span | null>(
    (best, span) => (best !== null && lengthOf(best) >= lengthOf(span) ? best : span),
    null,
  );
  const span = planned ?? longest;
  if (span === null) return null;
  const [earliestMs, latestMs] = [span.fromMs, span.toMs - runMs];
  const startMs = planned && plannedMs !== null ? plannedMs : (earliestMs + latestMs) / 2;
  return { startMs, earliestMs, latestMs, span };
}

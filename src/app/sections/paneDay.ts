/** What the sun does through the pane on the plan's day, instant by instant, and how it is said. No DOM. */
import type { Plan } from '../../engine/plan/schema.ts';
import type { OffsetSpan } from '../../engine/schedule-types.ts';
import { horizonOf } from '../../engine/sky/horizon.ts';
import { hitsSet, type Patch, patchOn } from '../../engine/sky/pane.ts';
import { cornersOf, creepMm } from '../../engine/sky/patch.ts';
import { sunAt } from '../../engine/sky/position.ts';
import type { Span } from '../../engine/sky/spans.ts';
import { type Site, setHitSpans } from '../../engine/sky/windows.ts';
import { clockAt, offsetSpans } from '../../engine/time/clock.ts';
import { localDay } from '../../engine/time/day.ts';
import { ofDate, ofSun } from '../../engine/working/names.ts';
import { numberText, withUnit } from '../format/numbers.ts';
import type { Piece } from '../working/sentence.ts';

type Pane = Plan['pane'];

/** The daylight of the plan's day, as far as the pane asks. */
export interface PaneDay {
  /** First instant of the day, milliseconds of the epoch. */
  startMs: number;
  offsets: readonly OffsetSpan[];
  /** Instants with the sun up, five minutes apart. */
  instants: readonly number[];
  /** When the sun reaches the set. */
  hits: readonly Span[];
}

/** The sun through the pane at one instant. */
export interface PaneMoment {
  ms: number;
  clock: string;
  /** The patch at the height of the set, up to the opposite wall; null if there is none. */
  patch: Patch | null;
  /** Why there is no patch. */
  why: 'sun' | 'horizon' | 'wall' | null;
  onSet: boolean;
  /** How far the middle of the patch moves in an interval, millimetres; null if it is gone by then. */
  creepMm: number | null;
}

const STEP_MS = 5 * 60_000;

/** The day of a plan at its place. */
export function paneDay(plan: Plan, { latitudeDeg, longitudeDeg }: Site): PaneDay {
  const { zone, utcOffsetMin } = plan.place;
  const { startMs, endMs } = localDay(plan.start.date, zone, utcOffsetMin);
  const count = Math.ceil((endMs - startMs) / STEP_MS);
  const instants = Array.from({ length: count }, (_, i) => startMs + i * STEP_MS).filter(
    (ms) => sunAt(ms, latitudeDeg, longitudeDeg).apparentAltitudeDeg > 0,
  );
  return {
    startMs,
    offsets: offsetSpans(zone, startMs, endMs, utcOffsetMin),
    instants,
    hits: setHitSpans(plan, startMs, endMs),
  };
}

/** Index of the instant nearest to a time after the beginning of the day. */
export function instantNear({ startMs, instants }: PaneDay, afterMs: number): number {
  const apart = instants.map((ms) => Math.abs(ms - startMs - afterMs));
  return Math.max(0, apart.indexOf(Math.min(...apart)));
}

/** When the set is hit, as shares of the way from the first to the last instant. */
export function hitShares(day: PaneDay): [from: number, to: number][] {
  const last = Math.max(1, day.instants.length - 1);
  const share = (ms: number) => instantNear(day, ms - day.startMs) / last;
  return day.hits.map(({ fromMs, toMs }) => [share(fromMs), share(toMs)]);
}

/** What is shown first: the middle of the first time that the set is hit, else of those with a patch, else noon. */
export function firstShown(plan: Plan, site: Site, day: PaneDay): number {
  const [hit] = day.hits;
  if (hit) return instantNear(day, (hit.fromMs + hit.toMs) / 2 - day.startMs);
  const lit = day.instants.flatMap((ms, i) => (patchAt(plan, site, ms).patch === null ? [] : [i]));
  return lit[lit.length >> 1] ?? day.instants.length >> 1;
}

/** The part of a patch that lies in the room. */
function inRoom(patch: Patch | null, { roomDepthMm }: Pane): Patch | null {
  if (patch === null || patch.nearMm >= roomDepthMm) return null;
  return { ...patch, farMm: Math.min(patch.farMm, roomDepthMm) };
}

function patchAt({ pane, place }: Plan, { latitudeDeg, longitudeDeg }: Site, ms: number) {
  const { apparentAltitudeDeg: altitudeDeg, azimuthDeg } = sunAt(ms, latitudeDeg, longitudeDeg);
  const whole = patchOn(pane, pane.setHeightMm, altitudeDeg, azimuthDeg);
  const covered = altitudeDeg < horizonOf(place.horizon)(azimuthDeg);
  const patch = covered ? null : inRoom(whole, pane);
  const why = whole === null ? 'sun' : covered ? 'horizon' : patch === null ? 'wall' : null;
  return { patch, why, onSet: patch !== null && hitsSet(pane, altitudeDeg, azimuthDeg) } as const;
}

/**
 * The sun through the pane at an instant.
 * @param intervalS - after which the creep is measured
 */
export function paneMoment(
  plan: Plan,
  site: Site,
  { offsets }: PaneDay,
  ms: number,
  intervalS: number,
): PaneMoment {
  const now = patchAt(plan, site, ms);
  const next = patchAt(plan, site, ms + intervalS * 1000);
  return { ms, clock: shortClock(ms, offsets), ...now, creepMm: creepMm(now.patch, next.patch) };
}

const shortClock = (ms: number, offsets: readonly OffsetSpan[]): string => clockAt(ms, offsets).slice(0, 5);

const metres = (mm: number): string => (Math.abs(mm) / 1000).toFixed(1);

/** A figure of the patch. */
type Figure = (what: string, text: string) => Piece;

/** `0.2 to 1.4 m left of the pane’s middle`. */
function alongPieces(leftMm: number, rightMm: number, figure: Figure): Piece[] {
  const middle = 'of the pane’s middle, looking out';
  const left = (text: string) => figure('patch.leftMm', text);
  const right = (text: string) => figure('patch.rightMm', text);
  const inMetres = (mm: number) => withUnit(metres(mm), 'm');
  if (rightMm <= 0) return [right(metres(rightMm)), ' to ', left(inMetres(leftMm)), ` left ${middle}`];
  if (leftMm >= 0) return [left(metres(leftMm)), ' to ', right(inMetres(rightMm)), ` right ${middle}`];
  return ['from ', left(inMetres(leftMm)), ' left to ', right(inMetres(rightMm)), ` right ${middle}`];
}

const WHY_NOT = {
  sun: 'no sun comes through the pane onto the height of the set',
  horizon: 'the sun is behind the own horizon',
  wall: 'the sun through the pane falls on the opposite wall only',
} as const;

/** A moment in words. */
export function momentPieces(
  pane: Pane,
  { ms, clock, patch, why, onSet, creepMm: creep }: PaneMoment,
): Piece[] {
  if (patch === null) return [`At ${clock} ${WHY_NOT[why ?? 'sun']}.`];
  const figure: Figure = (what, text) => ({ text, of: ofSun(ms, what) });
  const along = cornersOf(pane, patch).map(({ alongMm }) => alongMm);
  const goes: Piece[] =
    creep === null
      ? ['it is gone an interval later']
      : ['it creeps ', figure('patch.creepMm', lengthText(creep)), ' an interval'];
  return [
    `At ${clock} the patch, at the height of the set, reaches from `,
    figure('patch.nearMm', metres(patch.nearMm)),
    ' to ',
    figure('patch.farMm', withUnit(metres(patch.farMm), 'm')),
    ' into the room, ',
    ...alongPieces(Math.min(...along), Math.max(...along), figure),
    `, ${onSet ? 'and lies on the set' : 'and misses the set'}; `,
    ...goes,
    '.',
  ];
}

const lengthText = (mm: number): string =>
  mm < 1000 ? withUnit(numberText(mm, mm < 10 ? 1 : 0), 'mm') : withUnit(metres(mm), 'm');

/**
 * When the set is hit that day, in words.
 * @param date - `yyyy-mm-dd`, and what it is called
 * @param blackOut - whether the sun must be kept out then
 */
export function hitsPieces(
  { hits, offsets }: Pick<PaneDay, 'hits' | 'offsets'>,
  date: string,
  called: string,
  blackOut: boolean,
): Piece[] {
  if (hits.length === 0) return [`The sun does not reach the set on ${called}.`];
  const clock = (ms: number, h: number, what: string): Piece => ({
    text: shortClock(ms, offsets),
    of: ofDate(date, `pane.${h + 1}.${what}`),
  });
  const spans = hits.flatMap(({ fromMs, toMs }, h): Piece[] => [
    h === 0 ? 'from ' : ' and from ',
    clock(fromMs, h, 'from'),
    ' to ',
    clock(toMs, h, 'to'),
  ]);
  return [
    `On ${called} the sun reaches the set `,
    ...spans,
    `, if the sky is clear${blackOut ? '; black out then' : ''}.`,
  ];
}

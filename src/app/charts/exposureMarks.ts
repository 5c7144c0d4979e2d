/** Words and marks on the chart of the exposure: where settings change, and where the ramp ends. */
import type { Rung } from '../../engine/exposure/ladder.ts';
import type { RampChange } from '../../engine/exposure/ramp.ts';
import { rampWords, rungWords, valueWords } from '../../engine/exposure/ramp-words.ts';
import type { ExposureSummary } from '../../engine/schedule-types.ts';
import { xOfFrame } from './chart.ts';
import type { Exposed } from './exposed.ts';
import type { Moment } from './marks.ts';
import { type Box, type PlacedName, placeNames, placeText, type Spot, textWidth } from './names.ts';
import { EDGE_PX, type RunView } from './runView.ts';
import type { Domain } from './scale.ts';
import type { Trace } from './trace.ts';

/** Changes by hand, or ends of steps, that get a mark with words each. */
export const MOST_MARKS = 24;
/** An end of the ramp that is farther off is left out. */
const LIMIT_STOPS = 4;
/** On a narrower plot the settings at the ends of the ramp are left to the words of the plan. */
const NARROW_PX = 420;
const TEETH_WORDS = 'by the camera';
/** Height of the teeth along the top. */
const TEETH_PX = 9;

interface Size {
  widthPx: number;
  heightPx: number;
}

/** An end of the ramp: beyond it the light is out of range. */
export interface Limit {
  ev100: number;
  words: string;
  /** Beyond it the light is too bright. */
  top: boolean;
}

/** The ends of the ramp that are near enough to be shown. */
export function limitsOf({ rungs, follows }: ExposureSummary, [low, high]: Domain, widthPx: number): Limit[] {
  const [first, last] = [rungs[0], rungs.at(-1)];
  if (!follows || !first || !last) return [];
  const settings = (rung: Rung) => (widthPx < NARROW_PX ? '' : ` ${rungWords(rung)}`);
  return [
    { ev100: first.ev100, words: `Brightest${settings(first)}`, top: true },
    { ev100: last.ev100, words: `Dimmest${settings(last)}`, top: false },
  ].filter(({ ev100 }) => ev100 <= high + LIMIT_STOPS && ev100 >= low - LIMIT_STOPS);
}

/** What is done by hand, what each step of the ramp comes to, and where it begins. */
export function momentsOf(
  view: RunView,
  { exposure, rungAt }: Exposed,
  byHand: readonly RampChange[],
  y: (value: number) => number,
): Moment[] {
  const first = rungAt(0);
  const start = { x: xOfFrame(view, 1), y: y(first.ev100), kind: 'value' as const, label: rungWords(first) };
  // The ends of the ramp are named as such.
  const isNamed = exposure.follows && (first.index === 0 || first.index === exposure.rungs.length - 1);
  const hands = byHand.length > MOST_MARKS ? [] : byHand;
  const reached = exposure.changes.filter((change) => !hands.includes(change) && endsStep(exposure, change));
  return [
    ...(isNamed ? [] : [start]),
    ...hands.map((change) => handMoment(view, change)),
    ...(reached.length > MOST_MARKS ? [] : reached).map(({ frame, to }) => ({
      x: xOfFrame(view, frame),
      y: y(to.ev100),
      kind: 'value' as const,
      label: settingWords(to),
    })),
  ].sort((a, b) => a.x - b.x);
}

const handMoment = (view: RunView, change: RampChange): Moment => ({
  x: xOfFrame(view, change.frame),
  kind: 'change',
  label: `${rampWords(change)} by hand`,
  short: 'by hand',
});

/** Whether a change takes its setting as far as its step of the ramp goes. */
const endsStep = ({ rungs }: ExposureSummary, { to }: RampChange): boolean =>
  to.stepIndex !== null && rungs[to.index + 1]?.stepIndex !== to.stepIndex;

/** The setting that a rung has come to: `1 s`, `ISO 400`, `f/2.8`. */
function settingWords(rung: Rung): string {
  if (rung.setting === 'iso') return valueWords('iso', rung.iso);
  return rung.setting === 'aperture'
    ? valueWords('aperture', rung.apertureF)
    : (rungWords(rung).split(',')[0] ?? '');
}

/** Places of changes, no nearer to each other than that. */
export function placesOf(view: RunView, changes: readonly RampChange[], apartPx: number): number[] {
  const places: number[] = [];
  for (const { frame } of changes) {
    const x = xOfFrame(view, frame);
    if (x - (places.at(-1) ?? Number.NEGATIVE_INFINITY) >= apartPx) places.push(x);
  }
  return places;
}

/** Words at the ends of the ramp, beside the teeth, and on the lines. */
export function namesOf(
  traces: readonly Trace[],
  limits: readonly Limit[],
  teeth: readonly number[],
  taken: Box[],
  { y, ...size }: { widthPx: number; heightPx: number; y: (value: number) => number },
): PlacedName[] {
  const ends = limits.map((limit) =>
    placeText(limit.words, limitSpots(limit, y(limit.ev100), size), traces, taken),
  );
  const camera = teeth.length > 0 ? placeText(TEETH_WORDS, teethSpots(teeth, size), traces, taken) : null;
  return [...ends, camera, ...placeNames(traces, taken, size)].filter((name) => name !== null);
}

/** At either end of its level, inside the ramp or else outside. */
function limitSpots({ words, top }: Limit, y: number, { widthPx, heightPx }: Size): Spot[] {
  const half = textWidth(words) / 2 + EDGE_PX + 6;
  return (top ? [y + 15, y - 5] : [y - 5, y + 15])
    .filter((foot) => foot > TEETH_PX + 12 && foot < heightPx - 4)
    .flatMap((foot) => [half, widthPx - half].map((x) => ({ x, y: foot })));
}

/** Behind the last tooth, or before the first. */
function teethSpots(teeth: readonly number[], { widthPx }: Size): Spot[] {
  const half = textWidth(TEETH_WORDS) / 2;
  const [first, last] = [teeth[0] ?? 0, teeth.at(-1) ?? 0];
  return [last + 8 + half, first - 8 - half]
    .filter((x) => x - half > EDGE_PX + 4 && x + half < widthPx - EDGE_PX)
    .map((x) => ({ x, y: 13 }));
}

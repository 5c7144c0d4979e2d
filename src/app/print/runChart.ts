/**
 * A small chart of a run for black and white paper: sky, exposure and axes over the clock. What is told apart is told by
 * stroke, shade and name, never by colour.
 */
import type { Plan } from '../../engine/plan/schema.ts';
import type { Schedule } from '../../engine/schedule-types.ts';
import { type HandMoment, handMoments } from '../../outputs/hand-moments.ts';
import { clockTicks } from '../charts/clockTicks.ts';
import { emsOf } from './ems.ts';
import { makeSvg } from './make.ts';
import {
  axesPlot,
  axisText,
  exposurePlot,
  LEFT,
  LEGEND_ROW,
  legendOf,
  rangeOf,
  type Scale,
  scaleOf,
  TYPE,
  WIDTH,
  word,
} from './runPlots.ts';

/** The bands of the sky: their grey, and that of their name. */
const BANDS = {
  day: ['Day', '#fff', '#000'],
  golden: ['Golden', '#e6e6e6', '#000'],
  blue: ['Blue', '#c4c4c4', '#000'],
  civil: ['Civil', '#d4d4d4', '#000'],
  nautical: ['Nautical', '#9a9a9a', '#000'],
  astronomical: ['Astron.', '#5a5a5a', '#fff'],
  night: ['Night', '#222', '#fff'],
} as const;

/** The sky over the run, each band with its name where there is room. */
function skyBand({ sky }: Schedule, { x, fromMs, toMs }: Scale, top: number): SVGElement[] {
  return (sky?.bands ?? []).flatMap(({ band, fromMs: from, toMs: to }) => {
    const [name, fill, ink] = BANDS[band];
    const [left, right] = [x(Math.max(from, fromMs)), x(Math.min(to, toMs))];
    const box = makeSvg('rect', {
      x: left.toFixed(2),
      y: top,
      width: Math.max(0, right - left).toFixed(2),
      height: 4.2,
      fill,
      stroke: '#000',
      'stroke-width': 0.15,
    });
    const fits = right - left > emsOf(name) * TYPE + 1;
    return fits
      ? [box, word(name, (left + right) / 2, top + 3, { 'text-anchor': 'middle', fill: ink })]
      : [box];
  });
}

const LETTERS = {
  swap: ['S', 'S swap'],
  cardChange: ['C', 'C card'],
  exposureChange: ['E', 'E exposure by hand'],
  pane: ['P', 'P black out the pane'],
} as const;

/** More wedges than this would be one black bar. */
const MOST_MARKS = 60;

/** Those that are marked: of very many, the settings have a curve of their own. */
const marked = (moments: readonly HandMoment[]): readonly HandMoment[] =>
  moments.length > MOST_MARKS
    ? moments.filter(({ kind }) => kind !== 'exposureChange').slice(0, MOST_MARKS)
    : moments;

/** What needs a hand: a wedge with a letter at its time. */
function handMarks(moments: readonly HandMoment[], { x }: Scale, foot: number): SVGElement[] {
  const marks = moments.flatMap(({ kind, ms }) => {
    const at = x(ms);
    const wedge = `M${(at - 1).toFixed(2)} ${foot + 2.2}L${(at + 1).toFixed(2)} ${foot + 2.2}L${at.toFixed(2)} ${foot}Z`;
    return [
      makeSvg('path', { d: wedge, fill: '#000' }),
      word(LETTERS[kind][0], at, foot + 4.8, { 'text-anchor': 'middle', 'font-weight': 700 }),
    ];
  });
  const kinds = [...new Set(moments.map(({ kind }) => LETTERS[kind][1]))];
  return kinds.length > 0 ? [...marks, word(kinds.join(', '), 0, foot + 7.6)] : marks;
}

function clock({ offsets }: Schedule, { x, fromMs, toMs }: Scale, foot: number): SVGElement[] {
  return clockTicks(fromMs, toMs, offsets, 9).flatMap(({ ms, label }) => {
    const at = x(ms);
    const half = (emsOf(label) * TYPE) / 2;
    const kept = Math.min(WIDTH - half, Math.max(LEFT + half, at));
    return [
      makeSvg('path', { d: `M${at.toFixed(2)} ${foot}v1.2`, stroke: '#000', 'stroke-width': 0.2 }),
      word(label, kept, foot + 3.8, { 'text-anchor': 'middle' }),
    ];
  });
}

/** Whether there is anything to see of the exposure: light that is steady has no curve. */
function changes({ columns: { evScene } }: Schedule): boolean {
  if (!evScene) return false;
  const [low, high] = rangeOf(evScene);
  return high - low > 0.05;
}

/** The chart, as wide as the paper allows; null if there is nothing to draw. */
export function runChart(plan: Plan, made: Schedule): SVGSVGElement | null {
  const { axes } = made.columns;
  if (made.totals.frames < 2 || (axes.length === 0 && !changes(made) && !made.sky)) return null;
  const scale = scaleOf(made);
  const parts: SVGElement[] = [];
  let top = 0;
  if (made.sky) {
    parts.push(word('Sky', 0, 3, { 'font-weight': 700 }), ...skyBand(made, scale, 0));
    top += 4.2;
  }
  if (changes(made)) {
    top += 4.5;
    parts.push(...exposurePlot(made, scale, { title: 'Exposure, EV', top, height: 14 }));
    top += 14;
  }
  if (axes.length > 0) {
    top += 1.1 + LEGEND_ROW * legendOf(axes.map(axisText)).rows;
    parts.push(...axesPlot(made, scale, { title: 'Rig', top, height: 18 }));
    top += 18;
  }
  parts.push(...clock(made, scale, top));
  const hands = marked(handMoments(plan, made));
  parts.push(...handMarks(hands, scale, top + 4.6));
  const height = top + (hands.length > 0 ? 13 : 5);
  const chart = makeSvg(
    'svg',
    { viewBox: `0 0 ${WIDTH} ${height}`, class: 'p-chart', role: 'img' },
    ...parts,
  );
  chart.setAttribute('aria-label', 'Sky, exposure and rig over the run');
  return chart;
}

/**
 * A small chart of a run for black and white paper: sky, exposure and axes over the clock. What is told apart is told by
 * stroke, shade and name, never by colour.
 */
import type { Plan } from '../../engine/plan/schema.ts';
import type { AxisColumns, Schedule } from '../../engine/schedule-types.ts';
import { type HandMoment, handMoments } from '../../outputs/hand-moments.ts';
import { clockTicks } from '../charts/clockTicks.ts';
import { bucketStarts, thin } from '../charts/thin.ts';
import { numberText } from '../format/numbers.ts';
import { emsOf } from './ems.ts';
import { makeSvg } from './make.ts';

/** Millimetres. */
const WIDTH = 190;
const LEFT = 22;
const RIGHT = 189;
const BUCKETS = 320;
const TYPE = 2.5;

/** Strokes, told apart by their dashes. */
const DASHES = ['', '1.6 0.8', '0.4 0.8', '2.4 0.7 0.4 0.7', '3.2 1.2', '0.9 0.5'];

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

interface Scale {
  x: (ms: number) => number;
  fromMs: number;
  toMs: number;
}

function scaleOf({ startMs, columns }: Schedule): Scale {
  const toMs = startMs + Math.max(1, (columns.elapsedS.at(-1) ?? 0) * 1000);
  const perMs = (RIGHT - LEFT) / (toMs - startMs);
  return { fromMs: startMs, toMs, x: (ms) => LEFT + (ms - startMs) * perMs };
}

const word = (text: string, x: number, y: number, attributes: Record<string, string | number> = {}) =>
  makeSvg('text', { x: x.toFixed(2), y: y.toFixed(2), 'font-size': TYPE, ...attributes }, text);

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

/** One line of a plot. */
interface Series {
  name: string;
  values: ArrayLike<number>;
  /** Holds its value until the next frame. */
  steps: boolean;
}

function pathOf(series: Series, made: Schedule, { x }: Scale, y: (value: number) => number): string {
  const { elapsedS } = made.columns;
  const kept = thin(bucketStarts(elapsedS, BUCKETS), series.values);
  let path = '';
  for (const [n, index] of kept.entries()) {
    const at = x(made.startMs + (elapsedS[index] ?? 0) * 1000).toFixed(2);
    const value = y(series.values[index] ?? 0).toFixed(2);
    path += n === 0 ? `M${at} ${value}` : series.steps ? `H${at}V${value}` : `L${at} ${value}`;
  }
  return path;
}

interface Plot {
  title: string;
  top: number;
  height: number;
}

const rangeOf = (values: ArrayLike<number>): [number, number] => {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < values.length; i += 1) {
    const value = values[i] as number;
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return [low, high];
};

/** Where the strokes and names above a plot go: in as many rows as they take. */
function legendOf(names: readonly string[]): { at: { x: number; row: number }[]; rows: number } {
  let [x, row] = [LEFT, 0];
  const at = names.map((name) => {
    const wide = 12 + emsOf(name) * TYPE;
    if (x > LEFT && x + wide > RIGHT) [x, row] = [LEFT, row + 1];
    const place = { x, row };
    x += wide;
    return place;
  });
  return { at, rows: row + 1 };
}

const LEGEND_ROW = 3.4;

/** A frame, its title at the left, and above it a stroke and a name for each line. */
function plotFrame({ title, top, height }: Plot, names: readonly string[]): SVGElement[] {
  const parts: SVGElement[] = [
    makeSvg('rect', {
      x: LEFT,
      y: top,
      width: RIGHT - LEFT,
      height,
      fill: 'none',
      stroke: '#000',
      'stroke-width': 0.2,
    }),
  ];
  const { at, rows } = legendOf(names);
  parts.push(word(title, 0, top - 1 - (rows - 1) * LEGEND_ROW, { 'font-weight': 700 }));
  for (const [i, name] of names.entries()) {
    const { x, row } = at[i] ?? { x: LEFT, row: 0 };
    const y = top - 1 - (rows - 1 - row) * LEGEND_ROW;
    parts.push(strokeOf(`M${x} ${y - 0.8}h7`, i), word(name, x + 8, y));
  }
  return parts;
}

const strokeOf = (d: string, i: number): SVGElement =>
  makeSvg('path', {
    d,
    fill: 'none',
    stroke: '#000',
    'stroke-width': i === 0 ? 0.45 : 0.35,
    'stroke-dasharray': DASHES[i % DASHES.length] ?? '',
    'stroke-linejoin': 'round',
  });

const PAD = 1.2;

/** Name of an axis, and from where to where it goes. */
function axisText({ name, unit, stepsPerUnit, lowestSteps, highestSteps }: AxisColumns): string {
  const ends = [lowestSteps, highestSteps].map((at) => numberText(at / stepsPerUnit, 1)).join(' to ');
  return `${name} ${ends}${unit === 'deg' ? '\u00B0' : ' mm'}`;
}

/** All axes, each from its lowest to its highest position. */
function axesPlot(made: Schedule, scale: Scale, plot: Plot): SVGElement[] {
  const { axes } = made.columns;
  const names = axes.map(axisText);
  const named = axes.map(({ steps }, i) => ({ name: names[i] ?? '', values: steps, steps: false }));
  const lines = named.map((series, i) => {
    const [low, high] = rangeOf(series.values);
    const room = plot.height - 2 * PAD;
    const y = (value: number) =>
      plot.top + PAD + (high > low ? ((high - value) / (high - low)) * room : room / 2);
    return strokeOf(pathOf(series, made, scale, y), i);
  });
  return [
    ...plotFrame(
      plot,
      named.map(({ name }) => name),
    ),
    ...lines,
  ];
}

/** Light of the scene, and what the settings expose rightly: brighter is up. */
function exposurePlot(made: Schedule, scale: Scale, plot: Plot): SVGElement[] {
  const { columns, exposure } = made;
  const { evScene, rung } = columns;
  if (!exposure || !evScene || !rung) return [];
  const settings = Float64Array.from(rung, (index) => exposure.rungs[index]?.ev100 ?? Number.NaN);
  const series: Series[] = [
    { name: 'settings', values: settings, steps: true },
    { name: 'scene', values: evScene, steps: false },
  ];
  const ends = series.map(({ values }) => rangeOf(values));
  const low = Math.min(...ends.map(([least]) => least));
  const high = Math.max(...ends.map(([, most]) => most));
  const room = plot.height - 2 * PAD;
  const y = (value: number) =>
    plot.top + PAD + (high > low ? ((high - value) / (high - low)) * room : room / 2);
  const side = { 'text-anchor': 'end' };
  return [
    ...plotFrame(plot, ['settings', 'scene']),
    ...series.map((own, i) => strokeOf(pathOf(own, made, scale, y), i)),
    word(numberText(high, 1), LEFT - 1, plot.top + 2.4, side),
    word(numberText(low, 1), LEFT - 1, plot.top + plot.height - 0.6, side),
  ];
}

const LETTERS = {
  swap: ['S', 'S swap'],
  cardChange: ['C', 'C card'],
  exposureChange: ['E', 'E exposure by hand'],
  pane: ['P', 'P black out the pane'],
} as const;

/** More wedges than this would be one black bar. */
const MOST_MARKS = 60;

/** What needs a hand: a wedge with a letter at its time. */
function handMarks(moments: readonly HandMoment[], { x }: Scale, foot: number): SVGElement[] {
  const marks = moments.slice(0, MOST_MARKS).flatMap(({ kind, ms }) => {
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
  const hands = handMoments(plan, made);
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

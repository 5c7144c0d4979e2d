/** The plots of a run's chart for black and white paper: lines told apart by their strokes, each with its name. */
import type { AxisColumns, Schedule } from '../../engine/schedule-types.ts';
import { bucketStarts, thin } from '../charts/thin.ts';
import { numberText } from '../format/numbers.ts';
import { emsOf } from './ems.ts';
import { makeSvg } from './make.ts';

/** Millimetres. */
export const WIDTH = 190;
export const LEFT = 22;
export const RIGHT = 189;
const BUCKETS = 320;
export const TYPE = 2.5;

/** Strokes, told apart by their dashes. */
const DASHES = ['', '1.6 0.8', '0.4 0.8', '2.4 0.7 0.4 0.7', '3.2 1.2', '0.9 0.5'];

export interface Scale {
  x: (ms: number) => number;
  fromMs: number;
  toMs: number;
}

export function scaleOf({ startMs, columns }: Schedule): Scale {
  const toMs = startMs + Math.max(1, (columns.elapsedS.at(-1) ?? 0) * 1000);
  const perMs = (RIGHT - LEFT) / (toMs - startMs);
  return { fromMs: startMs, toMs, x: (ms) => LEFT + (ms - startMs) * perMs };
}

export const word = (text: string, x: number, y: number, attributes: Record<string, string | number> = {}) =>
  makeSvg('text', { x: x.toFixed(2), y: y.toFixed(2), 'font-size': TYPE, ...attributes }, text);

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

export const rangeOf = (values: ArrayLike<number>): [number, number] => {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < values.length; i += 1) {
    const value = values[i] as number;
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return [low, high];
};

/** Where the strokes and names above a plot go: in as many rows as they take. */
export function legendOf(names: readonly string[]): { at: { x: number; row: number }[]; rows: number } {
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

export const LEGEND_ROW = 3.4;

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
export function axisText({ name, unit, stepsPerUnit, lowestSteps, highestSteps }: AxisColumns): string {
  const ends = [lowestSteps, highestSteps].map((at) => numberText(at / stepsPerUnit, 1)).join(' to ');
  return `${name} ${ends}${unit === 'deg' ? '\u00B0' : ' mm'}`;
}

/** All axes, each from its lowest to its highest position. */
export function axesPlot(made: Schedule, scale: Scale, plot: Plot): SVGElement[] {
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
export function exposurePlot(made: Schedule, scale: Scale, plot: Plot): SVGElement[] {
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

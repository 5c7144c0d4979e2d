/** One quantity over the run as a line of pixels. */
import type { RunView } from './runView.ts';
import { thin } from './thin.ts';

/** Series colours of the theme; `curve` is cased, for lines over the sky, `ink` is for the light that is given. */
export type Tone = 'blue' | 'verm' | 'green' | 'purple' | 'amber' | 'curve' | 'ink';

/** The colour of a line. */
export const colourOf = (tone: Tone): string =>
  tone === 'curve' || tone === 'ink' ? `var(--${tone})` : `var(--s-${tone})`;

/** What tells one line from another: colour, and dashes for those who do not see it. */
export interface LineStyle {
  tone: Tone;
  /** SVG dash array; empty for a solid line. */
  dash: string;
}

/** A quantity to draw: one value a frame, times `factor`. */
export interface Series extends LineStyle {
  name: string;
  values: ArrayLike<number>;
  factor: number;
  /** Value of a frame, if it is not `values` times `factor`: these then only go up and down with it. */
  at?: (index: number) => number;
  /** Stays at each value until the next, instead of going there straight. */
  stepped?: boolean;
  /** Lower values are not drawn. */
  from?: number;
  /** Indices at which the line starts anew: a fresh pack, another card. */
  breaks: readonly number[];
  filled: boolean;
}

/** A drawn quantity; pixels from the top left corner of the plot. */
export interface Trace extends LineStyle {
  name: string;
  xs: number[];
  ys: number[];
  path: string;
  /** The area below, closed at the bottom of the plot; empty if it is not filled. */
  area: string;
}

const TONES: readonly Tone[] = ['verm', 'green', 'purple', 'blue', 'amber'];
const DASHES = ['', '7 4', '2 3', '10 3 2 3', '14 4'];

/** The style of the n-th line of its kind, counted from 0. Twenty-five are told apart. */
export function lineStyle(n: number, tones: readonly Tone[] = TONES): LineStyle {
  const round = Math.floor(n / tones.length);
  return {
    tone: tones[n % tones.length] as Tone,
    dash: DASHES[(n + round) % DASHES.length] as string,
  };
}

const tenth = (px: number) => Math.round(px * 10) / 10;

/** Value of a series at a frame. */
export const valueAt = ({ values, factor, at }: Series, index: number): number =>
  at ? at(index) : Number(values[index]) * factor;

/** The frames of a series that are drawn, in order: the lowest and the highest of every pixel. */
export const keptOf = (view: RunView, { values }: Series): number[] => thin(view.pixels, values);

/**
 * Draws a series, thinned to the lowest and the highest of every pixel.
 * @param y pixels of a value
 * @param floorPx where a filled area ends
 * @param kept as {@link keptOf} gives them, if they are known already
 */
export function traceOf(
  view: RunView,
  series: Series,
  y: (value: number) => number,
  floorPx: number,
  kept: readonly number[] = keptOf(view, series),
): Trace {
  const { tone, dash, name, breaks } = series;
  const [drawn, left] = split(series, kept);
  const xs = drawn.map((i) => tenth(view.x(Number(view.elapsedS[i]))));
  const ys = drawn.map((i) => tenth(y(valueAt(series, i))));
  const strokes = strokesOf(drawn, left.length === 0 ? breaks : [...breaks, ...left].sort((a, b) => a - b));
  const line = series.stepped ? stepsOf : lineOf;
  const draw = ([from, to]: Stroke) => line(xs, ys, from, to);
  const close = ([from]: Stroke) => `V${tenth(floorPx)}H${xs[from]}Z`;
  return {
    name,
    tone,
    dash,
    xs,
    ys,
    path: strokes.map(draw).join(''),
    area: series.filled ? strokes.map((stroke) => draw(stroke) + close(stroke)).join('') : '',
  };
}

/** Frames that are drawn, and those that lie too low; a line is broken where it leaves some out. */
function split(series: Series, kept: readonly number[]): [drawn: readonly number[], left: readonly number[]] {
  const { from } = series;
  if (from === undefined) return [kept, []];
  const high = (i: number) => valueAt(series, i) >= from;
  return [kept.filter(high), kept.filter((i) => !high(i))];
}

/** First and last place in the kept points of one unbroken line. */
type Stroke = readonly [number, number];

function strokesOf(kept: readonly number[], breaks: readonly number[]): Stroke[] {
  const strokes: Stroke[] = [];
  let from = 0;
  let next = 0;
  for (let place = 1; place < kept.length; place++) {
    const index = Number(kept[place]);
    while (next < breaks.length && Number(breaks[next]) <= Number(kept[place - 1])) next += 1;
    if (next >= breaks.length || Number(breaks[next]) > index) continue;
    strokes.push([from, place - 1]);
    from = place;
  }
  if (kept.length > 0) strokes.push([from, kept.length - 1]);
  return strokes;
}

function lineOf(xs: readonly number[], ys: readonly number[], from: number, to: number): string {
  let path = `M${xs[from]} ${ys[from]}`;
  for (let place = from + 1; place <= to; place++) path += `L${xs[place]} ${ys[place]}`;
  return path;
}

/** Across to the place of each change, and there up or down. */
function stepsOf(xs: readonly number[], ys: readonly number[], from: number, to: number): string {
  let path = `M${xs[from]} ${ys[from]}`;
  for (let place = from + 1; place <= to; place++) {
    if (ys[place] !== ys[place - 1]) path += `H${xs[place]}V${ys[place]}`;
    else if (place === to) path += `H${xs[place]}`;
  }
  return path;
}

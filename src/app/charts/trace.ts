/** One quantity over the run as a line of pixels. */
import type { RunView } from './runView.ts';
import { thin } from './thin.ts';

/** Series colours of the theme. */
export type Tone = 'blue' | 'verm' | 'green' | 'purple' | 'amber';

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

/**
 * Draws a series, thinned to the lowest and the highest of every pixel.
 * @param y pixels of a value
 * @param floorPx where a filled area ends
 */
export function traceOf(view: RunView, series: Series, y: (value: number) => number, floorPx: number): Trace {
  const { values, factor, tone, dash, name } = series;
  const kept = thin(view.pixels, values);
  const xs = kept.map((i) => tenth(view.x(Number(view.elapsedS[i]))));
  const ys = kept.map((i) => tenth(y(Number(values[i]) * factor)));
  const strokes = strokesOf(kept, series.breaks);
  const draw = ([from, to]: Stroke) => lineOf(xs, ys, from, to);
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

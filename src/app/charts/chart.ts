/** What a chart of the run is made of, whatever it shows. */
import type { Schedule } from '../../engine/schedule-types.ts';
import type { CellFigure } from '../working/cellFigures.ts';
import type { PlacedName } from './names.ts';
import type { RunView } from './runView.ts';
import type { Domain } from './scale.ts';
import type { SkyDrawing } from './skyLabels.ts';
import type { SunLane } from './sunLanes.ts';
import { type LineStyle, type Series, type Tone, type Trace, valueAt } from './trace.ts';

/** One line of the read-out. */
export interface Reading {
  /** Swatch of the line it belongs to; null for what is not drawn. */
  style: LineStyle | null;
  name: string;
  value: string;
  unit: string;
  /** Name of its working, if it has one. */
  of?: string;
}

/** Something is done by hand, something runs out, or a value stands out. */
export type MomentKind = 'change' | 'end' | 'value';

/** A moment marked in a chart. */
export interface Mark {
  x: number;
  kind: MomentKind;
  /** On the line, if it marks a value and not only a moment. */
  y: number | null;
  /** Empty if there is no room for it. */
  label: string;
  /** Middle of the label. */
  labelX: number;
  /** Foot of the label. */
  labelY: number;
}

/** A hatched stretch of values. */
export interface Band {
  from: number;
  to: number;
  kind: 'reserve' | 'guard';
  /** Of the only line that it concerns; null if it concerns several. */
  style: LineStyle | null;
}

/** A level that means something, over the whole run or a part of it. */
export interface Level {
  value: number;
  /** Pixels; null: over the whole width. */
  fromX: number | null;
  toX: number | null;
  kind: 'limit' | 'exceeded' | 'zero' | 'horizon' | 'twilight';
}

/** Frames one after another that something is wrong with, hatched over the whole height. */
export interface Stretch {
  fromX: number;
  toX: number;
  /** Said in the middle of its foot; empty if there is no room for it. */
  label: string;
}

/** Height of the foot of a stretch's label over the bottom of the plot. */
export const STRETCH_FOOT_PX = 8;

/** A ring under the cursor. */
export interface Dot {
  y: number;
  tone: Tone;
}

/** A column of the table: the same figures in words. */
export interface TableColumn {
  heading: string;
  cell(index: number): string;
  /** Name of the working of the figure in it; null where it has none. */
  of?: (index: number) => string | null;
  /** In its place, where a cell has several figures, or words around one. */
  figures?: (index: number) => readonly CellFigure[];
}

/** What can be edited in a chart of positions: the tracks of these axes, on a scale of these positions. */
export interface Editable {
  axes: readonly string[];
  unit: 'mm' | 'deg';
  low: number;
  high: number;
}

/** A chart, worked out for one width. Pixels count from the top left corner of the plot. */
export interface ChartModel {
  id: string;
  title: string;
  /** What the figures on its axis are. */
  unit: string;
  heightPx: number;
  domain: Domain;
  ticks: { value: number; label: string }[];
  traces: Trace[];
  /** Names of lines and of levels, in place. */
  names: PlacedName[];
  bands: Band[];
  levels: Level[];
  marks: Mark[];
  /** Places of what the camera changes by itself: small teeth along the top. */
  teeth?: readonly number[];
  /** Places of what is changed by hand, where it is too often for a mark each: wedges along the top. */
  wedges?: readonly number[];
  stretches?: readonly Stretch[];
  /** What stands on the sky at full strength; without it the sky is a tint behind the chart. */
  overSky?: SkyDrawing;
  /** Rows of the sun at its foot. */
  lanes?: readonly SunLane[];
  editable?: Editable;
  /** The chart in words. */
  summary: string;
  /** Says it instead of an empty plot. */
  note: string | null;
  read(index: number): Reading[];
  dots(index: number): Dot[];
  table: TableColumn[];
}

/** Room above and below the domain for what stands at its ends. */
const PAD_PX = 8;

/** Pixels of a value in a plot: high values at the top. */
export function yScale([low, high]: Domain, heightPx: number): (value: number) => number {
  const slope = (heightPx - 2 * PAD_PX) / (high - low);
  return (value) => heightPx - PAD_PX - (value - low) * slope;
}

/**
 * The whole domain of a plot with its padding: what the axis has to span.
 * @param footPx - height that is added under the plot
 */
export function paddedDomain([low, high]: Domain, heightPx: number, footPx = 0): Domain {
  const perPx = (high - low) / (heightPx - 2 * PAD_PX);
  return [low - (PAD_PX + footPx) * perPx, high + PAD_PX * perPx];
}

/** Rings of several series at a frame; none where a value is not finite, or not drawn. */
export function dotsOf(series: readonly Series[], y: (value: number) => number, index: number): Dot[] {
  return series
    .filter((one) => one.from === undefined || valueAt(one, index) >= one.from)
    .map((one) => ({ y: y(valueAt(one, index)), tone: one.tone }))
    .filter((dot) => Number.isFinite(dot.y));
}

/** Place of a frame, counted from 1. */
export const xOfFrame = (view: RunView, frame: number): number => view.x(Number(view.elapsedS[frame - 1]));

/** Indices at which a frame number, counted from 1, begins something new; sorted, the first frame left out. */
export const breaksAt = (frames: readonly number[]): number[] =>
  frames
    .map((frame) => frame - 1)
    .filter((index) => index > 0)
    .sort((a, b) => a - b);

/** Number of frames. */
export const frameCount = (schedule: Schedule): number => schedule.columns.elapsedS.length;

/** Height of a plot that has its read-out beside it: the usual one, or more for many readings. */
export const heightFor = (usualPx: number, readings: number): number => Math.max(usualPx, readings * 22 + 38);

/** The run on a strip of pixels: which second lies where, and which frame is nearest. */

import type { Schedule, ScheduleEvent } from '../../engine/schedule-types.ts';
import { lastWhere } from '../../engine/search.ts';
import { type ClockTick, clockTicks } from './clockTicks.ts';
import { type Domain, linear, niceStep } from './scale.ts';
import { bucketStarts } from './thin.ts';

/** One x scale for all charts of the run. */
export interface RunView {
  schedule: Schedule;
  /** Width of the plot, without the column of figures. */
  widthPx: number;
  /** Seconds from the first shutter opening at the left and the right edge. */
  domain: Domain;
  /** Pixels of a moment, seconds from the first shutter opening. */
  x(elapsedS: number): number;
  elapsedS: Float64Array;
  /** First frame of each pixel, counted from 0, and the number of frames at the end. */
  pixels: Int32Array;
}

/** Free room before the first frame and after the last. */
export const EDGE_PX = 10;

/** The view of a whole run on a plot of that width. */
export function runView(schedule: Schedule, widthPx: number): RunView {
  const { elapsedS, intervalS } = schedule.columns;
  const last = elapsedS.length - 1;
  // One frame has no width: its interval stands in.
  const lengthS = elapsedS[last] || intervalS[0] || 1;
  const edgeS = (lengthS * EDGE_PX) / Math.max(1, widthPx - 2 * EDGE_PX);
  const domain: Domain = [-edgeS, lengthS + edgeS];
  const x = linear(domain, [0, widthPx]);
  const pixels = bucketStarts(elapsedS, Math.max(1, Math.round(widthPx)));
  return { schedule, widthPx, domain, x, elapsedS, pixels };
}

/** Index of the frame whose shutter opens nearest to that pixel. */
export function frameAtPx({ domain, widthPx, elapsedS }: RunView, px: number): number {
  const wanted = linear([0, widthPx], domain)(px);
  const last = elapsedS.length - 1;
  const low = lastWhere(0, last, (k) => Number(elapsedS[k]) <= wanted);
  const high = Math.min(low + 1, last);
  return wanted - Number(elapsedS[low]) <= Number(elapsedS[high]) - wanted ? low : Math.max(low, high);
}

/** A mark of an axis with its place. */
export interface PlacedTick {
  x: number;
  /** Middle of its label: beside the mark where it would stand over the edge. */
  labelX: number;
  label: string;
}

const CHARACTER_PX = 7.4;

const halfWidth = (label: string): number => (label.length * CHARACTER_PX) / 2;

/** Round local times along the run, far enough apart to be read. */
export function clockAxis(schedule: Schedule, view: RunView): PlacedTick[] {
  const { startMs, offsets } = schedule;
  const [from, to] = view.domain.map((s) => startMs + s * 1000) as [number, number];
  const place = ({ ms, label }: ClockTick): PlacedTick => {
    const x = view.x((ms - startMs) / 1000);
    return { x, labelX: x, label };
  };
  const inside = ({ x, label }: PlacedTick) =>
    x >= halfWidth(label) - 4 && x <= view.widthPx - halfWidth(label) + 2;
  return clockTicks(from, to, offsets, view.widthPx / 72)
    .map(place)
    .filter(inside);
}

/** Round frame numbers along the run, with the first and the last. */
export function frameAxis({ elapsedS, x, widthPx }: RunView): PlacedTick[] {
  const frames = elapsedS.length;
  const at = (frame: number): PlacedTick => {
    const label = String(frame);
    const mark = x(Number(elapsedS[frame - 1]));
    return { x: mark, labelX: Math.min(mark, widthPx - halfWidth(label)), label };
  };
  const gap = 32 + CHARACTER_PX * String(frames).length;
  const spanPx = at(frames).x - at(1).x;
  const step = Math.max(1, niceStep((frames * gap) / Math.max(1, spanPx)));
  const last = at(frames);
  const ticks = [at(1)];
  for (let frame = step === 1 ? 2 : step; frame < frames; frame += step) ticks.push(at(frame));
  const clear = ticks.filter(
    (tick, i) => i === 0 || (last.x - tick.x >= gap && tick.x - at(1).x >= gap * 0.6),
  );
  return frames > 1 ? [...clear, last] : clear;
}

/** Index of the nearest event before (-1) or after (1) a frame; the frame itself if there is none. */
export function neighbouringEvent(
  events: readonly ScheduleEvent[],
  index: number,
  direction: -1 | 1,
): number {
  const beyond = events.map((event) => event.frame - 1).filter((at) => (at - index) * direction > 0);
  if (beyond.length === 0) return index;
  return direction > 0 ? Math.min(...beyond) : Math.max(...beyond);
}

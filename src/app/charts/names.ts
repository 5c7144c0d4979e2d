/** Where the name of a line stands: on the line, as far from everything else as there is room. */
import { firstWhere } from '../../engine/search.ts';
import { EDGE_PX } from './runView.ts';
import { linear } from './scale.ts';
import type { Trace } from './trace.ts';

/** A rectangle, pixels from the top left corner of the plot. */
export interface Box {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

/** A placed text; its foot is `y`, its middle `x`. */
export interface PlacedName {
  text: string;
  x: number;
  y: number;
}

const CHARACTER_PX = 6.6;
const HEIGHT_PX = 14;
const GAP_PX = 4;
/** Beyond this, more room is no better. */
const ROOMY_PX = 12;
/** A name nearer to a line, or on one, is left to the read-out. */
const TIGHT_PX = -2;
const PLACES = [0.88, 0.76, 0.64, 0.52, 0.4, 0.28, 0.16, 0.94, 0.08];

/** The box that a text of 12 px takes, by its middle and its foot. */
export const boxOf = (middle: number, foot: number, width: number): Box => ({
  left: middle - width / 2,
  right: middle + width / 2,
  top: foot - 11,
  bottom: foot + 4,
});

/** Estimated width of a text of 12 px. */
export const textWidth = (text: string): number => text.length * CHARACTER_PX;

/**
 * A place for the name of every trace, above or below its line; none where all places are taken.
 * @param taken boxes that already stand in the plot
 * @param size of the plot
 */
export function placeNames(
  traces: readonly Trace[],
  taken: readonly Box[],
  size: { widthPx: number; heightPx: number },
): PlacedName[] {
  const boxes = [...taken];
  return traces.flatMap((trace) => {
    const best = candidates(trace, size)
      .map((box, order) => ({ box, score: roomAround(box, traces, boxes) - order * 0.01 }))
      .reduce<{ box: Box; score: number } | null>((a, b) => (a && a.score >= b.score ? a : b), null);
    if (!best || best.score < TIGHT_PX) return [];
    boxes.push(best.box);
    const { left, right, bottom } = best.box;
    return [{ text: trace.name, x: (left + right) / 2, y: bottom - 3 }];
  });
}

function candidates(trace: Trace, { widthPx, heightPx }: { widthPx: number; heightPx: number }): Box[] {
  const width = textWidth(trace.name);
  return PLACES.flatMap((share) => {
    const clear = width / 2 + EDGE_PX + 2;
    const middle = Math.min(Math.max(widthPx * share, clear), widthPx - clear);
    const span = rangeOver(trace, middle - width / 2, middle + width / 2);
    if (!span) return [];
    const boxAt = (top: number): Box => ({
      left: middle - width / 2,
      right: middle + width / 2,
      top,
      bottom: top + HEIGHT_PX,
    });
    return [boxAt(span.top - GAP_PX - HEIGHT_PX), boxAt(span.bottom + GAP_PX)].filter(
      (box) => box.top >= 0 && box.bottom <= heightPx,
    );
  });
}

/** Least distance of a box to all lines and boxes, up to what is roomy; negative if it lies on one. */
export function roomAround(box: Box, traces: readonly Trace[], taken: readonly Box[]): number {
  let room = ROOMY_PX;
  for (const trace of traces) {
    const span = rangeOver(trace, box.left, box.right);
    if (span) room = Math.min(room, Math.max(box.top - span.bottom, span.top - box.bottom));
  }
  for (const other of taken) {
    if (other.right < box.left || other.left > box.right) continue;
    room = Math.min(room, Math.max(box.top - other.bottom, other.top - box.bottom) - GAP_PX);
  }
  return room;
}

/** Highest and lowest pixel of a line over a stretch; null if it does not pass there. */
function rangeOver({ xs, ys }: Trace, left: number, right: number): { top: number; bottom: number } | null {
  const last = xs.length - 1;
  if (last < 0 || Number(xs[0]) > right || Number(xs[last]) < left) return null;
  const first = firstAtOrAfter(xs, left);
  const edge = crossing(xs, ys, first, left);
  let top = edge;
  let bottom = edge;
  const include = (y: number) => {
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  };
  let i = first;
  for (; i <= last && Number(xs[i]) <= right; i++) include(Number(ys[i]));
  include(crossing(xs, ys, i, right));
  return { top, bottom };
}

const firstAtOrAfter = (xs: readonly number[], x: number): number =>
  firstWhere(0, xs.length, (i) => Number(xs[i]) >= x);

/** The line's y at x, between the point before `i` and the point `i`; at its ends, that of the end. */
function crossing(xs: readonly number[], ys: readonly number[], i: number, x: number): number {
  const last = xs.length - 1;
  if (i <= 0) return Number(ys[0]);
  if (i > last) return Number(ys[last]);
  const [x0, x1] = [Number(xs[i - 1]), Number(xs[i])];
  return linear([x0, x1], [Number(ys[i - 1]), Number(ys[i])])(x);
}

/** A place that a text could take: its middle and its foot. */
export interface Spot {
  x: number;
  y: number;
}

/**
 * The first of some spots where a text meets neither a line nor anything that stands there; else the roomiest where
 * it hardly does.
 * @param taken boxes that stand already; the chosen one is added
 * @returns null if everywhere the text would meet another one, or be crossed
 */
export function placeText(
  text: string,
  spots: readonly Spot[],
  traces: readonly Trace[],
  taken: Box[],
): PlacedName | null {
  const width = textWidth(text);
  const rooms = spots
    .map((spot) => ({ spot, box: boxOf(spot.x, spot.y, width) }))
    .filter(({ box }) => !taken.some((other) => overlap(box, other)))
    .map((place) => ({ ...place, room: roomAround(place.box, traces, []) }))
    .filter(({ room }) => room >= TIGHT_PX);
  const best = rooms.find(({ room }) => room >= 0) ?? rooms.sort((a, b) => b.room - a.room)[0];
  if (!best) return null;
  taken.push(best.box);
  return { text, ...best.spot };
}

/** Whether two boxes share any pixel. */
export const overlap = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

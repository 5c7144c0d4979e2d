/** Moments marked in a chart, with their labels where there is room for them. */
import type { Mark, MomentKind } from './chart.ts';
import { type Box, boxOf, overlap, roomAround, textWidth } from './names.ts';
import { EDGE_PX } from './runView.ts';
import type { Trace } from './trace.ts';

const GAP_PX = 9;
/** Moments nearer than this are drawn once. */
const APART_PX = 3;

/** A moment to mark. */
export interface Moment {
  x: number;
  kind: MomentKind;
  /** Place on the line, if it marks a value and not only a moment. */
  y?: number;
  label: string;
  /** What it says where the whole label would lie on a line. */
  short?: string;
}

/** What the labels have to keep clear of. */
export interface Surroundings {
  traces: readonly Trace[];
  widthPx: number;
  heightPx: number;
}

/**
 * Places each label beside its moment, on the side and at the height with the most room. Lines may pass behind a
 * label if need be, other labels and moments may not: then it is left out.
 */
export function placeMarks(moments: readonly Moment[], around: Surroundings): Mark[] {
  const apart = moments.filter((moment, i) => i === 0 || moment.x - Number(moments[i - 1]?.x) >= APART_PX);
  const taken: Box[] = [];
  return apart.map((moment) => {
    const whole = bestPlace(moment, moment.label, apart, taken, around);
    const label = moment.short !== undefined && !(whole && whole.room >= 0) ? moment.short : moment.label;
    const box = (label === moment.label ? whole : bestPlace(moment, label, apart, taken, around))?.box;
    if (box) taken.push(box);
    return {
      x: moment.x,
      kind: moment.kind,
      y: moment.y ?? null,
      label: box ? label : '',
      labelX: box ? (box.left + box.right) / 2 : moment.x,
      labelY: box ? box.bottom - 4 : 0,
    };
  });
}

/** Whether a moment's rule, or its dot on the line, would stand in a label. */
const crosses = ({ x, y }: Moment, box: Box): boolean =>
  x > box.left - 4 && x < box.right + 4 && (y === undefined || (y > box.top - 4 && y < box.bottom + 4));

interface PlacedBox {
  box: Box;
  /** Distance to the nearest line; negative on a line. */
  room: number;
}

function bestPlace(
  moment: Moment,
  label: string,
  all: readonly Moment[],
  taken: readonly Box[],
  { traces, widthPx, heightPx }: Surroundings,
): PlacedBox | null {
  const width = textWidth(label);
  const middles = [moment.x + GAP_PX + width / 2, moment.x - GAP_PX - width / 2];
  const feet = moment.y === undefined ? [22, heightPx * 0.45, heightPx * 0.7] : [moment.y - 7, moment.y + 18];
  const free = middles
    .flatMap((middle) => feet.map((foot) => boxOf(middle, foot, width)))
    .filter(
      (box) =>
        box.left >= EDGE_PX && box.right <= widthPx - EDGE_PX && box.top >= 0 && box.bottom <= heightPx,
    )
    .filter((box) => !taken.some((other) => overlap(box, other)))
    .filter((box) => !all.some((other) => crosses(other, box)));
  return free
    .map((box) => ({ box, room: roomAround(box, traces, []) }))
    .reduce<PlacedBox | null>((best, one) => (best && best.room >= one.room ? best : one), null);
}

/** Boxes of the labels that are shown. */
export const markBoxes = (marks: readonly Mark[]): Box[] =>
  marks
    .filter((mark) => mark.label !== '')
    .map((mark) => boxOf(mark.labelX, mark.labelY, textWidth(mark.label)));

/** Which frames have the longest cycle, the shortest, or the same one. */
import type { Columns, Schedule } from '../../engine/schedule-types.ts';

/** Cycles that differ by less are read as the same: figures are shown to a tenth of a second. */
export const ALIKE_S = 0.05;

/** Seconds of the longer lane of a frame, counted from 0. */
export const laneS = ({ cameraS, rigS }: Columns, index: number): number =>
  Math.max(Number(cameraS[index]), Number(rigS[index]));

/** Index of the frame with the shortest cycle; the first of several. */
export function shortestCycle({ columns }: Schedule): number {
  let shortest = 0;
  for (let i = 1; i < columns.elapsedS.length; i++) {
    if (laneS(columns, i) < laneS(columns, shortest)) shortest = i;
  }
  return shortest;
}

/** First and last index of the unbroken row of frames whose cycles are alike. */
export function alikeAround({ columns }: Schedule, index: number): [number, number] {
  const spans = [columns.cameraS, columns.rigS, columns.intervalS].map((column) => spanAlike(column, index));
  return [Math.max(...spans.map(([first]) => first)), Math.min(...spans.map(([, last]) => last))];
}

function spanAlike(column: Float64Array, index: number): [number, number] {
  const own = Number(column[index]);
  let first = index;
  let last = index;
  while (first > 0 && Math.abs(Number(column[first - 1]) - own) < ALIKE_S) first -= 1;
  while (last < column.length - 1 && Math.abs(Number(column[last + 1]) - own) < ALIKE_S) last += 1;
  return [first, last];
}

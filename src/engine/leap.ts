/** Looking for frames without looking at all of them: what goes on slowly is not soon where it is far from. */
import type { AxisColumns } from './schedule-types.ts';

// Sums carry a rounding: rather a frame too few.
const SAFE = 1 - 1e-9;

/**
 * How many frames to go on by, at least 1: those left out cannot close a gap.
 * @param gap - how far a value is from where it matters
 * @param mostAFrame - how much it changes at most from each frame to the next, at least 0
 */
export const leap = (gap: number, mostAFrame: number): number =>
  gap > 0 ? Math.max(1, Math.floor((gap / mostAFrame) * SAFE)) : 1;

/**
 * Index of the first frame at which an axis stands at a position that it takes; -1 if it never does.
 * @param columns - steps of each frame, and the largest number of steps from one to the next
 */
export function firstAt(
  { steps, largestMoveSteps }: Pick<AxisColumns, 'steps' | 'largestMoveSteps'>,
  position: number,
): number {
  for (let k = 0; k < steps.length; ) {
    const gap = Math.abs((steps[k] as number) - position);
    if (gap === 0) return k;
    k += leap(gap, largestMoveSteps);
  }
  return -1;
}

/** A value of every frame, and how much it changes at most from each frame to the next. */
export interface Gradual {
  /** @param at - index of a frame, or between two */
  valueAt: (at: number) => number;
  mostAFrame: number;
}

/** First frame, counted from 1, whose value is over a limit; `otherwise` if that of none is. */
export function firstOver(
  frames: number,
  limit: number,
  { valueAt, mostAFrame }: Gradual,
  otherwise: number,
): number {
  for (let k = 0; k < frames; ) {
    const gap = limit - valueAt(k);
    if (gap < 0) return k + 1;
    k += leap(gap, mostAFrame);
  }
  return otherwise;
}

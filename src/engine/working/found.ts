/** Figures that are found by going through the frames of a run: which one, and on how many. */
import { type Draft, sameAs } from './make.ts';

/** Stretches that are named; what more there is stands as 'and more'. */
const MOST_NAMED = 4;

/**
 * Where along a run something holds: `Counted through all 386 frames: 12, 40 to 61 and more.`
 * @param frames - of the run
 * @param holds - of a frame, counted from 0
 * @returns a sentence with the first stretches, if there are any
 */
export function whereRemark(frames: number, holds: (k: number) => boolean): string {
  const named: string[] = [];
  let more = '';
  for (let k = 0; k < frames && more === ''; k += 1) {
    if (!holds(k)) continue;
    const first = k + 1;
    while (k + 1 < frames && holds(k + 1)) k += 1;
    if (named.length === MOST_NAMED) more = ' and more';
    else named.push(k + 1 > first ? `${first} to ${k + 1}` : `${first}`);
  }
  const where = named.length > 0 ? `: ${named.join(', ')}${more}` : '';
  return `Counted through all ${frames} frames${where}.`;
}

/** On how many frames something holds. @param holds - of a frame, counted from 0 */
export function countWhere(frames: number, holds: (k: number) => boolean): number {
  let count = 0;
  for (let k = 0; k < frames; k += 1) if (holds(k)) count += 1;
  return count;
}

/** A frame that decides, or where something begins, counted from 1. */
export const frameFound = (title: string, words: string, frame: number): Draft =>
  sameAs(title, words, frame, '', null, {
    frame,
    remarks: ['Found by going through all frames; the first of several.'],
  });

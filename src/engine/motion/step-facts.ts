/** What a column of whole-step positions says of itself: its range, its moves, where it turns and where it stalls. */
import type { AxisColumns } from '../schedule-types.ts';
import { inBlocks } from './blocks.ts';
import type { Span } from './tracks.ts';

export type StepFacts = Pick<
  AxisColumns,
  | 'lowestSteps'
  | 'highestSteps'
  | 'largestMoveSteps'
  | 'smallestMoveSteps'
  | 'moves'
  | 'reversals'
  | 'firstReversal'
>;

/** Range, moves and reversals of an axis's positions. */
export function stepFacts(steps: Int32Array): StepFacts {
  const found = Int32Array.of(0, 0, NONE, 0);
  inBlocks(steps.length, (from, to) => scan(steps, Math.max(1, from), to, found));
  const [farthestUp = 0, farthestDown = 0, smallestLess = 0, stills = 0] = found;
  return {
    largestMoveSteps: Math.max(farthestUp, -farthestDown),
    smallestMoveSteps: smallestLess === NONE ? 0 : smallestLess + 1,
    moves: steps.length - 1 - stills,
    ...turnFacts(steps, farthestUp > 0 && farthestDown < 0),
  };
}

/** Range and reversals. @param bothWays - whether some moves go up and some go down */
export const turnFacts = (steps: Int32Array, bothWays: boolean): Turns =>
  // Who has only gone one way is at an end of it at either end of the run.
  bothWays ? turnsOf(steps) : oneWay(steps[0] as number, steps.at(-1) as number);

// The largest whole number of 32 bits; also, all of them but the sign.
const NONE = 0x7fff_ffff;

/** @param found - farthest up, farthest down, smallest move less one, frames without a move: so far, and then */
function scan(steps: Int32Array, from: number, to: number, found: Int32Array): void {
  let farthestUp = found[0] as number;
  let farthestDown = found[1] as number;
  // Of the smallest move one less: without its sign, no move at all is then larger than any.
  let smallestLess = found[2] as number;
  let stills = found[3] as number;
  let before = steps[from - 1] as number;
  for (let k = from; k < to; k += 1) {
    const position = steps[k] as number;
    const move = position - before;
    before = position;
    if (move > farthestUp) farthestUp = move;
    else if (move < farthestDown) farthestDown = move;
    const less = (move < 0 ? -move : move) - 1;
    stills -= less >> 31;
    const unsigned = less & NONE;
    if (unsigned < smallestLess) smallestLess = unsigned;
  }
  found[0] = farthestUp;
  found[1] = farthestDown;
  found[2] = smallestLess;
  found[3] = stills;
}

type Turns = Pick<AxisColumns, 'lowestSteps' | 'highestSteps' | 'reversals' | 'firstReversal'>;

const oneWay = (from: number, to: number): Turns => ({
  lowestSteps: Math.min(from, to),
  highestSteps: Math.max(from, to),
  reversals: 0,
  firstReversal: null,
});

function turnsOf(steps: Int32Array): Turns {
  let before = steps[0] as number;
  const turns = oneWay(before, before);
  let facing = 0;
  for (let k = 1; k < steps.length; k += 1) {
    const position = steps[k] as number;
    if (position === before) continue;
    const direction = position < before ? -1 : 1;
    before = position;
    if (direction === facing) continue;
    // Only at a turn, and at the very end, can a position be an extreme.
    const extreme = steps[k - 1] as number;
    if (facing !== 0) {
      turns.reversals += 1;
      turns.firstReversal ??= k + 1;
    }
    facing = direction;
    widen(turns, extreme);
  }
  widen(turns, before);
  return turns;
}

function widen(turns: Turns, position: number): void {
  if (position < turns.lowestSteps) turns.lowestSteps = position;
  if (position > turns.highestSteps) turns.highestSteps = position;
}

type Repeats = Pick<AxisColumns, 'repeats' | 'firstRepeat'>;

/**
 * Frames that repeat the position before them though their track goes on.
 * @param spans - where it does
 * @param thereAndBack - whether as many follow on the way back
 */
export function repeatsOf(
  { steps, moves }: Pick<AxisColumns, 'steps' | 'moves'>,
  spans: readonly Span[],
  thereAndBack: boolean,
): Repeats {
  const within = spans.flatMap(({ begin, end }) => {
    // Most tracks go on all the time.
    const all = begin === 1 && end === steps.length;
    const repeats = all ? steps.length - 1 - moves : stillsWithin(steps, begin, end);
    return repeats > 0 ? [{ begin, repeats }] : [];
  });
  const [first] = within;
  if (!first) return { repeats: 0, firstRepeat: null };
  const repeats = within.reduce((sum, span) => sum + span.repeats, 0);
  let k = first.begin;
  while (steps[k] !== steps[k - 1]) k += 1;
  return { repeats: thereAndBack ? 2 * repeats : repeats, firstRepeat: k + 1 };
}

function stillsWithin(steps: Int32Array, begin: number, end: number): number {
  let stills = 0;
  let before = steps[begin - 1] as number;
  for (let k = begin; k < end; k += 1) {
    const position = steps[k] as number;
    if (position === before) stills += 1;
    before = position;
  }
  return stills;
}

/**
 * The same of an axis whose positions come from elsewhere: between its first move and its last, where another axis
 * moves and it does not.
 * @param moveS - seconds that the rig moves after each frame
 * @param rigMoves - after how many frames it does
 */
export function repeatsBeside(
  { steps, moves }: Pick<AxisColumns, 'steps' | 'moves'>,
  moveS: Float64Array,
  rigMoves: number,
): Repeats {
  if (moves === 0) return { repeats: 0, firstRepeat: null };
  let first = 0;
  while (steps[first + 1] === steps[first]) first += 1;
  let last = steps.length - 2;
  while (steps[last + 1] === steps[last]) last -= 1;
  // Most axes move from the first frame to the last: outside are few frames.
  const outside = countAbove0(moveS, 0, first) + countAbove0(moveS, last + 1, moveS.length);
  const repeats = rigMoves - outside - moves;
  if (repeats === 0) return { repeats, firstRepeat: null };
  let k = first;
  while (steps[k + 1] !== steps[k] || moveS[k] === 0) k += 1;
  return { repeats, firstRepeat: k + 2 };
}

/** How many entries from an index to before another are above 0. */
export function countAbove0(column: Float64Array, from: number, to: number): number {
  let count = 0;
  for (let k = from; k < to; k += 1) if ((column[k] as number) > 0) count += 1;
  return count;
}

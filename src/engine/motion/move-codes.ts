/**
 * Moves of a few steps: those that all axes make after a frame fit into one number, its code, and every frame of a code
 * is like any other. A run of many frames hardly has other moves.
 */
import type { Room } from '../room.ts';
import type { AxisColumns } from '../schedule-types.ts';
import { BLOCK, inBlocks } from './blocks.ts';
import { type StepFacts, turnFacts } from './step-facts.ts';

// Moves of up to three steps, of so many axes: a table of all codes stays small beside the columns of a run.
const BITS = 2;
const MOST_AXES = 6;

/** The moves of a run in codes. */
export interface MoveCodes {
  /** Code of each frame. */
  of: Int32Array;
  /** How many codes there can be. */
  width: number;
  /** Those that there are, in order. */
  seen: Int32Array;
  /** What the positions of each axis say of themselves. */
  facts: StepFacts[];
  /** After how many frames any axis moves. */
  moves: number;
}

/** Steps that an axis makes, by its index, in a frame of a code. */
export const sizeIn = (code: number, axis: number): number => (code >> (BITS * axis)) & ((1 << BITS) - 1);

/**
 * Puts the moves of all axes into codes.
 * @returns null if there are too many axes, or moves that are too long
 */
export function moveCodes(axes: readonly Pick<AxisColumns, 'steps'>[], room: Room): MoveCodes | null {
  const frames = axes[0]?.steps.length ?? 0;
  if (frames === 0 || axes.length > MOST_AXES) return null;
  const of = room.i32(frames).fill(0);
  const columns = axes.map(({ steps }) => steps);
  if (!codeAll(of, columns)) return null;
  // Fewer axes are taken more than once.
  const width = 1 << (BITS * Math.max(TOGETHER, axes.length));
  const counts = new Int32Array(width);
  // The last frame has no move.
  inBlocks(frames - 1, (from, to) => count(counts, of, from, to));
  const seen = seenOf(counts);
  const facts = columns.map((steps, a): StepFacts => {
    const own = seen.filter((code) => sizeIn(code, a) > 0);
    const sizes = own.map((code) => sizeIn(code, a));
    const sumOf = (worth: (code: number) => number) =>
      own.reduce((sum, code) => sum + worth(code) * (counts[code] as number), 0);
    // Who gets as far as all moves together has only gone one way.
    const bothWays =
      sumOf((code) => sizeIn(code, a)) > Math.abs((steps[frames - 1] as number) - (steps[0] as number));
    return {
      largestMoveSteps: Math.max(0, ...sizes),
      smallestMoveSteps: sizes.length > 0 ? Math.min(...sizes) : 0,
      moves: sumOf(() => 1),
      ...turnFacts(steps, bothWays),
    };
  });
  return { of, width, seen, facts, moves: frames - 1 - (counts[0] as number) };
}

/** The codes that there are; 0 is always one of them. */
function seenOf(counts: Int32Array): Int32Array {
  const seen = [0];
  for (let code = 1; code < counts.length; code += 1) if ((counts[code] as number) > 0) seen.push(code);
  return Int32Array.from(seen);
}

/**
 * Puts the moves of all axes into codes, until one is too long: most runs with such moves have one among their first.
 * @returns whether all were small
 */
function codeAll(of: Int32Array, columns: readonly Int32Array[]): boolean {
  const last = of.length - 1;
  // The last few axes are taken together with some before them, again: a code takes the same size twice.
  const first = Math.max(0, columns.length - TOGETHER);
  let sizes = 0;
  for (let from = 0; from < last && sizes >> BITS === 0; from += BLOCK)
    for (let a = 0; a < columns.length; a += TOGETHER) {
      const begin = Math.min(a, first);
      const one = columns[begin] as Int32Array;
      const two = columns[begin + 1] ?? one;
      const three = columns[begin + 2] ?? one;
      sizes |= codeMoves(of, one, two, three, BITS * begin, from, Math.min(from + BLOCK, last));
    }
  return sizes >> BITS === 0;
}

const TOGETHER = 3;

/**
 * Three axes at a time: a pass over memory costs more than its sums.
 * @returns the sizes of all moves put together, bit by bit
 */
function codeMoves(
  of: Int32Array,
  a: Int32Array,
  b: Int32Array,
  c: Int32Array,
  shift: number,
  from: number,
  to: number,
): number {
  // Known to be whole from here on: an argument may be anything, and would be looked at in each turn.
  const by = shift | 0;
  let sizes = 0;
  let aBefore = a[from] as number;
  let bBefore = b[from] as number;
  let cBefore = c[from] as number;
  // Two frames a turn: see `blocks.ts`.
  for (let k = from; k < to; k += 2) {
    const next = k + 1 < to ? k + 1 : k;
    const aNow = a[k + 1] as number;
    const bNow = b[k + 1] as number;
    const cNow = c[k + 1] as number;
    const aNext = a[next + 1] as number;
    const bNext = b[next + 1] as number;
    const cNext = c[next + 1] as number;
    const aSize = sizeOf(aBefore, aNow);
    const bSize = sizeOf(bBefore, bNow);
    const cSize = sizeOf(cBefore, cNow);
    const aNextSize = sizeOf(aNow, aNext);
    const bNextSize = sizeOf(bNow, bNext);
    const cNextSize = sizeOf(cNow, cNext);
    aBefore = aNext;
    bBefore = bNext;
    cBefore = cNext;
    sizes |= aSize | bSize | cSize | aNextSize | bNextSize | cNextSize;
    of[k] = (of[k] as number) | ((aSize | (bSize << BITS) | (cSize << (2 * BITS))) << by);
    of[next] = (of[next] as number) | ((aNextSize | (bNextSize << BITS) | (cNextSize << (2 * BITS))) << by);
  }
  return sizes;
}

/** Size of a move: a negative one by turning over all its bits, without a branch that would be guessed wrong. */
function sizeOf(from: number, to: number): number {
  // A whole number of 32 bits throughout; one that does not fit in is large either way.
  const move = (to - from) | 0;
  const sign = move >> 31;
  return ((move ^ sign) - sign) | 0;
}

function count(counts: Int32Array, of: Int32Array, from: number, to: number): void {
  for (let k = from; k < to; k += 1) {
    const code = of[k] as number;
    counts[code] = (counts[code] as number) + 1;
  }
}

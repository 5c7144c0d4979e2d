/**
 * Moves of a few steps: those that all axes make after a frame fit into one number, its code, and every frame of a code
 * is like any other. A run of many frames hardly has other moves.
 */
import type { Room } from '../room.ts';
import type { AxisColumns } from '../schedule-types.ts';
import { inBlocks } from './blocks.ts';
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
}

/** Steps that an axis makes, by its index, in a frame of a code. */
export const sizeIn = (code: number, axis: number): number => (code >> (BITS * axis)) & ((1 << BITS) - 1);

/**
 * Puts the moves of all axes into codes.
 * @returns null if there are too many axes, or moves that are too long
 */
export function moveCodes(axes: readonly Pick<AxisColumns, 'steps'>[], room: Room): MoveCodes | null {
  const frames = axes[0]?.steps.length ?? 0;
  if (frames === 0 || axes.length > MOST_AXES || !startsSmall(axes)) return null;
  const of = room.i32(frames).fill(0);
  const ways = axes.map(({ steps }, a) => codeAxis(of, steps, BITS * a));
  if (ways.some(({ sizes }) => sizes >> BITS > 0)) return null;
  const width = 1 << (BITS * axes.length);
  const counts = new Int32Array(width);
  // The last frame has no move.
  inBlocks(frames - 1, (from, to) => count(counts, of, from, to));
  const seen = Int32Array.from(counts.keys()).filter((code) => (counts[code] as number) > 0 || code === 0);
  const facts = axes.map(({ steps }, a): StepFacts => {
    const own = seen.filter((code) => sizeIn(code, a) > 0);
    const sizes = own.map((code) => sizeIn(code, a));
    const { up, down } = ways[a] as Ways;
    return {
      largestMoveSteps: Math.max(0, ...sizes),
      smallestMoveSteps: sizes.length > 0 ? Math.min(...sizes) : 0,
      moves: own.reduce((sum, code) => sum + (counts[code] as number), 0),
      ...turnFacts(steps, up && down),
    };
  });
  return { of, width, seen, facts };
}

/** Most runs with longer moves have one among their first: then there is nothing to begin. */
const startsSmall = (axes: readonly Pick<AxisColumns, 'steps'>[]): boolean =>
  axes.every(({ steps }) => {
    const first = steps.subarray(0, 64);
    return first.every((step, k) => Math.abs(step - (first[k - 1] ?? step)) >> BITS === 0);
  });

/** All sizes of an axis's moves put together, bit by bit; whether any goes up, whether any goes down. */
interface Ways {
  sizes: number;
  up: boolean;
  down: boolean;
}

function codeAxis(of: Int32Array, steps: Int32Array, shift: number): Ways {
  const found = new Int32Array(3);
  inBlocks(steps.length - 1, (from, to) => codeMoves(of, steps, shift, found, from, to));
  const [sizes = 0, up = 0, down = 0] = found;
  return { sizes, up: up < 0, down: down < 0 };
}

/** @param found - sizes; a negative number if any move goes up; one if any goes down: so far, and then */
function codeMoves(
  of: Int32Array,
  steps: Int32Array,
  shift: number,
  found: Int32Array,
  from: number,
  to: number,
): void {
  // Known to be whole from here on: an argument may be anything, and would be looked at in each turn.
  const by = shift | 0;
  let sizes = found[0] as number;
  let up = found[1] as number;
  let down = found[2] as number;
  let before = steps[from] as number;
  for (let k = from; k < to; k += 1) {
    const position = steps[k + 1] as number;
    // Whole numbers of 32 bits throughout; one that does not fit in is large either way.
    const move = (position - before) | 0;
    before = position;
    up |= -move;
    down |= move;
    // Its size, by turning over all bits of a negative one: no branch that would be guessed wrong.
    const sign = move >> 31;
    const size = (move ^ sign) - sign;
    sizes |= size;
    of[k] = (of[k] as number) | (size << by);
  }
  found[0] = sizes;
  found[1] = up;
  found[2] = down;
}

function count(counts: Int32Array, of: Int32Array, from: number, to: number): void {
  for (let k = from; k < to; k += 1) {
    const code = of[k] as number;
    counts[code] = (counts[code] as number) + 1;
  }
}

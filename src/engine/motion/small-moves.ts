/**
 * Moves of a few steps: those that all axes make after a frame fit into one number, its code, and every frame of a code
 * is like any other. A run of many frames hardly has other moves.
 */
import type { Axis, Plan } from '../plan/schema.ts';
import type { Room } from '../room.ts';
import type { AxisColumns } from '../schedule-types.ts';
import { inBlocks } from './blocks.ts';
import { addAxis, type Combined, noneCombined, type Sums } from './combined.ts';
import { fillSlot, type MoveTable, moveTable } from './move-table.ts';
import { moveMaker, type RingGiven } from './moves.ts';
import { takeUpOf } from './take-up.ts';

/** An axis that moves. */
export interface MovingAxis {
  axis: Axis;
  own: AxisColumns;
}

// A table of all codes stays small beside the columns of a run.
const MOST_BITS = 12;

/** Bits that hold the steps of any move of an axis. */
const bitsOf = ({ own }: MovingAxis): number => 32 - Math.clz32(own.largestMoveSteps);

/** Whether the moves of some axes are small, and none has lost motion to take up. */
const areSmall = (moving: readonly MovingAxis[]): boolean =>
  moving.reduce((bits, one) => bits + bitsOf(one), 0) <= MOST_BITS &&
  moving.every(({ axis, own }) => takeUpOf(axis).beyond === 0 && own.largestMoveSteps <= own.steps.length);

/**
 * Puts the moves of each frame together, and fills the seconds that each axis moves.
 * @param moving - all axes that move
 * @returns combinations by code; null if none moves, or not all moves are small
 */
export function smallMoves(
  plan: Plan,
  moving: readonly MovingAxis[],
  ring: RingGiven | null,
  room: Room,
): Combined | null {
  const frames = moving[0]?.own.steps.length;
  if (frames === undefined || !areSmall(moving)) return null;
  const of = room.i32(frames).fill(0);
  let bits = 0;
  const coded = moving.map((one) => {
    const table = tableOf(plan, one, ring);
    const shift = bits;
    const { steps, moveS } = one.own;
    const { durationS } = table;
    inBlocks(frames - 1, (from, to) => fillCodes(of, steps, moveS, durationS, shift, from, to));
    moveS[frames - 1] = 0;
    bits += bitsOf(one);
    return { table, shift, mask: (1 << bitsOf(one)) - 1 };
  });
  const codes = seenCodes(of, 1 << bits);
  const how = { inTurn: plan.move.order === 'inTurn', decayRate: ring?.decayRate ?? 0 };
  let combined = noneCombined(new Int32Array(codes.length), ring?.quietMatters ?? false);
  for (const { table, shift, mask } of coded)
    combined = addAxis(
      combined,
      codes.map((code) => (code >> shift) & mask),
      table,
      how,
    );
  const byCode = (sums: Sums) => spread(sums, combined.of, codes, 1 << bits);
  return { of, sums: byCode(combined.sums), otherwise: combined.otherwise && byCode(combined.otherwise) };
}

/** The moves of an axis: all that are no longer than its longest. */
function tableOf(plan: Plan, { axis, own }: MovingAxis, ring: RingGiven | null): MoveTable {
  const { stepsPerUnit, steps, largestMoveSteps } = own;
  const table = moveTable(moveMaker(plan, axis, ring), stepsPerUnit, steps, largestMoveSteps);
  for (let n = 1; n <= largestMoveSteps; n += 1) fillSlot(table, n, n, false);
  return table;
}

/** Adds the moves of an axis to the codes of a block, and fills their durations. */
function fillCodes(
  of: Int32Array,
  steps: Int32Array,
  moveS: Float64Array,
  durationS: Float64Array,
  shift: number,
  from: number,
  to: number,
): void {
  let before = steps[from] as number;
  for (let k = from; k < to; k += 1) {
    const position = steps[k + 1] as number;
    const move = position - before;
    before = position;
    // Its size, by turning over all bits of a negative one: no branch that would be guessed wrong.
    const sign = move >> 31;
    const size = (move ^ sign) - sign;
    of[k] = (of[k] as number) | (size << shift);
    moveS[k] = durationS[size] as number;
  }
}

/** The codes that there are, in order. */
function seenCodes(of: Int32Array, most: number): Int32Array {
  const seen = new Uint8Array(most);
  inBlocks(of.length, (from, to) => markSeen(seen, of, from, to));
  return Int32Array.from(seen.keys()).filter((code) => seen[code] === 1);
}

function markSeen(seen: Uint8Array, of: Int32Array, from: number, to: number): void {
  for (let k = from; k < to; k += 1) seen[of[k] as number] = 1;
}

/** Sums by code instead of by combination. */
function spread(sums: Sums, combinations: Int32Array, codes: Int32Array, most: number): Sums {
  const byCode = (values: readonly number[]): number[] => {
    const spreadOut = new Array<number>(most).fill(0);
    codes.forEach((code, i) => {
      spreadOut[code] = values[combinations[i] as number] as number;
    });
    return spreadOut;
  };
  return { durationS: byCode(sums.durationS), ringPx: byCode(sums.ringPx), decay: byCode(sums.decay) };
}

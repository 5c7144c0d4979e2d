/**
 * The moves of an axis as a table: moves are whole numbers of steps and mostly few of them, so that each is worked out
 * once, when it is first met.
 */
import { inBlocks } from './blocks.ts';
import { type Move, type MoveMaker, moveOf } from './moves.ts';
import { turnsBack } from './take-up.ts';

/** Moves by slot; slot 0 is no move at all. */
export interface MoveColumns {
  /** NaN until it is worked out. */
  durationS: Float64Array;
  /** Ring at the end of the move, px. */
  ringPx: Float64Array;
  /** What is left at the end of the move of a ring from before it. */
  decay: Float64Array;
}

/** The moves of one axis. */
export interface MoveTable extends MoveColumns {
  maker: MoveMaker;
  stepsPerUnit: number;
  /**
   * Moves of up to this many steps have slots of their own: n, or n + limit if they have lost motion to take up. Those
   * of more come after them, one after another.
   */
  limit: number;
  /** How many slots there are. */
  width: number;
  /** Seconds by which taking up lost motion makes it longer. */
  takeUpS: Float64Array;
  /** The same moves, quiet if these are not, and not if they are; null where it makes no difference. */
  otherwise: MoveColumns | null;
}

/**
 * An empty table for the moves between positions.
 * @param largest - most steps of a move
 */
export function moveTable(
  maker: MoveMaker,
  stepsPerUnit: number,
  steps: Int32Array,
  largest: number,
): MoveTable {
  const limit = Math.min(largest, steps.length);
  const longer = limit < largest ? longerThan(limit, steps) : 0;
  const width = 1 + ownSlots(maker, limit) + longer;
  const otherwise = maker.ring?.quietMatters ? moveColumns(width) : null;
  const takeUpS = new Float64Array(width);
  return { maker, stepsPerUnit, limit, width, ...moveColumns(width), takeUpS, otherwise };
}

const ownSlots = ({ takeUp }: MoveMaker, limit: number): number => (takeUp.beyond > 0 ? 2 : 1) * limit;

function moveColumns(width: number): MoveColumns {
  const durationS = new Float64Array(width).fill(Number.NaN);
  const decay = new Float64Array(width);
  durationS[0] = 0;
  decay[0] = 1;
  return { durationS, decay, ringPx: new Float64Array(width) };
}

function longerThan(limit: number, steps: Int32Array): number {
  let count = 0;
  for (let k = 1; k < steps.length; k += 1)
    if (Math.abs((steps[k] as number) - (steps[k - 1] as number)) > limit) count += 1;
  return count;
}

/** Works out the move of a slot. */
export function fillSlot(table: MoveTable, slot: number, steps: number, turned: boolean): void {
  const { maker, stepsPerUnit, otherwise } = table;
  const quiet = maker.ring?.quiet ?? false;
  const distance = steps / stepsPerUnit;
  const move = moveOf(maker, distance, turned, quiet);
  put(table, slot, maker, move);
  if (turned) table.takeUpS[slot] = move.durationS - moveOf(maker, distance, false, quiet).durationS;
  if (otherwise) put(otherwise, slot, maker, moveOf(maker, distance, turned, !quiet));
}

function put(columns: MoveColumns, slot: number, { ring }: MoveMaker, { durationS, ringPx }: Move): void {
  columns.durationS[slot] = durationS;
  columns.ringPx[slot] = ringPx;
  if (ring) columns.decay[slot] = Math.exp(-ring.decayRate * durationS);
}

/** Moves that have lost motion to take up, and the seconds that this costs. */
export interface TakenUp {
  takeUps: number;
  takeUpS: number;
}

/**
 * Fills the slot and the duration of the move after each frame; the last has none.
 * @param slots - to be filled, one entry a frame
 * @param moveS - to be filled, seconds
 */
export function fillSlots(
  slots: Int32Array,
  moveS: Float64Array,
  table: MoveTable,
  steps: Int32Array,
): TakenUp {
  const { limit, durationS, takeUpS } = table;
  const { side, beyond } = table.maker.takeUp;
  const taken = { takeUps: 0, takeUpS: 0 };
  if (beyond === 0 && limit < steps.length / FEW) {
    for (let size = 1; size <= limit; size += 1) fillSlot(table, size, size, false);
    inBlocks(steps.length - 1, (from, to) => fillSizes(slots, moveS, durationS, steps, from, to));
    slots.fill(0, -1);
    moveS.fill(0, -1);
    return taken;
  }
  // Without lost motion no move has any before it that it could turn back from.
  const followed = side === 0 && beyond > 0;
  let facing = beyond > 0 ? side : 0;
  let nextSlot = 1 + ownSlots(table.maker, limit);
  const last = steps.length - 1;
  for (let k = 0; k < last; k += 1) {
    const move = (steps[k + 1] as number) - (steps[k] as number);
    let slot = 0;
    if (move !== 0) {
      const size = move < 0 ? -move : move;
      const turned = turnsBack(move < 0 ? -1 : 1, facing);
      if (followed) facing = move < 0 ? -1 : 1;
      if (size > limit) {
        slot = nextSlot;
        nextSlot += 1;
      } else slot = turned ? size + limit : size;
      if (Number.isNaN(durationS[slot])) fillSlot(table, slot, size, turned);
      if (turned) {
        taken.takeUps += 1;
        taken.takeUpS += takeUpS[slot] as number;
      }
    }
    slots[k] = slot;
    moveS[k] = durationS[slot] as number;
  }
  slots[last] = 0;
  moveS[last] = 0;
  return taken;
}

// Of a table so much shorter than the run each move is worked out, whether there is one or not.
const FEW = 64;

/** Moves none of which depends on the one before it: their slots are their sizes. */
function fillSizes(
  slots: Int32Array,
  moveS: Float64Array,
  durationS: Float64Array,
  steps: Int32Array,
  from: number,
  to: number,
): void {
  let before = steps[from] as number;
  for (let k = from; k < to; k += 1) {
    const position = steps[k + 1] as number;
    const size = position < before ? before - position : position - before;
    before = position;
    slots[k] = size;
    moveS[k] = durationS[size] as number;
  }
}

/**
 * The moves of all axes of a frame put together. Each axis's ring decays from the end of its own move, and at the worst
 * they add up.
 *
 * A run has few combinations of moves, since axes that go slowly make one step or two a frame: frames with the same
 * combination have it worked out once.
 */
import { settleS } from '../ringing/ring.ts';
import type { MoveColumns, MoveTable } from './move-table.ts';

/** How moves put together end, by combination. */
export interface Ends {
  durationS: ArrayLike<number>;
  ringPx: ArrayLike<number>;
}

/** Moves put together, by combination; 0 is the one of no axis. */
interface Sums extends Ends {
  /** Seconds until all axes have arrived. */
  durationS: number[];
  /** Ring at that moment, px. */
  ringPx: number[];
  /** What is left then of a ring from before the move. */
  decay: number[];
}

/** The combinations of a run. */
export interface CombinedEnds {
  /** Combination of each frame. */
  of: Int32Array;
  sums: Ends;
  /** With the other choice of quiet moves; null where it makes no difference. */
  otherwise: Ends | null;
}

/** The same, as axes are added one by one. */
export interface Combined extends CombinedEnds {
  sums: Sums;
  otherwise: Sums | null;
}

const none = (): Sums => ({ durationS: [0], ringPx: [0], decay: [1] });

/**
 * Combinations of no axis yet.
 * @param of - one entry a frame, to be filled
 */
export const noneCombined = (of: Int32Array, quietMatters: boolean): Combined => ({
  of: of.fill(0),
  sums: none(),
  otherwise: quietMatters ? none() : null,
});

/** How an axis's move goes with those before it: when it starts, and what is left of a ring each second. */
interface Together {
  inTurn: boolean;
  decayRate: number;
}

// With more pairs than this, looking them up takes longer than working each frame out.
const MOST_PAIRS = 1 << 20;

/**
 * Adds an axis.
 * @param slots - its move after each frame
 */
export function addAxis(combined: Combined, slots: Int32Array, table: MoveTable, how: Together): Combined {
  const { of, sums, otherwise } = combined;
  const { width } = table;
  const next: Combined = { of, sums: none(), otherwise: otherwise && none() };
  const add = (before: number, slot: number): number => {
    if (otherwise && next.otherwise && table.otherwise)
      addMove(next.otherwise, otherwise, before, table.otherwise, slot, how);
    return addMove(next.sums, sums, before, table, slot, how);
  };
  const pairs = sums.durationS.length * width;
  if (pairs > MOST_PAIRS)
    for (let k = 0; k < of.length; k += 1) of[k] = add(of[k] as number, slots[k] as number);
  else fillPairs(of, slots, new Int32Array(pairs), width, add);
  return next;
}

/** Puts the combination of each pair, a combination before and a slot, where the one before was. */
function fillPairs(
  of: Int32Array,
  slots: Int32Array,
  known: Int32Array,
  width: number,
  add: (before: number, slot: number) => number,
): void {
  for (let k = 0; k < of.length; k += 1) {
    const before = of[k] as number;
    const slot = slots[k] as number;
    const pair = before * width + slot;
    let combination = known[pair] as number;
    if (combination === 0) {
      combination = add(before, slot);
      known[pair] = combination;
    }
    of[k] = combination;
  }
}

// A quotient of two numbers above this is right to all its digits.
const TINY = 1e-290;

/** What is left at the end of the longer of two moves of what is there at the end of the shorter. */
const leftOver = (longer: number, shorter: number, byS: number, decayRate: number): number =>
  longer > TINY ? longer / shorter : Math.exp(-decayRate * byS);

/** Adds a move to a combination. Returns the new one. */
function addMove(
  to: Sums,
  sums: Sums,
  before: number,
  moves: MoveColumns,
  slot: number,
  { inTurn, decayRate }: Together,
): number {
  const ringPx = sums.ringPx[before] as number;
  const decay = sums.decay[before] as number;
  const durationS = sums.durationS[before] as number;
  const ownPx = moves.ringPx[slot] as number;
  const ownDecay = moves.decay[slot] as number;
  const ownS = moves.durationS[slot] as number;
  const byS = ownS - durationS;
  if (inTurn) {
    to.ringPx.push(ringPx * ownDecay + ownPx);
    to.decay.push(decay * ownDecay);
    return to.durationS.push(durationS + ownS) - 1;
  }
  if (byS > 0) {
    to.ringPx.push(ringPx * leftOver(ownDecay, decay, byS, decayRate) + ownPx);
    to.decay.push(ownDecay);
    return to.durationS.push(ownS) - 1;
  }
  to.ringPx.push(ringPx + ownPx * leftOver(decay, ownDecay, -byS, decayRate));
  to.decay.push(decay);
  return to.durationS.push(durationS) - 1;
}

/** What rings, when it no longer shows, and what every move settles instead; null to go by the ring. */
interface Settling {
  ringing: Parameters<typeof settleS>[2];
  tolerancePx: number;
  measuredS: number | null;
}

/** Seconds after each combination until its ring has died down. */
export const settles = (
  { durationS, ringPx }: Ends,
  { ringing, tolerancePx, measuredS }: Settling,
): Float64Array => {
  const seconds = new Float64Array(durationS.length);
  for (let i = 0; i < seconds.length; i += 1)
    if (measuredS === null) seconds[i] = settleS(ringPx[i] as number, tolerancePx, ringing);
    else if ((durationS[i] as number) > 0) seconds[i] = measuredS;
  return seconds;
};

/** Seconds that each combination moves and settles. */
export function busyOf(settleS: Float64Array, durationS: ArrayLike<number>): Float64Array {
  const seconds = new Float64Array(settleS.length);
  for (let i = 0; i < seconds.length; i += 1) seconds[i] = (settleS[i] as number) + (durationS[i] as number);
  return seconds;
}

/** The largest of some values, none of them negative. */
export function largest(values: Float64Array): number {
  let most = 0;
  for (let i = 0; i < values.length; i += 1) most = Math.max(most, values[i] as number);
  return most;
}

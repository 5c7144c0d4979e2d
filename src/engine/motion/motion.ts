/**
 * The motion of all axes over a run: whole-step positions, and how long the rig moves and settles after each frame.
 */
import { poseAxis } from '../path/pose.ts';
import type { Axis, Plan } from '../plan/schema.ts';
import type { Room } from '../room.ts';
import type { AxisColumns } from '../schedule-types.ts';
import { type Coded, inBlocks, type Picked, pickAll } from './blocks.ts';
import {
  addAxis,
  busyOf,
  type Combined,
  type CombinedEnds,
  largest,
  noneCombined,
  settles,
} from './combined.ts';
import { type RunClock, runClock } from './keyframes.ts';
import { type MoveCodes, moveCodes } from './move-codes.ts';
import { fillSlots, type MoveTable, moveTable } from './move-table.ts';
import { moveMaker, type RingGiven, ringGiven } from './moves.ts';
import { type SmallMoves, smallMoves } from './small-moves.ts';
import { countAbove0, repeatsBeside, repeatsOf, stepFacts } from './step-facts.ts';
import { fillSteps, goingOn, stepsPerUnit } from './tracks.ts';

/** Motion of the whole rig. */
export interface Motion {
  axes: AxisColumns[];
  /** Seconds the rig moves after each frame. */
  moveS: Float64Array;
  /** Seconds it then settles. 0 unless it moves between exposures. */
  settleS: Float64Array;
  /** Ring of all axes at the end of the move, px; null unless the settle goes by the ringing. */
  ringPx: Float32Array | null;
  /** The largest of these; 0 without. */
  worstPx: number;
  /** Longest settle, and longest of the moves with their settling; 0 unless the rig moves between exposures. */
  longestSettleS: number;
  longestBusyS: number;
  /**
   * Seconds that each combination of moves, settling included, would take with the other choice of quiet moves, and the
   * combination of each frame; null where it makes no difference.
   */
  otherwise: { of: Int32Array; busyS: Float64Array } | null;
  /** The moves of rig and axes by a code of the frame; null if there are too many to have one. */
  coded: Coded | null;
}

/** Overwrites the steps of the first pan and the first tilt, so that they keep something framed. */
export type Aim = (axes: AxisColumns[]) => void;

/**
 * Works out the motion of a run.
 * @param intervalS - seconds from each frame to the next, one entry a frame
 * @param aim - sets pan and tilt by where the other axes are; they go by their tracks without it
 * @returns columns of each axis; the rig's move is the longest of them, or their sum if the axes move in turn.
 *   A still rig stays where its tracks begin.
 */
export function motionOf(plan: Plan, intervalS: Float64Array, room: Room, aim?: Aim): Motion {
  const clock = runClock(intervalS);
  const axes = plan.rig.axes.map((axis) => placedAxis(plan, axis, clock, room));
  aim?.(axes);
  const codes = plan.move.mode === 'moveShootMove' ? moveCodes(axes, room) : null;
  axes.forEach((own, i) => {
    Object.assign(own, codes ? codes.facts[i] : stepFacts(own.steps));
    if (!isMoving(own)) own.moveS.fill(0);
  });
  const column = () => room.f64(clock.frames);
  const columns = { axes, codes, moveS: column(), settleS: column() };
  const ring = ringGiven(plan);
  const motion = ring
    ? ringingMotion(plan, columns, ring, room)
    : timedMotion(plan, columns, intervalS, room);
  const rigMoves = () => codes?.moves ?? countAbove0(motion.moveS, 0, clock.frames);
  if (plan.move.mode !== 'still') addRepeats(plan, motion, clock, aim && rigMoves());
  return motion;
}

/** An axis with its positions; what follows from them is still missing. */
function placedAxis(plan: Plan, axis: Axis, clock: RunClock, room: Room): AxisColumns {
  const steps = room.i32(clock.frames);
  fillSteps(steps, axis, trackOf(plan, axis), clock);
  if (plan.move.mode === 'still') steps.fill(steps[0] as number);
  return {
    name: axis.name,
    unit: axis.unit,
    stepsPerUnit: stepsPerUnit(axis),
    steps,
    lowestSteps: 0,
    highestSteps: 0,
    largestMoveSteps: 0,
    moves: 0,
    smallestMoveSteps: 0,
    repeats: 0,
    firstRepeat: null,
    reversals: 0,
    firstReversal: null,
    takeUps: 0,
    takeUpS: 0,
    moveS: room.f64(clock.frames),
  };
}

const trackOf = (plan: Plan, axis: Axis) => plan.move.tracks.find((track) => track.axis === axis.name);

/** Whether the axis is one that the aim sets: the first pan, the first tilt. */
export const isAimed = (plan: Plan, axis: Axis): boolean =>
  (axis.kind === 'pan' || axis.kind === 'tilt') && plan.rig.axes[poseAxis(plan, axis.kind)] === axis;

/** @param rigMoves - after how many frames the rig moves, if it aims */
function addRepeats(plan: Plan, { axes, moveS }: Motion, clock: RunClock, rigMoves?: number): void {
  plan.rig.axes.forEach((axis, i) => {
    const own = axes[i] as AxisColumns;
    const track = trackOf(plan, axis);
    if (rigMoves !== undefined && isAimed(plan, axis))
      Object.assign(own, repeatsBeside(own, moveS, rigMoves));
    else if (track) Object.assign(own, repeatsOf(own, goingOn(track, clock), track.thereAndBack));
  });
}

type Columns = Pick<Motion, 'axes' | 'moveS' | 'settleS'> & {
  /** null if not all moves are small. */
  codes: MoveCodes | null;
};

const isMoving = (axis: AxisColumns): boolean => axis.largestMoveSteps > 0;

/** Axes with their columns, those that move at all. */
const movingAxes = ({ rig }: Plan, columns: readonly AxisColumns[]) =>
  rig.axes.flatMap((axis, i) => {
    const own = columns[i] as AxisColumns;
    return isMoving(own) ? [{ axis, own }] : [];
  });

/** Moves that settle by the clock, or not at all. */
function timedMotion(
  plan: Plan,
  { axes, codes, moveS, settleS }: Columns,
  intervalS: Float64Array,
  room: Room,
): Motion {
  const between = plan.move.mode === 'moveShootMove';
  const small = codes && smallMoves(plan, axes, codes, null);
  if (small) {
    const { durationS } = small.sums;
    const settleOf = Float64Array.from(durationS, (forS) => (forS > 0 ? plan.move.settleS : 0));
    const longest = fillCombined({ moveS, settleS, ringPx: null }, small, settleOf, small.own);
    return { axes, moveS, settleS, ringPx: null, ...longest, otherwise: null, coded: codedOf(moveS, small) };
  }
  const axesThatMove = movingAxes(plan, axes);
  const slots = room.i32(between ? moveS.length : 0);
  for (const { axis, own } of axesThatMove) {
    if (plan.move.mode === 'continuous') fillContinuous(own, intervalS);
    else fillTaken(plan, axis, own, slots, null);
  }
  const [first, ...others] = axesThatMove.map(({ own }) => own.moveS);
  moveS.set(first ?? moveS.fill(0));
  const join = between && plan.move.order === 'inTurn' ? addTo : raiseTo;
  for (const column of others) inBlocks(moveS.length, (from, to) => join(moveS, column, from, to));
  const forS = between ? plan.move.settleS : 0;
  const busyS = settleFor(settleS, moveS, forS);
  const longest = { worstPx: 0, longestSettleS: busyS > 0 ? forS : 0, longestBusyS: between ? busyS : 0 };
  return { axes, moveS, settleS, ringPx: null, ...longest, otherwise: null, coded: null };
}

/** Moves all the time, but for the last frame. */
function fillContinuous({ steps, moveS }: AxisColumns, intervalS: Float64Array): void {
  const last = steps.length - 1;
  for (let k = 0; k < last; k += 1) moveS[k] = steps[k + 1] === steps[k] ? 0 : (intervalS[k] as number);
  moveS[last] = 0;
}

/** Moves from rest to rest; may take up lost motion, and ring. Fills the slots of the moves in the table that it returns, too. */
function fillTaken(
  plan: Plan,
  axis: Axis,
  own: AxisColumns,
  slots: Int32Array,
  ring: RingGiven | null,
): MoveTable {
  const table = moveTable(moveMaker(plan, axis, ring), own.stepsPerUnit, own.steps, own.largestMoveSteps);
  Object.assign(own, fillSlots(slots, own.moveS, table, own.steps));
  return table;
}

/** Settles every move by the clock. Returns the longest move with its settling. */
function settleFor(settleS: Float64Array, moveS: Float64Array, forS: number): number {
  let most = 0;
  for (let k = 0; k < moveS.length; k += 1) {
    const move = moveS[k] as number;
    settleS[k] = move > 0 ? forS : 0;
    if (move > most) most = move;
  }
  return most > 0 ? most + forS : 0;
}

/** Moves that settle until their ring has died down. */
function ringingMotion(plan: Plan, columns: Columns, ring: RingGiven, room: Room): Motion {
  const { axes, codes, moveS, settleS } = columns;
  const frames = moveS.length;
  const small = codes && smallMoves(plan, axes, codes, ring);
  const combined: CombinedEnds =
    small ?? combinedMoves(plan, axes, ring, [room.i32(frames), room.i32(frames)]);
  const ringPx = room.f32(frames);
  const settling = { ...ring, measuredS: plan.ringing.measuredSettleS };
  const settleOf = settles(combined.sums, settling);
  const longest = fillCombined({ moveS, settleS, ringPx }, combined, settleOf, small?.own);
  const { of, otherwise } = combined;
  const busyS = otherwise && busyOf(settles(otherwise, settling), otherwise.durationS);
  return {
    axes,
    moveS,
    settleS,
    ringPx,
    ...longest,
    otherwise: busyS && { of, busyS },
    coded: small && codedOf(moveS, small),
  };
}

const codedOf = (moveS: Float64Array, { of, sums: { durationS }, own }: SmallMoves): Coded => ({
  of,
  columns: [{ column: moveS, table: durationS }, ...own],
});

function combinedMoves(
  plan: Plan,
  axes: readonly AxisColumns[],
  ring: RingGiven,
  [of, slots]: readonly [Int32Array, Int32Array],
): Combined {
  const how = { inTurn: plan.move.order === 'inTurn', decayRate: ring.decayRate };
  let combined = noneCombined(of, ring.quietMatters);
  for (const { axis, own } of movingAxes(plan, axes)) {
    const table = fillTaken(plan, axis, own, slots, ring);
    combined = addAxis(combined, slots, table, how);
  }
  return combined;
}

/** Fills each frame from its combination, and more columns. */
function fillCombined(
  { moveS, settleS, ringPx }: Pick<Motion, 'moveS' | 'settleS' | 'ringPx'>,
  { of, sums }: CombinedEnds,
  settleOf: Float64Array,
  others: readonly Picked[] = [],
): Pick<Motion, 'worstPx' | 'longestSettleS' | 'longestBusyS'> {
  const { durationS } = sums;
  pickAll(of, [{ column: moveS, table: durationS }, { column: settleS, table: settleOf }, ...others]);
  const rings = new Float64Array(sums.ringPx);
  if (ringPx) inBlocks(of.length, (from, to) => pickSingles(ringPx, of, rings, from, to));
  return {
    worstPx: Math.fround(largest(rings)),
    longestSettleS: largest(settleOf),
    longestBusyS: largest(busyOf(settleOf, durationS)),
  };
}

/** A block of singles: a loop that meets two kinds of arrays is compiled for none. */
function pickSingles(
  column: Float32Array,
  of: Int32Array,
  table: Float64Array,
  from: number,
  to: number,
): void {
  for (let k = from; k < to; k += 2) {
    const next = k + 1 < to ? k + 1 : k;
    column[k] = table[of[k] as number] as number;
    column[next] = table[of[next] as number] as number;
  }
}

function addTo(total: Float64Array, column: Float64Array, from: number, to: number): void {
  for (let k = from; k < to; k += 1) total[k] = (total[k] as number) + (column[k] as number);
}

function raiseTo(total: Float64Array, column: Float64Array, from: number, to: number): void {
  for (let k = from; k < to; k += 1) {
    const longer = column[k] as number;
    if (longer > (total[k] as number)) total[k] = longer;
  }
}

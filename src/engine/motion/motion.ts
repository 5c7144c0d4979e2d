/**
 * The motion of all axes over a run: whole-step positions, and how long the rig moves after each frame.
 */
import type { Axis, Plan } from '../plan/schema.ts';
import type { Room } from '../room.ts';
import type { AxisColumns } from '../schedule-types.ts';
import { moveDurationS } from './profile.ts';
import { fillSteps, stepsPerUnit } from './tracks.ts';

/** The ends of an axis's positions and its largest move, whole microsteps. */
type StepRange = Pick<AxisColumns, 'lowestSteps' | 'highestSteps' | 'largestMoveSteps'>;

function rangeOf(steps: Int32Array): StepRange {
  let before = steps[0] as number;
  let lowest = before;
  let highest = before;
  let largest = 0;
  for (let k = 1; k < steps.length; k += 1) {
    const position = steps[k] as number;
    if (position < lowest) lowest = position;
    if (position > highest) highest = position;
    const move = position < before ? before - position : position - before;
    if (move > largest) largest = move;
    before = position;
  }
  return { lowestSteps: lowest, highestSteps: highest, largestMoveSteps: largest };
}

/**
 * Durations of the moves between whole-step positions, at the axis's top speed and acceleration.
 *
 * Moves are whole numbers of steps and mostly small, so that each duration is worked out once.
 */
function fillDurations(moveS: Float64Array, axis: Axis, steps: Int32Array, largest: number): void {
  const perUnit = stepsPerUnit(axis);
  const { maxSpeed, maxAccel } = axis;
  const last = steps.length - 1;
  if (largest > last) {
    for (let k = 0; k < last; k += 1) {
      const distance = Math.abs((steps[k + 1] as number) - (steps[k] as number)) / perUnit;
      moveS[k] = moveDurationS(distance, maxSpeed, maxAccel);
    }
    return;
  }
  const bySteps = new Float64Array(largest + 1);
  for (let n = 0; n <= largest; n += 1) bySteps[n] = moveDurationS(n / perUnit, maxSpeed, maxAccel);
  let before = steps[0] as number;
  for (let k = 0; k < last; k += 1) {
    const position = steps[k + 1] as number;
    moveS[k] = bySteps[position < before ? before - position : position - before] as number;
    before = position;
  }
}

/** Seconds one axis moves after each frame, none after the last; filled into `moveS`. */
function fillMoves(
  moveS: Float64Array,
  plan: Plan,
  axis: Axis,
  steps: Int32Array,
  largest: number,
  intervalS: Float64Array,
): void {
  const last = steps.length - 1;
  const { mode, moveS: fixedS } = plan.move;
  moveS[last] = 0;
  if (mode === 'continuous') {
    for (let k = 0; k < last; k += 1) moveS[k] = steps[k + 1] === steps[k] ? 0 : (intervalS[k] as number);
    return;
  }
  if (fixedS !== null) {
    for (let k = 0; k < last; k += 1) moveS[k] = steps[k + 1] === steps[k] ? 0 : fixedS;
    return;
  }
  fillDurations(moveS, axis, steps, largest);
}

function axisColumns(plan: Plan, axis: Axis, intervalS: Float64Array, room: Room): AxisColumns {
  const frames = intervalS.length;
  const steps = room.i32(frames);
  const moveS = room.f64(frames);
  const track = plan.move.tracks.find((candidate) => candidate.axis === axis.name);
  fillSteps(steps, axis, track);
  if (plan.move.mode === 'still') steps.fill(steps[0] as number);
  const range = rangeOf(steps);
  if (range.largestMoveSteps === 0) moveS.fill(0);
  else fillMoves(moveS, plan, axis, steps, range.largestMoveSteps, intervalS);
  return { name: axis.name, unit: axis.unit, stepsPerUnit: stepsPerUnit(axis), steps, ...range, moveS };
}

/** Motion of the whole rig. */
export interface Motion {
  axes: AxisColumns[];
  /** Seconds the rig moves after each frame. */
  moveS: Float64Array;
  /** Longest of them. */
  longestMoveS: number;
}

/**
 * Works out the motion of a run.
 * @param intervalS - seconds from each frame to the next, one entry a frame
 * @returns columns of each axis; the rig's move is the longest of them, or their sum if the axes move in turn.
 *   A still rig stays where its tracks begin.
 */
export function motionOf(plan: Plan, intervalS: Float64Array, room: Room): Motion {
  const axes = plan.rig.axes.map((axis) => axisColumns(plan, axis, intervalS, room));
  const inTurn = plan.move.order === 'inTurn' && plan.move.mode === 'moveShootMove';
  const moving = axes.filter((axis) => axis.largestMoveSteps > 0);
  const moveS = room.f64(intervalS.length);
  moveS.set(moving[0]?.moveS ?? moveS.fill(0));
  const others = moving.slice(1).map((axis) => axis.moveS);
  if (inTurn) for (const column of others) addTo(moveS, column);
  else
    for (let i = 0; i < others.length; i += 2)
      raiseTo(moveS, others[i] as Float64Array, (others[i + 1] ?? others[i]) as Float64Array);
  return { axes, moveS, longestMoveS: largest(moveS) };
}

function largest(values: Float64Array): number {
  let most = 0;
  for (let k = 0; k < values.length; k += 1) if ((values[k] as number) > most) most = values[k] as number;
  return most;
}

function addTo(total: Float64Array, column: Float64Array): void {
  for (let k = 0; k < total.length; k += 1) total[k] = (total[k] as number) + (column[k] as number);
}

/** Two columns at a time: a pass over memory costs more than what it compares. */
function raiseTo(total: Float64Array, first: Float64Array, second: Float64Array): void {
  for (let k = 0; k < total.length; k += 1) {
    const a = first[k] as number;
    const b = second[k] as number;
    const longer = Math.max(a, b);
    if (longer > (total[k] as number)) total[k] = longer;
  }
}

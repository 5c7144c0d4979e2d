/**
 * The motion of all axes over a run: whole-step positions, and how long the rig moves after each frame.
 */
import type { Axis, Plan } from '../plan/schema.ts';
import type { AxisColumns } from '../schedule-types.ts';
import { moveDurationS } from './profile.ts';
import { fillSteps, stepsPerUnit } from './tracks.ts';

/** Largest number of steps between two frames. */
function largestMove(steps: Int32Array): number {
  let largest = 0;
  for (let k = 1; k < steps.length; k += 1) {
    largest = Math.max(largest, Math.abs((steps[k] as number) - (steps[k - 1] as number)));
  }
  return largest;
}

/**
 * Durations of the moves between whole-step positions, at the axis's top speed and acceleration.
 *
 * Moves are whole numbers of steps and mostly small, so that each duration is worked out once.
 */
function fillDurations(moveS: Float64Array, axis: Axis, steps: Int32Array): void {
  const perUnit = stepsPerUnit(axis);
  const { maxSpeed, maxAccel } = axis;
  const last = steps.length - 1;
  const largest = largestMove(steps);
  if (largest > last) {
    for (let k = 0; k < last; k += 1) {
      const distance = Math.abs((steps[k + 1] as number) - (steps[k] as number)) / perUnit;
      moveS[k] = moveDurationS(distance, maxSpeed, maxAccel);
    }
    return;
  }
  const bySteps = new Float64Array(largest + 1);
  for (let n = 0; n <= largest; n += 1) bySteps[n] = moveDurationS(n / perUnit, maxSpeed, maxAccel);
  for (let k = 0; k < last; k += 1) {
    moveS[k] = bySteps[Math.abs((steps[k + 1] as number) - (steps[k] as number))] as number;
  }
}

/** Seconds one axis moves after each frame, none after the last; filled into `moveS`. */
function fillMoves(
  moveS: Float64Array,
  plan: Plan,
  axis: Axis,
  steps: Int32Array,
  intervalS: Float64Array,
): void {
  const last = steps.length - 1;
  const { mode, moveS: fixedS } = plan.move;
  if (mode === 'continuous') {
    for (let k = 0; k < last; k += 1) moveS[k] = steps[k + 1] === steps[k] ? 0 : (intervalS[k] as number);
    return;
  }
  if (fixedS !== null) {
    for (let k = 0; k < last; k += 1) moveS[k] = steps[k + 1] === steps[k] ? 0 : fixedS;
    return;
  }
  fillDurations(moveS, axis, steps);
}

function axisColumns(plan: Plan, axis: Axis, intervalS: Float64Array, scratch: Float64Array): AxisColumns {
  const frames = intervalS.length;
  const steps = new Int32Array(frames);
  const moveS = new Float64Array(frames);
  const track = plan.move.tracks.find((candidate) => candidate.axis === axis.name);
  fillSteps(steps, axis, track, scratch);
  if (plan.move.mode === 'still') steps.fill(steps[0] as number);
  else fillMoves(moveS, plan, axis, steps, intervalS);
  return { name: axis.name, unit: axis.unit, stepsPerUnit: stepsPerUnit(axis), steps, moveS };
}

/** Motion of the whole rig. */
export interface Motion {
  axes: AxisColumns[];
  /** Seconds the rig moves after each frame. */
  moveS: Float64Array;
}

/**
 * Works out the motion of a run.
 * @param intervalS - seconds from each frame to the next, one entry a frame
 * @returns columns of each axis; the rig's move is the longest of them, or their sum if the axes move in turn.
 *   A still rig stays where its tracks begin.
 */
export function motionOf(plan: Plan, intervalS: Float64Array): Motion {
  const moveS = new Float64Array(intervalS.length);
  // The rig's move is filled in last: until then its column serves as the scratch.
  const axes = plan.rig.axes.map((axis) => axisColumns(plan, axis, intervalS, moveS));
  moveS.fill(0);
  const inTurn = plan.move.order === 'inTurn' && plan.move.mode === 'moveShootMove';
  for (const axis of axes) (inTurn ? addTo : raiseTo)(moveS, axis.moveS);
  return { axes, moveS };
}

function addTo(total: Float64Array, column: Float64Array): void {
  for (let k = 0; k < total.length; k += 1) total[k] = (total[k] as number) + (column[k] as number);
}

function raiseTo(total: Float64Array, column: Float64Array): void {
  for (let k = 0; k < total.length; k += 1) {
    const value = column[k] as number;
    if (value > (total[k] as number)) total[k] = value;
  }
}

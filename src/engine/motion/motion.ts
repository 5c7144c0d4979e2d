/**
 * The motion of all axes over a run: whole-step positions, and how long the rig moves after each frame.
 */
import type { Axis, Plan } from '../plan/schema.ts';
import type { AxisColumns } from '../schedule-types.ts';
import { moveDurationS } from './profile.ts';
import { fillSteps, stepsPerUnit } from './tracks.ts';

// Most runs move a few hundred steps a frame, so that the durations repeat: each is worked out once.
const REMEMBERED_STEPS = 4096;

/** Seconds for a move of a whole number of steps, at the axis's top speed and acceleration. */
function durationBySteps(axis: Axis, perUnit: number): (steps: number) => number {
  const remembered = new Float64Array(REMEMBERED_STEPS).fill(-1);
  return (steps) => {
    if (steps >= REMEMBERED_STEPS) return moveDurationS(steps / perUnit, axis.maxSpeed, axis.maxAccel);
    let durationS = remembered[steps] as number;
    if (durationS < 0) {
      durationS = moveDurationS(steps / perUnit, axis.maxSpeed, axis.maxAccel);
      remembered[steps] = durationS;
    }
    return durationS;
  };
}

/** Positions of one axis, and the seconds it moves after each frame; none after the last. */
function axisColumns(plan: Plan, axis: Axis, intervalS: Float64Array): AxisColumns {
  const frames = intervalS.length;
  const steps = new Int32Array(frames);
  const moveS = new Float64Array(frames);
  const track = plan.move.tracks.find((candidate) => candidate.axis === axis.name);
  fillSteps(steps, axis, track);
  const perUnit = stepsPerUnit(axis);
  const { mode, moveS: fixedS } = plan.move;
  if (mode === 'still') {
    steps.fill(steps[0] as number);
  } else if (mode === 'continuous') {
    for (let k = 0; k + 1 < frames; k += 1)
      moveS[k] = steps[k + 1] === steps[k] ? 0 : (intervalS[k] as number);
  } else {
    const durationS = fixedS === null ? durationBySteps(axis, perUnit) : () => fixedS;
    for (let k = 0; k + 1 < frames; k += 1) {
      const distance = Math.abs((steps[k + 1] as number) - (steps[k] as number));
      if (distance > 0) moveS[k] = durationS(distance);
    }
  }
  return { name: axis.name, unit: axis.unit, stepsPerUnit: perUnit, steps, moveS };
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
  const axes = plan.rig.axes.map((axis) => axisColumns(plan, axis, intervalS));
  const moveS = new Float64Array(intervalS.length);
  const inTurn = plan.move.order === 'inTurn' && plan.move.mode === 'moveShootMove';
  for (const axis of axes) {
    const own = axis.moveS;
    if (inTurn) for (let k = 0; k < own.length; k += 1) moveS[k] = (moveS[k] as number) + (own[k] as number);
    else for (let k = 0; k < own.length; k += 1) moveS[k] = Math.max(moveS[k] as number, own[k] as number);
  }
  return { axes, moveS };
}

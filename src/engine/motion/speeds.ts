/** What an axis does between one frame and the next: microsteps, and speed. */

import type { Axis, Plan } from '../plan/schema.ts';
import type { AxisColumns, Schedule } from '../schedule-types.ts';
import { fixedTimeShape, limitsOf, movePeakSpeed } from './profile.ts';
import { motorWays, takeUpOf } from './take-up.ts';

/** One value a frame, for the move after it; NaN after the last. */
function afterEach({ steps }: AxisColumns, of: (moved: number, index: number) => number): Float64Array {
  const last = steps.length - 1;
  const values = new Float64Array(steps.length).fill(Number.NaN);
  for (let k = 0; k < last; k += 1) values[k] = of((steps[k + 1] as number) - (steps[k] as number), k);
  return values;
}

/** Microsteps after each frame; up its scale is positive. */
export const movesOf = (columns: AxisColumns): Float64Array => afterEach(columns, (moved) => moved);

/**
 * Speed after each frame, the axis's unit a second; up its scale is positive. Where the rig moves between exposures
 * it is the highest of each move, lost motion included, else the mean over the interval.
 */
export function speedsOf(columns: AxisColumns, plan: Plan, { columns: run }: Schedule): Float64Array {
  const axis = plan.rig.axes.find(({ name }) => name === columns.name);
  if (plan.move.mode === 'moveShootMove' && axis) return peakSpeeds(columns, plan, axis);
  return afterEach(columns, (moved, k) => moved / columns.stepsPerUnit / (run.intervalS[k] as number));
}

function peakSpeeds(columns: AxisColumns, { move }: Plan, axis: Axis): Float64Array {
  const limits = limitsOf(axis, move.profile);
  const { maxSpeed, maxAccel, maxJerk } = limits;
  const ways = motorWays(axis, columns);
  const arrives = takeUpOf(axis).side !== 0;
  const peakOf = (way: number, durationS: number): number => {
    if (move.moveS === null && arrives) return movePeakSpeed(way, maxSpeed, maxAccel, maxJerk);
    // A quiet move is slower than it could be: its time tells.
    return fixedTimeShape(way, move.moveS ?? durationS, limits).peakSpeed;
  };
  // Whole steps: the same few ways come again and again.
  const known = new Map<number, number>();
  return afterEach(columns, (moved, k) => {
    if (moved === 0) return 0;
    const way = ways[k] as number;
    const peak = known.get(way) ?? peakOf(way, columns.moveS[k] as number);
    known.set(way, peak);
    return moved > 0 ? peak : -peak;
  });
}

/** Where arm and slide are during a run, also between two frames. */

import { type Gradual, leap } from '../leap.ts';
import { armRad, type Geometry, geometryOf, poseAxis, type Stance } from '../path/pose.ts';
import type { Plan } from '../plan/schema.ts';
import type { AxisColumns } from '../schedule-types.ts';

/** What carries the masses: the arm's and the slide's columns, as far as the rig has them. */
export interface Carriers {
  geometry: Geometry;
  boom: AxisColumns | undefined;
  slide: AxisColumns | undefined;
}

/** @param axes - one entry for each of `plan.rig.axes`, in their order */
export const carriersOf = (plan: Plan, axes: readonly AxisColumns[]): Carriers => ({
  geometry: geometryOf(plan),
  boom: axes[poseAxis(plan, 'boom')],
  slide: axes[poseAxis(plan, 'slide')],
});

/** Position of an axis at a moment, in its unit; 0 for one that the rig does not have. */
export function positionsOf(columns: AxisColumns | undefined): (at: number) => number {
  if (!columns) return () => 0;
  const { steps, stepsPerUnit } = columns;
  const last = steps.length - 1;
  return (at) => {
    const k = Math.floor(at);
    const from = steps[k] as number;
    const to = steps[k < last ? k + 1 : k] as number;
    return (from + (to - from) * (at - k)) / stepsPerUnit;
  };
}

/**
 * Positions at a moment of what carries the masses; what only turns them stays at 0.
 * @param at - index of a frame, or between two: 2.5 is half-way from frame 3 to frame 4
 */
export const carriedAt = ({ boom, slide }: Carriers, at: number): Stance => ({
  boom: positionsOf(boom)(at),
  slide: positionsOf(slide)(at),
  pan: 0,
  tilt: 0,
  roll: 0,
  turntable: 0,
});

/** Farthest that an axis goes from a frame to the next, in its unit; 0 for one that the rig does not have. */
export const farthestMove = (columns: AxisColumns | undefined): number =>
  columns ? columns.largestMoveSteps / columns.stepsPerUnit : 0;

/** Cosine, without sign, of the arm's angle from level at a moment. */
const levelShareAt = (carriers: Carriers, at: number): number =>
  Math.abs(Math.cos(armRad(carriers.geometry, carriedAt(carriers, at))));

/** The same of every moment of a run. */
export const levelShares = (carriers: Carriers): Gradual => ({
  valueAt: (at) => levelShareAt(carriers, at),
  mostAFrame: farthestMove(carriers.boom) * (carriers.geometry.boom?.radPerUnit ?? 0),
});

/** Index of the frame at which the arm is nearest to level, either way round; the first of several. */
export function nearestLevel({ geometry, boom }: Carriers): number {
  if (!geometry.boom || !boom) return 0;
  const radPerStep = geometry.boom.radPerUnit / boom.stepsPerUnit;
  const [zero, half] = [geometry.boom.zeroRad / radPerStep, Math.PI / radPerStep];
  const { steps, lowestSteps, highestSteps, largestMoveSteps } = boom;
  const halvesAt = (step: number) => (step + zero) / half;
  const awayAt = (step: number) => Math.abs(step + zero - Math.round(halvesAt(step)) * half);
  // One that passes level is by then within half a move of it; another is nearest to it at an end.
  const passes = Math.floor(halvesAt(highestSteps)) >= Math.ceil(halvesAt(lowestSteps));
  const nearest = passes ? largestMoveSteps / 2 : Math.min(awayAt(lowestSteps), awayAt(highestSteps));
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k < steps.length; ) {
    const away = awayAt(steps[k] as number);
    if (away < least) {
      least = away;
      best = k;
    }
    k += leap(away - nearest - NEAR_STEPS, largestMoveSteps);
  }
  return best;
}

// What a rounding makes of two positions that are as near.
const NEAR_STEPS = 1e-6;

/**
 * Largest of these cosines over the run: 1 where the arm passes level, also between two frames.
 * @param level - index of the frame nearest to level
 */
export function largestLevelShare(carriers: Carriers, level: number): number {
  const { geometry, boom } = carriers;
  if (!boom) return 0;
  const angleOf = (steps: number) =>
    armRad(geometry, { ...carriedAt(carriers, level), boom: steps / boom.stepsPerUnit });
  const [lowest, highest] = [angleOf(boom.lowestSteps), angleOf(boom.highestSteps)];
  const passes = Math.floor(highest / Math.PI) >= Math.ceil(lowest / Math.PI);
  return passes ? 1 : levelShareAt(carriers, level);
}

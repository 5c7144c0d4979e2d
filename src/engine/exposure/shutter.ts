/** How long the shutter really is open. */
import type { Plan } from '../plan/schema.ts';
import { exactShutterS } from './stops.ts';

/**
 * Seconds the shutter is open at a marked shutter time.
 *
 * A trigger that holds the shutter open keeps the time itself. A camera exposes the exact stop behind the mark
 * unless the plan says otherwise, times its measured correction.
 */
export function openAtMarkS(plan: Plan, markedS: number): number {
  if (plan.exposure.timedBy === 'trigger') return markedS;
  return (plan.camera.exactStops ? exactShutterS(markedS) : markedS) * plan.camera.shutterCorrection;
}

/** Seconds the shutter is open for one exposure at the plan's setting. */
export const openShutterS = (plan: Plan): number => openAtMarkS(plan, plan.exposure.shutterS);

/** Whether an exposure gets a dark frame: as long as the marked time from which noise reduction works, or longer. */
export function getsDarkFrame(plan: Plan, openS: number): boolean {
  const { noiseReduction, noiseReductionFromS } = plan.camera;
  // A bracket's times are multiplied out: let the last place of a double not decide.
  return noiseReduction && openS * (1 + 1e-9) >= openAtMarkS(plan, noiseReductionFromS);
}

/**
 * Open seconds of each exposure of a frame, in the order shot: one, or a bracket around the shutter time,
 * shortest first.
 */
export function bracketS(plan: Plan): number[] {
  const { bracketCount, bracketStops } = plan.exposure;
  const middle = (bracketCount - 1) / 2;
  const open = openShutterS(plan);
  return Array.from({ length: bracketCount }, (_, i) => open * 2 ** ((i - middle) * bracketStops));
}

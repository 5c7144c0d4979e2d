/** How long the shutter really is open. */
import type { Plan } from '../plan/schema.ts';
import { exactShutterS } from './stops.ts';

/**
 * Seconds the shutter is open for one exposure at the plan's setting.
 *
 * A trigger that holds the shutter open keeps the time itself. A camera exposes the exact stop behind the mark
 * unless the plan says otherwise, times its measured correction.
 */
export function openShutterS(plan: Plan): number {
  const { shutterS, timedBy } = plan.exposure;
  if (timedBy === 'trigger') return shutterS;
  return (plan.camera.exactStops ? exactShutterS(shutterS) : shutterS) * plan.camera.shutterCorrection;
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

/** How long the shutter really is open. */
import type { Plan } from '../plan/schema.ts';
import { exactShutterS } from './stops.ts';

/**
 * Seconds the camera keeps the shutter open by its own dial: the exact stop behind the mark unless the plan says
 * otherwise, times the camera's measured correction.
 * @param exactS - the stop behind the mark, where it is known which series is meant: a mark of 20 s is a third
 *   stop of 20.2 s or a half stop of 22.6 s
 */
export const cameraOpenS = ({ camera }: Plan, markedS: number, exactS = exactShutterS(markedS)): number =>
  (camera.exactStops ? exactS : markedS) * camera.shutterCorrection;

/**
 * Seconds the shutter is open at a marked shutter time. A trigger that holds the shutter open keeps the time itself.
 * @param exactS - as for {@link cameraOpenS}
 */
export const openAtMarkS = (plan: Plan, markedS: number, exactS?: number): number =>
  plan.exposure.timedBy === 'trigger' ? markedS : cameraOpenS(plan, markedS, exactS);

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
 * @param middleS - seconds the shutter is open, or the middle of the bracket
 */
export function bracketS(plan: Plan, middleS = openShutterS(plan)): number[] {
  const { bracketCount, bracketStops } = plan.exposure;
  const middle = (bracketCount - 1) / 2;
  const times: number[] = [];
  for (let i = 0; i < bracketCount; i += 1) times.push(middleS * 2 ** ((i - middle) * bracketStops));
  return times;
}

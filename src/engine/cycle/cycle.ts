/**
 * The two lanes of one interval.
 *
 * Camera lane, from the trigger: for each exposure of the frame its lag, the open shutter, a dark frame where
 * noise reduction makes one, and the write. Rig lane, moving between exposures: hold still until the last
 * shutter has closed, move, settle. The rig may move while the camera takes its dark frame and writes.
 * Source: the definitions of this project's design; durations are the user's own measurements.
 */
import { bracketS, getsDarkFrame, openShutterS } from '../exposure/shutter.ts';
import type { Plan } from '../plan/schema.ts';

/** One stretch of the camera lane. */
export interface Phase {
  kind: 'lag' | 'exposure' | 'dark' | 'write';
  /** Seconds from the trigger. */
  startS: number;
  durationS: number;
}

/** Durations of one frame's camera lane, seconds. */
export interface CameraLane {
  /** Whole lane. */
  cameraS: number;
  /** From the trigger until the last exposure has closed. */
  holdS: number;
  /** Shutter open, all exposures together. */
  exposureS: number;
  /** Dark frames and writing, all exposures together. */
  busyS: number;
}

/**
 * The camera lane of a frame as its stretches, in order, those of no length left out.
 * @param middleS - seconds the shutter is open, or the middle of a bracket
 */
export function cameraPhases(plan: Plan, middleS = openShutterS(plan)): Phase[] {
  const { shutterLagS, writeS } = plan.camera;
  const phases: Phase[] = [];
  let atS = 0;
  const add = (kind: Phase['kind'], durationS: number) => {
    if (durationS > 0) phases.push({ kind, startS: atS, durationS });
    atS += durationS;
  };
  for (const openS of bracketS(plan, middleS)) {
    add('lag', shutterLagS);
    add('exposure', openS);
    add('dark', getsDarkFrame(plan, openS) ? openS : 0);
    add('write', writeS);
  }
  return phases;
}

/** The phases from the first shutter opening to the last closing: what an end-to-start trigger waits for. */
export const openPhases = (phases: readonly Phase[]): Phase[] =>
  phases.slice(
    phases.findIndex((phase) => phase.kind === 'exposure'),
    phases.findLastIndex((phase) => phase.kind === 'exposure') + 1,
  );

/**
 * The durations of a frame's camera lane.
 * @param middleS - seconds the shutter is open, or the middle of a bracket
 */
export function cameraLane(plan: Plan, middleS = openShutterS(plan)): CameraLane {
  const { shutterLagS, writeS } = plan.camera;
  const lane = { cameraS: 0, holdS: 0, exposureS: 0, busyS: 0 };
  for (const openS of bracketS(plan, middleS)) {
    const darkS = getsDarkFrame(plan, openS) ? openS : 0;
    const closesS = lane.cameraS + shutterLagS + openS;
    if (openS > 0) lane.holdS = closesS;
    lane.exposureS += openS;
    lane.cameraS = closesS + darkS + writeS;
    lane.busyS = lane.busyS + darkS + writeS;
  }
  return lane;
}

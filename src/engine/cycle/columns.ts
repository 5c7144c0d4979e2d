/** The two lanes of every frame of a run, and the frames that decide. */
import type { Plan } from '../plan/schema.ts';
import type { Room } from '../room.ts';
import type { CycleExtremes } from '../run.ts';
import type { Columns } from '../schedule-types.ts';
import type { CameraLane } from './cycle.ts';

type CycleColumns = Pick<Columns, 'elapsedS' | 'exposureS' | 'holdS' | 'cameraS' | 'rigS' | 'spareS'>;

/** The cycle of every frame. */
export interface CycleRun {
  columns: CycleColumns;
  /** Seconds a frame takes: its interval, or the longer lane if that overruns or no frame follows. */
  periodS: Float64Array;
  /** All periods together. */
  runS: number;
  extremes: CycleExtremes;
}

/** What the lanes of a run are made of. */
export interface CycleFrames {
  /** Camera lane of each rung of the ramp; one without a ramp. */
  lanes: readonly CameraLane[];
  /** Rung of each frame; null without a ramp. */
  rung: Uint16Array | null;
  /** Seconds from the first shutter opening to this one. */
  elapsedS: Float64Array;
  /** Seconds to the next shutter opening. */
  intervalS: Float64Array;
  /** Seconds the rig moves after each frame, and then settles. */
  moveS: Float64Array;
  settleS: Float64Array;
}

/**
 * Fills the lanes of a run.
 *
 * The last frame has no interval to fit into; its spare is reckoned as if another frame followed.
 */
export function fillCycle(plan: Plan, frames: CycleFrames, room: Room): CycleRun {
  const { lanes, rung, elapsedS, intervalS, moveS, settleS } = frames;
  const column = () => room.f64(intervalS.length);
  const exposureS = column();
  const holdS = column();
  const cameraS = column();
  const part = (name: 'exposureS' | 'holdS' | 'cameraS') => Float64Array.from(lanes, (lane) => lane[name]);
  const byRung = { exposureS: part('exposureS'), holdS: part('holdS'), cameraS: part('cameraS') };
  fillCamera({ exposureS, holdS, cameraS }, byRung, rung);
  const rigS = column();
  if (plan.move.mode === 'moveShootMove') fillRig(rigS, holdS, moveS, settleS);
  else rigS.fill(0);
  const spareS = column();
  const periodS = column();
  const extremes = fillSpare(spareS, periodS, intervalS, cameraS, rigS, plan.cycle.guardS);
  return { columns: { elapsedS, exposureS, holdS, cameraS, rigS, spareS }, periodS, ...extremes };
}

interface CameraColumns {
  exposureS: Float64Array;
  holdS: Float64Array;
  cameraS: Float64Array;
}

/**
 * Camera lane of each frame.
 * @param byRung - one value a rung of the ramp
 * @param rung - rung of each frame; null if all frames are alike
 */
function fillCamera(columns: CameraColumns, byRung: CameraColumns, rung: Uint16Array | null): void {
  const { exposureS, holdS, cameraS } = columns;
  if (rung === null) {
    exposureS.fill(byRung.exposureS[0] as number);
    holdS.fill(byRung.holdS[0] as number);
    cameraS.fill(byRung.cameraS[0] as number);
    return;
  }
  for (let k = 0; k < rung.length; k += 1) {
    const r = rung[k] as number;
    exposureS[k] = byRung.exposureS[r] as number;
    holdS[k] = byRung.holdS[r] as number;
    cameraS[k] = byRung.cameraS[r] as number;
  }
}

/** Rig lane of a rig that moves between exposures: hold, move, settle. */
function fillRig(rigS: Float64Array, holdS: Float64Array, moveS: Float64Array, settleS: Float64Array): void {
  for (let k = 0; k < rigS.length; k += 1)
    rigS[k] = (holdS[k] as number) + (moveS[k] as number) + (settleS[k] as number);
}

/** Fills spare and period of each frame, and finds the frames that decide. */
function fillSpare(
  spareS: Float64Array,
  periodS: Float64Array,
  intervalS: Float64Array,
  cameraS: Float64Array,
  rigS: Float64Array,
  guardS: number,
): Pick<CycleRun, 'extremes' | 'runS'> {
  const frames = spareS.length;
  let longestS = 0;
  let longestFrame = 1;
  let tightestSpareS = Number.POSITIVE_INFINITY;
  let tightestFrame = 1;
  let runS = 0;
  for (let k = 0; k < frames; k += 1) {
    const interval = intervalS[k] as number;
    const longer = Math.max(rigS[k] as number, cameraS[k] as number);
    const spare = interval - guardS - longer;
    const period = interval > longer && k < frames - 1 ? interval : longer;
    spareS[k] = spare;
    periodS[k] = period;
    runS += period;
    if (longer > longestS) {
      longestS = longer;
      longestFrame = k + 1;
    }
    if (spare < tightestSpareS) {
      tightestSpareS = spare;
      tightestFrame = k + 1;
    }
  }
  return { extremes: { longestS, longestFrame, tightestSpareS, tightestFrame }, runS };
}

/** The two lanes of every frame of a run, and the frames that decide. */
import type { Pace } from '../pacing/pacing.ts';
import type { Plan } from '../plan/schema.ts';
import type { CycleExtremes } from '../run.ts';
import type { Columns } from '../schedule-types.ts';
import type { CameraLane } from './cycle.ts';

type CycleColumns = Pick<
  Columns,
  'elapsedS' | 'exposureS' | 'holdS' | 'cameraS' | 'settleS' | 'rigS' | 'spareS'
>;

/** The cycle of every frame. */
export interface CycleRun {
  columns: CycleColumns;
  /** Seconds a frame takes: its interval, or the longer lane if that overruns or no frame follows. */
  periodS: Float64Array;
  extremes: CycleExtremes;
}

/**
 * Fills the lanes of a run.
 * @param intervalS - seconds to the next shutter opening, one entry a frame
 * @param moveS - seconds the rig moves after each frame
 *
 * The last frame has no interval to fit into; its spare is reckoned as if another frame followed.
 */
export function fillCycle(
  plan: Plan,
  pace: Pace,
  lane: CameraLane,
  intervalS: Float64Array,
  moveS: Float64Array,
): CycleRun {
  const frames = intervalS.length;
  const column = () => new Float64Array(frames);
  const exposureS = column().fill(lane.exposureS);
  const holdS = column().fill(lane.holdS);
  const cameraS = column().fill(lane.cameraS);
  const elapsedS = column();
  const settleS = column();
  const rigS = column();
  const spareS = column();
  const periodS = column();
  const between = plan.move.mode === 'moveShootMove';
  const { settleS: settle } = plan.move;
  const { guardS } = plan.cycle;
  const extremes = {
    longestS: 0,
    longestFrame: 1,
    tightestSpareS: Number.POSITIVE_INFINITY,
    tightestFrame: 1,
  };
  for (let k = 0; k < frames; k += 1) {
    const interval = intervalS[k] as number;
    elapsedS[k] = k * pace.intervalS;
    let rig = 0;
    if (between) {
      const move = moveS[k] as number;
      const ring = move > 0 ? settle : 0;
      settleS[k] = ring;
      rig = lane.holdS + move + ring;
      rigS[k] = rig;
    }
    const longer = Math.max(rig, lane.cameraS);
    const spare = interval - guardS - longer;
    spareS[k] = spare;
    periodS[k] = interval > longer && k < frames - 1 ? interval : longer;
    if (longer > extremes.longestS) {
      extremes.longestS = longer;
      extremes.longestFrame = k + 1;
    }
    if (spare < extremes.tightestSpareS) {
      extremes.tightestSpareS = spare;
      extremes.tightestFrame = k + 1;
    }
  }
  return { columns: { elapsedS, exposureS, holdS, cameraS, settleS, rigS, spareS }, periodS, extremes };
}

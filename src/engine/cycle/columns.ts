/** The two lanes of every frame of a run, and the frames that decide. */
import type { Plan } from '../plan/schema.ts';
import type { Room } from '../room.ts';
import type { CycleExtremes } from '../run.ts';
import type { Columns } from '../schedule-types.ts';
import type { Spell } from '../spell.ts';
import type { CameraLane } from './cycle.ts';

type CycleColumns = Pick<Columns, 'elapsedS' | 'exposureS' | 'holdS' | 'cameraS' | 'rigS' | 'spareS'>;

/** The cycle of every frame. */
export interface CycleRun {
  columns: CycleColumns;
  periods: Periods;
  extremes: CycleExtremes;
}

/** Seconds that frames take: their interval, or the longer lane if that overruns or no frame follows. */
export interface Periods {
  /** In order, with the period of their frames for an interval; the last frame is a spell of its own. */
  spells: readonly Spell[];
  /** One entry a frame where those of a spell differ, because a lane may overrun; null where they do not. */
  periodS: Float64Array | null;
  /** All periods together. */
  runS: number;
}

/** What the lanes of a run are made of. */
export interface CycleFrames {
  /** Camera lane of each rung of the ramp; one without a ramp. */
  lanes: readonly CameraLane[];
  /** Frames of the same settings, in order. */
  spells: readonly Spell[];
  /** Seconds from the first shutter opening to this one. */
  elapsedS: Float64Array;
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
  const { elapsedS, lanes, spells } = frames;
  const column = () => room.f64(elapsedS.length);
  const [exposureS, holdS, cameraS, rigS, spareS] = [column(), column(), column(), column(), column()];
  const columns = { elapsedS, exposureS, holdS, cameraS, rigS, spareS };
  fillCamera(columns, lanes, spells);
  const sums = fillRigAndSpare(plan, columns, frames);
  const { runS, ...extremes } = sums;
  return { columns, periods: { ...periodsOf(columns, spells, extremes, room), runS }, extremes };
}

/** Camera lane of each frame. */
function fillCamera(
  { exposureS, holdS, cameraS }: CycleColumns,
  lanes: readonly CameraLane[],
  spells: readonly Spell[],
): void {
  for (const { begin, end, rung } of spells) {
    const lane = lanes[rung] as CameraLane;
    exposureS.fill(lane.exposureS, begin, end);
    holdS.fill(lane.holdS, begin, end);
    cameraS.fill(lane.cameraS, begin, end);
  }
}

/** Fills rig lane and spare of each frame, and finds the frames that decide. */
function fillRigAndSpare(
  { move: { mode }, cycle: { guardS } }: Plan,
  { rigS, spareS }: CycleColumns,
  { lanes, spells, ...rig }: CycleFrames,
): CycleExtremes & Pick<Periods, 'runS'> {
  const between = mode === 'moveShootMove';
  // A rig that does not move between exposures has an empty lane.
  const { moveS, settleS } = between ? rig : { moveS: rigS.fill(0), settleS: rigS };
  let [longestS, longestFrame] = [0, 1];
  let [tightestSpareS, tightestFrame] = [Number.POSITIVE_INFINITY, 1];
  let runS = 0;
  for (const { begin, end, rung, intervalS } of lastApart(spells)) {
    const { cameraS, holdS } = lanes[rung] as CameraLane;
    const heldS = between ? holdS : 0;
    const freeS = intervalS - guardS;
    const leastS = end === rigS.length ? 0 : intervalS;
    // The spare falls as the lane grows: of a spell none but the longest so far need be looked at.
    let longestHereS = -1;
    for (let k = begin; k < end; k += 1) {
      const rigLaneS = heldS + (moveS[k] as number) + (settleS[k] as number);
      const longerS = Math.max(rigLaneS, cameraS);
      const spare = freeS - longerS;
      rigS[k] = rigLaneS;
      spareS[k] = spare;
      runS += Math.max(longerS, leastS);
      if (longerS <= longestHereS) continue;
      longestHereS = longerS;
      if (longerS > longestS) [longestS, longestFrame] = [longerS, k + 1];
      if (spare < tightestSpareS) [tightestSpareS, tightestFrame] = [spare, k + 1];
    }
  }
  return { longestS, longestFrame, tightestSpareS, tightestFrame, runS };
}

/** The same frames, the last of them by itself. */
function lastApart(spells: readonly Spell[]): Spell[] {
  const last = spells.at(-1) as Spell;
  const middle = last.end - 1;
  const before = middle > last.begin ? [{ ...last, end: middle }] : [];
  return [...spells.slice(0, -1), ...before, { ...last, begin: middle }];
}

/** Periods of the frames of a run whose lanes are filled. */
function periodsOf(
  { rigS, cameraS }: CycleColumns,
  spells: readonly Spell[],
  { tightestSpareS }: CycleExtremes,
  room: Room,
): Omit<Periods, 'runS'> {
  const last = rigS.length - 1;
  const lastS = Math.max(rigS[last] as number, cameraS[last] as number);
  const apart = lastApart(spells).map((spell) =>
    spell.begin === last ? { ...spell, intervalS: lastS } : spell,
  );
  // Where nothing is short of its guard, nothing overruns.
  if (tightestSpareS >= 0) return { spells: apart, periodS: null };
  const periodS = room.f64(rigS.length);
  for (const { begin, end, intervalS } of apart)
    for (let k = begin; k < end; k += 1)
      periodS[k] = Math.max(intervalS, rigS[k] as number, cameraS[k] as number);
  return { spells: apart, periodS };
}

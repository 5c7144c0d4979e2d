/** The exposure of a run whose light is known: the settings of every frame, and how they change. */
import { cameraLane } from '../cycle/cycle.ts';
import type { LightTrack } from '../light/scene.ts';
import type { Pace } from '../pacing/pacing.ts';
import type { Plan } from '../plan/schema.ts';
import type { Spell } from '../spell.ts';
import { openSpanS, type ShutterCeiling, shutterCeiling } from './ceiling.ts';
import { fixedLadder, type Ladder, ladderOf, type Rung } from './ladder.ts';
import { fillRamp, type RampChange, type RampColumns, rampChanges } from './ramp.ts';

/** What the exposure of a run came to. */
export interface RampRun {
  /** Whether the settings follow the light; if not, the ladder has one rung. */
  follows: boolean;
  ladder: Ladder;
  ceiling: ShutterCeiling;
  /** What of the frames have the same settings, in order. */
  spells: readonly Spell[];
  changes: readonly RampChange[];
  /** Rung in use, scene and error: one entry a frame. */
  rung: Uint16Array;
  evScene: Float32Array;
  evError: Float32Array;
  /** Interval after the first frame, and the shortest and longest of all, seconds. */
  firstIntervalS: number;
  shortestIntervalS: number;
  longestIntervalS: number;
}

/** What the settings of a run are to follow. */
export interface RampLight {
  track: LightTrack;
  /** Seconds between the track's nodes, and where frame 1 lies among them, in steps from the first. */
  nodeStepS: number;
  firstNode: number;
}

/** The rungs that a run can use, and how far its shutter may go. */
export interface RampLadder {
  ladder: Ladder;
  ceiling: ShutterCeiling;
}

/**
 * The ladder of a plan.
 * @param clock - interval and dial setting of the run, seconds
 * @param rigS - longest move and its settling, seconds
 */
export function rampLadder(plan: Plan, clock: Pick<Pace, 'intervalS' | 'dialS'>, rigS: number): RampLadder {
  const ceiling = shutterCeiling(plan, clock, rigS);
  const ladder = plan.exposure.ramp.used ? ladderOf(plan, ceiling.ceilingS) : fixedLadder(plan);
  return { ladder, ceiling };
}

/**
 * Works out the settings of every frame, filling rung, scene, error, elapsed time and interval of each.
 * @param pace - interval and dial setting of the run
 */
export function rampOf(
  plan: Plan,
  pace: Pick<Pace, 'intervalS' | 'dialS'>,
  { ladder, ceiling }: RampLadder,
  light: RampLight,
  columns: RampColumns,
): RampRun {
  const endToStart = plan.trigger.counts === 'endToStart';
  const spanS = Float64Array.from(ladder.rungs, ({ openS }) => openSpanS(plan, cameraLane(plan, openS)));
  const input = {
    ladderEv: ladder.ev100,
    openSpanS: spanS,
    ...light.track,
    nodeStepS: light.nodeStepS,
    firstNode: light.firstNode,
    dialS: endToStart ? pace.dialS : pace.intervalS,
    endToStart,
    hysteresisStops: plan.exposure.ramp.hysteresisStops,
  };
  const spells = fillRamp(input, columns);
  const { rung, evScene, evError, intervalS } = columns;
  const intervals = rungsUsed({ ladder, spells }).map(({ index }) =>
    endToStart ? input.dialS + (spanS[index] as number) : input.dialS,
  );
  return {
    follows: plan.exposure.ramp.used,
    ladder,
    ceiling,
    spells,
    changes: rampChanges(spells, ladder),
    rung,
    evScene,
    evError,
    firstIntervalS: intervalS[0] as number,
    shortestIntervalS: Math.min(...intervals),
    longestIntervalS: Math.max(...intervals),
  };
}

/** The rungs that some frame uses, brightest light first. */
export function rungsUsed({ ladder, spells }: Pick<RampRun, 'ladder' | 'spells'>): Rung[] {
  const used = new Set(spells.map(({ rung }) => rung));
  return ladder.rungs.filter(({ index }) => used.has(index));
}

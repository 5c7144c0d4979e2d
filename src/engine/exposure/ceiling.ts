/**
 * How long the shutter can be open at most: so that the frame's lanes fit into the interval, and so that no exposure
 * takes a larger share of it than the plan's shutter angle (angle = 360 x exposure / interval).
 *
 * Source of the angle: t = angle/(360 fps), provideocoalition.com, “Shutter speed vs shutter angle”, first list (V2).
 *
 * A trigger that counts from closing to opening lets the interval grow with the exposure: the cycle then sets no
 * ceiling, but for a dark frame, which has to fit into the gap.
 */
import { type CameraLane, cameraLane } from '../cycle/cycle.ts';
import type { Pace } from '../pacing/pacing.ts';
import type { Plan } from '../plan/schema.ts';
import { bracketS } from './shutter.ts';

/** The longest the shutter can be open, seconds; the middle of a bracket. Infinity if nothing sets an end. */
export interface ShutterCeiling {
  /** By the cycle: 0 if not even the shortest exposure fits. */
  cycleS: number;
  /** By the shutter angle. */
  angleS: number;
  /** The shorter of the two, and which it is. */
  ceilingS: number;
  binds: 'cycle' | 'angle' | null;
}

type Clock = Pick<Pace, 'intervalS' | 'dialS'>;

/** Seconds from a frame's first shutter opening to its last closing: what an end-to-start trigger waits for. */
export const openSpanS = (plan: Plan, lane: CameraLane): number => lane.holdS - plan.camera.shutterLagS;

/** Seconds from one shutter opening to the next at a frame's own camera lane. */
export const intervalAtS = (plan: Plan, clock: Clock, lane: CameraLane): number =>
  plan.trigger.counts === 'endToStart' ? clock.dialS + openSpanS(plan, lane) : clock.intervalS;

/** Shutter angle of the longest exposure of a frame, degrees. */
export function shutterAngleDeg(plan: Plan, clock: Clock, middleS: number): number {
  const longestS = bracketS(plan, middleS).at(-1) ?? middleS;
  return (360 * longestS) / intervalAtS(plan, clock, cameraLane(plan, middleS));
}

const TINY_S = 1e-9;
const LONG_S = 1e7;

/** The largest time up to which `fits` holds: Infinity if it always does, 0 if it never does. */
function longest(fits: (openS: number) => boolean): number {
  if (fits(LONG_S)) return Number.POSITIVE_INFINITY;
  if (!fits(TINY_S)) return 0;
  let low = TINY_S;
  let high = 2 * TINY_S;
  while (fits(high)) {
    low = high;
    high *= 2;
  }
  for (let middle = (low + high) / 2; middle > low && middle < high; middle = (low + high) / 2) {
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** Time left free in a frame's interval, seconds; rigS is the move and its settling. */
function spareS(plan: Plan, clock: Clock, rigS: number, middleS: number): number {
  const lane = cameraLane(plan, middleS);
  const rigLaneS = plan.move.mode === 'moveShootMove' ? lane.holdS + rigS : 0;
  return intervalAtS(plan, clock, lane) - plan.cycle.guardS - Math.max(lane.cameraS, rigLaneS);
}

function cycleCeilingS(plan: Plan, clock: Clock, rigS: number): number {
  const grows = plan.trigger.counts === 'endToStart';
  if (grows && !plan.camera.noiseReduction) return Number.POSITIVE_INFINITY;
  const ceilingS = longest((middleS) => spareS(plan, clock, rigS, middleS) >= 0);
  // Where the gap is too short for anything, a shorter exposure mends nothing.
  return ceilingS === 0 && grows ? Number.POSITIVE_INFINITY : ceilingS;
}

function angleCeilingS(plan: Plan, clock: Clock): number {
  const { shutterAngleMaxDeg } = plan.exposure;
  if (shutterAngleMaxDeg === null) return Number.POSITIVE_INFINITY;
  return longest((middleS) => shutterAngleDeg(plan, clock, middleS) <= shutterAngleMaxDeg);
}

/**
 * How long the shutter can be open at most.
 * @param clock - interval and dial setting of the run, seconds
 * @param rigS - longest move and its settling, seconds; counts if the rig moves between exposures
 */
export function shutterCeiling(plan: Plan, clock: Clock, rigS: number): ShutterCeiling {
  const cycleS = cycleCeilingS(plan, clock, rigS);
  const angleS = angleCeilingS(plan, clock);
  const ceilingS = Math.min(cycleS, angleS);
  const binds = ceilingS === Number.POSITIVE_INFINITY ? null : angleS < cycleS ? 'angle' : 'cycle';
  return { cycleS, angleS, ceilingS, binds };
}

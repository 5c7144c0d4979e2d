/** What quiet moves change about the longest lane of a run. */
import type { Plan } from '../plan/schema.ts';
import type { QuietComparison } from '../ringing/summary.ts';
import { inBlocks } from './blocks.ts';
import type { Motion } from './motion.ts';

/** Seconds of each frame's camera lane: until the last exposure has closed, and all of it. */
interface CameraLanes {
  holdS: Float64Array;
  cameraS: Float64Array;
}

/**
 * The longest lane of a run with quiet moves where they end sooner, and with none.
 * @param motion - of that plan, as it is
 * @returns null where quiet moves cannot change anything: if every move takes or settles a time of its own, or the settle
 *   does not go by the ringing
 */
export function quietComparison(plan: Plan, motion: Motion, lanes: CameraLanes): QuietComparison | null {
  if (motion.otherwise === null) return null;
  const asItIs = longestAsItIs(lanes, motion);
  const otherwise = longestOtherwise(lanes, motion.otherwise);
  return plan.move.quiet
    ? { withQuietS: asItIs, withoutQuietS: otherwise }
    : { withQuietS: otherwise, withoutQuietS: asItIs };
}

function longestAsItIs({ holdS, cameraS }: CameraLanes, { moveS, settleS }: Motion): number {
  const lanes = (from: number, to: number) => longestOf(holdS, moveS, settleS, cameraS, from, to);
  return longest(moveS.length, lanes);
}

function longestOtherwise(
  { holdS, cameraS }: CameraLanes,
  { of, busyS }: NonNullable<Motion['otherwise']>,
): number {
  return longest(of.length, (from, to) => longestPicked(holdS, of, busyS, cameraS, from, to));
}

/** The longest of all blocks. */
function longest(frames: number, ofBlock: (from: number, to: number) => number): number {
  let most = 0;
  inBlocks(frames, (from, to) => {
    most = Math.max(most, ofBlock(from, to));
  });
  return most;
}

function longestOf(
  holdS: Float64Array,
  moveS: Float64Array,
  settleS: Float64Array,
  cameraS: Float64Array,
  from: number,
  to: number,
): number {
  let most = 0;
  for (let k = from; k < to; k += 1) {
    const rig = (holdS[k] as number) + (moveS[k] as number) + (settleS[k] as number);
    const camera = cameraS[k] as number;
    if (rig > most) most = rig;
    if (camera > most) most = camera;
  }
  return most;
}

function longestPicked(
  holdS: Float64Array,
  of: Int32Array,
  busyS: Float64Array,
  cameraS: Float64Array,
  from: number,
  to: number,
): number {
  let most = 0;
  for (let k = from; k < to; k += 1) {
    const rig = (holdS[k] as number) + (busyS[of[k] as number] as number);
    const camera = cameraS[k] as number;
    if (rig > most) most = rig;
    if (camera > most) most = camera;
  }
  return most;
}

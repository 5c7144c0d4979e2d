/** What quiet moves change about the longest lane of a run. */
import type { Plan } from '../plan/schema.ts';
import type { QuietComparison } from '../ringing/summary.ts';
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
  let longest = 0;
  for (let k = 0; k < moveS.length; k += 1) {
    const rigS = (holdS[k] as number) + (moveS[k] as number) + (settleS[k] as number);
    if (rigS > longest) longest = rigS;
    if ((cameraS[k] as number) > longest) longest = cameraS[k] as number;
  }
  return longest;
}

function longestOtherwise(
  { holdS, cameraS }: CameraLanes,
  { of, busyS }: NonNullable<Motion['otherwise']>,
): number {
  let longest = 0;
  for (let k = 0; k < of.length; k += 1) {
    const rigS = (holdS[k] as number) + (busyS[of[k] as number] as number);
    if (rigS > longest) longest = rigS;
    if ((cameraS[k] as number) > longest) longest = cameraS[k] as number;
  }
  return longest;
}

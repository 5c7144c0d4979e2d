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
  const { holdS, cameraS } = lanes;
  const { moveS, settleS, otherwise: other } = motion;
  const longest = new Float64Array(2);
  inBlocks(moveS.length, (from, to) => {
    raise(longest, holdS, cameraS, moveS, settleS, other.of, other.busyS, from, to);
  });
  const [asItIs = 0, otherwise = 0] = longest;
  return plan.move.quiet
    ? { withQuietS: asItIs, withoutQuietS: otherwise }
    : { withQuietS: otherwise, withoutQuietS: asItIs };
}

/** @param longest - lanes of a run as it is, and of the other choice: so far, and then */
function raise(
  longest: Float64Array,
  holdS: Float64Array,
  cameraS: Float64Array,
  moveS: Float64Array,
  settleS: Float64Array,
  of: Int32Array,
  busyS: Float64Array,
  from: number,
  to: number,
): void {
  let asItIs = longest[0] as number;
  let otherwise = longest[1] as number;
  let ofCamera = 0;
  for (let k = from; k < to; k += 1) {
    const hold = holdS[k] as number;
    const camera = cameraS[k] as number;
    const rig = hold + (moveS[k] as number) + (settleS[k] as number);
    const other = hold + (busyS[of[k] as number] as number);
    if (rig > asItIs) asItIs = rig;
    if (other > otherwise) otherwise = other;
    if (camera > ofCamera) ofCamera = camera;
  }
  longest[0] = Math.max(asItIs, ofCamera);
  longest[1] = Math.max(otherwise, ofCamera);
}

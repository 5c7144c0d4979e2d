/** What quiet moves change about the longest lane of a run. */
import type { CameraLane } from '../cycle/cycle.ts';
import type { Plan } from '../plan/schema.ts';
import type { QuietComparison } from '../ringing/summary.ts';
import type { Spell } from '../spell.ts';
import { inBlocks } from './blocks.ts';
import { largest } from './combined.ts';
import type { Motion } from './motion.ts';

/** The lanes of a run as it is. */
export interface LanesAsTheyAre {
  /** Camera lane of each rung, and the frames of each. */
  lanes: readonly Pick<CameraLane, 'holdS' | 'cameraS'>[];
  spells: readonly Spell[];
  /** Longest of all lanes, the rig's too, seconds. */
  longestS: number;
}

/**
 * The longest lane of a run with quiet moves where they end sooner, and with none.
 * @param motion - of that plan, as it is
 * @returns null where quiet moves cannot change anything: if every move takes or settles a time of its own, or the settle
 *   does not go by the ringing
 */
export function quietComparison(
  plan: Plan,
  { otherwise: other }: Pick<Motion, 'otherwise'>,
  { lanes, spells, longestS }: LanesAsTheyAre,
): QuietComparison | null {
  if (other === null) return null;
  const otherwiseS = spells.reduce((most, { begin, end, rung }) => {
    const { holdS, cameraS } = lanes[rung] as LanesAsTheyAre['lanes'][number];
    return Math.max(most, cameraS, holdS + longestWithin(other.of, other.busyS, begin, end));
  }, 0);
  return plan.move.quiet
    ? { withQuietS: longestS, withoutQuietS: otherwiseS }
    : { withQuietS: otherwiseS, withoutQuietS: longestS };
}

function longestWithin(of: Int32Array, busyS: Float64Array, begin: number, end: number): number {
  // There is no combination that no frame of the run has.
  if (end - begin === of.length) return largest(busyS);
  let most = 0;
  inBlocks(end - begin, (from, to) => {
    most = raised(most, of, busyS, begin + from, begin + to);
  });
  return most;
}

function raised(before: number, of: Int32Array, busyS: Float64Array, from: number, to: number): number {
  let most = before;
  for (let k = from; k < to; k += 1) {
    const busy = busyS[of[k] as number] as number;
    if (busy > most) most = busy;
  }
  return most;
}

/** What ringing does to a run: the worst of it, how long the rig settles, and what quiet moves would change. */
import type { Plan } from '../plan/schema.ts';

/** One entry a frame; index 0 is the move after frame 1. */
export interface RingColumns {
  /** Seconds allowed for ringing after the move. */
  settleS: Float64Array;
  /** Ring that the move leaves at its end, px; null if nothing is known of the ringing. */
  ringPx: Float32Array | null;
}

/** Longest lane of all frames, seconds, without the guard: with quiet moves where they save time, and with none. */
export interface QuietComparison {
  withQuietS: number;
  withoutQuietS: number;
}

/** Ringing over a run. */
export interface RingingSummary {
  frequencyHz: number;
  dampingRatio: number;
  /** Largest ring at the end of a move, px; null if the settle is a fixed time. */
  worstPx: number | null;
  /** Frame, counted from 1, whose picture that would spoil: the one after the move; null if nothing rings. */
  worstFrame: number | null;
  longestSettleS: number;
  /** Shortest interval of the run with and without quiet moves, seconds; null if they cannot change it. */
  quiet: { shortestIntervalS: number; shortestIntervalWithoutS: number; savesS: number } | null;
}

/** Index of the largest entry, the first of several; -1 if none is above 0. */
function largestAt(values: Float64Array | Float32Array): number {
  let most = 0;
  let at = -1;
  for (let k = 0; k < values.length; k += 1) {
    const value = values[k] as number;
    if (value > most) {
      most = value;
      at = k;
    }
  }
  return at;
}

function quietOf(plan: Plan, comparison: QuietComparison | null): RingingSummary['quiet'] {
  if (comparison === null) return null;
  const { withQuietS, withoutQuietS } = comparison;
  const { guardS } = plan.cycle;
  return {
    shortestIntervalS: withQuietS + guardS,
    shortestIntervalWithoutS: withoutQuietS + guardS,
    savesS: withoutQuietS - withQuietS,
  };
}

/**
 * Sums up the ringing of a run.
 * @param comparison - null where quiet moves change nothing: a fixed settle, a fixed time to move
 * @returns null unless the rig moves between exposures: only then does it have to come to rest
 */
export function ringingOf(
  plan: Plan,
  { settleS, ringPx }: RingColumns,
  comparison: QuietComparison | null,
): RingingSummary | null {
  if (plan.move.mode !== 'moveShootMove') return null;
  const worstAt = ringPx === null ? -1 : largestAt(ringPx);
  return {
    frequencyHz: plan.ringing.frequencyHz,
    dampingRatio: plan.ringing.dampingRatio,
    worstPx: ringPx && (ringPx[worstAt] ?? 0),
    worstFrame: worstAt === -1 ? null : worstAt + 2,
    longestSettleS: settleS[largestAt(settleS)] ?? 0,
    quiet: quietOf(plan, comparison),
  };
}

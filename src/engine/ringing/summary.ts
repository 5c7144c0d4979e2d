/** What ringing does to a run: the worst of it, how long the rig settles, and what quiet moves would change. */
import type { Plan } from '../plan/schema.ts';

/** How the moves of a run ring. */
export interface Rings {
  /** Ring that the move after each frame leaves at its end, px; null if nothing is known of the ringing. */
  ringPx: Float32Array | null;
  /** The largest of these; 0 without. */
  worstPx: number;
  longestSettleS: number;
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
  { ringPx, worstPx, longestSettleS }: Rings,
  comparison: QuietComparison | null,
): RingingSummary | null {
  if (plan.move.mode !== 'moveShootMove') return null;
  return {
    frequencyHz: plan.ringing.frequencyHz,
    dampingRatio: plan.ringing.dampingRatio,
    worstPx: ringPx && worstPx,
    worstFrame: ringPx && worstPx > 0 ? ringPx.indexOf(worstPx) + 2 : null,
    longestSettleS,
    quiet: quietOf(plan, comparison),
  };
}

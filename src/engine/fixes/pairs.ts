/** Two changes together: where each way out of a finding brings another, a way out of that one on top. */
import type { Finding, FindingId } from '../findings/types.ts';
import { costOf } from './cost.ts';
import { cheapestFirst } from './reckon.ts';
import { type Attempt, type Judge, judgeOf, searchWay } from './search.ts';
import type { Trials } from './trial.ts';
import type { Cost, Way, WaysOut } from './types.ts';

/** A way that was gone as far as it has to be, and what stands in its way there. */
export interface Blocked {
  way: Way;
  attempt: Attempt;
}

/** Two changes that do together. */
export interface Pair {
  kind: string;
  label: string;
  attempt: Attempt;
  cost: Cost;
}

function pairOf(trials: Trials, { way, attempt }: Blocked, second: Way, judge: Judge): Pair | null {
  const found = searchWay(second, judge);
  if (!found.passes) return null;
  const { plan, outcome } = found.attempt;
  return {
    kind: `${way.kind}+${second.kind}`,
    label: `${way.label(attempt.plan)}, and ${second.label(plan)}`,
    attempt: found.attempt,
    cost: costOf(trials.present, outcome, [way.needs(attempt.plan), second.needs(plan)]),
  };
}

/**
 * The cheapest two changes that do together; null if none do.
 * @param most - no further change is begun after so many trials
 */
export function cheapestPair(
  trials: Trials,
  finding: Finding,
  blocked: readonly Blocked[],
  ways: Readonly<Record<FindingId, WaysOut>>,
  most: number,
): Pair | null {
  const until = trials.count + most;
  let best: Pair | null = null;
  for (const first of blocked) {
    const blocker = first.attempt.blockers[0];
    if (!blocker || trials.count >= until) continue;
    const made = trials.schedule(first.attempt.plan);
    const judge = judgeOf(trials, finding, blocker);
    const seconds = ways[blocker.id](blocker, first.attempt.plan, made);
    for (const { way, leastRank } of cheapestFirst(trials, seconds)) {
      if (trials.count >= until || (best !== null && best.cost.rank <= leastRank)) break;
      if (way.kind === first.way.kind) continue;
      const pair = pairOf(trials, first, way, judge);
      if (pair && (best === null || pair.cost.rank < best.cost.rank)) best = pair;
    }
  }
  return best;
}

/**
 * What a way will cost at least, reckoned from clock and pacing before anything is tried: so that cheap ways are tried
 * before dear ones, and those that are too dear not at all.
 */
import { paceOf } from '../pacing/pacing.ts';
import type { Plan } from '../plan/schema.ts';
import { startFor } from '../schedule.ts';
import { costOf } from './cost.ts';
import type { Outcome, Trials } from './trial.ts';
import type { Way } from './types.ts';

/** A way, and the least rank that its cost will have, at the value where its search begins. */
export interface Reckoned {
  way: Way;
  leastRank: number;
}

function startMsOf(changed: Plan, { plan, present }: Trials): number {
  const same = changed.start === plan.start && changed.place === plan.place && changed.sky === plan.sky;
  return same ? present.startMs : startFor(changed).startMs;
}

/** The plan's figures as far as pacing and clock alone change them. */
function reckoned(changed: Plan, trials: Trials): Outcome {
  const { present, pace: before } = trials;
  const pace = changed === trials.plan ? before : paceOf(changed);
  const { totals } = present;
  const startMs = startMsOf(changed, trials);
  const eventDurationS = totals.eventDurationS + pace.eventDurationS - before.eventDurationS;
  const frames = totals.frames + pace.frames - before.frames;
  const clipLengthS = totals.clipLengthS + pace.clipLengthS - before.clipLengthS;
  return {
    ...present,
    startMs,
    totals: { ...totals, frames, clipLengthS, eventDurationS, intervalS: pace.intervalS },
  };
}

/** The ways with what they will cost, cheapest first, then in their own order; without those that have no values. */
export function cheapestFirst(trials: Trials, ways: readonly Way[]): Reckoned[] {
  const rank = (way: Way): number => {
    const changed = way.at(way.first);
    if (changed === null) return 0;
    return costOf(trials.present, reckoned(changed, trials), [way.needs(changed)]).rank;
  };
  return ways
    .filter(({ steps }) => steps >= 1)
    .map((way) => ({ way, leastRank: rank(way) }))
    .sort((a, b) => a.leastRank - b.leastRank);
}

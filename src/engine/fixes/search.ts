/**
 * Searching along a way for the smallest change that suffices.
 *
 * Where the subject reckons that it should suffice the search begins. If it does, smaller values are tried, else larger
 * ones, in strides that grow, and what lies between is halved. What is given was tried and passed, and the value one
 * step smaller was tried and did not.
 */
import { type Finding, keyOf } from '../findings/types.ts';
import { readPlan } from '../plan/parse.ts';
import type { Plan } from '../plan/schema.ts';
import { firstWhere } from '../search.ts';
import { inTheWay, type Outcome, type Trials } from './trial.ts';
import type { Way } from './types.ts';

/** What came of one value of a way. */
export interface Attempt {
  plan: Plan;
  outcome: Outcome;
  /** Whether what the way is for is gone. */
  enough: boolean;
  /** Findings that forbid it all the same. */
  blockers: readonly Finding[];
}

/** Tries a changed plan; null if no plan file could hold it. */
export type Judge = (changed: Plan) => Attempt | null;

/**
 * Judges changes made for the sake of a finding.
 * @param also - a finding in the way of an earlier change, which has to go as well
 */
export const judgeOf =
  (trials: Trials, finding: Finding, also?: Finding): Judge =>
  (plan) => {
    const outcome = trials.outcome(plan);
    const blockers = inTheWay(finding, trials.present, outcome);
    const cleared = !also || blockers.every((other) => keyOf(other) !== keyOf(also));
    const enough = cleared && !outcome.severities.has(keyOf(finding));
    const attempt = { plan, outcome, blockers, enough };
    // A way keeps to the ranges of its fields; what is offered is read once more as a file would be.
    return passes(attempt) && !readPlan(plan).ok ? null : attempt;
  };

/** Where a search ended: at a value that passes, or at the one that came nearest; null if no value makes a plan. */
export type Found = { passes: true; attempt: Attempt } | { passes: false; attempt: Attempt | null };

export const passes = (attempt: Attempt | null): attempt is Attempt =>
  attempt?.enough === true && attempt.blockers.length === 0;

/** A way is given up after so many strides upwards, each this many times the one before: 156 values. */
const STRIDES = 4;
const GROWTH = 5;

/**
 * Least value from which on something holds, searched from a guess; 0 is the plan as it is, where it does not.
 * @returns null if it was not met upwards
 */
function leastNear(guess: number, steps: number, holds: (step: number) => boolean): number | null {
  const down = holds(guess);
  let near = guess;
  let stride = 1;
  for (let n = 0; down || n < STRIDES; n += 1) {
    const next = Math.max(0, Math.min(steps, down ? near - stride : near + stride));
    if (next === near) return null;
    if (next === 0 || holds(next) !== down) {
      const [low, high] = down ? [next, near] : [near, next];
      return firstWhere(low + 1, high, holds);
    }
    near = next;
    stride *= GROWTH;
  }
  return null;
}

/** The smallest value of a way that passes. A value that makes no plan counts as one too far. */
export function searchWay(way: Way, judge: Judge): Found {
  const known = new Map<number, Attempt | null>();
  const look = (step: number): Attempt | null => {
    const before = known.get(step);
    if (before !== undefined) return before;
    const changed = way.at(step);
    const attempt = changed && judge(changed);
    known.set(step, attempt);
    return attempt;
  };
  const fits = (step: number) => passes(look(step));
  const guess = Math.max(1, Math.min(way.steps, Math.round(way.first)));
  const least = leastNear(guess, way.steps, (step) => look(step)?.enough ?? true);
  if (least === null) return { passes: false, attempt: farthest(known) };
  const suffices = fits(least) ? least : leastBeyond(least, guess, way.steps, fits);
  const attempt = look(suffices ?? least);
  if (passes(attempt)) return { passes: true, attempt };
  return { passes: false, attempt: attempt ?? farthest(known) };
}

/** Beyond the least that is enough something else may be in the way for a while, and be gone farther on. */
const leastBeyond = (
  least: number,
  guess: number,
  steps: number,
  fits: (step: number) => boolean,
): number | null =>
  guess > least && fits(guess) ? firstWhere(least + 1, guess, fits) : leastNear(least, steps, fits);

/** The largest value that made a plan. */
function farthest(known: ReadonlyMap<number, Attempt | null>): Attempt | null {
  const made = [...known].filter(([, attempt]) => attempt !== null).sort(([a], [b]) => b - a);
  return made[0]?.[1] ?? null;
}

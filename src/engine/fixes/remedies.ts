/**
 * What can be done about each finding of a plan: its ways out, tried.
 *
 * Each trial works the whole plan out, which takes 1 ms for a few hundred frames and 10 to 20 ms for a day of one frame
 * a second. So the trials for one finding are counted, and in a long plan fewer are granted.
 */
import { type Finding, type FindingId, keyOf } from '../findings/types.ts';
import { changesBetween } from '../plan/changes.ts';
import type { Plan } from '../plan/schema.ts';
import type { Schedule } from '../schedule-types.ts';
import { costOf } from './cost.ts';
import { type Blocked, cheapestPair } from './pairs.ts';
import { type Attempt, judgeOf, searchWay } from './search.ts';
import { idOf, Trials } from './trial.ts';
import { type Fix, MAX_FIXES, type Remedy, type Way, type WaysOut } from './types.ts';
import { NOTHING_TO_DO, WAYS } from './ways.ts';

/** What the fixes of a plan may be given besides. */
export interface RemediesGiven {
  /** The present, milliseconds of the epoch, as the plan's schedule was given it. */
  nowMs?: number;
  /** Ways out of every finding; those of the registry unless a test brings its own. */
  ways?: Readonly<Record<FindingId, WaysOut>>;
}

/** No further way is begun after so many trials for one finding: in plans of up to `LONG` frames, and in longer ones. */
const MOST_TRIALS = 24;
const MOST_TRIALS_LONG = 12;
const LONG = 10_000;

const mostTrials = ({ present }: Trials): number =>
  present.totals.frames > LONG ? MOST_TRIALS_LONG : MOST_TRIALS;

/** Findings that go along with the one that a fix is for. */
const goneToo = (finding: Finding, { present }: Trials, { outcome }: Attempt): string[] =>
  [...present.severities.keys()].filter((key) => key !== keyOf(finding) && !outcome.severities.has(key));

function fixOf(
  trials: Trials,
  finding: Finding,
  attempt: Attempt,
  said: Pick<Fix, 'kind' | 'label' | 'cost'>,
): Fix {
  const changes = changesBetween(trials.plan, attempt.plan);
  return { ...said, changes, alsoFixes: goneToo(finding, trials, attempt) };
}

/** A way that was tried in vain. */
interface Failure {
  way: Way;
  attempt: Attempt;
}

function tryWays(
  trials: Trials,
  finding: Finding,
  ways: readonly Way[],
): { fixes: Fix[]; failures: Failure[] } {
  const judge = judgeOf(trials, finding);
  const until = trials.count + mostTrials(trials);
  const fixes: Fix[] = [];
  const failures: Failure[] = [];
  for (const way of ways) {
    if (way.steps < 1 || trials.count >= until) continue;
    const { passes, attempt } = searchWay(way, judge);
    if (attempt === null) continue;
    if (!passes) {
      failures.push({ way, attempt });
      continue;
    }
    const cost = costOf(trials.present, attempt.outcome, [way.needs(attempt.plan)]);
    fixes.push(fixOf(trials, finding, attempt, { kind: way.kind, label: way.label(attempt.plan), cost }));
  }
  return { fixes, failures };
}

/** Cheapest first, no two alike, not too many. */
function offered(fixes: readonly Fix[]): Fix[] {
  const ordered = [...fixes].sort((a, b) => a.cost.rank - b.cost.rank);
  const seen = new Set<string>();
  return ordered
    .filter(({ changes }) => !seen.has(idOf(changes)) && seen.add(idOf(changes)))
    .slice(0, MAX_FIXES);
}

/** The first sentence of a message, without its full stop. */
const gist = (message: string): string => (message.split(/\.\s/)[0] ?? message).replace(/\.$/, '');

function whyNot({ way, attempt }: Failure): string {
  const blocker = attempt.enough ? attempt.blockers[0] : undefined;
  return `${way.label(attempt.plan)} (${blocker ? gist(blocker.message) : 'not enough'})`;
}

const NOTHING = 'Nothing in the plan that could be changed would help.';

const whyNone = (finding: Finding, failures: readonly Failure[]): string =>
  failures.length === 0
    ? (NOTHING_TO_DO[finding.id] ?? NOTHING)
    : `Tried in vain: ${failures.map(whyNot).join('; ')}.`;

function remedyOf(trials: Trials, finding: Finding, ways: Readonly<Record<FindingId, WaysOut>>): Remedy {
  const key = keyOf(finding);
  const { fixes, failures } = tryWays(trials, finding, ways[finding.id](finding, trials.plan, trials.made));
  if (fixes.length > 0) return { key, fixes: offered(fixes), whyNone: null };
  const blocked: Blocked[] = failures.filter(({ attempt }) => attempt.enough);
  const pair = cheapestPair(trials, finding, blocked, ways, mostTrials(trials));
  if (pair === null) return { key, fixes: [], whyNone: whyNone(finding, failures) };
  return { key, fixes: [fixOf(trials, finding, pair.attempt, pair)], whyNone: null };
}

/**
 * What can be done about each finding, one after another, in their order: a caller may stop, or do something else in
 * between, as long as the schedule's columns stay as they are.
 * @param made - schedule of the plan
 */
export function* remediesOf(
  plan: Plan,
  made: Schedule,
  { nowMs, ways = WAYS }: RemediesGiven = {},
): Generator<Remedy, void> {
  const trials = new Trials(plan, made, nowMs);
  for (const finding of made.findings) yield remedyOf(trials, finding, ways);
}

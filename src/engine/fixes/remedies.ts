/**
 * What can be done about each finding of a plan: its ways out, tried.
 *
 * Each trial works the whole plan out, which takes 1 ms for a few hundred frames and 10 to 20 ms for a day of one frame
 * a second. So the trials for one finding are counted, and in a long plan fewer are granted.
 */
import { type Finding, type FindingId, keyOf } from '../findings/types.ts';
import { gist } from '../findings/words.ts';
import { changesBetween } from '../plan/changes.ts';
import type { Plan } from '../plan/schema.ts';
import type { Room } from '../room.ts';
import type { Schedule } from '../schedule-types.ts';
import { costOf } from './cost.ts';
import { type Blocked, cheapestPair } from './pairs.ts';
import { cheapestFirst } from './reckon.ts';
import { type Attempt, judgeOf, searchWay } from './search.ts';
import { idOf, Trials } from './trial.ts';
import { type Fix, MAX_FIXES, type Remedy, type Way, type WaysOut } from './types.ts';
import { NOTHING_TO_DO, WAYS } from './ways.ts';

/** What the fixes of a plan may be given besides. */
export interface RemediesGiven {
  /** The present, milliseconds of the epoch, as the plan's schedule was given it. */
  nowMs?: number;
  /** Memory for what is tried, used again from call to call; not one that holds columns of the plan's schedule. */
  room?: Room;
  /** Ways out of every finding; those of the registry unless a test brings its own. */
  ways?: Readonly<Record<FindingId, WaysOut>>;
}

/** No further way is begun after so many trials for one finding: in plans of up to `LONG` frames, and in longer ones. */
const MOST_TRIALS = 16;
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

const byRank = (a: Fix, b: Fix): number => a.cost.rank - b.cost.rank;

/** Whether as many fixes as are offered are at hand that cost no more than this. */
const doneBelow = (fixes: readonly Fix[], rank: number): boolean =>
  fixes.filter(({ cost }) => cost.rank <= rank).length >= MAX_FIXES;

function tryWays(
  trials: Trials,
  finding: Finding,
  ways: readonly Way[],
): { fixes: Fix[]; failures: Failure[] } {
  const judge = judgeOf(trials, finding);
  const until = trials.count + mostTrials(trials);
  const fixes: Fix[] = [];
  const failures: Failure[] = [];
  for (const { way, leastRank } of cheapestFirst(trials, ways)) {
    if (trials.count >= until || doneBelow(fixes, leastRank)) break;
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
  const ordered = [...fixes].sort(byRank);
  const seen = new Set<string>();
  return ordered
    .filter(({ changes }) => !seen.has(idOf(changes)) && seen.add(idOf(changes)))
    .slice(0, MAX_FIXES);
}

const labelOf = ({ way, attempt }: Failure): string => way.label(attempt.plan);

/** One sentence that names how far each way was gone, and what stands in its way there. */
function inVain(failures: readonly Failure[]): string {
  const blocked = failures.filter(({ attempt }) => attempt.enough);
  const short = failures.filter(({ attempt }) => !attempt.enough).map(labelOf);
  const ends = blocked.map((failure) => {
    const [blocker] = failure.attempt.blockers;
    return blocker ? `${labelOf(failure)} (${gist(blocker.message)})` : labelOf(failure);
  });
  if (ends.length === 0) return `Tried, and not enough: ${short.join('; ')}.`;
  const others = short.length === 0 ? '' : `; and not enough: ${short.join('; ')}`;
  return `Tried in vain: ${ends.join('; ')}${others}.`;
}

const NOTHING = 'Nothing in the plan that could be changed would help.';

const whyNone = (finding: Finding, failures: readonly Failure[]): string =>
  failures.length === 0 ? (NOTHING_TO_DO[finding.id] ?? NOTHING) : inVain(failures);

function remedyOf(trials: Trials, finding: Finding, ways: Readonly<Record<FindingId, WaysOut>>): Remedy {
  const key = keyOf(finding);
  const { fixes, failures } = tryWays(trials, finding, ways[finding.id](finding, trials.plan, trials.made));
  if (fixes.length > 0) return { key, fixes: offered(fixes), whyNone: null };
  const blocked: Blocked[] = failures.filter(({ attempt }) => attempt.enough);
  const pair = cheapestPair(trials, finding, blocked, ways, mostTrials(trials));
  if (pair === null) return { key, fixes: [], whyNone: whyNone(finding, failures) };
  return { key, fixes: [fixOf(trials, finding, pair.attempt, pair)], whyNone: null };
}

/** What can be done about each finding, with trials that may have been made before. See {@link remediesOf}. */
export function* remediesWith(
  trials: Trials,
  ways: Readonly<Record<FindingId, WaysOut>> = WAYS,
): Generator<Remedy, void> {
  for (const finding of trials.made.findings) yield remedyOf(trials, finding, ways);
}

/**
 * What can be done about each finding, one after another, in their order: a caller may stop, or do something else in
 * between, as long as the schedule's columns stay as they are.
 * @param made - schedule of the plan
 */
export const remediesOf = (
  plan: Plan,
  made: Schedule,
  { nowMs, room, ways }: RemediesGiven = {},
): Generator<Remedy, void> => remediesWith(new Trials(plan, made, nowMs, room), ways);

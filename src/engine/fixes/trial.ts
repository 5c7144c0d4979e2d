/**
 * Trying a changed plan: worked out like any other, into memory that the next trial uses again.
 *
 * So nothing of a trial is kept but its findings and its single figures. What one finding has tried is remembered for
 * all others that ask for the same change.
 */
import type { Finding, Severity } from '../findings/types.ts';
import { keyOf, SEVERITIES } from '../findings/types.ts';
import { type Pace, paceOf } from '../pacing/pacing.ts';
import { type Change, changesBetween } from '../plan/changes.ts';
import type { Plan } from '../plan/schema.ts';
import { Room } from '../room.ts';
import { schedule } from '../schedule.ts';
import type { Schedule, Totals } from '../schedule-types.ts';

/** What is kept of a plan that was tried. */
export interface Outcome {
  /** Worst first. */
  findings: readonly Finding[];
  /** The same by their keys; of several with one key the worst. */
  severities: ReadonlyMap<string, Severity>;
  totals: Totals;
  /** First shutter opening, milliseconds of the epoch. */
  startMs: number;
  /** Farthest that a frame's light is off, stops; 0 if the light is not planned. */
  lightStops: number;
}

function severitiesOf(findings: readonly Finding[]): Map<string, Severity> {
  const known = new Map<string, Severity>();
  // Worst first, so that the first of a key stays.
  for (const finding of findings) {
    const key = keyOf(finding);
    if (!known.has(key)) known.set(key, finding.severity);
  }
  return known;
}

function farthestOff(evError: Float32Array | null): number {
  let most = 0;
  for (let k = 0; k < (evError?.length ?? 0); k += 1) most = Math.max(most, Math.abs(evError?.[k] as number));
  return most;
}

/** The figures of a schedule that outlive its columns. */
export const outcomeOf = ({ findings, totals, startMs, columns }: Schedule): Outcome => ({
  findings,
  severities: severitiesOf(findings),
  totals,
  startMs,
  lightStops: farthestOff(columns.evError),
});

/** From 0, the worst, on; what is not there at all comes last. */
const rank = (severity: Severity | undefined): number =>
  severity === undefined ? SEVERITIES.length : SEVERITIES.indexOf(severity);

/**
 * Findings that forbid a change made for the sake of another: those that were there and have become worse, and new
 * ones as bad as the one that it is made for, or worse.
 */
export function inTheWay(finding: Finding, before: Outcome, after: Outcome): Finding[] {
  const key = keyOf(finding);
  return after.findings.filter((other) => {
    const was = before.severities.get(keyOf(other));
    if (keyOf(other) === key) return false;
    return was === undefined
      ? rank(other.severity) <= rank(finding.severity)
      : rank(other.severity) < rank(was);
  });
}

/** What changed plans are told apart by. */
export const idOf = (changes: readonly Change[]): string =>
  JSON.stringify(changes.map(({ path, to }) => [path, to]));

/** The trials of one plan. */
export class Trials {
  readonly plan: Plan;
  readonly made: Schedule;
  /** The plan as it is. */
  readonly present: Outcome;
  readonly pace: Pace;
  /** How many changed plans were worked out. */
  count = 0;
  readonly #nowMs: number | undefined;
  readonly #room: Room;
  readonly #aside = new Room();
  readonly #known = new Map<string, Outcome>();

  /**
   * @param made - schedule of the plan; its columns must stay as they are while there are trials
   * @param nowMs - as `made` was given it
   * @param room - memory for the trials, used again and again; not one that holds columns of `made`
   */
  constructor(plan: Plan, made: Schedule, nowMs?: number, room = new Room()) {
    this.plan = plan;
    this.made = made;
    this.present = outcomeOf(made);
    this.pace = paceOf(plan);
    this.#nowMs = nowMs;
    this.#room = room;
  }

  /** The schedule of a changed plan. Its columns last until another is asked for; trials leave them alone. */
  schedule(changed: Plan): Schedule {
    return this.#schedule(changed, this.#aside);
  }

  #schedule(changed: Plan, room: Room): Schedule {
    this.count += 1;
    const now = this.#nowMs === undefined ? {} : { nowMs: this.#nowMs };
    return schedule(changed, { room, before: this.made, ...now });
  }

  /** What comes of a changed plan. */
  outcome(changed: Plan): Outcome {
    const key = idOf(changesBetween(this.plan, changed));
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    const outcome = outcomeOf(this.#schedule(changed, this.#room));
    this.#known.set(key, outcome);
    return outcome;
  }
}

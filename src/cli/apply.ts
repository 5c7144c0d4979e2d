/** Makes a fix that was asked for at the prompt. */
import { keyOf } from '../engine/findings/types.ts';
import { remediesOf } from '../engine/fixes/remedies.ts';
import type { Remedy } from '../engine/fixes/types.ts';
import { withChanges } from '../engine/plan/changes.ts';
import type { Plan } from '../engine/plan/schema.ts';
import { schedule } from '../engine/schedule.ts';
import type { Schedule } from '../engine/schedule-types.ts';
import { askedBy } from '../outputs/fixes-json.ts';
import { type FixAsked, OptionError } from './options.ts';

/** The remedy of a finding, by its place; those after it are not tried. */
function remedyAt(remedies: Iterable<Remedy>, index: number): Remedy {
  let at = 0;
  for (const remedy of remedies) {
    if (at === index) return remedy;
    at += 1;
  }
  throw new RangeError(`remedies: found ${at}, allowed: more than ${index}`);
}

/** The remedy of the finding that an id asks for; null if there is none. */
export function remedyAsked(plan: Plan, made: Schedule, id: string): Remedy | null {
  const ids = askedBy(made.findings);
  // One that is the only one of its kind is told from others all the same.
  const index = made.findings.findIndex((finding, i) => ids[i] === id || keyOf(finding) === id);
  return index === -1 ? null : remedyAt(remediesOf(plan, made), index);
}

/**
 * The plan with one fix made.
 * @throws OptionError if the plan has no such finding, or the finding no such fix
 */
export function fixedPlan(plan: Plan, { id, n }: FixAsked): Plan {
  const made = schedule(plan);
  const ids = askedBy(made.findings);
  const remedy = remedyAsked(plan, made, id);
  if (remedy === null) {
    const allowed = ids.length === 0 ? 'nothing, since the plan has no findings' : ids.join(', ');
    throw new OptionError(`--apply: found the finding '${id}'; allowed: ${allowed}`);
  }
  const { fixes, whyNone } = remedy;
  const fix = fixes[n - 1];
  if (fix) return withChanges(plan, fix.changes);
  const allowed = whyNone === null ? `1 to ${fixes.length}` : `none. ${whyNone}`;
  throw new OptionError(`--apply: found fix ${n} of ${id}; allowed: ${allowed}`);
}

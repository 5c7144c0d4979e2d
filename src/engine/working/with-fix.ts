/** The figures of the plan with a way out of a finding taken, and of what that costs. */
import { costWorkings } from '../fixes/cost-working.ts';
import type { Fix } from '../fixes/types.ts';
import { withChanges } from '../plan/changes.ts';
import type { Plan } from '../plan/schema.ts';
import { schedule } from '../schedule.ts';
import { workedElsewhere } from './at-setting.ts';
import type { Draft, Worked } from './make.ts';
import { ofFix } from './names.ts';
import type { Working } from './types.ts';

/** The n-th way out, counted from 1, of a finding by its key or what `--fixes` calls it; null if it is not known. */
export type FixesKnown = (finding: string, n: number) => Fix | null;

const WITH_FIX = /^fix\.(.+?)\.([1-9]\d*)\.((?!fix\.).+)$/s;

/** The way out that was asked for last: one goes from figure to figure there. */
const last = new WeakMap<Plan, { fix: Fix; there: Worked }>();

function workedWith({ plan }: Worked, fix: Fix): Worked {
  const known = last.get(plan);
  if (known?.fix === fix) return known.there;
  const changed = withChanges(plan, fix.changes);
  const there = { plan: changed, made: schedule(changed) };
  last.set(plan, { fix, there });
  return there;
}

/**
 * A figure whose name begins with `fix.FINDING.N.`, worked out with that way out taken.
 * @param fixes - the ways out that are known
 * @param finished - a draft under its name
 * @param workingOf - how the other plan's figure came about
 * @returns undefined if the name begins otherwise; null if there is no such way out, or no such figure
 */
export function workingWithFix(
  of: Worked,
  figure: string,
  fixes: FixesKnown | undefined,
  finished: (figure: string, draft: Draft) => Working,
  workingOf: (there: Worked, what: string) => Working | null,
): Working | null | undefined {
  const [, finding, which, what] = WITH_FIX.exec(figure) ?? [];
  if (finding === undefined || what === undefined) return undefined;
  const n = Number(which);
  const fix = fixes?.(finding, n);
  if (!fix) return null;
  const there = workedWith(of, fix);
  const named = (own: string) => ofFix(finding, n, own);
  const costs = costWorkings(of, there, named);
  const draft = Object.hasOwn(costs, what) ? costs[what] : undefined;
  if (draft) return finished(figure, draft());
  const working = workingOf(there, what);
  return working && workedElsewhere(working, figure, named, `With this way out: ${fix.label}.`);
}

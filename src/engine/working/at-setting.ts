/** The figures of the plan at another setting of its trigger: a row of the interval ladder. */
import { planAtSetting } from '../fixes/interval-ladder.ts';
import type { Plan } from '../plan/schema.ts';
import { schedule } from '../schedule.ts';
import type { Worked } from './make.ts';
import { ofSetting } from './names.ts';
import type { Working } from './types.ts';

const AT_SETTING = /^ladder\.(\d+(?:\.\d+)?)\.((?!ladder\.).+)$/s;

/** The setting that was asked for last: one goes from figure to figure there. */
const last = new WeakMap<Plan, { dialS: number; there: Worked | null }>();

function workedAt({ plan, made }: Worked, dialS: number): Worked | null {
  const known = last.get(plan);
  if (known?.dialS === dialS) return known.there;
  const changed = planAtSetting(plan, made, dialS);
  const there = changed && { plan: changed, made: changed === plan ? made : schedule(changed) };
  last.set(plan, { dialS, there });
  return there;
}

/**
 * A figure whose name begins with `ladder.SETTING.`, worked out with that setting on the trigger.
 * @param workingOf - how the other plan's figure came about
 * @returns undefined if the name begins otherwise; null if there is no such figure
 */
export function workingAtSetting(
  of: Worked,
  figure: string,
  workingOf: (there: Worked, what: string) => Working | null,
): Working | null | undefined {
  const [, dial, what] = AT_SETTING.exec(figure) ?? [];
  if (dial === undefined || what === undefined) return undefined;
  const dialS = Number(dial);
  const there = workedAt(of, dialS);
  const working = there && workingOf(there, what);
  return (
    working &&
    workedElsewhere(working, figure, (each) => ofSetting(dialS, each), `With the trigger at ${dial} s.`)
  );
}

/**
 * The working of another plan's figure, under the name that it has here.
 * @param named - what a figure of that plan is called here
 * @param remark - which plan it is
 */
export const workedElsewhere = (
  working: Working,
  figure: string,
  named: (figure: string) => string,
  remark: string,
): Working => ({
  ...working,
  figure,
  terms: working.terms.map((each) => ({ ...each, figure: each.figure && named(each.figure) })),
  remarks: [remark, ...working.remarks],
});

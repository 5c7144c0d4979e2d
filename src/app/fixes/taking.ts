/** A change that was worked out for a plan goes into that plan, as one step that can be undone. */
import type { Fix } from '../../engine/fixes/types.ts';
import { type Change, withChanges } from '../../engine/plan/changes.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import type { Totals } from '../../engine/schedule-types.ts';
import { durationText } from '../format/durations.ts';
import { plural } from '../format/numbers.ts';
import { withChecks } from '../store/checker.ts';
import { setDraft } from '../store/drafts.ts';
import { change, currentPlan, endGesture, undo } from '../store/plan.ts';
import { scheduleOf } from '../store/schedules.ts';
import { fixStore, type TakenChange } from './fixStore.ts';

/** `Interval is now 16 s` of `Interval to 16 s`, part by part; what sets nothing stands as it is. */
export function doneText(label: string): string {
  const parts = label.split(', ').map((part) => /^(.+?) (?:up )?to (.+)$/.exec(part));
  const done = parts.map((part) => part && `${part[1]} is now ${part[2]}`);
  return done.includes(null) ? label : done.join(', ');
}

/** What is over in the tightest interval, or how much of the guard is used, or what is missing. */
export function spareText({ tightestSpareS: spareS }: Totals, guardS: number): string {
  if (spareS >= 0) return `${durationText(spareS)} spare`;
  const shortS = -spareS - guardS;
  return shortS > 1e-9 ? `${durationText(shortS)} too short` : `${durationText(-spareS)} into the guard`;
}

function figuresText(plan: Plan): string {
  const { totals } = scheduleOf(plan);
  const spare = spareText(totals, plan.cycle.guardS);
  return `${plural(totals.frames, 'frame')}, ${durationText(totals.clipLengthS)} clip, ${spare}`;
}

/**
 * Changes the plan, if it is still the one for which the change was worked out.
 * @param label - what is done, as it stands on the button
 * @returns whether it was done
 */
export function takeChanges(
  plan: Plan,
  changes: readonly Change[],
  label: string,
  at: TakenChange['at'],
): boolean {
  if (currentPlan() !== plan) return false;
  endGesture();
  const next = withChanges(plan, changes);
  if (change(next).length > 0) return false;
  // What was typed there before is not what stands there now.
  for (const { path } of changes) setDraft(path, null);
  fixStore.setState({
    taken: { plan: next, at, text: `${doneText(label)}: ${figuresText(next)}.` },
    preview: null,
  });
  return true;
}

/** Takes a fix, once the checker is here. */
export const takeFix = (plan: Plan, fix: Fix, at: number): void =>
  withChecks(() => takeChanges(plan, fix.changes, fix.label, at));

/** Takes the change back that was taken last, if nothing else came after it. */
export function takeBack(): void {
  if (fixStore.getState().taken?.plan === currentPlan()) undo();
}

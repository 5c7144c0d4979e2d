/** Reaching into a production: shots, actions and exposures by their numbers, all counted from 1. */
import type { Action, Plan, Shot, Tick } from '../../plan/schema.ts';
import { sheetFaults } from '../../plan/sheet-check.ts';
import { actionFrames, exposuresIn } from '../production.ts';
import { shotsOf } from '../shots.ts';
import type { ExposurePlace } from '../texts.ts';
import { Refused, wholeWithin } from './refused.ts';

/** Exposures of the production one after another, counted from 1, both ends included. */
export interface ExposureRange {
  first: number;
  last: number;
}

/** The plan with its sheet changed in part. @throws Refused if it would not be a plan any more */
export function withSheet(plan: Plan, change: Partial<Plan['sheet']>): Plan {
  const changed = { ...plan, sheet: { ...plan.sheet, ...change } };
  const [fault] = sheetFaults(changed);
  if (fault) throw new Refused(fault);
  return changed;
}

/** A shot. @throws Refused if there is none of that number */
export function shotNumbered(plan: Plan, shot: number): Shot {
  const shots = shotsOf(plan);
  return shots[wholeWithin('shot', shot, 1, shots.length) - 1] as Shot;
}

/** The shots with one of them replaced; those that a plan without shots stands for are written out. */
export const shotsWith = (plan: Plan, shot: number, change: Partial<Shot>): Shot[] =>
  shotsOf(plan).map((old, s) => (s + 1 === shot ? { ...old, ...change } : old));

/** An action of a shot. @throws Refused if there is none of that number */
export function actionNumbered({ actions }: Shot, action: number): Action {
  return actions[wholeWithin('action', action, 1, actions.length) - 1] as Action;
}

/** Exposures of an action. */
export const exposuresOfAction = (plan: Plan, action: Action): number =>
  exposuresIn(action.holds, actionFrames(action, plan.clip.frameRate));

/** Exposures of a shot. */
export const exposuresOfShot = (plan: Plan, { actions }: Shot): number =>
  actions.reduce((sum, action) => sum + exposuresOfAction(plan, action), 0);

/** Where in its shot an exposure is. */
export interface Located {
  /** The action, counted from 1, and the exposure within it, from 1. */
  action: number;
  exposure: number;
}

/** Finds an exposure of a shot. @throws Refused if there is none of that number */
export function locate(plan: Plan, { shot, exposure }: ExposurePlace): Located {
  const { actions } = shotNumbered(plan, shot);
  let before = 0;
  for (const [a, action] of actions.entries()) {
    const count = exposuresOfAction(plan, action);
    if (exposure <= before + count && exposure > before && Number.isInteger(exposure))
      return { action: a + 1, exposure: exposure - before };
    before += count;
  }
  wholeWithin('exposure', exposure, 1, before);
  throw new RangeError('unreachable: every exposure belongs to an action');
}

/** What of a range lies in each shot: the shot, and its first and last exposure, from 1. */
export function byShot(plan: Plan, { first, last }: ExposureRange): { shot: number; range: ExposureRange }[] {
  const counts = shotsOf(plan).map((shot) => exposuresOfShot(plan, shot));
  const total = counts.reduce((sum, count) => sum + count, 0);
  wholeWithin('first exposure', first, 1, total);
  wholeWithin('last exposure', last, first, total);
  let before = 0;
  return counts.flatMap((count, s) => {
    const own = { first: Math.max(1, first - before), last: Math.min(count, last - before) };
    before += count;
    return own.first <= own.last ? [{ shot: s + 1, range: own }] : [];
  });
}

/** What of a range of a shot lies in each action, numbered likewise. */
export function byAction(
  plan: Plan,
  { actions }: Shot,
  { first, last }: ExposureRange,
): { action: number; range: ExposureRange }[] {
  let before = 0;
  return actions.flatMap((action, a) => {
    const count = exposuresOfAction(plan, action);
    const own = { first: Math.max(1, first - before), last: Math.min(count, last - before) };
    before += count;
    return own.first <= own.last ? [{ action: a + 1, range: own }] : [];
  });
}

/** Ticks with their places changed; those that get none are left out. */
export const movedTicks = (ticks: readonly Tick[], place: (tick: Tick) => ExposurePlace | null): Tick[] =>
  ticks.flatMap((tick) => {
    const found = place(tick);
    if (found === null) return [];
    return found.shot === tick.shot && found.exposure === tick.exposure ? [tick] : [{ ...tick, ...found }];
  });

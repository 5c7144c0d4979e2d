/** Edits of shots and actions. What is ticked stays with its exposure. */
import { MAX_FRAMES } from '../../plan/constants.ts';
import { type Action, memberSchemas, type Plan, type Shot } from '../../plan/schema.ts';
import { actionFrames } from '../production.ts';
import { shotsOf } from '../shots.ts';
import type { ExposurePlace } from '../texts.ts';
import { holdsOf, withHolds } from './pattern.ts';
import { reflow } from './reflow.ts';
import { listWithin, Refused, textWithin, wholeWithin } from './refused.ts';
import {
  actionNumbered,
  exposuresOfAction,
  locate,
  movedTicks,
  shotNumbered,
  shotsWith,
  withSheet,
} from './shots.ts';

const newAction = (plan: Plan): Action => memberSchemas.action.parse({ holds: [plan.clip.holdFrames] });

/** A name that no shot has. */
function freeName(shots: readonly Shot[]): string {
  const taken = new Set(shots.map(({ name }) => name));
  let number = shots.length + 1;
  while (taken.has(`Shot ${number}`)) number += 1;
  return `Shot ${number}`;
}

/** Puts a shot with one action after another; 0 is before the first. */
export function addShot(plan: Plan, after: number, name?: string): Plan {
  const shots = shotsOf(plan);
  wholeWithin('shot', after, 0, shots.length);
  if (name !== undefined) wholeWithin('characters of the name', name.length, 1, 40);
  const shot = memberSchemas.shot.parse({ name: name ?? freeName(shots), actions: [newAction(plan)] });
  const then = listWithin('shots', [...shots.slice(0, after), shot, ...shots.slice(after)], 200);
  const ticks = movedTicks(plan.sheet.ticks, (tick) => ({
    ...tick,
    shot: tick.shot + (tick.shot > after ? 1 : 0),
  }));
  return withSheet(plan, { shots: then, ticks });
}

/** Takes a shot out, with its ticks. @throws Refused if it is the only one */
export function removeShot(plan: Plan, shot: number): Plan {
  shotNumbered(plan, shot);
  const shots = shotsOf(plan);
  if (shots.length === 1)
    throw new Refused({
      path: 'shot',
      found: 'the only one',
      allowed: 'one of several: a production has a shot',
    });
  const ticks = movedTicks(plan.sheet.ticks, (tick) =>
    tick.shot === shot ? null : { ...tick, shot: tick.shot - (tick.shot > shot ? 1 : 0) },
  );
  return withSheet(plan, { shots: shots.filter((_, s) => s + 1 !== shot), ticks });
}

/** Makes a shot the one of another number; those between move up or down. */
export function moveShot(plan: Plan, shot: number, to: number): Plan {
  const moved = shotNumbered(plan, shot);
  const shots = shotsOf(plan);
  wholeWithin('shot', to, 1, shots.length);
  const others = shots.filter((_, s) => s + 1 !== shot);
  const then = [...others.slice(0, to - 1), moved, ...others.slice(to - 1)];
  const numbers = new Map(shots.map((old, s) => [s + 1, then.indexOf(old) + 1]));
  const ticks = movedTicks(plan.sheet.ticks, (tick) => ({
    ...tick,
    shot: numbers.get(tick.shot) ?? tick.shot,
  }));
  return withSheet(plan, { shots: then, ticks });
}

/** What a shot is called. */
export function nameShot(plan: Plan, shot: number, name: string): Plan {
  shotNumbered(plan, shot);
  wholeWithin('characters of the name', name.length, 1, 40);
  return withSheet(plan, { shots: shotsWith(plan, shot, { name }) });
}

const counting = (count: number): number[] => Array.from({ length: count }, (_, k) => k);

/** Puts an action after another of a shot; 0 is before the first. */
export function addAction(plan: Plan, shot: number, after: number): Plan {
  const { actions } = shotNumbered(plan, shot);
  wholeWithin('action', after, 0, actions.length);
  const added = newAction(plan);
  listWithin('actions', [...actions, added], 5000);
  const next = actions[after];
  if (!next) return withSheet(plan, { shots: shotsWith(plan, shot, { actions: [...actions, added] }) });
  const was = counting(exposuresOfAction(plan, next));
  return reflow(plan, shot, new Map([[after + 1, { action: next, was, ahead: added }]]));
}

/** Takes an action out with its exposures. */
export function removeAction(plan: Plan, shot: number, action: number): Plan {
  actionNumbered(shotNumbered(plan, shot), action);
  return reflow(plan, shot, new Map([[action, { action: null, was: [] }]]));
}

/** Changes what an action is: its exposures keep their numbers, as many as there are then. */
export function setAction(
  plan: Plan,
  shot: number,
  action: number,
  change: Partial<Omit<Action, 'details'>>,
): Plan {
  const old = actionNumbered(shotNumbered(plan, shot), action);
  const { text = old.text, holds = old.holds } = change;
  textWithin('text', text, 200);
  listWithin('holds', holds, 100_000);
  const changed = { ...old, ...change };
  const frames = actionFrames(changed, plan.clip.frameRate);
  wholeWithin(changed.lengthIn === 'frames' ? 'frames' : 'frames of the length', frames, 1, MAX_FRAMES);
  holds.forEach((hold, h) => {
    wholeWithin(`holds[${h}]`, hold, 1, frames);
  });
  const [before, after] = [exposuresOfAction(plan, old), exposuresOfAction(plan, changed)];
  const was = counting(after).map((k) => (k < before ? k : -1));
  return reflow(plan, shot, new Map([[action, { action: changed, was }]]));
}

/** Cuts an action in two: the second begins with the exposure given, which must not be its first. */
export function splitAction(plan: Plan, place: ExposurePlace): Plan {
  const { action, exposure } = locate(plan, place);
  const { actions } = shotNumbered(plan, place.shot);
  const old = actionNumbered(shotNumbered(plan, place.shot), action);
  const holds = holdsOf(plan, old);
  wholeWithin('exposure of the action', exposure, 2, holds.length);
  const [first, second] = [holds.subarray(0, exposure - 1), holds.subarray(exposure - 1)];
  const early = old.details.filter((detail) => detail.exposure < exposure);
  const late = old.details.filter((detail) => detail.exposure >= exposure);
  const then = [...actions];
  then.splice(
    action - 1,
    1,
    { ...withHolds(plan, old, first), details: early },
    {
      ...withHolds(plan, old, second),
      details: late.map((detail) => ({ ...detail, exposure: detail.exposure - exposure + 1 })),
    },
  );
  return withSheet(plan, {
    shots: shotsWith(plan, place.shot, { actions: listWithin('actions', then, 5000) }),
  });
}

/**
 * Makes one action of two: the exposures of the second keep their texts and passes. Its own minutes an exposure are
 * those of the first from then on.
 */
export function mergeWithNext(plan: Plan, shot: number, action: number): Plan {
  const { actions } = shotNumbered(plan, shot);
  wholeWithin('action', action, 1, actions.length - 1);
  const [first, second] = [actions[action - 1] as Action, actions[action] as Action];
  const holds = [...holdsOf(plan, first), ...holdsOf(plan, second)];
  const before = exposuresOfAction(plan, first);
  const details = [
    ...first.details.filter(({ exposure }) => exposure <= before),
    ...ownDetails(plan, second, first, before),
  ];
  const merged = { ...withHolds(plan, first, holds), details: listWithin('details', details, 100_000) };
  const then = [...actions];
  then.splice(action - 1, 2, merged);
  return withSheet(plan, { shots: shotsWith(plan, shot, { actions: then }) });
}

/** What the exposures of an action say where another's words would stand instead. */
function ownDetails(plan: Plan, action: Action, instead: Action, before: number): Action['details'] {
  const count = exposuresOfAction(plan, action);
  const all = plan.sheet.passes.map(({ name }) => name);
  const names = (passes: string[] | null) => JSON.stringify(passes ?? all);
  const text = action.text === instead.text ? null : action.text;
  const passes = names(action.passes) === names(instead.passes) ? null : (action.passes ?? all);
  const own = new Map(action.details.map((detail) => [detail.exposure, detail]));
  return counting(count).flatMap((k) => {
    const detail = own.get(k + 1);
    const says = { text: detail?.text ?? text, passes: detail?.passes ?? passes };
    return says.text === null && says.passes === null ? [] : [{ exposure: before + k + 1, ...says }];
  });
}

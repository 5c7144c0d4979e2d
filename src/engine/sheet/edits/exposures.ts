/** Edits of exposures: what they say, how long they are held, and how many there are. */
import { MAX_FRAMES } from '../../plan/constants.ts';
import { type Action, memberSchemas, type Plan, type Shot } from '../../plan/schema.ts';
import { passBits } from '../passes.ts';
import type { ExposurePlace } from '../texts.ts';
import { holdsOf, withHolds } from './pattern.ts';
import { type ChangedAction, reflow } from './reflow.ts';
import { listWithin, textWithin, wholeWithin } from './refused.ts';
import {
  actionNumbered,
  byAction,
  byShot,
  type ExposureRange,
  exposuresOfShot,
  locate,
  shotNumbered,
  shotsWith,
  withSheet,
} from './shots.ts';

type Detail = Action['details'][number];
type Change = ChangedAction & { added?: Detail[] };

const counting = (count: number): number[] => Array.from({ length: count }, (_, k) => k);

/** An action whose exposures stay, with other holds for some of them. */
function reheld(plan: Plan, action: Action, { first, last }: ExposureRange, hold: number): ChangedAction {
  const holds = holdsOf(plan, action).fill(wholeWithin('hold', hold, 1, MAX_FRAMES), first - 1, last);
  return { action: withHolds(plan, action, holds), was: counting(holds.length) };
}

/** Holds an exposure for so many frames; what comes after it moves on. */
export function setHold(plan: Plan, place: ExposurePlace, frames: number): Plan {
  const { action, exposure } = locate(plan, place);
  const old = actionNumbered(shotNumbered(plan, place.shot), action);
  const range = { first: exposure, last: exposure };
  return reflow(plan, place.shot, new Map([[action, reheld(plan, old, range, frames)]]));
}

/** Holds each exposure of a range for so many frames. */
export const retime = (plan: Plan, range: ExposureRange, hold: number): Plan =>
  inEachShot(plan, range, (then, shot, own) => {
    const old = shotNumbered(then, shot);
    const changes = byAction(then, old, own).map(
      ({ action, range: part }) => [action, reheld(then, actionNumbered(old, action), part, hold)] as const,
    );
    return reflow(then, shot, new Map(changes));
  });

/** Edits each shot that a range reaches into, the last first, so that those before keep their numbers. */
function inEachShot(
  plan: Plan,
  range: ExposureRange,
  edit: (plan: Plan, shot: number, range: ExposureRange) => Plan,
): Plan {
  return byShot(plan, range).reduceRight((then, part) => edit(then, part.shot, part.range), plan);
}

/** Changes what differs at an exposure; what says nothing any more is left out. */
function withDetail(action: Action, exposure: number, change: Partial<Detail>): Action {
  const before = action.details.filter((detail) => detail.exposure === exposure);
  const others = action.details.filter((detail) => detail.exposure !== exposure);
  // Where several were given the last word of each counts.
  const merged = before.reduce(
    (all, { text, passes }) => ({ exposure, text: text ?? all.text, passes: passes ?? all.passes }),
    memberSchemas.detail.parse({ exposure }),
  );
  const detail = { ...merged, ...change };
  if (detail.text === action.text) detail.text = null;
  const says = detail.text !== null || detail.passes !== null;
  const details = says ? [...others, detail].sort((a, b) => a.exposure - b.exposure) : others;
  return { ...action, details: listWithin('details', details, 100_000) };
}

function changeDetail(plan: Plan, place: ExposurePlace, change: Partial<Detail>): Plan {
  const { action, exposure } = locate(plan, place);
  const { actions } = shotNumbered(plan, place.shot);
  const changed = actions.map((old, a) => (a + 1 === action ? withDetail(old, exposure, change) : old));
  return withSheet(plan, { shots: shotsWith(plan, place.shot, { actions: changed }) });
}

/** Says what happens at an exposure. */
export const setText = (plan: Plan, place: ExposurePlace, text: string): Plan =>
  changeDetail(plan, place, { text: textWithin('text', text, 200) });

/** Gives an exposure passes of its own; null for those of its action. */
export const setPasses = (plan: Plan, place: ExposurePlace, passes: readonly string[] | null): Plan =>
  changeDetail(plan, place, { passes: passes && [...passes] });

/** A new exposure; null for what its action says. */
export interface NewExposure {
  hold: number;
  text: string | null;
  passes: string[] | null;
}

/** What differs at new exposures of an action. @param first - their first, counted from 1 */
function newDetails(plan: Plan, action: Action, first: number, exposures: readonly NewExposure[]): Detail[] {
  const all = plan.sheet.passes.map(({ name }) => name);
  const usual = passBits(plan, action.passes ?? all);
  return exposures.flatMap(({ text, passes }, k): Detail[] => {
    const own = {
      text: text === action.text ? null : text,
      passes: passes && passes.length > 0 && passBits(plan, passes) === usual ? null : passes,
    };
    return own.text === null && own.passes === null ? [] : [{ exposure: first + k, ...own }];
  });
}

/** Puts new exposures into an action, after one of its exposures; 0 is before the first. */
function grown(plan: Plan, action: Action, after: number, exposures: readonly NewExposure[]): Change {
  const holds = Array.from(holdsOf(plan, action));
  const was = counting(holds.length);
  const added = newDetails(plan, action, after + 1, exposures);
  const before = { holds: holds.slice(0, after), was: was.slice(0, after) };
  const newHolds = [...before.holds, ...exposures.map(({ hold }) => hold), ...holds.slice(after)];
  const newWas = [...before.was, ...exposures.map(() => -1), ...was.slice(after)];
  return { action: withHolds(plan, action, newHolds), was: newWas, added };
}

/**
 * Puts new exposures after one of a shot; 0 is before its first. They belong to the action of that exposure; a shot
 * without exposures gets an action for them.
 */
export function insertExposures(plan: Plan, place: ExposurePlace, exposures: readonly NewExposure[]): Plan {
  const shot = shotNumbered(plan, place.shot);
  const count = exposuresOfShot(plan, shot);
  const after = wholeWithin('exposure', place.exposure, 0, count);
  if (exposures.length === 0) return plan;
  if (count === 0) return insertAction(plan, place.shot, shot, exposures);
  const at = locate(plan, { shot: place.shot, exposure: Math.max(1, after) });
  const old = actionNumbered(shot, at.action);
  const change = grown(plan, old, after === 0 ? 0 : at.exposure, exposures);
  return reflow(plan, place.shot, new Map([[at.action, change]]));
}

function insertAction(plan: Plan, number: number, shot: Shot, exposures: readonly NewExposure[]): Plan {
  const empty = memberSchemas.action.parse({ text: exposures[0]?.text ?? '', frames: 1, holds: [1] });
  const holds = exposures.map(({ hold }) => hold);
  const details = listWithin('details', newDetails(plan, empty, 1, exposures), 100_000);
  const action = { ...withHolds(plan, empty, holds), details };
  return withSheet(plan, { shots: shotsWith(plan, number, { actions: [...shot.actions, action] }) });
}

/** Puts so many exposures after one of a shot, held as long as that one; 0 is before its first. */
export function insertAfter(plan: Plan, place: ExposurePlace, count: number): Plan {
  wholeWithin('count', count, 1, MAX_FRAMES);
  const shot = shotNumbered(plan, place.shot);
  if (exposuresOfShot(plan, shot) === 0)
    return insertExposures(plan, place, new Array(count).fill(blank(plan.clip.holdFrames)));
  const at = locate(plan, { ...place, exposure: Math.max(1, place.exposure) });
  const hold = holdsOf(plan, actionNumbered(shot, at.action))[at.exposure - 1] as number;
  return insertExposures(plan, place, new Array(count).fill(blank(hold)));
}

const blank = (hold: number): NewExposure => ({ hold, text: null, passes: null });

/** Takes exposures out; an action without any goes too. */
export const removeExposures = (plan: Plan, range: ExposureRange): Plan =>
  inEachShot(plan, range, (then, shot, own) => {
    const old = shotNumbered(then, shot);
    const changes = byAction(then, old, own).map(
      ({ action, range: part }) => [action, shrunk(then, actionNumbered(old, action), part)] as const,
    );
    return reflow(then, shot, new Map(changes));
  });

function shrunk(plan: Plan, action: Action, { first, last }: ExposureRange): ChangedAction {
  const holds = holdsOf(plan, action);
  const stays = (_: number, k: number) => k + 1 < first || k + 1 > last;
  const left = holds.filter(stays);
  if (left.length === 0) return { action: null, was: [] };
  return { action: withHolds(plan, action, left), was: counting(holds.length).filter(stays) };
}

/** Says a range of one shot's exposures once more, right after it: texts, holds and passes, not what is ticked. */
export function duplicate(plan: Plan, range: ExposureRange): Plan {
  return inEachShot(plan, range, (then, shot, own) => {
    const old = shotNumbered(then, shot);
    const copies = byAction(then, old, own).flatMap(({ action, range: part }) =>
      copiesOf(then, actionNumbered(old, action), part),
    );
    return insertExposures(then, { shot, exposure: own.last }, copies);
  });
}

function copiesOf(plan: Plan, action: Action, { first, last }: ExposureRange): NewExposure[] {
  const all = plan.sheet.passes.map(({ name }) => name);
  const holds = holdsOf(plan, action);
  const texts = new Map<number, string>();
  const passes = new Map<number, string[]>();
  for (const detail of action.details) {
    if (detail.text !== null) texts.set(detail.exposure, detail.text);
    if (detail.passes !== null) passes.set(detail.exposure, detail.passes);
  }
  return counting(last - first + 1).map((k) => ({
    hold: holds[first - 1 + k] as number,
    text: texts.get(first + k) ?? action.text,
    passes: passes.get(first + k) ?? action.passes ?? all,
  }));
}

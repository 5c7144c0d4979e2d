/** Gear between kit and plan. Nothing is overwritten without being asked for, and what is done can be taken back. */

import type { Edit } from '../../engine/plan/paths.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import { enterAll } from '../fields/entry.ts';
import { currentPlan, endGesture, undo } from '../store/plan.ts';
import { freeKitName, keptAs, named, put, remove } from './edits.ts';
import { differences, type KitItem } from './entry.ts';
import { KINDS, type KitKind, oneOf } from './kinds.ts';
import { currentKit, editKit, newId } from './kitStore.ts';
import { ask, refuse, say } from './ui.ts';
import { adding, differencesFrom, gearIn, isIn, nameOnceIn, placeOf, replacing } from './withPlan.ts';

/** A name as it stands in a sentence. */
export const quoted = (name: string): string => `‘${name}’`;

/** `Write and Buffer`, `Write, Buffer and 3 more`. */
export function titlesText(titles: readonly string[]): string {
  if (titles.length > 3) return `${titles.slice(0, 2).join(', ')} and ${titles.length - 2} more`;
  return [titles.slice(0, -1).join(', '), ...titles.slice(-1)].filter(Boolean).join(' and ');
}

function keepNew(gear: Omit<KitItem, 'id'>, name: string): void {
  const item = { ...gear, id: newId(), name };
  editKit(put(item));
  say(`${quoted(name)} is in the kit.`, () => editKit(remove(item.id)));
}

function replaceKept(there: KitItem, gear: Omit<KitItem, 'id'>): void {
  editKit(put({ ...gear, id: there.id }));
  say(`${quoted(there.name)} in the kit has the plan’s figures now.`, () => editKit(put(there)));
}

/** Keeps a piece of the plan's gear; if the kit has one of its name with other figures, asks. */
export function keepFromPlan(kind: KitKind, index: number): void {
  const gear = gearIn(currentPlan(), kind, index);
  const same = keptAs(currentKit(), gear);
  const there = named(currentKit(), kind, gear.name);
  if (same) say(`${quoted(same.name)} in the kit has the plan’s figures already.`);
  else if (there) askAndKeep(there, gear, differences(kind, there.figures, gear.figures));
  else keepNew(gear, gear.name);
}

function askAndKeep(there: KitItem, gear: Omit<KitItem, 'id'>, titles: readonly string[]): void {
  const { kind } = gear;
  const other = freeKitName(currentKit(), kind, gear.name);
  ask(
    `The kit has ${oneOf(kind)} ${quoted(gear.name)} already. In the plan it differs in ${titlesText(titles)}.`,
    [
      { text: 'Replace the one in the kit', act: () => replaceKept(there, gear) },
      { text: `Keep both, as ${quoted(other)}`, act: () => keepNew(gear, other) },
    ],
  );
}

/** Makes one undoable edit of the plan. */
function intoPlan(edits: readonly Edit[], done: string): void {
  endGesture();
  const error = enterAll(edits);
  endGesture();
  if (error === null) say(done, undo);
  else refuse(`The plan does not take it. ${error}`);
}

/** Adds gear to a list of the plan; if one of that name is there with other figures, asks. */
function addToList(plan: Plan, item: KitItem): void {
  const add = () => intoPlan(adding(plan, item), `${quoted(nameOnceIn(plan, item))} is in the plan.`);
  const place = placeOf(plan, item);
  if (place < 0) {
    add();
    return;
  }
  const replace = () =>
    intoPlan(replacing(plan, item, place), `${quoted(item.name)} in the plan has the kit’s figures now.`);
  const titles = titlesText(differencesFrom(plan, item, place));
  ask(`The plan has ${oneOf(item.kind)} ${quoted(item.name)} already. In the kit it differs in ${titles}.`, [
    { text: 'Replace the plan’s', act: replace },
    { text: `Add it as ${quoted(nameOnceIn(plan, item))}`, act: add },
  ]);
}

/** Takes gear into the plan, as one edit that can be undone. */
export function takeIntoPlan(item: KitItem): void {
  const plan = currentPlan();
  const { list, title } = KINDS[item.kind];
  if (isIn(plan, item)) say(`${quoted(item.name)} is in the plan already.`);
  else if (list !== null) addToList(plan, item);
  else intoPlan(replacing(plan, item), `${quoted(item.name)} is the plan’s ${title} now.`);
}

/** Gear between kit and plan: what of a plan can be kept, and what taking it into a plan changes. */

import { type Edit, getAt } from '../../engine/plan/paths.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import { numberText, withUnit } from '../format/numbers.ts';
import { nameAmong } from './edits.ts';
import { differences, type Figures, figuresIn, type KitItem } from './entry.ts';
import { figureOf, KINDS, type KitKind, memberField } from './kinds.ts';

type Gear = Omit<KitItem, 'id'>;

const membersOf = (plan: Plan, list: string): { name: string }[] => getAt(plan, list) as { name: string }[];

/** What a plan has no name for is called by its size. */
function nameIn(plan: Plan, kind: KitKind, index: number): string {
  const { name } = KINDS[kind];
  if (name !== null) return String(getAt(plan, memberField(kind, name, index)));
  return kind === 'lens'
    ? withUnit(numberText(plan.camera.focalLengthMm), 'mm')
    : `Arm of ${withUnit(numberText(plan.rig.arm.lengthMm), 'mm')}`;
}

/** One piece of gear of a plan; of a list the member at `index`. */
export const gearIn = (plan: Plan, kind: KitKind, index = 0): Gear => ({
  kind,
  name: nameIn(plan, kind, index),
  figures: figuresIn(plan, kind, index),
});

/** All gear of a kind in a plan, in its order there. */
export function allGearIn(plan: Plan, kind: KitKind): Gear[] {
  const { list } = KINDS[kind];
  const count = list === null ? 1 : membersOf(plan, list).length;
  return Array.from({ length: count }, (_, index) => gearIn(plan, kind, index));
}

/** A source that the plan does not have feeds nothing; a letter that another axis has in part programs is given up. */
function fitting(plan: Plan, { kind, figures }: Gear, index: number): Figures {
  if (kind !== 'axis') return figures;
  const { source, word } = figures;
  const taken = plan.rig.axes.some((axis, i) => i !== index && axis.word === word);
  return {
    ...figures,
    source: plan.power.sources.some((own) => own.name === source) ? (source ?? null) : null,
    word: taken ? 'auto' : (word ?? 'auto'),
  };
}

/** Titles of the fields in which a piece of gear differs from the plan's member at `index`. */
export const differencesFrom = (plan: Plan, gear: Gear, index = 0): string[] =>
  differences(gear.kind, fitting(plan, gear, index), figuresIn(plan, gear.kind, index));

/** Where gear of that name stands in the plan's list; -1 if it does not, or if the plan has just one. */
export const placeOf = (plan: Plan, { kind, name }: Gear): number => {
  const { list } = KINDS[kind];
  return list === null ? -1 : membersOf(plan, list).findIndex((member) => member.name === name);
};

/** Whether it stands in the plan as it is. */
export function isIn(plan: Plan, gear: Gear): boolean {
  const { list, name } = KINDS[gear.kind];
  const index = list === null ? 0 : placeOf(plan, gear);
  if (index < 0 || (list === null && name !== null && getAt(plan, name) !== gear.name)) return false;
  return differencesFrom(plan, gear, index).length === 0;
}

/** Puts gear in the place of the plan's own: of the member at `index`, under the name it has there. */
export function replacing(plan: Plan, gear: Gear, index = 0): Edit[] {
  const { fields, list, name } = KINDS[gear.kind];
  const figures = fitting(plan, gear, index);
  const edits = fields.map((field): Edit => [memberField(gear.kind, field, index), figures[figureOf(field)]]);
  return list === null && name !== null ? [[name, gear.name], ...edits] : edits;
}

/** The name that gear gets when it is added to a list of the plan. */
export const nameOnceIn = (plan: Plan, { kind, name }: Gear): string =>
  nameAmong(name, membersOf(plan, KINDS[kind].list ?? ''));

/** Adds gear to the plan's list, under a name that is free there. */
export function adding(plan: Plan, gear: Gear): Edit[] {
  const { list } = KINDS[gear.kind];
  if (list === null) return replacing(plan, gear);
  const member = { name: nameOnceIn(plan, gear), ...fitting(plan, gear, -1) };
  return [[list, [...membersOf(plan, list), member]]];
}

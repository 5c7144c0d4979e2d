/**
 * One piece of gear in the kit: read, taken out of a plan, compared.
 *
 * Its figures are fields of a plan and are read by the plan's own reader, in a plan made to hold nothing else: what a
 * plan would refuse, the kit refuses with the same words.
 */
import { type Fault, foundText, pathText } from '../../engine/plan/faults.ts';
import { defaultPlan, newAxis, newCard, newSource, readPlan } from '../../engine/plan/parse.ts';
import { type Edit, editAll, getAt, partsOf } from '../../engine/plan/paths.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import { infoAt } from '../store/infos.ts';
import { figureOf, isKind, KINDS, KIT_KINDS, type KitKind, memberField, oneOf } from './kinds.ts';

/** Figures by name; they fit the plan's fields of the same names. */
export interface Figures {
  readonly [name: string]: unknown;
  /** Of an axis: what feeds it. */
  readonly source?: unknown;
}

export interface KitItem {
  /** Stays the same through every change of name and figures. */
  id: string;
  kind: KitKind;
  name: string;
  figures: Figures;
}

/** An entry that could not be read: kept as it stands, with what is wrong with it. */
export interface Unread {
  entry: unknown;
  faults: readonly Fault[];
}

/** Longest name, as in a plan. */
export const LONGEST_NAME = 40;

/** Most sources that a plan has. */
const MAX_SOURCES = 16;

/** Where an entry's figures stand in a plan made for it. */
const edits = (kind: KitKind, figures: Figures): Edit[] =>
  KINDS[kind].fields
    .filter((field) => Object.hasOwn(figures, figureOf(field)))
    .map((field) => [field, figures[figureOf(field)]]);

/**
 * A plan that holds one piece of gear, for its fields to read and write.
 * @param sources - names of sources that may feed it
 */
export function planWith(
  { kind, name, figures }: Omit<KitItem, 'id'>,
  sources: readonly string[] = [],
): Plan {
  const plan = defaultPlan();
  const feeds = new Set(kind === 'axis' ? [figures.source, ...sources] : []);
  const blank = {
    ...plan,
    rig: { ...plan.rig, axes: [newAxis()] },
    power: {
      ...plan.power,
      loads: [],
      sources:
        kind === 'axis'
          ? [...feeds]
              .filter((feed) => typeof feed === 'string')
              .slice(0, MAX_SOURCES)
              .map((feed) => ({ ...newSource(), name: feed }))
          : [newSource()],
    },
    storage: { ...plan.storage, cards: [newCard()] },
  };
  const named: Edit[] = [[KINDS[kind].name ?? 'camera.name', name]];
  return editAll(blank, [...named, ...edits(kind, figures)]);
}

/** The figures of a piece of gear as they stand in a plan; of a list those of the member at `index`. */
export const figuresIn = (plan: Plan, kind: KitKind, index = 0): Figures =>
  Object.fromEntries(
    KINDS[kind].fields.map((field) => [figureOf(field), getAt(plan, memberField(kind, field, index))]),
  );

/** Paths of the plan's faults as paths of the entry: `items[2].figures.maxSpeed`. */
function inEntry(fault: Fault, kind: KitKind, path: string): Fault {
  const printed = (field: string) => pathText(partsOf(field));
  const { name, fields } = KINDS[kind];
  if (fault.path === printed(name ?? 'camera.name')) return { ...fault, path: `${path}.name` };
  const field = fields.find(
    (own) => fault.path === printed(own) || fault.path.startsWith(`${printed(own)}[`),
  );
  if (!field) return { ...fault, path: `${path}.figures` };
  return { ...fault, path: `${path}.figures.${figureOf(field)}${fault.path.slice(printed(field).length)}` };
}

const isGroup = (value: unknown): value is Record<string, unknown> =>
  value !== null && typeof value === 'object' && !Array.isArray(value);

const KEYS = ['id', 'kind', 'name', 'figures'];

/** Keys of a group that it may not have. */
const foreign = (group: object, known: readonly string[], path: string, what: string): Fault[] =>
  Object.keys(group)
    .filter((key) => !known.includes(key))
    .map((key) => ({
      path: `${path}.${key}`,
      found: `a field that ${what} does not have`,
      allowed: known.join(', '),
    }));

/** What is wrong with an entry before its figures are looked at. */
function shapeFaults(entry: Record<string, unknown>, path: string): Fault[] {
  const { id, kind, figures } = entry;
  const fault = (key: string, found: unknown, allowed: string): Fault[] => [
    { path: `${path}.${key}`, found: foundText(found), allowed },
  ];
  return [
    ...foreign(entry, KEYS, path, 'the kit'),
    ...(typeof id === 'string' && id !== '' && id.length <= 64
      ? []
      : fault('id', id, 'text of 1 to 64 characters')),
    ...(isKind(kind) ? [] : fault('kind', kind, `one of ${KIT_KINDS.join(', ')}`)),
    ...(isGroup(figures) ? [] : fault('figures', figures, 'a group of fields in { }')),
  ];
}

/**
 * Reads one entry of a kit file.
 * @param entry - anything
 * @param path - where it stands, for the faults
 * @returns the piece of gear with every figure filled in, or everything that is wrong with the entry
 */
export function readEntry(entry: unknown, path: string): { item: KitItem } | { faults: Fault[] } {
  if (!isGroup(entry)) return { faults: [{ path, found: foundText(entry), allowed: 'an entry in { }' }] };
  const wrong = shapeFaults(entry, path);
  if (wrong.length > 0) return { faults: wrong };
  const { id, kind, name, figures } = entry as unknown as KitItem;
  const strange = foreign(figures, KINDS[kind].fields.map(figureOf), `${path}.figures`, oneOf(kind));
  const read = readPlan(planWith({ kind, name, figures }));
  if (!read.ok || strange.length > 0) {
    // A source that cannot be is a fault of the axis that asks for it, and is named there.
    const own = read.ok
      ? []
      : read.faults.filter(({ path: at }) => kind !== 'axis' || !at.startsWith('power.'));
    const faults = own.map((fault) => inEntry(fault, kind, path));
    return { faults: [...strange, ...faults] };
  }
  return { item: { id, kind, name, figures: figuresIn(read.plan, kind) } };
}

/** Whether two values, as they come out of JSON, are the same. */
const alike = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** Titles of the fields in which two pieces of gear of one kind differ. */
export const differences = (kind: KitKind, a: Figures, b: Figures): string[] =>
  KINDS[kind].fields
    .filter((field) => !alike(a[figureOf(field)], b[figureOf(field)]))
    .map((field) => infoAt(field).title);

/** Whether two pieces of gear are the same but for their id. */
export const sameGear = (a: Omit<KitItem, 'id'>, b: Omit<KitItem, 'id'>): boolean =>
  a.kind === b.kind && a.name === b.name && differences(a.kind, a.figures, b.figures).length === 0;

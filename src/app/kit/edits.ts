/** Changes of the kit. Each is made to whatever the browser keeps at that moment, so that two tabs add up. */
import { freeName } from '../store/members.ts';
import { type KitItem, LONGEST_NAME, sameGear, type Unread } from './entry.ts';
import type { KitKind } from './kinds.ts';
import type { Kit } from './kitFile.ts';

/** A change; made twice it changes nothing more. */
export type KitEdit = (kit: Kit) => Kit;

/** Puts a piece of gear in: in the place of the one with its id, else at the end. */
export const put =
  (item: KitItem): KitEdit =>
  (kit) => {
    const at = kit.items.findIndex(({ id }) => id === item.id);
    const items = at < 0 ? [...kit.items, item] : kit.items.with(at, item);
    return { ...kit, items };
  };

export const remove =
  (...ids: readonly string[]): KitEdit =>
  (kit) => ({ ...kit, items: kit.items.filter(({ id }) => !ids.includes(id)) });

/** Puts a removed piece back where it was. */
export const putBack =
  (item: KitItem, place: number): KitEdit =>
  (kit) =>
    kit.items.some(({ id }) => id === item.id) ? kit : { ...kit, items: kit.items.toSpliced(place, 0, item) };

const keyOf = ({ entry }: Unread): string => JSON.stringify(entry);

/** Gives up an entry that could not be read. */
export const dropUnread =
  (gone: Unread): KitEdit =>
  (kit) => {
    const place = kit.unread.findIndex((one) => keyOf(one) === keyOf(gone));
    return { ...kit, unread: kit.unread.filter((_, index) => index !== place) };
  };

/** All edits, one after another. */
export const all =
  (...edits: readonly KitEdit[]): KitEdit =>
  (kit) =>
    edits.reduce((next, edit) => edit(next), kit);

/** The gear of a kind that has this name. */
export const named = (kit: Kit, kind: KitKind, name: string): KitItem | undefined =>
  kit.items.find((item) => item.kind === kind && item.name === name);

/** A name that is free among others, no longer than names may be: `Slide`, `Slide 2`, `Slide 3`. */
export function nameAmong(name: string, others: readonly { name: string }[]): string {
  if (others.every((other) => other.name !== name)) return name;
  return freeName(name.replace(/ \d+$/, '').slice(0, LONGEST_NAME - 5), others);
}

/** A name that no gear of that kind has. */
export const freeKitName = (kit: Kit, kind: KitKind, name: string): string =>
  nameAmong(
    name,
    kit.items.filter((item) => item.kind === kind),
  );

type Gear = Omit<KitItem, 'id'>;

/** Whether a name is another one with a number behind it, as gear gets it beside one of its name. */
const isNumbered = (name: string, stem: string): boolean =>
  name.startsWith(`${stem} `) && /^\d+$/.test(name.slice(stem.length + 1));

/** The piece of the kit that is this gear: under its name, or with a number behind it where that name is taken. */
export function keptAs(kit: Kit, gear: Gear): KitItem | undefined {
  const taken = named(kit, gear.kind, gear.name) !== undefined;
  return kit.items.find(
    (item) =>
      sameGear(item, gear) ||
      (taken && isNumbered(item.name, gear.name) && sameGear(item, { ...gear, name: item.name })),
  );
}

/** What bringing in a kit file does. */
export interface Arrival {
  /** New gear, under the names and ids it gets. */
  added: KitItem[];
  /** How many were there already. */
  known: number;
  /** Names that were taken, and what the newcomer is called instead. */
  renamed: { from: string; to: string }[];
}

/**
 * What of another kit is not in this one: nothing that is here is touched.
 * @param newId - makes the id of a newcomer whose own is taken
 */
export function arrivalOf(kit: Kit, incoming: readonly KitItem[], newId: () => string): Arrival {
  const arrival: Arrival = { added: [], known: 0, renamed: [] };
  let here = kit;
  for (const one of incoming) {
    if (keptAs(here, one)) {
      arrival.known += 1;
      continue;
    }
    const taken = named(here, one.kind, one.name) !== undefined;
    const name = taken ? freeKitName(here, one.kind, one.name) : one.name;
    const id = here.items.some((item) => item.id === one.id) ? newId() : one.id;
    const item = { ...one, id, name };
    if (taken) arrival.renamed.push({ from: one.name, to: name });
    arrival.added.push(item);
    here = put(item)(here);
  }
  return arrival;
}

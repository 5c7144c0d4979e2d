/**
 * The kit as text, and back: in the browser's storage and in files.
 *
 * An entry that cannot be read never takes another one with it, and stays in the text as it is.
 */
import { type Fault, foundText } from '../../engine/plan/faults.ts';
import { PLAN_VERSION } from '../../engine/plan/schema.ts';
import { type KitItem, readEntry, type Unread } from './entry.ts';

/** The word that marks a kit file, and the name under which the browser keeps the kit. */
export const KIT_FORMAT = 'escapement-kit';

/** The figures are a plan's, so their version is the plan's too. */
export const KIT_VERSION = PLAN_VERSION;

/** Largest kit that is read, in characters, and in entries. */
export const MAX_KIT_CHARACTERS = 4_000_000;
export const MAX_KIT_ENTRIES = 1000;

export interface Kit {
  items: readonly KitItem[];
  unread: readonly Unread[];
}

export const EMPTY_KIT: Kit = { items: [], unread: [] };

/** A kit, with what could not be read of it, or why the text is none at all. */
export type KitRead = { kit: Kit } | { fault: Fault };

const refuse = (path: string, found: string, allowed: string) => ({ fault: { path, found, allowed } });

/** The entries, if the text is a kit file of a version that is read. */
function entriesOf(text: string): { entries: unknown[] } | { fault: Fault } {
  if (text.length > MAX_KIT_CHARACTERS)
    return refuse('', `${text.length} characters`, `at most ${MAX_KIT_CHARACTERS} characters`);
  let file: unknown;
  try {
    // A byte order mark is not JSON, but editors write one.
    file = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    return refuse('', 'text that is not JSON, or breaks off', 'a kit file: JSON text in { }');
  }
  if (file === null || typeof file !== 'object' || Array.isArray(file))
    return refuse('', foundText(file), 'a kit file: JSON text in { }');
  const { format, version, items } = file as Record<string, unknown>;
  if (format !== KIT_FORMAT) return refuse('format', foundText(format), `"${KIT_FORMAT}"`);
  if (version !== KIT_VERSION)
    return refuse('version', foundText(version), `the version read here: ${KIT_VERSION}`);
  if (!Array.isArray(items)) return refuse('items', foundText(items), 'a list of entries');
  if (items.length > MAX_KIT_ENTRIES)
    return refuse('items', `${items.length} entries`, `at most ${MAX_KIT_ENTRIES}`);
  return { entries: items };
}

/**
 * Reads a kit.
 * @param text - a whole kit file, JSON with `"format": "escapement-kit"` and a `"version"`
 * @returns the entries that can be read, and those that cannot with their faults. Never throws.
 */
export function readKit(text: string): KitRead {
  const read = entriesOf(text);
  if ('fault' in read) return read;
  const items: KitItem[] = [];
  const unread: Unread[] = [];
  const ids = new Set<string>();
  read.entries.forEach((entry, index) => {
    const path = `items[${index}]`;
    const one = readEntry(entry, path);
    if ('faults' in one) {
      unread.push({ entry, faults: one.faults });
    } else if (ids.has(one.item.id)) {
      const faults = [
        { path: `${path}.id`, found: foundText(one.item.id), allowed: 'an id that no other entry has' },
      ];
      unread.push({ entry, faults });
    } else {
      ids.add(one.item.id);
      items.push(one.item);
    }
  });
  return { kit: { items, unread } };
}

/** The kit as the text of a kit file; entries that could not be read are in it as they are. */
export function writeKit({ items, unread }: Kit): string {
  const file = {
    format: KIT_FORMAT,
    version: KIT_VERSION,
    items: [...items, ...unread.map(({ entry }) => entry)],
  };
  return `${JSON.stringify(file, null, 2)}\n`;
}

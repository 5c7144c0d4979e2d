/**
 * The kit is kept in this browser (localStorage), each change at once.
 *
 * A change is made to what the browser keeps at that moment, not to what this tab remembers: tabs add up. What could
 * not be written waits and is made again with the next change; it is on screen meanwhile, and in the file that is saved.
 */
import { useStore } from 'zustand';
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Fault } from '../../engine/plan/faults.ts';
import type { KitEdit } from './edits.ts';
import { EMPTY_KIT, KIT_FORMAT, type Kit, readKit, writeKit } from './kitFile.ts';

/** What the browser keeps under the kit's name and cannot be read: left as it is. */
export interface Blocked {
  text: string;
  fault: Fault;
}

export interface KitState {
  kit: Kit;
  /** `refused`: the browser does not store, or is full. `blocked`: something else is in the place. */
  saving: 'kept' | 'refused' | 'blocked';
  blocked: Blocked | null;
}

/** As much of the browser's storage as the kit needs. */
export type Shelf = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>;

export interface KitStore {
  store: StoreApi<KitState>;
  /** Makes a change and keeps it. */
  edit: (edit: KitEdit) => void;
  /** Looks again at what the browser keeps. */
  look: () => void;
  /** Gives up what cannot be read, and keeps this kit in its place. */
  startAfresh: () => void;
}

/** A kit that is kept on a shelf. */
export function createKitStore(shelf: Shelf): KitStore {
  const store = createStore<KitState>(() => ({ kit: EMPTY_KIT, saving: 'kept', blocked: null }));
  let waiting: KitEdit[] = [];
  let last: { text: string | null; kit: Kit } = { text: null, kit: EMPTY_KIT };

  /** Reads what is kept, unless it is what was read last. @returns what stands there instead of a kit */
  const read = (): Blocked | null => {
    const text = shelf.getItem(KIT_FORMAT);
    if (text === last.text) return null;
    const found = text === null ? { kit: EMPTY_KIT } : readKit(text);
    if ('fault' in found) return { text: text ?? '', fault: found.fault };
    last = { text, kit: found.kit };
    return null;
  };
  const write = (kit: Kit) => {
    const text = writeKit(kit);
    shelf.setItem(KIT_FORMAT, text);
    last = { text, kit };
    waiting = [];
  };
  const look = () => {
    let saving: KitState['saving'] = 'kept';
    let blocked: Blocked | null = null;
    try {
      blocked = read();
    } catch {
      saving = 'refused';
    }
    const kit = waiting.reduce((next, edit) => edit(next), blocked ? EMPTY_KIT : last.kit);
    try {
      if (!blocked && waiting.length > 0) write(kit);
    } catch {
      saving = 'refused';
    }
    store.setState({ kit, saving: blocked ? 'blocked' : saving, blocked });
  };
  return {
    store,
    look,
    edit(edit) {
      waiting.push(edit);
      look();
    },
    startAfresh() {
      try {
        shelf.removeItem(KIT_FORMAT);
      } catch {
        // It says so below.
      }
      look();
    },
  };
}

/** A browser may refuse the very mention of its storage: each use is a try of its own. */
const browserShelf: Shelf = {
  getItem: (key) => localStorage.getItem(key),
  setItem: (key, text) => localStorage.setItem(key, text),
  removeItem: (key) => localStorage.removeItem(key),
};

/** The kit of this browser. */
export const kitStore = createKitStore(browserShelf);

export const editKit = kitStore.edit;

/** The kit as it is now. */
export const currentKit = (): Kit => kitStore.store.getState().kit;

/** The kit and how it is kept, followed. */
export const useKitState = (): KitState => useStore(kitStore.store);

/** Follows what other tabs do to the kit. @returns how to stop */
export function followKit(): () => void {
  const onStorage = ({ key }: StorageEvent) => {
    if (key === KIT_FORMAT || key === null) kitStore.look();
  };
  kitStore.look();
  addEventListener('storage', onStorage);
  return () => removeEventListener('storage', onStorage);
}

/** An id that no other entry has. */
export const newId = (): string => `${Date.now().toString(36)}-${Math.random().toString(36).slice(2, 12)}`;

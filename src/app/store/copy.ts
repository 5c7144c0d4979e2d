/** A copy of the plan as it was, to compare with: kept in this browser beside the plan itself. */
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { Plan } from '../../engine/plan/schema.ts';
import { keepable } from './keepable.ts';
import { readKept } from './kept.ts';
import { opened, STORE } from './shelf.ts';

/** A kept copy. */
export interface Copy {
  plan: Plan;
  /** When it was made, milliseconds of the epoch. */
  keptMs: number;
}

interface CopyState {
  /** null: there is none. undefined: it has not been looked for yet. */
  copy: Copy | null | undefined;
  /** Whether the browser keeps it. */
  kept: boolean;
}

const KEY = 'copy';

const copyStore = createStore<CopyState>(() => ({ copy: undefined, kept: true }));

/** The copy, and whether the browser keeps it. */
export const useCopy = (): CopyState => useStore(copyStore, (state) => state);

async function read(): Promise<Copy | null> {
  const found = (await (await opened()).get(STORE, KEY)) as { keptMs?: number } | undefined;
  if (!found) return null;
  const plan = await readKept(found);
  return plan && { plan, keptMs: found.keptMs ?? 0 };
}

/** Looks for the copy that this browser keeps; one that only this tab has stays. */
export async function lookForCopy(): Promise<void> {
  if (!copyStore.getState().kept) return;
  try {
    copyStore.setState({ copy: await read() });
  } catch {
    copyStore.setState({ copy: null });
  }
}

async function write(copy: Copy | null): Promise<void> {
  copyStore.setState({ copy, kept: true });
  try {
    const database = await opened();
    if (copy) await database.put(STORE, { ...keepable(copy.plan), keptMs: copy.keptMs }, KEY);
    else await database.delete(STORE, KEY);
  } catch {
    // It is here as long as the tab is.
    copyStore.setState({ kept: copy === null });
  }
}

/** Keeps a copy of a plan in place of the one there was. */
export const keepCopy = (plan: Plan, keptMs = Date.now()): Promise<void> => write({ plan, keptMs });

/** Forgets the copy. */
export const forgetCopy = (): Promise<void> => write(null);

/**
 * The present plan is kept in this browser (IndexedDB) at every edit.
 *
 * A write starts at once, so that a killed tab has lost nothing; while one is under way, the next waits and
 * takes the newest plan. Of several tabs the newest one writes: the others say that they do not.
 */
import { type IDBPDatabase, openDB } from 'idb';
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { Plan } from '../../engine/plan/schema.ts';
import { keepable, readKept } from './kept.ts';
import { currentPlan, planStore } from './plan.ts';

/** `elsewhere`: a newer tab writes. `refused`: the browser does not store anything. */
export type Saving = 'kept' | 'elsewhere' | 'refused';

/** Where plans lie in it. */
export const STORE = 'plans';
const KEY = 'current';

const savingStore = createStore<{ saving: Saving }>(() => ({ saving: 'kept' }));
const setSaving = (saving: Saving) => {
  if (savingStore.getState().saving !== saving) savingStore.setState({ saving });
};

/** How the present plan is kept. */
export const useSaving = (): Saving => useStore(savingStore, (state) => state.saving);

let database: Promise<IDBPDatabase> | null = null;

/** What is kept in this browser. */
export const opened = (): Promise<IDBPDatabase> => {
  database ??= openDB('escapement', 1, { upgrade: (db) => void db.createObjectStore(STORE) });
  return database;
};

async function lastKept(): Promise<unknown> {
  try {
    return await (await opened()).get(STORE, KEY);
  } catch {
    setSaving('refused');
    return null;
  }
}

/**
 * The plan kept last, or null if there is none, it cannot be read, or the browser refuses.
 * @throws if it has to be checked and the checker cannot be fetched
 */
export const keptPlan = async (): Promise<Plan | null> => readKept(await lastKept());

let writing = false;
let written: Plan | null = null;

async function writeNewest(): Promise<void> {
  if (writing) return;
  writing = true;
  try {
    while (written !== currentPlan() && savingStore.getState().saving !== 'elsewhere') {
      const plan = currentPlan();
      await (await opened()).put(STORE, keepable(plan), KEY);
      written = plan;
      setSaving('kept');
    }
  } catch {
    // The plan stays on screen; the page says 'Not saved' and offers the file.
    setSaving('refused');
  } finally {
    writing = false;
  }
}

let tabs: BroadcastChannel | null = null;

/** Makes this tab the one that writes. */
export function writeHere(): void {
  savingStore.setState({ saving: 'kept' });
  tabs?.postMessage('I write');
  void writeNewest();
}

/** Keeps every plan from now on. */
export function startKeeping(): void {
  tabs = new BroadcastChannel('escapement');
  tabs.onmessage = () => setSaving('elsewhere');
  planStore.subscribe(() => void writeNewest());
  writeHere();
}

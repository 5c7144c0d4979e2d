/**
 * The plans kept in this browser (IndexedDB).
 *
 * One store. Under `['plan', id]` lies the text of a plan with its mark ({@link Kept}), under `['facts', id]` the line
 * that the list shows of it, under `last` the id of the plan that was on screen last. Once there was one plan only,
 * under `current`: it is taken over (`recover.ts`).
 */
import { type IDBPDatabase, openDB } from 'idb';
import type { Plan } from '../../engine/plan/schema.ts';
import { enter } from './entries.ts';
import { type Kept, readKept } from './kept.ts';
import { setSaving } from './saving.ts';

export const STORE = 'plans';
export const LAST = 'last';
export const ONCE = 'current';

/** Where this tab remembers which plan it shows: an id, or `demo ` and a name. */
export const TAB_KEY = 'escapement-plan';

/** Where a page that is left puts what it could not write any more, for the next load of its tab. */
export const HANDED_KEY = 'escapement-handed';

/** A plan handed over: the tab that kept it, and what it would have written. */
export interface Handed {
  id: string;
  by: string;
  kept: Kept;
}

let database: Promise<IDBPDatabase> | null = null;

/**
 * The browser's database.
 * @throws whatever the browser says if it keeps nothing; it is tried anew the next time
 */
export function opened(): Promise<IDBPDatabase> {
  const forget = () => {
    database = null;
  };
  database ??= openDB('escapement', 1, {
    upgrade: (db) => void db.createObjectStore(STORE),
    // A later version of the page may want another form: it is not kept waiting.
    blocking: (_here, _wanted, { target }) => {
      (target as IDBDatabase).close();
      forget();
    },
    terminated: forget,
  });
  database.catch(forget);
  return database;
}

const tabItem = (key: string): string | null => {
  try {
    return sessionStorage.getItem(key);
  } catch {
    return null;
  }
};

const tabPlan = (): string | null => tabItem(TAB_KEY);

/** Name of the demo that this tab shows untouched, if it does. */
export const tabDemo = (): string | null => /^demo (.*)/.exec(tabPlan() ?? '')?.[1] ?? null;

async function lastId(): Promise<string | undefined> {
  const { store } = (await opened()).transaction(STORE);
  const [once, last] = await Promise.all([store.get(ONCE), store.get(LAST)]);
  const id = tabPlan() ?? last;
  const found = id !== undefined && (await store.getKey(['plan', id])) !== undefined;
  if (once === undefined && (found || last === undefined)) return found ? id : undefined;
  return (await import('./recover.ts')).recovered(id);
}

/**
 * The plan that this tab showed last, else the one that any did; null if there is none, it cannot be read, or the
 * browser refuses.
 * @throws if it has to be checked and the checker cannot be fetched
 */
export async function keptPlan(): Promise<Plan | null> {
  let id: string | undefined;
  let kept: unknown;
  try {
    const handed = tabItem(HANDED_KEY);
    const plan = handed !== null && (await (await import('./recover.ts')).handedPlan(JSON.parse(handed)));
    if (plan) return plan;
    id = await lastId();
    kept = id === undefined ? null : await (await opened()).get(STORE, ['plan', id]);
  } catch {
    setSaving('refused');
    return null;
  }
  const plan = await readKept(kept);
  return plan && id !== undefined ? enter(plan, { id, kept: plan }) : null;
}

/** What is seldom needed to find the plan to open with: the one plan of once, and another where the last is gone. */
import type { Plan } from '../../engine/plan/schema.ts';
import { schedule } from '../../engine/schedule.ts';
import { enter, newId } from './entries.ts';
import { factsOf, type Listed, NO_FACTS } from './facts.ts';
import { readKept } from './kept.ts';
import { type Handed, LAST, ONCE, opened, STORE } from './shelf.ts';

/**
 * Gives the one plan of once a place among the others; what cannot be read is kept as it is.
 * @throws if it has to be checked and the checker cannot be fetched: it then stays where it is
 */
async function takeOver(): Promise<string | null> {
  const db = await opened();
  const once = await db.get(STORE, ONCE);
  const plan = await readKept(once);
  const id = newId();
  const facts = plan ? factsOf(plan, schedule(plan, { nowMs: Date.now() })) : NO_FACTS;
  const listed: Listed = { ...facts, id, changedMs: Date.now(), by: '' };
  const { store, done } = db.transaction(STORE, 'readwrite');
  // Another tab may have been quicker.
  const still = await store.get(ONCE);
  if (still !== undefined) {
    await Promise.all([
      store.put(once, ['plan', id]),
      store.put(listed, ['facts', id]),
      store.put(id, LAST),
      store.delete(ONCE),
    ]);
  }
  await done;
  return still !== undefined && plan ? id : null;
}

async function newest(): Promise<string | undefined> {
  const all: Listed[] = await (await opened()).getAll(STORE, IDBKeyRange.bound(['facts'], ['facts', []]));
  return all.sort((a, b) => b.changedMs - a.changedMs)[0]?.id;
}

/**
 * The plan to open with.
 * @param id - of the plan that is looked for, if there is one; it may be gone
 */
export async function recovered(id: string | undefined): Promise<string | undefined> {
  const db = await opened();
  if ((await db.getKey(STORE, ONCE)) !== undefined) {
    const taken = await takeOver();
    if (taken !== null) return taken;
  }
  const there = id !== undefined && (await db.getKey(STORE, ['plan', id])) !== undefined;
  return there ? id : newest();
}

/**
 * What the page before this one in its tab could not write any more; null if another tab has kept the plan since.
 * @throws if it has to be checked and the checker cannot be fetched
 */
export async function handedPlan({ id, by, kept }: Handed): Promise<Plan | null> {
  const { store } = (await opened()).transaction(STORE);
  const [known, stored] = await Promise.all([store.get(['facts', id]), store.get(['plan', id])]);
  if (known && (known as Listed).by !== by) return null;
  const [plan, before] = await Promise.all([readKept(kept), stored === undefined ? null : readKept(stored)]);
  return plan && enter(plan, { id, kept: before });
}

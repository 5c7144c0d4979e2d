/** Kept plans on the browser's shelf, each with the facts that the list shows. */
import type { Listed } from '../store/facts.ts';
import type { Kept } from '../store/kept.ts';
import { opened, STORE } from '../store/shelf.ts';

/** A kept plan, as it lies there. */
export interface PlanRecord {
  listed: Listed;
  /** A {@link Kept}, or whatever else was found. */
  kept: unknown;
}

const ALL_FACTS = () => IDBKeyRange.bound(['facts'], ['facts', []]);

/** The facts of all kept plans. */
export const allFacts = async (): Promise<Listed[]> => (await opened()).getAll(STORE, ALL_FACTS());

/** What is kept of one plan; undefined if it is gone. */
export const keptOf = async (id: string): Promise<unknown> => (await opened()).get(STORE, ['plan', id]);

/** The text of what is kept, whatever program wrote it. */
export const textOf = (kept: unknown): string =>
  typeof kept === 'string' ? kept : ((kept as Partial<Kept> | undefined)?.text ?? '');

/** Every kept plan, newest change first. */
export async function allRecords(): Promise<PlanRecord[]> {
  const { store } = (await opened()).transaction(STORE);
  const all: Listed[] = await store.getAll(ALL_FACTS());
  const newestFirst = all.sort((a, b) => b.changedMs - a.changedMs);
  return Promise.all(
    newestFirst.map(async (listed) => ({ listed, kept: await store.get(['plan', listed.id]) })),
  );
}

/**
 * Puts plans there and takes others away: all of it or nothing.
 * @throws DOMException if the browser does not store it
 */
export async function changeRecords(
  put: readonly PlanRecord[],
  remove: readonly string[] = [],
): Promise<void> {
  const { store, done } = (await opened()).transaction(STORE, 'readwrite');
  await Promise.all([
    ...put.flatMap(({ listed, kept }) => [
      store.put(kept, ['plan', listed.id]),
      store.put(listed, ['facts', listed.id]),
    ]),
    ...remove.flatMap((id) => [store.delete(['plan', id]), store.delete(['facts', id])]),
    done,
  ]);
}

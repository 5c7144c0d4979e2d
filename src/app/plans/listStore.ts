/** The list of kept plans, as it is on screen. */
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { Listed } from '../store/facts.ts';
import { allFacts, type PlanRecord } from './records.ts';

interface PlansState {
  /** Newest change first; null until it has been read. */
  list: readonly Listed[] | null;
  /** The browser keeps nothing. */
  refused: boolean;
  /** What was deleted since the page was opened, last one last. */
  deleted: readonly PlanRecord[];
}

const plansStore = createStore<PlansState>(() => ({ list: null, refused: false, deleted: [] }));

export const usePlans = <T>(pick: (state: PlansState) => T): T => useStore(plansStore, pick);

export const plansNow = (): PlansState => plansStore.getState();

export const setDeleted = (deleted: readonly PlanRecord[]): void => plansStore.setState({ deleted });

/** Looks again at what is kept. */
export async function look(): Promise<void> {
  try {
    const list = (await allFacts()).sort((a, b) => b.changedMs - a.changedMs);
    plansStore.setState({ list, refused: false });
  } catch {
    plansStore.setState({ list: [], refused: true });
  }
}

/** Follows what is kept, by other tabs too. @returns how to stop */
export function followPlans(): () => void {
  const tabs = new BroadcastChannel('escapement');
  const again = () => void look();
  tabs.onmessage = again;
  addEventListener('focus', again);
  again();
  return () => {
    tabs.close();
    removeEventListener('focus', again);
  };
}

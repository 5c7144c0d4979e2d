/** Parts that hang themselves into the page once they have been fetched: what looks for ways out of findings. */
import type { ComponentType } from 'react';
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { Finding } from '../../engine/findings/types.ts';

/** What there is to show of ways out. */
export interface WayParts {
  /** In the head of the findings. */
  Head: ComponentType;
  /** Under a finding. */
  Ways: ComponentType<{ finding: Finding; at: number }>;
  /** Before the finding at a place of the list, where one was that is gone. */
  Taken: ComponentType<{ at: number }>;
  /** A row of the margins. */
  Slip: ComponentType;
}

const laterStore = createStore<{ ways: WayParts | 'missing' | null }>(() => ({ ways: null }));

/** The parts; null until they have come, `missing` if they cannot be fetched. */
export const useWayParts = (): WayParts | 'missing' | null => useStore(laterStore, (state) => state.ways);

const fetchWays = (): Promise<void> =>
  import('../fixes/wayParts.tsx').then(
    ({ WAY_PARTS: ways }) => laterStore.setState({ ways }),
    () => laterStore.setState({ ways: 'missing' }),
  );

/** A page that is only opened does not fetch them, and a second engine: they come with the first sign of somebody, or after this. */
const NOBODY_MS = 3000;
const SIGNS = ['pointermove', 'pointerdown', 'keydown', 'wheel', 'scroll'] as const;

function onceSomebodyIsHere(work: () => void): void {
  const done = new AbortController();
  const start = () => {
    done.abort();
    clearTimeout(late);
    work();
  };
  const late = setTimeout(start, NOBODY_MS);
  for (const sign of SIGNS)
    addEventListener(sign, start, { signal: done.signal, passive: true, capture: true });
}

/** Fetches them once somebody is here. */
export const expectWays = (): void => onceSomebodyIsHere(() => void fetchWays());

/** Parts that hang themselves into the page once they have been fetched: what looks for ways out of findings. */
import type { ComponentType } from 'react';
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { Finding } from '../../engine/findings/types.ts';

/** What there is to show of ways out. */
export interface WayParts {
  /** In the head of the findings. */
  Head: ComponentType;
  /** The sentence of a finding, or without one the verdict: its figures open their workings. */
  Sentence: ComponentType<{ finding?: Finding }>;
  /** Under a finding. */
  Ways: ComponentType<{ finding: Finding; at: number }>;
  /** Before the finding at a place of the list, where one was that is gone. */
  Taken: ComponentType<{ at: number }>;
  /** A row of the margins. */
  Slip: ComponentType;
}

export const laterStore = createStore<Partial<WayParts>>(() => ({}));

/** The parts; none until they have come. If they cannot be fetched, a head that says so. */
export const useWayParts = (): Partial<WayParts> => useStore(laterStore);

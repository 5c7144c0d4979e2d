/** How the present plan is kept in this browser: what the bar says of it. */
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';

/**
 * `elsewhere`: another tab has taken the plan over, or it was deleted there. `full`: no room is left.
 * `refused`: the browser does not store anything.
 */
export type Saving = 'kept' | 'elsewhere' | 'full' | 'refused';

const savingStore = createStore<{ saving: Saving }>(() => ({ saving: 'kept' }));

export const setSaving = (saving: Saving): void => {
  if (savingStore.getState().saving !== saving) savingStore.setState({ saving });
};

export const savingNow = (): Saving => savingStore.getState().saving;

/** How the present plan is kept. */
export const useSaving = (): Saving => useStore(savingStore, (state) => state.saving);

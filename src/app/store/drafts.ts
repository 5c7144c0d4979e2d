/** Text in fields that is not, or not yet, in the plan. It belongs to the tab and cannot be undone. */
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';

/** What was typed into a field. */
export interface Draft {
  text: string;
  /** Why it is not in the plan, in one or two sentences; null if it is. */
  error: string | null;
}

type Drafts = Readonly<Record<string, Draft>>;

const draftStore = createStore<{ drafts: Drafts }>(() => ({ drafts: {} }));

/** Keeps what was typed into a field, or forgets it. */
export function setDraft(path: string, draft: Draft | null): void {
  const { [path]: present, ...others } = draftStore.getState().drafts;
  if (draft) draftStore.setState({ drafts: { ...others, [path]: draft } });
  else if (present) draftStore.setState({ drafts: others });
}

/** What was typed into a field and does not stand in the plan in that form. */
export const draftAt = (path: string): Draft | undefined => draftStore.getState().drafts[path];

/** Forgets all drafts: the plan under them has been replaced. */
export const clearDrafts = (): void => draftStore.setState({ drafts: {} });

/** {@link draftAt}, followed. */
export const useDraft = (path: string): Draft | undefined =>
  useStore(draftStore, (state) => state.drafts[path]);

/** How many fields hold text that cannot be used. */
export const useUnusable = (): number =>
  useStore(draftStore, (state) => Object.values(state.drafts).filter((draft) => draft.error !== null).length);

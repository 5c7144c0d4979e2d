/** Text in fields that is not, or not yet, in the plan. It belongs to the tab and cannot be undone. */
import { useStore } from 'zustand';
import { createStore, type StoreApi } from 'zustand/vanilla';

/** What was typed into a field. */
export interface Draft {
  text: string;
  /** Why it is not in the plan, in one or two sentences; null if it is. */
  error: string | null;
}

type Kept = Readonly<Record<string, Draft>>;

/** The drafts of one set of fields. */
export interface Drafts {
  store: StoreApi<{ drafts: Kept }>;
  set: (path: string, draft: Draft | null) => void;
  clear: () => void;
}

export function createDrafts(): Drafts {
  const store = createStore<{ drafts: Kept }>(() => ({ drafts: {} }));
  const set = (path: string, draft: Draft | null) => {
    const { [path]: present, ...others } = store.getState().drafts;
    if (draft) store.setState({ drafts: { ...others, [path]: draft } });
    else if (present) store.setState({ drafts: others });
  };
  return { store, set, clear: () => store.setState({ drafts: {} }) };
}

/** The drafts of the plan's own fields. */
export const planDrafts = createDrafts();

/** Keeps what was typed into a field, or forgets it. */
export const setDraft = planDrafts.set;

/** What was typed into a field and does not stand in the plan in that form. */
export const draftAt = (path: string): Draft | undefined => planDrafts.store.getState().drafts[path];

/** {@link draftAt}, followed; `of` are the drafts of other fields than the plan's own. */
export const useDraft = (path: string, of = planDrafts): Draft | undefined =>
  useStore(of.store, (state) => state.drafts[path]);

/** How many fields hold text that cannot be used. */
export const useUnusable = (): number =>
  useStore(
    planDrafts.store,
    (state) => Object.values(state.drafts).filter((draft) => draft.error !== null).length,
  );

/** What the tab looks at: no part of the plan, not undone, not saved. */
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { OnSet } from '../../engine/onset/working.ts';
import type { KitKind } from '../kit/kinds.ts';

/** Sections of the inputs, in their order on the page. */
export const SECTIONS = [
  'clip',
  'camera',
  'exposure',
  'cycle',
  'move',
  'rig',
  'balance',
  'power',
  'storage',
  'place',
  'day',
  'notes',
] as const;
export type SectionId = (typeof SECTIONS)[number];

/** What the kit is opened for. */
export interface KitAsk {
  /** Kinds of gear to show; null for all. */
  kinds: readonly KitKind[] | null;
  /** What of the plan to keep at once: of a list the member at `index`. */
  keep: { kind: KitKind; index: number } | null;
}

interface View {
  /** Column index of the frame under the run cursor. */
  cursor: number | null;
  /** Column index of the frame whose cycle is drawn; null for the longest. */
  cycleFrame: number | null;
  open: Readonly<Partial<Record<SectionId, boolean>>>;
  dialog:
    | 'new'
    | 'keys'
    | 'faults'
    | 'kit'
    | 'plans'
    | 'along'
    | 'share'
    | 'link'
    | 'working'
    | 'compare'
    | null;
  kit: KitAsk;
  /** Name of the figure whose working is looked at. */
  working: string;
  /** A run as it stood when one of its figures was pressed; null for figures of the plan. */
  run: OnSet | null;
  /** The dialog to go back to. */
  under: View['dialog'];
  /** How many plans have been opened in this tab. */
  opened: number;
}

// On a desk there is room for the subject that is tuned most; a phone begins with one line each.
const firstOpen = (): View['open'] =>
  globalThis.matchMedia?.('(min-width: 1280px)').matches ? { exposure: true } : {};

const viewStore = createStore<View>(() => ({
  cursor: null,
  cycleFrame: null,
  open: firstOpen(),
  dialog: null,
  kit: { kinds: null, keep: null },
  working: '',
  run: null,
  under: null,
  opened: 0,
}));

export const useView = <T>(pick: (view: View) => T): T => useStore(viewStore, pick);

export const setCursor = (cursor: number | null): void => viewStore.setState({ cursor });
export const setCycleFrame = (cycleFrame: number | null): void => viewStore.setState({ cycleFrame });
export const showDialog = (dialog: View['dialog']): void => viewStore.setState({ dialog });

/** Opens the kit: all of it, or some kinds of gear, or to keep something of the plan. */
export const showKit = (ask: Partial<KitAsk> = {}): void =>
  viewStore.setState({ dialog: 'kit', kit: { kinds: null, keep: null, ...ask } });

/** Opens the working of a figure. @param run - of a run that is being shot, as it stands */
export const showWorking = (working: string, run: OnSet | null = null): void =>
  viewStore.setState(({ dialog, under }) => ({
    dialog: 'working',
    working,
    run,
    under: dialog === 'working' ? under : dialog,
  }));

/** What is closed next leaves all dialogs. */
export const leaveDialogs = (): void => viewStore.setState({ under: null });

/** Closes a dialog: from a working back to the one that it was opened from. */
export const closeDialog = (): void =>
  viewStore.setState(({ dialog, under }) => ({ dialog: dialog === 'working' ? under : null, under: null }));

/** The run cursor, shared by findings, cycle and run, and how to move it. */
export const useCursor = (): [number | null, (frame: number | null) => void] => [
  useView((view) => view.cursor),
  setCursor,
];

/** Opens or closes a section of the inputs. */
export const setOpen = (section: SectionId, open: boolean): void =>
  viewStore.setState((view) => ({ open: { ...view.open, [section]: open } }));

/** Forgets what belongs to one plan only. */
export const resetView = (): void =>
  viewStore.setState(({ opened }) => ({ cursor: null, cycleFrame: null, opened: opened + 1 }));

/** Where one is on the sheet: the cell, what is selected and open, what is being typed. Not part of the plan. */
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { Fault } from '../../engine/plan/faults.ts';
import type { Spot } from './rows.ts';

/** A cell in edit. */
export interface Typing {
  spot: Spot;
  column: string;
  /** What stands in it to begin with. */
  text: string;
  /** Whether that is what stood there, to be selected. */
  whole: boolean;
  /** Why what was typed was not taken. */
  error: string | null;
}

/** A cell whose new text is in the plan, while the sheet is still worked out. */
export interface Entered {
  spot: Spot;
  column: string;
  text: string;
}

/** What a command did, or why it did not. */
export interface Said {
  text: string;
  /** Named faults, of rows that were pasted. */
  faults: readonly Fault[];
  bad: boolean;
}

export interface Grid {
  at: Spot;
  column: string;
  /** Index of the exposure from which on is selected, to the cell; null if only the cell is. */
  anchor: number | null;
  typing: Typing | null;
  entered: Entered | null;
  /** Actions that were opened or closed by hand. */
  open: ReadonlyMap<number, boolean>;
  /** All that are not in `open`: by whether they are done, or one way. */
  openAll: boolean | null;
  said: Said | null;
}

const FRESH: Grid = {
  at: { kind: 'exposure', index: 0 },
  column: 'text',
  anchor: null,
  typing: null,
  entered: null,
  open: new Map(),
  openAll: null,
  said: null,
};

const gridStore = createStore<Grid>(() => FRESH);

export const useGrid = <T>(pick: (grid: Grid) => T): T => useStore(gridStore, pick);
export const gridNow = (): Grid => gridStore.getState();
export const setGrid = (change: Partial<Grid>): void => gridStore.setState(change);
export const resetGrid = (): void => gridStore.setState(FRESH);

export const say = (text: string, bad = false, faults: readonly Fault[] = []): void =>
  setGrid({ said: { text, faults, bad } });

/** Opens or closes an action. */
export const setActionOpen = (action: number, open: boolean): void =>
  setGrid({ open: new Map(gridNow().open).set(action, open) });

/** First and last exposure that are selected, counted from 1; null where the cell is on another row. */
export function selected({
  at,
  anchor,
}: Pick<Grid, 'at' | 'anchor'>): { first: number; last: number } | null {
  if (at.kind !== 'exposure') return null;
  const from = anchor ?? at.index;
  return { first: Math.min(from, at.index) + 1, last: Math.max(from, at.index) + 1 };
}

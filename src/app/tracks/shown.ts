/** What the charts of the axes show: no part of the plan, not undone, not saved. */
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';

/** Quantities of an axis over the run, in the order of their switch. */
export const QUANTITIES = ['position', 'speed', 'steps'] as const;
export type Quantity = (typeof QUANTITIES)[number];

/** A chart whose scale stands still, so that what is dragged stays under the pointer. */
export interface HeldScale {
  /** The chart's id. */
  chart: string;
  low: number;
  high: number;
}

interface Shown {
  quantity: Quantity;
  /** Name of the axis that was chosen last: its keyframes can be taken hold of. */
  axis: string | null;
  held: HeldScale | null;
}

const shown = createStore<Shown>(() => ({ quantity: 'position', axis: null, held: null }));

export const useShown = <T>(pick: (state: Shown) => T): T => useStore(shown, pick);

export const showQuantity = (quantity: Quantity): void => shown.setState({ quantity });
export const chooseAxis = (axis: string): void => shown.setState({ axis });
export const holdScale = (held: HeldScale | null): void => shown.setState({ held });

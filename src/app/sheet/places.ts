/** Undo leads back to where one was when the change was made, redo to where one was after it. */
import type { Plan } from '../../engine/plan/schema.ts';
import { planDesk } from '../store/plan.ts';
import { type Grid, gridNow, setGrid } from './gridStore.ts';

type Place = Pick<Grid, 'at' | 'column' | 'anchor'>;

/** Where one was on the sheet when a plan was left. */
const places = new WeakMap<Plan, Place>();

/** Follows what is done, undone and done again, until the function that is returned is called. */
export const followUndo = (): (() => void) =>
  planDesk.store.subscribe(({ plan }, { plan: left }) => {
    if (plan === left) return;
    const { at, column, anchor } = gridNow();
    places.set(left, { at, column, anchor });
    const before = places.get(plan);
    // What a command said of the change is no longer so.
    if (before) setGrid({ ...before, said: null });
  });

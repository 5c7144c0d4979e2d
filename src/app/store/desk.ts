/** A plan in work, with its history and its drafts: the plan itself, or one made to hold a piece of the kit. */
import { type TemporalState, temporal } from 'zundo';
import type { StoreApi } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { Fault } from '../../engine/plan/fault.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import { checksNow } from './checker.ts';
import { createDrafts, type Drafts } from './drafts.ts';

/** What a desk holds. */
export interface PlanState {
  plan: Plan;
}

/** Where fields read and write. */
export interface Desk {
  /** The plan, with its history in `store.temporal`. */
  store: StoreApi<PlanState> & { temporal: StoreApi<TemporalState<PlanState>> };
  drafts: Drafts;
  /**
   * Takes a changed plan, if it holds together.
   * @param next - a plan whose fields fit the schema
   * @param name - name of the gesture, e.g. a field's path; without one the change is a step of its own
   * @returns the faults that keep the change out; empty if it was taken
   */
  change: (next: Plan, name?: string | null) => Fault[];
  /** Ends the gesture under way: the next change is a step of its own. */
  endGesture: () => void;
  /** Whether the gesture of that name has changed the plan. */
  inGesture: (name: string) => boolean;
  /** Takes back the gesture of that name and forgets it, as Escape does. */
  cancelGesture: (name: string) => void;
  /** Puts another plan in place of the present one, as one step that can be undone. */
  replace: (plan: Plan) => void;
  /** Undoes one gesture. */
  undo: () => void;
  /** Does again what was undone last. */
  redo: () => void;
}

export function createDesk(first: Plan, drafts = createDrafts()): Desk {
  const store = createStore<PlanState>()(
    temporal((): PlanState => ({ plan: first }), { equality: (a, b) => a.plan === b.plan }),
  );
  const history = () => store.temporal.getState();
  // Name of the gesture under way: changes with the same name are undone together.
  let gesture: string | null = null;
  const endGesture = () => {
    gesture = null;
  };
  const putUnrecorded = (plan: Plan) => {
    history().pause();
    store.setState({ plan });
    history().resume();
  };
  const forget = () => {
    endGesture();
    drafts.clear();
  };
  return {
    store,
    drafts,
    endGesture,
    inGesture: (name) => gesture === name,
    change(next, name = null) {
      const faults = checksNow().crossFaults(next);
      if (faults.length > 0) return faults;
      if (name !== null && gesture === name) putUnrecorded(next);
      else store.setState({ plan: next });
      gesture = name;
      return [];
    },
    cancelGesture(name) {
      if (gesture !== name) return;
      const past = history().pastStates;
      const before = past.at(-1)?.plan;
      endGesture();
      if (!before) return;
      putUnrecorded(before);
      store.temporal.setState({ pastStates: past.slice(0, -1) });
    },
    replace(plan) {
      forget();
      store.setState({ plan });
    },
    undo() {
      forget();
      history().undo();
    },
    redo() {
      forget();
      history().redo();
    },
  };
}

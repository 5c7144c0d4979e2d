/** The plan is the only state there is; it can be undone without limit. Everything else is derived from it. */
import { temporal } from 'zundo';
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import { crossFaults } from '../../engine/plan/check.ts';
import type { Fault } from '../../engine/plan/faults.ts';
import { defaultPlan } from '../../engine/plan/parse.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import type { Schedule } from '../../engine/schedule-types.ts';
import { clearDrafts } from './drafts.ts';
import { getAt, setAt } from './paths.ts';
import { scheduleOf } from './schedules.ts';

interface PlanState {
  plan: Plan;
}

/** The store of the plan, with its history in `planStore.temporal`. */
export const planStore = createStore<PlanState>()(
  temporal((): PlanState => ({ plan: defaultPlan() }), { equality: (a, b) => a.plan === b.plan }),
);

const history = () => planStore.temporal.getState();

/** The plan as it is now. */
export const currentPlan = (): Plan => planStore.getState().plan;

/** Something picked out of the plan; the component is drawn again only if it changed. */
export const usePlan = <T>(pick: (plan: Plan) => T): T => useStore(planStore, (state) => pick(state.plan));

/** The schedule of the present plan. */
export const useSchedule = (): Schedule => useStore(planStore, (state) => scheduleOf(state.plan));

/** Whether there is something to undo and to redo. */
export const useHistory = () => ({
  canUndo: useStore(planStore.temporal, (state) => state.pastStates.length > 0),
  canRedo: useStore(planStore.temporal, (state) => state.futureStates.length > 0),
});

// Name of the gesture under way: changes with the same name are undone together.
let gesture: string | null = null;

/** Ends the gesture under way: the next change is a step of its own. */
export function endGesture(): void {
  gesture = null;
}

/** Whether the gesture of that name has changed the plan. */
export const inGesture = (name: string): boolean => gesture === name;

/**
 * Takes a changed plan, if it holds together.
 * @param next - a plan whose fields fit the schema
 * @param name - name of the gesture, e.g. a field's path; without one the change is a step of its own
 * @returns the faults that keep the change out; empty if it was taken
 */
export function change(next: Plan, name: string | null = null): Fault[] {
  const faults = crossFaults(next);
  if (faults.length > 0) return faults;
  if (name !== null && gesture === name) {
    history().pause();
    planStore.setState({ plan: next });
    history().resume();
  } else {
    planStore.setState({ plan: next });
  }
  gesture = name;
  return [];
}

/** Changes one field, whose value fits the schema; changes in a row of one field are one step. */
export function changeField(path: string, value: unknown): Fault[] {
  const plan = currentPlan();
  return Object.is(getAt(plan, path), value) ? [] : change(setAt(plan, path, value), path);
}

/** Takes back the gesture of that name and forgets it, as Escape does. */
export function cancelGesture(name: string): void {
  if (gesture !== name) return;
  const past = history().pastStates;
  const before = past.at(-1)?.plan;
  endGesture();
  if (!before) return;
  history().pause();
  planStore.setState({ plan: before });
  history().resume();
  planStore.temporal.setState({ pastStates: past.slice(0, -1) });
}

/** Puts another plan in place of the present one, as one step that can be undone. */
export function replacePlan(plan: Plan): void {
  endGesture();
  clearDrafts();
  planStore.setState({ plan });
}

/** Begins with a plan, without history. */
export function startWith(plan: Plan): void {
  replacePlan(plan);
  history().clear();
}

/** Undoes one gesture. */
export function undo(): void {
  endGesture();
  clearDrafts();
  history().undo();
}

/** Does again what was undone last. */
export function redo(): void {
  endGesture();
  clearDrafts();
  history().redo();
}

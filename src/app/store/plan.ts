/** The plan is the only state there is; it can be undone without limit. Everything else is derived from it. */

import defaultPlan from 'virtual:plan/default';
import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import type { Fault } from '../../engine/plan/fault.ts';
import { getAt, setAt } from '../../engine/plan/paths.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import type { Schedule } from '../../engine/schedule-types.ts';
import { createDesk } from './desk.ts';
import { planDrafts } from './drafts.ts';
import { scheduleOf } from './schedules.ts';

/** Where the plan itself lies. */
export const planDesk = createDesk(defaultPlan, planDrafts);

/** The store of the plan, with its history in `planStore.temporal`. */
export const planStore = planDesk.store;

export const { change, endGesture, inGesture, cancelGesture, undo, redo } = planDesk;

/** Puts another plan in place of the present one, as one step that can be undone. */
export const replacePlan = planDesk.replace;

/** Fields within read and write at this desk instead of the plan's. */
export const DeskContext = createContext(planDesk);

/** The desk at which a field reads and writes. */
export const useDesk = () => useContext(DeskContext);

/** The plan as it is now. */
export const currentPlan = (): Plan => planStore.getState().plan;

/** Something picked out of the plan; the component is drawn again only if it changed. */
export const usePlan = <T>(pick: (plan: Plan) => T): T =>
  useStore(useDesk().store, (state) => pick(state.plan));

/** The schedule of the present plan. */
export const useSchedule = (): Schedule => useStore(planStore, (state) => scheduleOf(state.plan));

/** Whether there is something to undo and to redo. */
export const useHistory = () => ({
  canUndo: useStore(planStore.temporal, (state) => state.pastStates.length > 0),
  canRedo: useStore(planStore.temporal, (state) => state.futureStates.length > 0),
});

/** Changes one field, whose value fits the schema; changes in a row of one field are one step. */
export function changeField(path: string, value: unknown, desk = planDesk): Fault[] {
  const { plan } = desk.store.getState();
  return Object.is(getAt(plan, path), value) ? [] : desk.change(setAt(plan, path, value), path);
}

/** Begins with a plan, without history. */
export function startWith(plan: Plan): void {
  replacePlan(plan);
  planStore.temporal.getState().clear();
}

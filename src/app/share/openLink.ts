/** A plan that comes in the fragment of the address. It takes the place of nothing of one's own unasked. */
import defaultPlan from 'virtual:plan/default';
import { createStore } from 'zustand/vanilla';
import { changesBetween } from '../../engine/plan/changes.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import { readLink } from '../../outputs/share-link.ts';
import { DEMOS, demoPlan, openPlan, showFaults } from '../store/opening.ts';
import { currentPlan, planStore } from '../store/plan.ts';
import { showDialog } from '../store/view.ts';

/** The plan that is offered, until it is opened or left. */
export const offerStore = createStore<{ offered: Plan | null }>(() => ({ offered: null }));

const same = (one: Plan, other: Plan): boolean => changesBetween(one, other).length === 0;

/** Whether there is nothing but a plan that came with the page, as it came. */
async function nothingOwn(): Promise<boolean> {
  if (planStore.temporal.getState().pastStates.length > 0) return false;
  const present = currentPlan();
  const demos = await Promise.all(DEMOS.map(demoPlan));
  return [defaultPlan, ...demos].some((plan) => plan !== null && same(plan, present));
}

/** The address carries the plan no longer: a reload keeps what was done since. */
function clearAddress(): void {
  history.replaceState(null, '', location.pathname + location.search);
}

/** Leaves the plan that is offered. */
export function leaveOffered(): void {
  offerStore.setState({ offered: null });
  clearAddress();
}

/** Opens the plan that is offered, as one step that can be undone. */
export function openOffered(): void {
  const { offered } = offerStore.getState();
  if (offered) openPlan(offered);
}

/** Reads the plan in the address, and opens it, offers it, or says what is wrong with it. */
export async function openLink(): Promise<void> {
  const link = location.hash;
  const read = await readLink(link);
  const own = !(await nothingOwn());
  // Another link may have come meanwhile.
  if (location.hash !== link) return;
  if (!read.ok) {
    clearAddress();
    return showFaults('The link', read.faults);
  }
  if (own && !same(read.plan, currentPlan())) {
    offerStore.setState({ offered: read.plan });
    return showDialog('link');
  }
  clearAddress();
  if (!same(read.plan, currentPlan())) openPlan(read.plan);
}

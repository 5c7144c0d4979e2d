/** Looks at a fix without taking it, once the pointer or the focus has stayed on it for a moment. */
import type { Fix } from '../../engine/fixes/types.ts';
import { withChanges } from '../../engine/plan/changes.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import { Room } from '../../engine/room.ts';
import { schedule } from '../../engine/schedule.ts';
import { currentPlan } from '../store/plan.ts';
import { fixStore } from './fixStore.ts';

/** How long, ms. */
export const DWELL_MS = 150;

const room = new Room();
let dwell: ReturnType<typeof setTimeout> | undefined;

function show(plan: Plan, fix: Fix): void {
  if (plan !== currentPlan()) return;
  const changed = withChanges(plan, fix.changes);
  const then = { plan: changed, schedule: schedule(changed, { room, nowMs: Date.now() }) };
  fixStore.setState({ preview: { plan, fix, then } });
}

/** Looks at a fix in a moment. */
export function lookAt(plan: Plan, fix: Fix): void {
  clearTimeout(dwell);
  dwell = setTimeout(() => show(plan, fix), DWELL_MS);
}

/** Looks away from it. */
export function lookAway(): void {
  clearTimeout(dwell);
  if (fixStore.getState().preview) fixStore.setState({ preview: null });
}

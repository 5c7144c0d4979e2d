/** A change at the press of a button: a step of its own. */
import type { Plan } from '../../engine/plan/schema.ts';
import { planDesk } from '../store/plan.ts';

/** Changes the plan as one step; what does not hold together is not taken. */
export function act(edit: (plan: Plan) => Plan, desk = planDesk): void {
  desk.endGesture();
  desk.change(edit(desk.store.getState().plan));
}

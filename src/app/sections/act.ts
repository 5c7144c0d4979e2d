/** A change at the press of a button: a step of its own. */
import type { Plan } from '../../engine/plan/schema.ts';
import { change, currentPlan, endGesture } from '../store/plan.ts';

/** Changes the plan as one step; what does not hold together is not taken. */
export function act(edit: (plan: Plan) => Plan): void {
  endGesture();
  change(edit(currentPlan()));
}

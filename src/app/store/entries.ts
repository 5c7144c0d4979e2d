/**
 * Which kept plan a plan in hand belongs to.
 *
 * Every edit makes a new object of the plan; it belongs where the one before it belonged. An undo that goes back past
 * the opening of a plan brings the object of another, and with it the place where that one is kept.
 */
import type { Plan } from '../../engine/plan/schema.ts';
import { currentPlan, planStore } from './plan.ts';

/** The place of a plan among the kept ones. */
export interface Entry {
  id: string;
  /** The demo it began as: kept only once it is edited. */
  demo: { name: string; plan: Plan } | null;
  /** What the browser keeps of it at present, as far as this tab knows. */
  kept: Plan | null;
  /** Another tab keeps it. */
  elsewhere: boolean;
}

/** An id that no other plan has. */
export const newId = (): string => `${Date.now().toString(36)}-${Math.random().toString(36).slice(2, 12)}`;

const entries = new WeakMap<Plan, Entry>();

/** Gives a plan a place of its own, or the one it is kept at. */
export function enter(plan: Plan, known: Partial<Entry> = {}): Plan {
  entries.set(plan, { id: newId(), demo: null, kept: null, elsewhere: false, ...known });
  return plan;
}

/** The place of a plan; it is given one if it has none. */
export const entryOf = (plan: Plan): Entry => entries.get(plan) ?? (entries.get(enter(plan)) as Entry);

/** The place of the plan on screen. */
export const presentEntry = (): Entry => entryOf(currentPlan());

/** Sees to it that a plan that is opened is not kept in the place of another. */
export const entered = (plan: Plan): Plan => (entries.has(plan) ? plan : enter(plan));

planStore.subscribe(({ plan }, { plan: before }) => {
  if (!entries.has(plan)) entries.set(plan, entryOf(before));
});

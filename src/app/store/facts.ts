/** The line that the list of plans shows of each, so that no schedule has to be worked out for it. */
import type { Plan } from '../../engine/plan/schema.ts';
import type { Schedule } from '../../engine/schedule-types.ts';

/** What is to be known of a plan at a glance; null where it could not be read. */
export interface Facts {
  title: string;
  technique: Plan['technique'] | null;
  frames: number | null;
  clipLengthS: number | null;
  /** ISO date of the first frame. */
  date: string | null;
  place: string | null;
}

/** Facts as they are kept beside their plan. */
export interface Listed extends Facts {
  id: string;
  /** Time of the last change, ms since 1970. */
  changedMs: number;
  /** Name of the tab that keeps the plan; empty if none does. */
  by: string;
}

/** The facts of a plan. */
export const factsOf = (plan: Plan, { totals }: Pick<Schedule, 'totals'>): Facts => ({
  title: plan.title,
  technique: plan.technique,
  frames: totals.frames,
  clipLengthS: totals.clipLengthS,
  date: plan.start.date,
  place: plan.place.name,
});

/** Of what could not be read: that it is there. */
export const NO_FACTS: Facts = {
  title: 'A plan that cannot be read',
  technique: null,
  frames: null,
  clipLengthS: null,
  date: null,
  place: null,
};

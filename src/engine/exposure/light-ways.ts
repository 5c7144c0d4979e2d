/** Ways out by how much light there is to be: through a filter, at night, and how far off it may be. */
import { figure } from '../findings/words.ts';
import { stepsOf } from '../fixes/build.ts';
import type { Way } from '../fixes/types.ts';
import type { Plan } from '../plan/schema.ts';

/** Frames may be farther off. @param stops - that should just suffice */
export const moreTolerance = (plan: Plan, stops?: number): Way[] =>
  stepsOf(plan, {
    kind: 'light-tolerance',
    path: 'exposure.ramp.toleranceStops',
    by: 0.1,
    ...(stops !== undefined && { wanted: stops }),
    // Beyond this nothing can be saved afterwards: common practice, no source.
    until: 3,
    label: (allowed) => `Allow an error of ${figure(allowed)}\u00A0stops`,
    needs: 'frames that have to be corrected afterwards',
  });

/** The night may stay darker. @param stops - more, that should just suffice */
export const darkerNight = (plan: Plan, stops = 0.5): Way[] =>
  plan.light.kind === 'sky'
    ? stepsOf(plan, {
        kind: 'night-darker',
        path: 'exposure.ramp.nightStops',
        by: 0.5,
        wanted: plan.exposure.ramp.nightStops + stops,
        label: (dark) => `Let the night stay darker by ${figure(dark)}\u00A0stops`,
        needs: 'a darker picture at night than was asked for',
      })
    : [];

/** Another filter, in whole stops. @param side - 1 for a stronger one; @param stops - more that should just suffice */
export const otherFilter = (plan: Plan, side: 1 | -1, stops = 1): Way[] =>
  stepsOf(plan, {
    kind: side === 1 ? 'filter-stronger' : 'filter-weaker',
    path: 'exposure.filterStops',
    by: side,
    wanted: plan.exposure.filterStops + side * stops,
    label: (filter) =>
      filter === 0 ? 'Take the ND filter off' : `ND filter of ${figure(filter)}\u00A0stops`,
    needs: (filter) => (filter === 0 ? null : `an ND filter of ${figure(filter)}\u00A0stops`),
  });

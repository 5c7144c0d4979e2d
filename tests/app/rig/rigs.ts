/** Rigs of the tests' own, with the columns of their axes. */
import { drawnRig } from '../../../src/app/rig/standing.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { axisOf, plainPlan, type Some, straight } from '../../reference/plans.ts';

const boom = axisOf({
  name: 'Boom',
  kind: 'boom',
  unit: 'deg',
  unitsPerTurn: 360,
  gearRatio: 60,
  travelMin: -90,
  travelMax: 90,
});
const pan = axisOf({ ...boom, name: 'Pan', kind: 'pan' });
const slide = axisOf({ name: 'Slide', kind: 'slide', travelMin: 0, travelMax: 800 });

/** An arm of 1 m on a pivot 1.2 m up that swings from -30 to 30 degrees, lens level, looking forward. */
export const boomPlan = (change: Some<Plan> = {}, frames = 61): Plan => ({
  ...plainPlan(frames, 20, {
    rig: { pivotHeightMm: 1200, axes: [boom, pan], arm: { lengthMm: 1000, planeTiltDeg: 0, zeroDeg: 0 } },
    move: { mode: 'moveShootMove', tracks: [straight('Boom', -30, 30)] },
    ...change,
  }),
});

/** A slide of 800 mm to the rig's right, its lens 1.2 m up. */
export const slidePlan = (change: Some<Plan> = {}): Plan =>
  plainPlan(41, 20, {
    rig: { pivotHeightMm: 1200, axes: [slide], slide: { bearingDeg: 90, inclineDeg: 0 } },
    move: { mode: 'moveShootMove', tracks: [straight('Slide', 0, 800)] },
    ...change,
  });

/** A plan's rig as it is drawn, and its schedule. */
export function drawnOf(plan: Plan, rearMm: number | null = null) {
  const made = schedule(plan);
  return { made, rig: drawnRig(plan, made.columns.axes, rearMm) };
}

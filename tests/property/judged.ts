/** A plan with the engine's schedule and the slow one. */
import { schedule } from '../../src/engine/schedule.ts';
import type { Schedule } from '../../src/engine/schedule-types.ts';
import type { Case } from './plans.ts';
import { type SlowRun, slowRun } from './slow/run.ts';

export interface Judged extends Case {
  run: Schedule;
  slow: SlowRun;
}

/** Works a plan out twice. The slow way takes the whole steps, and only them, from the engine. */
export function judged({ plan, marked }: Case): Judged {
  const run = schedule(plan);
  const { axes } = run.columns;
  const slow = slowRun(
    plan,
    marked,
    axes.map((axis) => axis.steps),
    plan.rig.axes.map(
      (axis) => (axis.fullStepsPerTurn * axis.microsteps * axis.gearRatio) / axis.unitsPerTurn,
    ),
  );
  return { plan, marked, run, slow };
}

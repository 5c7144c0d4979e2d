/** A plan with the engine's schedule and the slow one. */
import { schedule } from '../../src/engine/schedule.ts';
import type { Schedule } from '../../src/engine/schedule-types.ts';
import type { Case } from './plans.ts';
import { type SlowImage, slowImages } from './slow/image.ts';
import { type SlowRun, slowRun } from './slow/run.ts';

export interface Judged extends Case {
  run: Schedule;
  /** Worked out when it is first asked for. */
  readonly slow: SlowRun;
  readonly images: SlowImage[];
}

/** Works a plan out twice. The slow way takes the whole steps, and only them, from the engine. */
export function judged({ plan, marked }: Case): Judged {
  const run = schedule(plan);
  let slow: SlowRun | undefined;
  let images: SlowImage[] | undefined;
  const made: Judged = {
    plan,
    marked,
    run,
    get slow() {
      slow ??= slowRun(
        plan,
        marked,
        run.columns.axes.map((axis) => axis.steps),
        plan.rig.axes.map(
          (axis) => (axis.fullStepsPerTurn * axis.microsteps * axis.gearRatio) / axis.unitsPerTurn,
        ),
      );
      return slow;
    },
    get images() {
      images ??= slowImages(made);
      return images;
    },
  };
  return made;
}

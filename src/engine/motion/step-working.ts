/** How far an axis goes from one frame to the next: how that came about. */
import { DEFINITION, type Draft, ofFrame, term, type Worked, type Workings } from '../working/make.ts';
import { speedAfter } from './speed-working.ts';
import type { AxisOf } from './working.ts';

const named = (k: number, axis: string, what: string): string => ofFrame(k, `axes.${axis}.${what}`);

/** From one frame's position to another's, in the axis's unit. */
function way({ axis, columns }: AxisOf, title: string, from: number, to: number): Draft {
  const at = (k: number) => (columns.steps[k] as number) / columns.stepsPerUnit;
  return {
    title: `${axis.name}: ${title}`,
    unit: axis.unit,
    expression: 'to - from',
    terms: [
      term('to', `position at frame ${to + 1}`, at(to), axis.unit, named(to, axis.name, 'position')),
      term('from', `position at frame ${from + 1}`, at(from), axis.unit, named(from, axis.name, 'position')),
    ],
    source: DEFINITION,
  };
}

const moveSteps = ({ axis, columns: { steps } }: AxisOf, k: number): Draft => ({
  title: `${axis.name}: microsteps to the next frame`,
  unit: 'steps',
  expression: 'toSteps - fromSteps',
  terms: [
    term('toSteps', `whole microsteps from zero, frame ${k + 2}`, steps[k + 1] as number, 'steps'),
    term('fromSteps', `whole microsteps from zero, frame ${k + 1}`, steps[k] as number, 'steps'),
  ],
  remarks: ['Up its scale is positive.'],
  source: DEFINITION,
});

/** Workings of an axis's way to one frame, and on to the next; names without the axis. @param k - counted from 0 */
export function stepWorkings(worked: Worked, of: AxisOf, k: number): Workings {
  const last = of.columns.steps.length - 1;
  return {
    ...(k > 0 && { by: () => way(of, 'from the frame before', k - 1, k) }),
    ...(k < last && {
      moveSteps: () => moveSteps(of, k),
      moveBy: () => way(of, 'to the next frame', k, k + 1),
      speed: () => speedAfter(worked, of, k),
    }),
  };
}

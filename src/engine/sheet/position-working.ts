/** How the positions of the rig at one exposure came about. */
import { DEFINITION, type Draft, term, type Worked, type Workings } from '../working/make.ts';
import { ofExposure } from '../working/names.ts';
import type { Sheet, SheetAxis } from './types.ts';

/** An exposure of a sheet, counted from 0. */
export interface One {
  plan: Worked['plan'];
  sheet: Sheet;
  i: number;
}

export const at = (column: ArrayLike<number>, i: number): number => column[i] ?? 0;
/** What a figure of an exposure is called. */
export const titled = ({ i }: One, what: string): string => `Exposure ${i + 1}: ${what}`;

function position(of: One, { name, unit, steps, stepsPerUnit }: SheetAxis): Draft {
  return {
    title: titled(of, `${name} to`),
    value: at(steps, of.i) / stepsPerUnit,
    unit,
    expression: 'steps / stepsPerUnit',
    terms: [
      term('steps', 'whole microsteps from zero', at(steps, of.i), 'steps'),
      term('stepsPerUnit', `microsteps a ${unit}`, stepsPerUnit, `steps/${unit}`),
    ],
    remarks: ['Rounded to whole steps at its first frame.'],
    source: DEFINITION,
  };
}

function travel(of: One, axis: SheetAxis): Draft {
  const { name, unit, steps, stepsPerUnit } = axis;
  const name_ = (i: number) => ofExposure(i, `axes.${name}.position`);
  return {
    title: titled(of, `${name}, from the last`),
    unit,
    expression: 'to - from',
    terms: [
      term('to', `${name} to`, at(steps, of.i) / stepsPerUnit, unit, name_(of.i)),
      term('from', 'from', at(steps, of.i - 1) / stepsPerUnit, unit, name_(of.i - 1)),
    ],
    source: DEFINITION,
  };
}

/** Where each axis goes, and by how much from the exposure before in the same shot. */
export function axisWorkings(of: One): Workings {
  const { shot, axes } = of.sheet.columns;
  const sameShot = of.i > 0 && shot[of.i - 1] === shot[of.i];
  return Object.assign(
    {},
    ...axes.map((axis) => ({
      [`axes.${axis.name}.position`]: () => position(of, axis),
      ...(sameShot && { [`axes.${axis.name}.by`]: () => travel(of, axis) }),
    })),
  );
}

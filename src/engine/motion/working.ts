/** How positions and moves came about: whole steps, and one move from rest to rest. */
import type { Axis } from '../plan/schema.ts';
import type { AxisColumns } from '../schedule-types.ts';
import {
  DEFINITION,
  type Draft,
  none,
  ofFrame,
  sameAs,
  term,
  type Worked,
  type Workings,
} from '../working/make.ts';
import type { Term } from '../working/types.ts';
import { travelOf } from './findings.ts';
import { legOf } from './leg-working.ts';
import { marginDrafts } from './margin-working.ts';
import { type Move, moveMaker, moveOf, ringGiven } from './moves.ts';
import { stepWorkings } from './step-working.ts';
import { takeUpOf, turnsBack } from './take-up.ts';
import { goesByAim, sizeInUnits, stallWorkings, stepsPerUnitTerm, trackWorkings } from './track-working.ts';

/** An axis with its columns. */
export interface AxisOf {
  axis: Axis;
  columns: AxisColumns;
}

export const axesOf = ({ plan, made }: Worked): AxisOf[] =>
  plan.rig.axes.flatMap((axis, i) => {
    const columns = made.columns.axes[i];
    return columns ? [{ axis, columns }] : [];
  });

export const ofAxis = (name: string, what: string): string => `axes.${name}.${what}`;

const stepsPerUnit = ({ axis, columns }: AxisOf): Draft => ({
  title: `${axis.name}: microsteps a ${axis.unit}`,
  value: columns.stepsPerUnit,
  unit: `steps/${axis.unit}`,
  expression: 'fullSteps * microsteps * gearRatio / unitsPerTurn',
  terms: [
    term('fullSteps', 'full steps of a turn of the motor', axis.fullStepsPerTurn, 'steps'),
    term('microsteps', 'microsteps of a full step', axis.microsteps, ''),
    term('gearRatio', 'turns of the motor for one of the output', axis.gearRatio, ''),
    term('unitsPerTurn', `${axis.unit} of a turn of the output`, axis.unitsPerTurn, axis.unit),
  ],
  source: DEFINITION,
});

const microstep = (of: AxisOf): Draft => ({
  title: `${of.axis.name}: one microstep`,
  unit: of.axis.unit,
  expression: '1 / stepsPerUnit',
  terms: [stepsPerUnitTerm(of)],
  source: DEFINITION,
});

function position(worked: Worked, of: AxisOf, k: number): Draft {
  const { axis, columns } = of;
  const nearest = goesByAim(worked, of)
    ? 'the direction in which the subject lies, or an end of its travel'
    : 'where the track is at this frame';
  return {
    title: `${axis.name}: position`,
    unit: axis.unit,
    expression: 'steps / stepsPerUnit',
    terms: [
      term('steps', 'steps from the axis’s zero', columns.steps[k] as number, 'steps'),
      stepsPerUnitTerm(of),
    ],
    remarks: [`Whole steps, the nearest to ${nearest}.`],
    source: DEFINITION,
  };
}

function swing(of: AxisOf): Draft {
  const { axis, columns } = of;
  return {
    title: `${axis.name}: from end to end`,
    unit: axis.unit,
    expression: '(highestSteps - lowestSteps) / stepsPerUnit',
    terms: [
      term('highestSteps', 'highest position', columns.highestSteps, 'steps'),
      term('lowestSteps', 'lowest position', columns.lowestSteps, 'steps'),
      stepsPerUnitTerm(of),
    ],
    source: DEFINITION,
  };
}

/** Whether the move after an index, counted from 0, has lost motion to take up. */
export function turnedAt(axis: Axis, steps: Int32Array, k: number): boolean {
  const { side } = takeUpOf(axis);
  const directionAt = (i: number) => Math.sign((steps[i + 1] as number) - (steps[i] as number));
  let before = k - 1;
  while (before >= 0 && directionAt(before) === 0) before -= 1;
  const facing = side !== 0 ? side : before < 0 ? 0 : directionAt(before);
  return directionAt(k) !== 0 && turnsBack(directionAt(k), facing);
}

/** The move of an axis after a frame; null if it does not move then, or moves while the shutter is open. */
export function moveAt({ plan }: Worked, { axis, columns }: AxisOf, k: number): Move | null {
  const { steps, stepsPerUnit: perUnit } = columns;
  const next = steps[k + 1];
  if (plan.move.mode !== 'moveShootMove' || next === undefined || next === steps[k]) return null;
  const maker = moveMaker(plan, axis, ringGiven(plan));
  const distance = Math.abs(next - (steps[k] as number)) / perUnit;
  return moveOf(maker, distance, turnedAt(axis, steps, k), plan.move.quiet && maker.ring !== null);
}

const once = (terms: readonly Term[]): Term[] =>
  terms.filter(({ symbol }, i) => terms.findIndex((other) => other.symbol === symbol) === i);

/** Duration of one axis's move after a frame. */
function axisMove(of: Worked, own: AxisOf, k: number): Draft {
  const { axis, columns } = own;
  const title = `${axis.name}: move`;
  const moveS = columns.moveS[k] as number;
  if (of.plan.move.mode === 'continuous' && moveS > 0)
    return {
      ...sameAs(title, 'interval', moveS, 's', ofFrame(k, 'intervalS')),
      value: moveS,
      remarks: ['It moves all the time.'],
    };
  const move = moveAt(of, own, k);
  if (move === null) return none(title, 's', `${axis.name} does not move after this frame.`);
  const legs = move.shapes.map((shape, i) => legOf(of, axis, shape, i));
  const { overrun } = takeUpOf(axis);
  const lost =
    move.shapes.length > 1
      ? [
          `It goes past its end by ${overrun} ${axis.unit} and its backlash, and comes back, to arrive from its side.`,
        ]
      : turnedAt(axis, columns.steps, k) && takeUpOf(axis).beyond > 0
        ? [`It turns back: the backlash of ${axis.backlash} ${axis.unit} is in its distance.`]
        : [];
  return {
    title,
    value: moveS,
    unit: 's',
    expression: legs.map(({ expression }) => expression).join(' + '),
    terms: once(legs.flatMap(({ terms }) => terms)),
    remarks: [...new Set(legs.map(({ remark }) => remark)), ...lost],
    source: legs[0]?.source ?? DEFINITION,
  };
}

/** The longest of the moves of all axes after a frame, or their sum. */
function move(of: Worked, k: number): Draft {
  const { plan, made } = of;
  const moving = axesOf(of).filter(({ columns }) => (columns.moveS[k] as number) > 0);
  if (moving.length === 0) return none('Move', 's', 'Nothing moves after this frame.');
  const inTurn = plan.move.mode === 'moveShootMove' && plan.move.order === 'inTurn';
  const symbols = moving.map((_, i) => `move${i + 1}S`);
  const one = moving.length === 1;
  return {
    title: 'Move',
    value: made.columns.moveS[k] as number,
    unit: 's',
    expression: one ? 'move1S' : inTurn ? symbols.join(' + ') : `max(${symbols.join(', ')})`,
    terms: moving.map(({ axis, columns }, i) =>
      term(
        `move${i + 1}S`,
        one ? `move of ${axis.name}` : axis.name,
        columns.moveS[k] as number,
        's',
        ofFrame(k, ofAxis(axis.name, 'moveS')),
      ),
    ),
    remarks: one
      ? []
      : [inTurn ? 'The axes move one after another.' : 'The axes move together: the longest counts.'],
    source: DEFINITION,
  };
}

/** Frame, counted from 0, before the largest move. */
const largestAt = ({ steps, largestMoveSteps }: AxisColumns): number =>
  steps.findIndex((step, k) => Math.abs((steps[k + 1] ?? step) - step) === largestMoveSteps);

function longestMove(of: Worked, own: AxisOf): Draft {
  const k = largestAt(own.columns);
  const draft = axisMove(of, own, k);
  return { ...draft, title: `${own.axis.name}: the largest move`, frame: k + 1 };
}

const ofTheAxis = (name: string, workings: Workings): Workings =>
  Object.fromEntries(Object.entries(workings).map(([what, draft]) => [ofAxis(name, what), draft]));

/** Workings of the moves after one frame. */
export const frameMotionWorkings = (of: Worked, k: number): Workings => ({
  moveS: () => move(of, k),
  ...Object.assign(
    {},
    ...axesOf(of).map((own) => ({
      [ofAxis(own.axis.name, 'position')]: () => position(of, own, k),
      [ofAxis(own.axis.name, 'moveS')]: () => axisMove(of, own, k),
      ...ofTheAxis(own.axis.name, stepWorkings(of, own, k)),
    })),
  ),
});

/** Workings of the axes over the run. */
export const motionWorkings = (of: Worked): Workings =>
  Object.assign(
    {},
    ...axesOf(of).map((own) => ({
      [ofAxis(own.axis.name, 'stepsPerUnit')]: () => stepsPerUnit(own),
      [ofAxis(own.axis.name, 'microstep')]: () => microstep(own),
      [ofAxis(own.axis.name, 'swing')]: () => swing(own),
      [ofAxis(own.axis.name, 'largestMove')]: () => sizeInUnits(own, 'largest', own.columns.largestMoveSteps),
      ...ofTheAxis(own.axis.name, stallWorkings(of, own)),
      ...(own.columns.largestMoveSteps > 0 && {
        [ofAxis(own.axis.name, 'largestMoveS')]: () => longestMove(of, own),
        ...ofTheAxis(own.axis.name, trackWorkings(own)),
      }),
      ...marginDrafts(of, own, () => travelOf(of, own.axis, own.columns)),
    })),
  );

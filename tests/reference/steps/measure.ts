/** Stepper axes: microsteps for a unit, and whole steps along a track. */
import type { Axis } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { axisOf, plainPlan, type Some, straight } from '../plans.ts';
import { type NumberCase, numberRow, type Row, relative } from '../rows.ts';

const MICRO =
  'STP-01: machinedesign.com “Microstepping myths and realities” (51 200 a turn, V1; the rest computed)';
const PER_UNIT = 'STP-09: steps a unit (computed)';
const WHOLE = 'whole steps of a straight track (computed)';

const run = (axis: Some<Axis>, to: number, frames: number) => {
  const full = axisOf({ name: 'A', travelMin: -1e5, travelMax: 1e5, maxSpeed: 1e4, maxAccel: 1e4, ...axis });
  const plan = plainPlan(frames, 1000, {
    rig: { axes: [full] },
    move: { mode: 'moveShootMove', settleS: 0, tracks: [straight('A', 0, to)] },
  });
  const columns = schedule(plan).columns.axes[0];
  if (!columns) throw new RangeError('no axis in the schedule');
  return columns;
};

/** One output turn of a 1.8 degree motor: steps, and degrees a step. */
const TURNS: readonly (readonly [number, number, number])[] = [
  // 360/1.8 = 200 full steps; x 16 = 3200, 360/3200 = 0.1125 deg.
  [1, 200, 1.8],
  [16, 3200, 0.1125],
  [256, 51_200, 0.00703125],
];

/** Axis, steps for one unit. */
const UNITS: readonly (readonly [string, Some<Axis>, number])[] = [
  // Belt with 2 mm teeth on a pulley of 20: 40 mm a turn, 3200/40.
  ['GT2 20T, 1/16', { microsteps: 16, unitsPerTurn: 40 }, 80],
  // 3200/8.
  ['lead of 8 mm, 1/16', { microsteps: 16, unitsPerTurn: 8 }, 400],
  // 3200 x 60/360.
  ['worm 60:1, 1/16', { unit: 'deg', microsteps: 16, gearRatio: 60, unitsPerTurn: 360 }, 533.333333333333],
];

function* wholeSteps(): Generator<NumberCase> {
  for (const [name, axis, perUnit] of UNITS) {
    const { steps } = run(axis, 10, 31);
    for (const [k, got] of steps.entries()) {
      yield { at: `${name}, frame ${k + 1}`, got, want: Math.round((10 * k * perUnit) / 30) };
    }
  }
}

export function measureSteps(): Row[] {
  return [
    numberRow(
      {
        quantity: 'microsteps of one output turn',
        reference: MICRO,
        regime: '1, 16 and 256 microsteps of 1.8°',
        bound: 0,
        unit: 'steps',
      },
      TURNS.map(([microsteps, want]) => ({
        at: `${microsteps} microsteps`,
        got: run({ unit: 'deg', microsteps, unitsPerTurn: 360 }, 360, 2).steps[1] ?? Number.NaN,
        want,
      })),
    ),
    numberRow(
      {
        quantity: 'degrees of one microstep',
        reference: MICRO,
        regime: '1, 16 and 256 microsteps of 1.8°',
        bound: 1e-12,
        unit: 'relative',
      },
      TURNS.map(([microsteps, , want]) => ({
        at: `${microsteps} microsteps`,
        got: 1 / run({ unit: 'deg', microsteps, unitsPerTurn: 360 }, 360, 2).stepsPerUnit,
        want,
      })),
      relative,
    ),
    numberRow(
      {
        quantity: 'microsteps for one unit',
        reference: PER_UNIT,
        regime: 'belt, screw, worm',
        bound: 1e-12,
        unit: 'relative',
      },
      UNITS.map(([at, axis, want]) => ({ at, got: run(axis, 10, 2).stepsPerUnit, want })),
      relative,
    ),
    numberRow(
      {
        quantity: 'position of a straight track',
        reference: WHOLE,
        regime: '10 units in 30 moves',
        bound: 0,
        unit: 'steps',
      },
      wholeSteps(),
    ),
  ];
}

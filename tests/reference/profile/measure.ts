/** Trapezoidal moves against the textbook forms, worked values and a simulation that only knows the limits. */
import {
  fixedTimeAccel,
  fixedTimeSpeed,
  moveDurationS,
  movePeakSpeed,
} from '../../../src/engine/motion/profile.ts';
import { type NumberCase, numberRow, type Row, relative } from '../rows.ts';
import { measureJerk } from './jerk.ts';
import { fastestBySteps, travelled } from './simulate.ts';

const FORM = 'MOT-05: T = d/v + v/a or 2 sqrt(d/a), as in dinies/RoboticsOne B_C_B.m (V2)';
const SLIP = 'MOT-06: that file’s sqrt(d/(2a)) for the triangle is wrong; right is 2 sqrt(d/a)';
const TRIANGLE = 'MOT-07: triangle with peak sqrt(2abD/(a+b)), tech-champion.com (V2 formula), at a = b';
const SIMULATION = 'stepping simulation that knows only the limits (computed)';
const INTEGRAL = 'velocity integrated piece by piece (computed)';

/** Distance, top speed, acceleration. */
type Move = readonly [number, number, number];

/** Worked values: seconds and peak speed. */
const WORKED: readonly (readonly [...Move, number, number])[] = [
  // d > v^2/a = 0.32: 1/0.4 + 0.4/0.5 = 2.5 + 0.8.
  [1, 0.4, 0.5, 3.3, 0.4],
  // d > v^2/a = 50: 100/10 + 10/2.
  [100, 10, 2, 15, 10],
  // d < v^2/a = 50: 2 sqrt(10/2) = 4.47214, peak sqrt(10 x 2) = 4.47214.
  [10, 10, 2, 4.47214, 4.47214],
];

function moves(): Move[] {
  const list: Move[] = [];
  for (const d of [0.001, 0.05, 0.5, 1, 7, 40, 300, 5000]) {
    for (const v of [0.02, 1, 20, 400]) {
      for (const a of [0.05, 2, 40, 3000]) list.push([d, v, a]);
    }
  }
  return list;
}

/** Moves whose triangle just reaches the top speed: d = v^2/a. */
const EDGES: readonly Move[] = [
  [0.32, 0.4, 0.5],
  [50, 10, 2],
  [10, 20, 40],
  [0.1 ** 2 / 0.3, 0.1, 0.3],
];

function* durations(cases: readonly Move[], want: (move: Move) => number): Generator<NumberCase> {
  for (const move of cases)
    yield { at: `d, v, a = ${move.join(', ')}`, got: moveDurationS(...move), want: want(move) };
}

/** What the peak speed and the duration make of the distance, integrated from the velocity. */
function* distances(): Generator<NumberCase> {
  for (const [d, v, a] of [...moves(), ...EDGES]) {
    const got = travelled(moveDurationS(d, v, a), movePeakSpeed(d, v, a), a);
    yield { at: `d, v, a = ${d}, ${v}, ${a}`, got, want: d };
  }
}

function* fixedTimes(): Generator<NumberCase> {
  for (const [d, v, a] of moves()) {
    for (const longer of [1.0001, 1.2, 3, 50]) {
      const durationS = moveDurationS(d, v, a) * longer;
      const speed = fixedTimeSpeed(d, a, durationS);
      yield { at: `d, a, T = ${d}, ${a}, ${durationS}`, got: travelled(durationS, speed, a), want: d };
    }
  }
}

function* leastAccels(): Generator<NumberCase> {
  for (const [d, , a] of moves()) {
    const durationS = 2 * Math.sqrt(d / a);
    yield { at: `d, T = ${d}, ${durationS}`, got: fixedTimeAccel(d, durationS), want: a };
  }
}

export function measureProfile(): Row[] {
  return [
    numberRow(
      {
        quantity: 'duration of a move',
        reference: FORM,
        regime: 'worked values, printed to 6 digits',
        bound: 5e-6,
        unit: 's',
      },
      WORKED.map(([d, v, a, want]) => ({
        at: `d, v, a = ${d}, ${v}, ${a}`,
        got: moveDurationS(d, v, a),
        want,
      })),
    ),
    numberRow(
      {
        quantity: 'peak speed of a move',
        reference: FORM,
        regime: 'worked values, printed to 6 digits',
        bound: 5e-6,
        unit: '1/s',
      },
      WORKED.map(([d, v, a, , want]) => ({
        at: `d, v, a = ${d}, ${v}, ${a}`,
        got: movePeakSpeed(d, v, a),
        want,
      })),
    ),
    numberRow(
      {
        quantity: 'duration of a move',
        reference: FORM,
        regime: 'at the edge d = v^2/a: both forms give 2v/a',
        bound: 1e-12,
        unit: 'relative',
      },
      durations(EDGES, ([, v, a]) => (2 * v) / a),
      relative,
    ),
    numberRow(
      {
        quantity: 'duration of a move',
        reference: FORM,
        regime: 'a hair to each side of that edge',
        bound: 1e-8,
        unit: 'relative',
      },
      durations(
        EDGES.flatMap(([d, v, a]): Move[] => [
          [d * (1 - 1e-9), v, a],
          [d * (1 + 1e-9), v, a],
        ]),
        ([, v, a]) => (2 * v) / a,
      ),
      relative,
    ),
    numberRow(
      {
        quantity: 'duration of a move',
        reference: SLIP,
        regime: 'triangle d 10, v 10, a 2',
        bound: 1e-12,
        unit: 'relative',
      },
      durations([[10, 10, 2]], () => 2 * Math.sqrt(5)),
      relative,
    ),
    numberRow(
      {
        quantity: 'peak and duration of a triangle',
        reference: TRIANGLE,
        regime: 'D 100, a = b = 2 and 4',
        bound: 1e-12,
        unit: 'relative',
      },
      [2, 4].flatMap((a) => {
        const peak = Math.sqrt((2 * a * a * 100) / (a + a));
        return [
          { at: `peak, a = ${a}`, got: movePeakSpeed(100, 1e6, a), want: peak },
          { at: `duration, a = ${a}`, got: moveDurationS(100, 1e6, a), want: peak / a + peak / a },
        ];
      }),
      relative,
    ),
    numberRow(
      { quantity: 'duration of no move', reference: FORM, regime: 'd = 0', bound: 0, unit: 's' },
      durations(
        [
          [0, 20, 40],
          [0, 0.001, 1000],
        ],
        () => 0,
      ),
    ),
    numberRow(
      {
        quantity: 'duration of a move',
        reference: SIMULATION,
        regime: '128 moves from 0.001 to 5000 units',
        bound: 2e-3,
        unit: 'relative',
      },
      durations(moves(), ([d, v, a]) => fastestBySteps(d, v, a)),
      relative,
    ),
    numberRow(
      {
        quantity: 'distance that duration and peak speed make',
        reference: INTEGRAL,
        regime: '132 moves',
        bound: 1e-9,
        unit: 'relative',
      },
      distances(),
      relative,
    ),
    numberRow(
      {
        quantity: 'distance that the speed of a move of fixed time makes',
        reference: INTEGRAL,
        regime: '128 moves, 0.01 % to 50 times longer than needed',
        bound: 1e-9,
        unit: 'relative',
      },
      fixedTimes(),
      relative,
    ),
    numberRow(
      {
        quantity: 'least acceleration of a move of fixed time',
        reference: FORM,
        regime: 'triangle turned round, 128 moves',
        bound: 1e-12,
        unit: 'relative',
      },
      leastAccels(),
      relative,
    ),
    ...measureJerk(),
  ];
}

/** Moves of limited jerk, moves at a lower speed and moves of fixed time. */
import {
  fastestShape,
  fixedTimeAccel,
  fixedTimeJerk,
  fixedTimeShape,
  type MoveLimits,
  type MoveShape,
  moveDurationS,
  shapeAtSpeed,
} from '../../../src/engine/motion/profile.ts';
import { type NumberCase, numberRow, type Row, relative } from '../rows.ts';
import { dice } from '../sky/ephemeris.ts';
import { shortestFound, travelledWithJerk } from './integrate-jerk.ts';

const JERK_ONLY = 'MOT-11: T = 4 (d/(2j))^(1/3) from rest to rest (derived)';
const BOOK =
  'MOT-08, MOT-09: Biagiotti & Melchiorri ex. 3.9 and 3.10, the phase that ends at rest (from memory)';
const INTEGRAL = 'jerk integrated step by step (computed)';
const SEARCH = 'search over all symmetric profiles within the limits (computed)';

interface Move {
  at: string;
  distance: number;
  limits: MoveLimits;
}

/** Random moves that meet every limit or none, every fifth without a jerk limit. */
function moves(count: number, seed: number): Move[] {
  const throwDie = dice(seed);
  return Array.from({ length: count }, (_, n) => {
    const distance = 10 ** (5 * throwDie() - 2);
    const maxSpeed = 10 ** (3 * throwDie() - 1);
    const maxAccel = 10 ** (3 * throwDie() - 1);
    const maxJerk = n % 5 === 0 ? Number.POSITIVE_INFINITY : maxAccel * 10 ** (3 * throwDie() - 1);
    const at = `d, v, a, j = ${distance}, ${maxSpeed}, ${maxAccel}, ${maxJerk}`;
    return { at, distance, limits: { maxSpeed, maxAccel, maxJerk } };
  });
}

const MOVES = moves(500, 11);

/** Moves that just reach the acceleration, d = 2 a^3/j^2, and that just reach the speed too. */
const EDGES: readonly Move[] = [1 - 1e-12, 1, 1 + 1e-12].flatMap((hair) =>
  [2, 40].flatMap((maxAccel) => {
    const maxJerk = 100;
    const maxSpeed = maxAccel ** 2 / maxJerk;
    const distance = ((2 * maxAccel ** 3) / maxJerk ** 2) * hair;
    const at = `edge at a = ${maxAccel}, times ${hair}`;
    return [
      { at, distance, limits: { maxSpeed: 1e5, maxAccel, maxJerk } },
      { at: `${at}, v too`, distance, limits: { maxSpeed, maxAccel, maxJerk } },
    ];
  }),
);

interface Shaped {
  at: string;
  shape: MoveShape;
  distance: number;
  limits: MoveLimits;
}

const fastest = ({ at, distance, limits }: Move): Shaped => ({
  at,
  distance,
  limits,
  shape: fastestShape(distance, limits),
});

const slower = ({ at, distance, limits }: Move): Shaped[] =>
  [0.999, 0.5, 0.03].map((share) => {
    const peakSpeed = fastestShape(distance, limits).peakSpeed * share;
    return { at: `${at} at ${share}`, distance, limits, shape: shapeAtSpeed(distance, peakSpeed, limits) };
  });

/** Without a limit of speed: what a fixed time is about. */
const quickestS = ({ distance, limits: { maxAccel, maxJerk } }: Move): number =>
  moveDurationS(distance, Number.MAX_VALUE, maxAccel, maxJerk);

const timed = (move: Move, longer: readonly number[]): Shaped[] =>
  longer.map((share) => ({
    ...move,
    at: `${move.at}, ${share} of the time`,
    shape: fixedTimeShape(move.distance, quickestS(move) * share, move.limits),
  }));

const ALL: readonly Shaped[] = [
  ...MOVES.map(fastest),
  ...EDGES.map(fastest),
  ...MOVES.flatMap(slower),
  ...MOVES.flatMap((move) => timed(move, [1.0001, 1.3, 5, 400])),
];

/** What integrating a shape gives, beside what it says. */
function* integrated(
  cases: readonly Shaped[],
  compare: (made: ReturnType<typeof travelledWithJerk>, given: Shaped) => [number, number],
): Generator<NumberCase> {
  for (const given of cases) {
    const [got, want] = compare(travelledWithJerk(given.shape), given);
    yield { at: given.at, got, want };
  }
}

function* excesses(cases: readonly Shaped[], withSpeed: boolean): Generator<NumberCase> {
  for (const { at, shape, limits } of cases) {
    const { topSpeed, topAccel, topJerk } = travelledWithJerk(shape);
    const over = Math.max(
      withSpeed ? topSpeed / limits.maxSpeed : 0,
      topAccel / limits.maxAccel,
      topJerk / limits.maxJerk,
    );
    yield { at, got: Math.max(1, over), want: 1 };
  }
}

/** Moves that the limits cannot do in the time: they exceed them, and by no more than they must. */
const RUSHED: readonly Shaped[] = MOVES.flatMap((move) => timed(move, [0.9999, 0.8, 0.3]));

function* leastLimits(): Generator<NumberCase> {
  for (const { at, shape, distance, limits } of RUSHED) {
    const accel = fixedTimeAccel(distance, shape.durationS, limits.maxJerk);
    const jerk = Math.max(limits.maxJerk, fixedTimeJerk(distance, shape.durationS));
    // With just that much, the fastest move takes just that long.
    yield {
      at,
      got: moveDurationS(distance, Number.MAX_VALUE, accel * (1 + 1e-12), jerk),
      want: shape.durationS,
    };
  }
}

// The integration adds up a rounding a step, and a slow move cruises for long with it.
const STEPS_ROUND = 1e-8;

const row = (
  quantity: string,
  reference: string,
  regime: string,
  bound: number,
  cases: Iterable<NumberCase>,
) => numberRow({ quantity, reference, regime, bound, unit: 'relative' }, cases, relative);

/** A quantity that has to come back to nothing, as a share of its largest. */
const backToRest = (end: number, top: number): [number, number] => [1 + end / top, 1];

export function measureJerk(): Row[] {
  const bookLimits = { maxSpeed: 1e5, maxAccel: 10, maxJerk: 30 };
  const searched = MOVES.filter(({ limits }) => limits.maxJerk < Number.POSITIVE_INFINITY).slice(0, 120);
  return [
    numberRow(
      {
        quantity: 'duration of a move of limited jerk',
        reference: JERK_ONLY,
        regime: 'd 0.001, j 1, printed to 6 digits',
        bound: 5e-7,
        unit: 's',
      },
      [{ at: 'd 0.001, j 1', got: moveDurationS(0.001, 1, 1, 1), want: 0.31748 }],
    ),
    numberRow(
      {
        quantity: 'time from peak speed to rest',
        reference: BOOK,
        regime: 'a 10, j 30, from 5 and 8.41357',
        bound: 5e-5,
        unit: 's',
      },
      [
        [5, 0.8333],
        [8.41357, 1.17469],
      ].map(([speed = 0, want = 0]) => ({
        at: `from ${speed}`,
        got: shapeAtSpeed(100, speed, bookLimits).accelS,
        want,
      })),
    ),
    row(
      'distance that a move makes',
      INTEGRAL,
      `${ALL.length} moves, fastest, slower, of fixed time`,
      STEPS_ROUND,
      integrated(ALL, (made, { distance }) => [made.distance, distance]),
    ),
    row(
      'time that a move takes',
      INTEGRAL,
      'the same moves',
      1e-9,
      integrated(ALL, (made, { shape }) => [made.durationS, shape.durationS]),
    ),
    row(
      'peak speed of a move',
      INTEGRAL,
      'the same moves',
      STEPS_ROUND,
      integrated(ALL, (made, { shape }) => [made.topSpeed, shape.peakSpeed]),
    ),
    row(
      'peak acceleration of a move',
      INTEGRAL,
      'the same moves',
      1e-9,
      integrated(ALL, (made, { shape }) => [made.topAccel, shape.accel]),
    ),
    row(
      'speed at the end of a move, as a share of its peak',
      INTEGRAL,
      'the same moves',
      STEPS_ROUND,
      integrated(ALL, ({ endSpeed, topSpeed }) => backToRest(endSpeed, topSpeed)),
    ),
    row(
      'acceleration at the end of a move, as a share of its peak',
      INTEGRAL,
      'the same moves',
      1e-9,
      integrated(ALL, ({ endAccel, topAccel }) => backToRest(endAccel, topAccel)),
    ),
    row(
      'largest share of a limit that a move uses, where above 1',
      INTEGRAL,
      'fastest and slower moves: speed, acceleration, jerk',
      1e-9,
      excesses([...MOVES.map(fastest), ...EDGES.map(fastest), ...MOVES.flatMap(slower)], true),
    ),
    row(
      'largest share of a limit that a move uses, where above 1',
      INTEGRAL,
      'moves of fixed time that the limits suffice for: acceleration, jerk',
      1e-9,
      excesses(
        MOVES.flatMap((move) => timed(move, [1.0001, 1.3, 5, 400])),
        false,
      ),
    ),
    row(
      'distance that a move of fixed time makes',
      INTEGRAL,
      `${RUSHED.length} moves that the limits do not suffice for`,
      1e-9,
      integrated(RUSHED, (made, { distance }) => [made.distance, distance]),
    ),
    row(
      'time of the fastest move with the least acceleration and jerk for a time',
      INTEGRAL,
      'the same moves',
      1e-6,
      leastLimits(),
    ),
    row(
      'share by which a move is longer than the shortest found',
      SEARCH,
      `${searched.length} moves of limited jerk`,
      1e-9,
      searched.map(({ at, distance, limits: { maxSpeed, maxAccel, maxJerk } }) => {
        const own = moveDurationS(distance, maxSpeed, maxAccel, maxJerk);
        return { at, got: Math.max(1, own / shortestFound(distance, maxSpeed, maxAccel, maxJerk)), want: 1 };
      }),
    ),
    row(
      'duration of a move of limited jerk',
      SEARCH,
      'the same moves',
      1e-3,
      searched.map(({ at, distance, limits: { maxSpeed, maxAccel, maxJerk } }) => ({
        at,
        got: moveDurationS(distance, maxSpeed, maxAccel, maxJerk),
        want: shortestFound(distance, maxSpeed, maxAccel, maxJerk),
      })),
    ),
  ];
}

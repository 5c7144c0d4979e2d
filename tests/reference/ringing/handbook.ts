/** Handbook values: sag, decrement, settle, pulses and shapers. */
import {
  dampingFromSwings,
  frequencyFromSag,
  frequencyFromSwings,
} from '../../../src/engine/ringing/measure.ts';
import { quietSpeed, type Ringing, ringAfter, settleS } from '../../../src/engine/ringing/ring.ts';
import { errorOf, type NumberCase, numberRow, type Row, relative, textRow } from '../rows.ts';
import { moveAt, shapeOf } from './moves.ts';

/** One cycle a second. */
const hertz = (frequencyHz: number, damping = 0): Ringing => ({ omega: 2 * Math.PI * frequencyHz, damping });

const UNIT = hertz(1);

/** Ring in deflections under the acceleration, of a move by its times in periods. */
const ringOf = (accelS: number, cruiseS: number, jerkS = 0, ringing = UNIT): number =>
  ringAfter(shapeOf(ringing.omega ** 2, accelS, cruiseS, jerkS), ringing);

/**
 * Ring of the first pulse of a move alone: braking begins a sixth of a period late, when speeding up and braking ring at
 * 60 degrees to each other and leave together just what one of them does.
 */
const pulseRing = (lengthS: number, jerkS = 0): number => ringOf(lengthS, 7 + 1 / 6 - lengthS, jerkS);

function sagRows(): Row[] {
  const row = (reference: string, regime: string, bound: number, cases: NumberCase[]) =>
    numberRow(
      { quantity: 'frequency from sag', reference, regime, bound, unit: 'relative' },
      cases,
      relative,
    );
  const printed = [
    [0.1, 49.84],
    [0.25, 31.522],
    [0.5, 22.289],
    [1, 15.761],
    [2, 11.145],
    [5, 7.0485],
    [10, 4.984],
    [25, 3.1522],
  ] as const;
  return [
    row(
      'VIB-01: vibrationmounts.com V100, T1-35 (V1): 3.13/sqrt(in), 5/sqrt(cm), 188/sqrt(in) a minute',
      '1 in and 1 cm, printed to 2 and 3 digits',
      4e-3,
      [
        { at: '1 in', got: frequencyFromSag(25.4), want: 3.13 },
        { at: '1 cm', got: frequencyFromSag(10), want: 5 },
        { at: '1 in, a minute', got: 60 * frequencyFromSag(25.4), want: 188 },
      ],
    ),
    row(
      'VIB-02: 25 mm at 3.15 Hz, reuven.tools, citing ASHRAE (V2); others computed',
      '0.1 to 25 mm, to 4 or 5 digits',
      5e-5,
      printed.map(([sagMm, want]) => ({ at: `${sagMm} mm`, got: frequencyFromSag(sagMm), want })),
    ),
    row('VIB-03: a mass at a point 0.4985/sqrt(m), waycalculator pages (V2)', '1 m', 2e-4, [
      { at: '1000 mm', got: frequencyFromSag(1000), want: 0.4985 },
    ]),
  ];
}

function decrementRow(): Row {
  const cases = [
    ['VIB-04: 120 to 96 in one', dampingFromSwings(120, 96, 1), 0.035492],
    ['VIB-05: decrement 0.60113 of c 40, cc 420', dampingFromSwings(Math.exp(0.60113), 1, 1), 0.095238],
    ['VIB-06: 3 to 2 in one', dampingFromSwings(3, 2, 1), 0.064398],
    ['VIB-07: to a quarter in half a one', dampingFromSwings(4, 1, 0.5), 0.40371],
    ['trap: 1st to 100th are 99', dampingFromSwings(100, 100 * Math.exp(-0.22314 * 99), 99), 0.035492],
  ] as const;
  return numberRow(
    {
      quantity: 'damping ratio from counted swings',
      reference:
        'VIB-04 pont.ist, talkjarvis 172263 (V2; prints 0.0357, rounded); VIB-05 curioustab 47694 (V2); VIB-06 answersarena pa663 (V2, answer computed); VIB-07 Rao ex. 2.11 (from memory)',
      regime: 'worked values, to 5 digits',
      bound: 5e-6,
      unit: 'share',
    },
    cases.map(([at, got, want]) => ({ at, got, want })),
  );
}

function settleRow(): Row {
  // The step response's envelope begins at 1/sqrt(1 - zeta^2), which one of the two textbook forms leaves out.
  const stepHeight = 1 / Math.sqrt(1 - 0.25);
  const ten = { omega: 10, damping: 0.5 };
  const hundred = hertz(100, 0.5);
  const cases = [
    ['VIB-08: wn 10, zeta 0.5, 2 %', settleS(1, 0.02, ten), 0.7824],
    ['VIB-08: the same with its envelope', settleS(stepHeight, 0.02, ten), 0.8112],
    ['VIB-08: 100 Hz, zeta 0.5, 2 %', settleS(stepHeight, 0.02, hundred), 0.01291],
    ['VIB-08: 100 Hz, zeta 0.5, 1 %', settleS(stepHeight, 0.01, hundred), 0.01512],
    ['VIB-09: 5 Hz, zeta 0.02, 2 px to 0.1 px', settleS(2, 0.1, hertz(5, 0.02)), 4.7679],
    ['VIB-09: 8 Hz, zeta 0.03, 20 to 1', settleS(20, 1, hertz(8, 0.03)), 1.9866],
    ['never negative', settleS(0.3, 0.5, hertz(5, 0.02)), 0],
  ] as const;
  return numberRow(
    {
      quantity: 'settle',
      reference: 'VIB-08 tickerdossier, 3roam, theprimecalculator (V2); VIB-09 (computed)',
      regime: 'worked values, to 4 or 5 digits',
      bound: 6e-5,
      unit: 's',
    },
    cases.map(([at, got, want]) => ({ at, got, want })),
  );
}

function pulseRows(): Row[] {
  const thomson = [
    [0.25, Math.SQRT2],
    [0.5, 2],
    [0.75, Math.SQRT2],
    [1, 0],
    [1.5, 2],
    [2, 0],
  ] as const;
  const head = { bound: 1e-9, unit: 'deflections under the acceleration' };
  return [
    numberRow(
      {
        ...head,
        quantity: 'ring after a rectangular pulse',
        reference: 'VIB-10: 2 |sin(pi td/T)|, Thomson, Theory of Vibration, eq. 4.5-3, p. 106 (V1)',
        regime: 'pulses of 1/4 to 2 periods',
      },
      thomson.map(([periods, want]) => ({ at: `td/T ${periods}`, got: pulseRing(periods), want })),
    ),
    numberRow(
      {
        ...head,
        quantity: 'first zero of the ring after a pulse',
        reference: 'VIB-11: Harris & Piersol, Shock and Vibration Handbook, 5th ed., p. 8.34 item 7 (V1)',
        regime: 'rectangle at 1 period, symmetric triangle at 2',
      },
      [
        { at: 'rectangle, td/T 1', got: pulseRing(1), want: 0 },
        { at: 'triangle, td/T 2', got: pulseRing(2, 1), want: 0 },
        // Before that the triangle has none, nor has the rectangle: sinc squared of a quarter of its length.
        { at: 'triangle, td/T 1', got: pulseRing(1, 0.5), want: 4 / Math.PI },
        { at: 'rectangle, td/T 1/2', got: pulseRing(0.5), want: 2 },
      ],
    ),
    formRow(),
    numberRow(
      {
        ...head,
        quantity: 'ring after speeding up and braking',
        reference: 'VIB-12: 4 |sin(pi ta/T) sin(pi (ta + tc)/T)| (computed)',
        regime: 'its largest value and its zeros',
      },
      [
        { at: 'ta 0.5, tc 0', got: ringOf(0.5, 0), want: 4 },
        ...[0, 0.3, 1.7].map((tc) => ({ at: `ta 1, tc ${tc}`, got: ringOf(1, tc), want: 0 })),
        ...[0.1, 0.37, 0.5].map((ta) => ({
          at: `ta ${ta}, ta + tc 1`,
          got: ringOf(ta, 1 - ta),
          want: 0,
        })),
      ],
    ),
  ];
}

/** Undamped moves of limited acceleration, where the two sines leave something to compare. */
function formRow(): Row {
  const compared = [0.07, 0.2, 0.45, 0.83, 1.6].flatMap((ta) =>
    [0, 0.19, 1.3, 41.4].map((tc) => {
      const sines = Math.sin(Math.PI * ta) * Math.sin(Math.PI * (ta + tc));
      return { at: `ta ${ta}, tc ${tc}`, got: ringOf(ta, tc), want: 4 * Math.abs(sines) };
    }),
  );
  return numberRow(
    {
      quantity: 'ring after speeding up and braking',
      reference: 'VIB-12: 4 |sin(pi ta/T) sin(pi (ta + tc)/T)| (computed)',
      regime: '20 moves, undamped',
      bound: 1e-9,
      unit: 'relative',
    },
    compared,
    relative,
  );
}

/**
 * A quiet move is the fastest one put through a shaper of two impulses, half a period apart: half of its speed profile
 * now, half of it half a period later. Cruising for half a period at v thereby becomes cruising for a period at v / 2.
 */
function shaperRows(): Row[] {
  const shaper =
    'VIB-13: zero-vibration shaper, Singer & Seering 1990 (V2 formula): t2 = 1/(2 f sqrt(1 - zeta^2))';
  const later = [
    [0, 0.5],
    [0.05, 0.500626],
    [0.1, 0.502519],
  ] as const;
  const limits = { speed: 2, accel: 50, jerk: Number.POSITIVE_INFINITY };
  const fast = moveAt(1, 2, limits);
  return [
    numberRow(
      {
        quantity: 'time that the quiet move adds',
        reference: shaper,
        regime: 'a move of half a damped period, damping 0, 0.05, 0.1; to 6 digits',
        bound: 1e-6,
        unit: 's',
      },
      later.map(([damping, want]) => {
        const half = moveAt(1, 1 / want, limits);
        return {
          at: `zeta ${damping}`,
          got: 1 / quietSpeed(1, half, hertz(1, damping)) - 1 / half.peakSpeed,
          want,
        };
      }),
    ),
    numberRow(
      {
        quantity: 'ring of the quiet move beside the fastest’s',
        reference:
          'VIB-14: |cos(pi/2 (1 + e))| of the undamped shaper, Newman, Hong, Vaughan 2018 (V2 / computed)',
        regime: 'frequency off by 0, 5, 10, 20 %; to 5 digits',
        bound: 6e-6,
        unit: 'share',
      },
      [
        [0, 0],
        [0.05, 0.07846],
        [-0.05, 0.07846],
        [0.1, 0.15643],
        [-0.1, 0.15643],
        [0.2, 0.30902],
        [-0.2, 0.30902],
      ].map(([off = 0, want = 0]) => {
        const quiet = moveAt(1, quietSpeed(1, fast, UNIT), { ...limits, accel: limits.accel / 2 });
        const real = hertz(1 + off);
        return { at: `off by ${off}`, got: ringAfter(quiet, real) / ringAfter(fast, real), want };
      }),
    ),
  ];
}

function refusals(): Row {
  const wrong: (() => number)[] = [
    () => frequencyFromSag(0),
    () => frequencyFromSag(Number.NaN),
    () => dampingFromSwings(1, 1, 3),
    () => dampingFromSwings(2, 1, 0),
    () => frequencyFromSwings(10, 0),
  ];
  return textRow(
    {
      quantity: 'what cannot have been measured',
      reference: 'definitions (computed)',
      regime: 'sag 0, no decay, no swings, no time',
    },
    wrong.map((attempt) => ({ at: String(attempt), got: errorOf(attempt), want: 'RangeError' })),
  );
}

export const measureHandbook = (): Row[] => [
  ...sagRows(),
  decrementRow(),
  settleRow(),
  ...pulseRows(),
  ...shaperRows(),
  refusals(),
];

/** Eases against the CSS specification, an independent library, and published time scalings. */
import bezierEasing from 'bezier-easing';
import { easeFunction } from '../../../src/engine/motion/ease.ts';
import type { Ease } from '../../../src/engine/plan/schema.ts';
import { type NumberCase, numberRow, type Row } from '../rows.ts';
import { heightAt, parameterAt } from './bezier.ts';

type Handles = readonly [number, number, number, number];

const CSS = 'W3C CSS Easing Functions Level 1, css-easing-1 @064b9815 (V1 curves, C values)';
const CHROMIUM = 'Chromium ui/gfx cubic_bezier unit test (from memory)';
const HALVING = 'CSS Easing Functions Level 1 by de Casteljau and halving, to 110 binary places (computed)';
const LIBRARY = 'npm bezier-easing 3.2.0';
const ROBOTICS = 'Lynch & Park, Modern Robotics, code library core.py @cbd41fdf (V1)';
const SCALING = 'third- and fifth-order polynomial time scaling (computed)';
const TRAPEZOID = 'trapezoidal velocity integrated by hand (computed)';

const NAMED: Readonly<Record<string, Handles>> = {
  ease: [0.25, 0.1, 0.25, 1],
  'ease-in': [0.42, 0, 1, 1],
  'ease-out': [0, 0, 0.58, 1],
  'ease-in-out': [0.42, 0, 0.58, 1],
  '(0.25,0,0.75,1)': [0.25, 0, 0.75, 1],
};

const XS = [0.05, 0.1, 0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.7, 0.75, 0.8, 0.9, 0.95];

/** Values at {@link XS}, to 8 digits. */
const TABLE: Readonly<Record<string, readonly number[]>> = {
  // biome-ignore format: one row of the table a line
  ease: [0.03295154, 0.09479631, 0.29524433, 0.40851059, 0.51331516, 0.68254051, 0.80240339, 0.88522931, 0.94076461, 0.96045898, 0.97562536, 0.99431648, 0.99862454],
  // biome-ignore format: one row of the table a line
  'ease-in': [0.00447462, 0.01702661, 0.062282, 0.09346465, 0.12957676, 0.21486094, 0.31535681, 0.42911977, 0.55481403, 0.62186187, 0.69163393, 0.83942785, 0.9177578],
  // biome-ignore format: one row of the table a line
  'ease-out': [0.0822422, 0.16057215, 0.30836607, 0.37813813, 0.44518597, 0.57088023, 0.68464319, 0.78513906, 0.87042324, 0.90653535, 0.937718, 0.98297339, 0.99552538],
  // biome-ignore format: one row of the table a line
  'ease-in-out': [0.00482975, 0.01972245, 0.08165986, 0.12916193, 0.18739591, 0.33188387, 0.5, 0.66811613, 0.81260409, 0.87083807, 0.91834014, 0.98027755, 0.99517025],
  // biome-ignore format: one row of the table a line
  '(0.25,0,0.75,1)': [0.01136397, 0.03978865, 0.12803647, 0.18235614, 0.24115953, 0.36761312, 0.5, 0.63238688, 0.75884047, 0.81764386, 0.87196353, 0.96021135, 0.98863603],
};

/** Cut off, not rounded, after five digits. */
const CHROMIUM_VALUES = [
  0.01136, 0.03978, 0.12803, 0.18235, 0.24115, 0.36761, 0.5, 0.63238, 0.75884, 0.81764, 0.87196, 0.96021,
  0.98863,
];

const bezier = ([x1, y1, x2, y2]: Handles) => easeFunction({ kind: 'cubicBezier', x1, y1, x2, y2 });
const at = (ease: Ease, u: number) => easeFunction(ease)(u);

function* tableCases(): Generator<NumberCase> {
  for (const [name, handles] of Object.entries(NAMED)) {
    const got = bezier(handles);
    for (const [i, want] of (TABLE[name] ?? []).entries()) {
      const x = XS[i] as number;
      yield { at: `${name} at ${x}`, got: got(x), want };
    }
  }
}

const GRID = [0, 0.1, 0.33, 0.5, 0.77, 1];
const HEIGHTS: readonly (readonly [number, number])[] = [
  [0, 1],
  [1, 0],
  [-0.5, 1.6],
  [10, -10],
];
const STEPS = 53;

/** Every curve of a grid of handles, at evenly spread x, by halving; and by the library where it is precise. */
function* gridCases(
  keep: (x1: number, x2: number) => boolean,
  judge: 'halving' | 'library',
): Generator<NumberCase> {
  for (const x1 of GRID) {
    for (const x2 of GRID.filter((other) => keep(x1, other))) {
      const parameters = Array.from({ length: STEPS + 1 }, (_, i) => parameterAt(x1, x2, i / STEPS));
      for (const [y1, y2] of HEIGHTS) {
        const got = bezier([x1, y1, x2, y2]);
        const library = bezierEasing(x1, y1, x2, y2);
        for (const [i, t] of parameters.entries()) {
          const x = i / STEPS;
          const want = judge === 'library' ? library(x) : heightAt(t, y1, y2);
          yield { at: `(${x1}, ${y1}, ${x2}, ${y2}) at ${x}`, got: got(x), want };
        }
      }
    }
  }
}

/** Whether x grows everywhere by at least a twentieth of the parameter; so nowhere is the curve steep. */
function nowhereSteep(x1: number, x2: number): boolean {
  const slopes = Array.from({ length: 1001 }, (_, i) => {
    const t = i / 1000;
    return 3 * ((1 - t) ** 2 * x1 + 2 * (1 - t) * t * (x2 - x1) + t * t * (1 - x2));
  });
  return Math.min(...slopes) > 0.05;
}

const steepSomewhere = (x1: number, x2: number) => !nowhereSteep(x1, x2);

/** Curves that stand upright somewhere, looked at one and two frames of a million from that place. */
function* verticalCases(): Generator<NumberCase> {
  for (const [x1, x2, place] of [
    [0, 0, 0],
    [1, 1, 1],
    [1, 0, 0.5],
    [0, 1, 0],
    [0, 1, 1],
  ] as const) {
    for (const offset of [-2e-6, -1e-6, 1e-6, 2e-6]) {
      const x = place + offset;
      if (x < 0 || x > 1) continue;
      const t = parameterAt(x1, x2, x);
      for (const [y1, y2] of HEIGHTS) {
        const at = `(${x1}, ${y1}, ${x2}, ${y2}) at ${x}`;
        yield { at, got: bezier([x1, y1, x2, y2])(x), want: heightAt(t, y1, y2) };
      }
    }
  }
}

function* scalingCases(kind: 'smooth' | 'smoother', value: (u: number) => number): Generator<NumberCase> {
  for (let i = 0; i <= 1000; i += 1)
    yield { at: `u = ${i / 1000}`, got: at({ kind }, i / 1000), want: value(i / 1000) };
}

/** Speed of a trapezoid at u, of unit height: rising over the head, falling over the tail. */
function trapezoidSpeed(u: number, head: number, tail: number): number {
  if (head > 0 && u < head) return u / head;
  if (tail > 0 && u > 1 - tail) return (1 - u) / tail;
  return 1;
}

/** Share of the area under the trapezoid to the left of u, by the exact rule for straight pieces. */
function trapezoidShare(u: number, head: number, tail: number): number {
  const area = (to: number) => {
    const corners = [0, head, 1 - tail, 1].filter((corner) => corner < to).concat(to);
    let sum = 0;
    for (let i = 1; i < corners.length; i += 1) {
      const [a, b] = [corners[i - 1] as number, corners[i] as number];
      // The trapezoid rule is exact on a straight piece; just inside its ends, so that corners are not doubted.
      sum += (b - a) * trapezoidSpeed((a + b) / 2, head, tail);
    }
    return sum;
  };
  return area(u) / area(1);
}

function* rampedCases(): Generator<NumberCase> {
  const shares = [0, 0.1, 0.25, 0.5, 0.75, 1];
  for (const head of shares) {
    for (const tail of shares.filter((share) => head + share <= 1)) {
      for (let i = 0; i <= 40; i += 1) {
        const got = at({ kind: 'ramped', headShare: head, tailShare: tail }, i / 40);
        yield {
          at: `head ${head}, tail ${tail}, u ${i / 40}`,
          got,
          want: trapezoidShare(i / 40, head, tail),
        };
      }
    }
  }
}

/** Largest of a function's first or second difference quotients over the unit interval, at 1e5 points. */
function peak(ease: Ease, order: 1 | 2): number {
  const f = easeFunction(ease);
  const h = 1e-4;
  let largest = 0;
  for (let u = h; u <= 1 - h; u += 1e-4) {
    const slope = order === 1 ? (f(u + h) - f(u - h)) / (2 * h) : (f(u + h) - 2 * f(u) + f(u - h)) / (h * h);
    largest = Math.max(largest, Math.abs(slope));
  }
  return largest;
}

function* allEnds(): Generator<NumberCase> {
  const eases: readonly Ease[] = [
    { kind: 'linear' },
    { kind: 'smooth' },
    { kind: 'smoother' },
    { kind: 'ramped', headShare: 0, tailShare: 0 },
    { kind: 'ramped', headShare: 1, tailShare: 0 },
    { kind: 'ramped', headShare: 0, tailShare: 1 },
    { kind: 'ramped', headShare: 0.5, tailShare: 0.5 },
    ...Object.values(NAMED).map(([x1, y1, x2, y2]): Ease => ({ kind: 'cubicBezier', x1, y1, x2, y2 })),
    { kind: 'cubicBezier', x1: 1, y1: -2, x2: 0, y2: 3 },
    { kind: 'cubicBezier', x1: 0, y1: 10, x2: 1, y2: -10 },
  ];
  for (const ease of eases) {
    yield { at: `${JSON.stringify(ease)} at 0`, got: at(ease, 0), want: 0 };
    yield { at: `${JSON.stringify(ease)} at 1`, got: at(ease, 1), want: 1 };
  }
}

export function measureEase(): Row[] {
  return [
    numberRow(
      {
        quantity: 'cubic Bezier',
        reference: CSS,
        regime: 'named curves, 8 digits',
        bound: 5.1e-9,
        unit: '1',
      },
      tableCases(),
    ),
    numberRow(
      {
        quantity: 'cubic Bezier',
        reference: CHROMIUM,
        regime: '(0.25, 0, 0.75, 1), cut after 5 digits',
        bound: 1e-5,
        unit: '1',
      },
      CHROMIUM_VALUES.map((want, i) => ({
        at: `${XS[i]}`,
        got: bezier([0.25, 0, 0.75, 1])(XS[i] as number),
        want,
      })),
    ),
    numberRow(
      {
        quantity: 'cubic Bezier',
        reference: HALVING,
        regime: 'grid of handles, nowhere steep',
        bound: 1e-11,
        unit: '1',
      },
      gridCases(nowhereSteep, 'halving'),
    ),
    numberRow(
      {
        quantity: 'cubic Bezier',
        reference: HALVING,
        regime: 'grid of handles, steep somewhere',
        bound: 1e-9,
        unit: '1',
      },
      gridCases(steepSomewhere, 'halving'),
    ),
    numberRow(
      {
        quantity: 'cubic Bezier',
        reference: HALVING,
        regime: 'a millionth of the run from a vertical tangent',
        bound: 1e-8,
        unit: '1',
      },
      verticalCases(),
    ),
    numberRow(
      {
        quantity: 'cubic Bezier',
        reference: LIBRARY,
        regime: 'grid of handles, nowhere steep',
        bound: 1e-10,
        unit: '1',
      },
      gridCases(nowhereSteep, 'library'),
    ),
    numberRow(
      {
        quantity: 'ease-out is ease-in turned round',
        reference: 'symmetry of the definition (computed)',
        regime: '1001 points',
        bound: 1e-12,
        unit: '1',
      },
      Array.from({ length: 1001 }, (_, i) => ({
        at: `${i / 1000}`,
        got: bezier([0, 0, 0.58, 1])(i / 1000),
        want: 1 - bezier([0.42, 0, 1, 1])(1 - i / 1000),
      })),
    ),
    numberRow(
      { quantity: 'smooth', reference: ROBOTICS, regime: 'MOT-01: Tf 2, t 0.6', bound: 1e-12, unit: '1' },
      [{ at: 't = 0.6', got: at({ kind: 'smooth' }, 0.3), want: 0.216 }],
    ),
    numberRow(
      { quantity: 'smoother', reference: ROBOTICS, regime: 'MOT-02: Tf 2, t 0.6', bound: 1e-12, unit: '1' },
      [{ at: 't = 0.6', got: at({ kind: 'smoother' }, 0.3), want: 0.16308 }],
    ),
    numberRow(
      {
        quantity: 'smooth and smoother at a quarter',
        reference: SCALING,
        regime: 'exact binary values',
        bound: 0,
        unit: '1',
      },
      [
        { at: 'smooth', got: at({ kind: 'smooth' }, 0.25), want: 0.15625 },
        { at: 'smoother', got: at({ kind: 'smoother' }, 0.25), want: 0.103515625 },
      ],
    ),
    numberRow(
      {
        quantity: 'smooth',
        reference: SCALING,
        regime: '3u^2 - 2u^3 at 1001 points',
        bound: 1e-14,
        unit: '1',
      },
      scalingCases('smooth', (u) => 3 * u ** 2 - 2 * u ** 3),
    ),
    numberRow(
      {
        quantity: 'smoother',
        reference: SCALING,
        regime: '6u^5 - 15u^4 + 10u^3 at 1001 points',
        bound: 1e-14,
        unit: '1',
      },
      scalingCases('smoother', (u) => 6 * u ** 5 - 15 * u ** 4 + 10 * u ** 3),
    ),
    numberRow(
      {
        quantity: 'highest speed and acceleration of a unit move',
        reference: 'Modern Robotics, ch. 9.2, MOT-03 (from memory)',
        regime: 'smooth 3/2 and 6, smoother 15/8 and 10/sqrt 3; difference quotients',
        bound: 1e-3,
        unit: '1',
      },
      [
        { at: 'smooth, speed', got: peak({ kind: 'smooth' }, 1), want: 1.5 },
        { at: 'smooth, acceleration', got: peak({ kind: 'smooth' }, 2), want: 6 - 12e-4 },
        { at: 'smoother, speed', got: peak({ kind: 'smoother' }, 1), want: 1.875 },
        { at: 'smoother, acceleration', got: peak({ kind: 'smoother' }, 2), want: 10 / Math.sqrt(3) },
      ],
    ),
    numberRow(
      {
        quantity: 'ramped',
        reference: TRAPEZOID,
        regime: 'heads and tails from 0 to 1',
        bound: 1e-13,
        unit: '1',
      },
      rampedCases(),
    ),
    numberRow(
      {
        quantity: 'ends of every ease',
        reference: 'an ease begins at 0 and ends at 1',
        regime: '14 eases',
        bound: 0,
        unit: '1',
      },
      allEnds(),
    ),
  ];
}

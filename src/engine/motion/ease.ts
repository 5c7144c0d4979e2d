/**
 * Eases: how far an axis has gone, as a share, when a share of the time has passed.
 *
 * Sources: `smooth` and `smoother` are the third- and fifth-order polynomial time scalings (Lynch & Park, Modern
 * Robotics, ch. 9.2); `cubicBezier` is W3C CSS Easing Functions Level 1; `ramped` is the trapezoidal velocity
 * profile normalised to unit time and travel.
 */
import type { Ease } from '../plan/schema.ts';

type CubicBezier = Extract<Ease, { kind: 'cubicBezier' }>;

/** Share of the travel at a share of the time; 0 at 0 and 1 at 1. */
export type EaseFunction = (u: number) => number;

/** Third-order polynomial. */
export const smooth: EaseFunction = (u) => u * u * (3 - 2 * u);

/** Fifth-order polynomial. */
export const smoother: EaseFunction = (u) => u * u * u * (u * (6 * u - 15) + 10);

/** Constant acceleration over the head, constant speed, constant deceleration over the tail. */
export function ramped(u: number, head: number, tail: number): number {
  const speed = 1 / (1 - head / 2 - tail / 2);
  if (u < head) return (speed * u * u) / (2 * head);
  if (u > 1 - tail) return 1 - (speed * (1 - u) * (1 - u)) / (2 * tail);
  return speed * (u - head / 2);
}

/**
 * The function of an ease, for single values.
 * @param ease - one of the plan's eases
 * @returns a function of a time share in [0, 1]
 */
export function easeFunction(ease: Ease): EaseFunction {
  switch (ease.kind) {
    case 'hold':
      return (u) => (u < 1 ? 0 : 1);
    case 'linear':
      return (u) => u;
    case 'smooth':
      return smooth;
    case 'smoother':
      return smoother;
    case 'ramped':
      return (u) => ramped(u, ease.headShare, ease.tailShare);
    case 'cubicBezier': {
      const curve = bezierCurve(ease);
      return (u) => bezierAt(curve, u);
    }
  }
}

/**
 * A cubic Bezier curve from (0, 0) to (1, 1), ready to be read as a function of its x.
 *
 * x and y are cubics in a parameter t. For an x its t is found by Newton steps inside a shrinking bracket, from a
 * first guess read off a table of the curve's inverse. The table only saves steps: the answer is the root.
 * Layout: coefficients of t^3, t^2, t for x, the same for y, then t at x = 0, 1/64, ... 1.
 * One flat array, since compiled loops read it fastest.
 */
export type Curve = Float64Array;

const CELLS = 64;
const TABLE_AT = 6;
const PRECISE = 1e-15;
// Halving a bracket of 1 reaches the last place of a double in 53 steps.
const MAX_ROUNDS = 60;

/** The curve of an ease, ready to be read. */
export function bezierCurve({ x1, y1, x2, y2 }: CubicBezier): Curve {
  const curve = new Float64Array(TABLE_AT + CELLS + 1);
  const cubic = (p1: number, p2: number) => [1 + 3 * (p1 - p2), 3 * (p2 - 2 * p1), 3 * p1];
  curve.set([...cubic(x1, x2), ...cubic(y1, y2)]);
  for (let i = 0; i <= CELLS; i += 1) curve[TABLE_AT + i] = bezierParameter(curve, i / CELLS, i / CELLS);
  return curve;
}

/** t in [0, 1] at which the curve's x is `x`. */
export function bezierParameter(curve: Curve, x: number, guess: number): number {
  const a = curve[0] as number;
  const b = curve[1] as number;
  const c = curve[2] as number;
  let low = 0;
  let high = 1;
  let t = guess;
  for (let round = 0; round < MAX_ROUNDS; round += 1) {
    const error = ((a * t + b) * t + c) * t - x;
    if (Math.abs(error) < PRECISE) return t;
    if (error > 0) high = t;
    else low = t;
    const newton = t - error / ((3 * a * t + 2 * b) * t + c);
    // Also false for NaN and Infinity, which a flat slope gives.
    t = newton > low && newton < high ? newton : (low + high) / 2;
  }
  return t;
}

/** y of the curve where its x is `x`. */
function bezierAt(curve: Curve, x: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const cell = Math.floor(x * CELLS);
  const left = curve[TABLE_AT + cell] as number;
  const right = curve[TABLE_AT + cell + 1] as number;
  const t = bezierParameter(curve, x, left + (x * CELLS - cell) * (right - left));
  return bezierY(curve, t);
}

/** y of the curve at a parameter. */
export const bezierY = (curve: Curve, t: number): number =>
  (((curve[3] as number) * t + (curve[4] as number)) * t + (curve[5] as number)) * t;

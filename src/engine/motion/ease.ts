/**
 * Eases: how far an axis has gone, as a share, when a share of the time has passed.
 *
 * Sources: `smooth` and `smoother` are the third- and fifth-order polynomial time scalings (Lynch & Park, Modern
 * Robotics, ch. 9.2); `cubicBezier` is W3C CSS Easing Functions Level 1; `ramped` is the trapezoidal velocity
 * profile normalised to unit time and travel.
 */
import type { Ease } from '../plan/schema.ts';

/** Share of the travel at a share of the time; 0 at 0 and 1 at 1. */
export type EaseFunction = (u: number) => number;

/**
 * The function of an ease.
 * @param ease - one of the plan's eases
 * @returns a function of a time share in [0, 1]; the same input gives the same output whatever was asked before
 */
export function easeFunction(ease: Ease): EaseFunction {
  switch (ease.kind) {
    case 'linear':
      return (u) => u;
    case 'smooth':
      return (u) => u * u * (3 - 2 * u);
    case 'smoother':
      return (u) => u * u * u * (u * (6 * u - 15) + 10);
    case 'ramped':
      return ramped(ease.headShare, ease.tailShare);
    case 'cubicBezier':
      return cubicBezier(ease.x1, ease.y1, ease.x2, ease.y2);
  }
}

/** Constant acceleration over the head, constant speed, constant deceleration over the tail. */
function ramped(head: number, tail: number): EaseFunction {
  const speed = 1 / (1 - head / 2 - tail / 2);
  return (u) => {
    if (u < head) return (speed * u * u) / (2 * head);
    if (u > 1 - tail) return 1 - (speed * (1 - u) * (1 - u)) / (2 * tail);
    return speed * (u - head / 2);
  };
}

/** Value at t of a cubic that is 0 at 0 and 1 at 1, with inner control values p1 and p2. */
const bezierAt = (t: number, p1: number, p2: number): number => {
  const s = 1 - t;
  return t * (3 * s * (s * p1 + t * p2) + t * t);
};

const bezierSlope = (t: number, p1: number, p2: number): number => {
  const s = 1 - t;
  return 3 * (s * s * p1 + 2 * s * t * (p2 - p1) + t * t * (1 - p2));
};

const PRECISE = 1e-13;

/** t in [0, 1] at which the x curve reaches x, by Newton steps kept inside a shrinking bracket. */
function bezierParameter(x: number, x1: number, x2: number, guess: number): number {
  let low = 0;
  let high = 1;
  let t = guess;
  for (let round = 0; round < 80; round += 1) {
    const error = bezierAt(t, x1, x2) - x;
    if (Math.abs(error) < PRECISE) return t;
    if (error > 0) high = t;
    else low = t;
    const newton = t - error / bezierSlope(t, x1, x2);
    // Also true of NaN and Infinity, which a flat slope gives.
    t = newton > low && newton < high ? newton : (low + high) / 2;
  }
  return t;
}

function cubicBezier(x1: number, y1: number, x2: number, y2: number): EaseFunction {
  return (u) => {
    if (u <= 0) return 0;
    if (u >= 1) return 1;
    return bezierAt(bezierParameter(u, x1, x2, u), y1, y2);
  };
}

/** An ease cut in two, so that a keyframe set on the way does not change the move. */

import type { Ease } from '../plan/schema.ts';
import { bezierCurve, bezierParameter, type EaseFunction, easeFunction } from './ease.ts';

type Bezier = Extract<Ease, { kind: 'cubicBezier' }>;
type Pair = [before: Ease, after: Ease];

/** x = t with these, so that y is the third-order polynomial itself. */
const SMOOTH: Bezier = { kind: 'cubicBezier', x1: 1 / 3, y1: 0, x2: 2 / 3, y2: 1 };

/** Farthest travel of a handle that the plan takes. */
const FARTHEST = 10;

/**
 * The eases before and after a point of an ease.
 *
 * Linear, hold, smooth, most beziers, and ramped at constant speed come out exactly. Of the others the speeds at the
 * three points are kept, and the way between as nearly as a bezier can.
 * @param u - share of the time at which it is cut, above 0 and below 1
 */
export function splitEase(ease: Ease, u: number): Pair {
  switch (ease.kind) {
    case 'hold':
    case 'linear':
      return [ease, ease];
    case 'smooth':
      return splitBezier(SMOOTH, u) ?? fittedPair(ease, u);
    case 'cubicBezier':
      return splitBezier(ease, u) ?? fittedPair(ease, u);
    case 'smoother':
      return fittedPair(ease, u);
    case 'ramped':
      return splitRamped(ease.headShare, ease.tailShare, u) ?? fittedPair(ease, u);
  }
}

/** Cut at constant speed, the head is left on one side and the tail on the other. */
function splitRamped(head: number, tail: number, u: number): Pair | null {
  if (u < head || u > 1 - tail) return null;
  return [
    { kind: 'ramped', headShare: tidy(head / u), tailShare: 0 },
    { kind: 'ramped', headShare: 0, tailShare: tidy(tail / (1 - u)) },
  ];
}

/** De Casteljau's construction; null where a part is no ease that the plan takes. */
function splitBezier(ease: Bezier, u: number): Pair | null {
  const t = bezierParameter(bezierCurve(ease), u, u);
  const [x1, x12, x, x22, x3] = cut(ease.x1, ease.x2, t);
  const [y1, y12, y, y22, y3] = cut(ease.y1, ease.y2, t);
  const before = bezier(x1 / x, y1 / y, x12 / x, y12 / y);
  const after = bezier((x22 - x) / (1 - x), (y22 - y) / (1 - y), (x3 - x) / (1 - x), (y3 - y) / (1 - y));
  return before && after && [before, after];
}

/** Control values of both halves of a cubic from 0 to 1: before the cut, at it, after it. */
function cut(p1: number, p2: number, t: number): [number, number, number, number, number] {
  const between = (a: number, b: number) => a + (b - a) * t;
  const [a, b, c] = [between(0, p1), between(p1, p2), between(p2, 1)];
  const [d, e] = [between(a, b), between(b, c)];
  return [a, d, between(d, e), e, c];
}

const tidy = (value: number): number => Number(Math.min(1, Math.max(0, value)).toFixed(6));

function bezier(x1: number, y1: number, x2: number, y2: number): Bezier | null {
  const dust = 1e-9;
  const inTime = [x1, x2].every((x) => x >= -dust && x <= 1 + dust);
  const inTravel = [y1, y2].every((y) => Math.abs(y) <= FARTHEST);
  if (!inTime || !inTravel) return null;
  const [first, second] = [y1, y2].map((y) => Number(y.toFixed(6))) as [number, number];
  return { kind: 'cubicBezier', x1: tidy(x1), y1: first, x2: tidy(x2), y2: second };
}

const fittedPair = (ease: Ease, u: number): Pair => {
  const at = easeFunction(ease);
  return [fitted(at, 0, u), fitted(at, u, 1)];
};

/** A stretch of an ease, from 0 to 1 again, with its speeds at both ends. */
interface Stretch {
  at: EaseFunction;
  beginSpeed: number;
  endSpeed: number;
}

/** Room for the lengths of the handles, of the stretch's time. */
const [SHORTEST, LONGEST] = [0.02, 1];

/** The bezier that comes nearest to a stretch of an ease, with its speeds at both ends; straight if there is none. */
function fitted(ease: EaseFunction, from: number, to: number): Ease {
  const travel = ease(to) - ease(from);
  const at = (v: number) => (ease(from + v * (to - from)) - ease(from)) / travel;
  const dust = 1e-5;
  const stretch = { at, beginSpeed: at(dust) / dust, endSpeed: (1 - at(1 - dust)) / dust };
  let best = { lengths: [1 / 3, 1 / 3] as [number, number], error: missOf(stretch, 1 / 3, 1 / 3) };
  // Each way in turn, and by half as much once none leads on.
  for (let by = 0.16; by > 0.001; ) {
    const [a, b] = best.lengths;
    const tried = (
      [
        [by, 0],
        [-by, 0],
        [0, by],
        [0, -by],
      ] as const
    ).map(([da, db]) => {
      const lengths: [number, number] = [inRoom(a + da), inRoom(b + db)];
      return { lengths, error: missOf(stretch, ...lengths) };
    });
    const next = tried.reduce((least, one) => (one.error < least.error ? one : least), best);
    if (next === best) by /= 2;
    best = next;
  }
  return handled(stretch, ...best.lengths) ?? { kind: 'linear' };
}

const inRoom = (length: number): number => Math.min(LONGEST, Math.max(SHORTEST, length));

/** The bezier with the stretch's speeds and handles that take so much of its time. */
const handled = ({ beginSpeed, endSpeed }: Stretch, begin: number, end: number): Bezier | null =>
  bezier(begin, begin * beginSpeed, 1 - end, 1 - end * endSpeed);

const SAMPLES = 24;

/** How far that bezier is from the stretch at most, as a share of the travel. */
function missOf(stretch: Stretch, begin: number, end: number): number {
  const ease = handled(stretch, begin, end);
  if (!ease) return Number.POSITIVE_INFINITY;
  const other = easeFunction(ease);
  let most = 0;
  for (let i = 1; i < SAMPLES; i += 1)
    most = Math.max(most, Math.abs(stretch.at(i / SAMPLES) - other(i / SAMPLES)));
  return most;
}

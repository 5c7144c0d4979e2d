/** Where a track puts its axis at a frame: found afresh for every frame. */
import type { Axis, Ease, Track } from '../../../src/engine/plan/schema.ts';

const bezier = (t: number, p1: number, p2: number): number =>
  3 * (1 - t) * (1 - t) * t * p1 + 3 * (1 - t) * t * t * p2 + t * t * t;

function bezierAt(x: number, x1: number, y1: number, x2: number, y2: number): number {
  let low = 0;
  let high = 1;
  for (let i = 0; i < 60; i += 1) {
    const middle = (low + high) / 2;
    if (bezier(middle, x1, x2) < x) low = middle;
    else high = middle;
  }
  return bezier((low + high) / 2, y1, y2);
}

/** Area under a trapezoid that rises over the head and falls over the tail, up to u, as a share of the whole. */
function trapezoid(u: number, head: number, tail: number): number {
  const all = 1 - (head + tail) / 2;
  if (u <= head) return head === 0 ? 0 : (u * (u / head)) / 2 / all;
  if (u <= 1 - tail) return (head / 2 + (u - head)) / all;
  const rest = 1 - u;
  return (all - (rest * (rest / tail)) / 2) / all;
}

export function easeAt(ease: Ease, u: number): number {
  switch (ease.kind) {
    case 'hold':
      return u < 1 ? 0 : 1;
    case 'linear':
      return u;
    case 'smooth':
      return 3 * u ** 2 - 2 * u ** 3;
    case 'smoother':
      return 6 * u ** 5 - 15 * u ** 4 + 10 * u ** 3;
    case 'cubicBezier':
      return bezierAt(u, ease.x1, ease.y1, ease.x2, ease.y2);
    case 'ramped':
      return trapezoid(u, ease.headShare, ease.tailShare);
  }
}

/** Position in the axis's unit at a frame counted from 0. */
export function positionAt(track: Track, frame: number, frames: number): number {
  const index = track.thereAndBack ? Math.min(frame, frames - 1 - frame) : frame;
  const last = track.thereAndBack ? (frames - 1) / 2 : frames - 1;
  const share = last === 0 ? 0 : index / last;
  const next = track.keyframes.findIndex((keyframe) => keyframe.share >= share);
  const to = track.keyframes[next === -1 ? track.keyframes.length - 1 : next];
  const from = track.keyframes[next - 1];
  if (!to) throw new RangeError('a track without keyframes');
  if (next === -1 || !from) return to.position;
  const u = (share - from.share) / (to.share - from.share);
  return from.position + (to.position - from.position) * easeAt(from.ease, u);
}

/** Where an axis without a track stays: its zero, or the end of its travel that is nearest to it. */
export const restingPosition = (axis: Axis): number => Math.min(axis.travelMax, Math.max(axis.travelMin, 0));

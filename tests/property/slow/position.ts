/** Where a track puts its axis at a frame: found afresh for every frame. */
import type { Axis, Ease, Keyframe, Track } from '../../../src/engine/plan/schema.ts';

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

/** Seconds from the first shutter opening to each frame, and to the end of the last interval. */
export type Elapsed = readonly number[];

/** A keyframe at a share of the run, or of the way there. */
export interface Placed {
  share: number;
  position: number;
  ease: Ease;
  /** Where it was meant to be is no later than the keyframe before, or beyond the last frame. */
  late: boolean;
  beyond: boolean;
  /** By how much it is either of them, as a share: 0 is on the edge. */
  edge: number;
}

/** Index, counted from 0 and whole or not, of a time; a time that is a frame's but for a rounding is that frame's. */
function indexOfTime(timeS: number, elapsed: Elapsed): number {
  let k = 0;
  while (k < elapsed.length - 2 && (elapsed[k + 1] as number) <= timeS) k += 1;
  const [from, to] = [elapsed[k] as number, elapsed[k + 1] as number];
  const index = k + (timeS - from) / (to - from);
  return Math.abs(index - Math.round(index)) < 1e-6 ? Math.round(index) : index;
}

const lastIndexOf = ({ thereAndBack }: Track, frames: number): number =>
  thereAndBack ? (frames - 1) / 2 : frames - 1;

function shareOf(keyframe: Keyframe, last: number, elapsed: Elapsed): number {
  if (keyframe.at === 'share') return keyframe.share;
  const index = keyframe.at === 'frame' ? keyframe.frame - 1 : indexOfTime(keyframe.timeS, elapsed);
  return last === 0 ? index : index / last;
}

/** The keyframes where they are in the run: one that would go back in time is moved up to the one before. */
export function placed(track: Track, elapsed: Elapsed): Placed[] {
  const last = lastIndexOf(track, elapsed.length - 1);
  const list: Placed[] = [];
  for (const keyframe of track.keyframes) {
    const share = shareOf(keyframe, last, elapsed);
    const before = list.at(-1)?.share ?? Number.NEGATIVE_INFINITY;
    const late = share <= before;
    const beyond = !late && last > 0 && share > 1;
    const edge = Math.min(Math.abs(share - before), Math.abs(share - 1));
    const { position, ease } = keyframe;
    list.push({ share: Math.max(share, before), position, ease, late, beyond, edge });
  }
  return list;
}

/** Position at a frame counted from 0, whole or not, that is on the way there. */
function positionOnWay(list: readonly Placed[], share: number): number {
  const next = list.findIndex((keyframe) => keyframe.share >= share);
  const to = list[next === -1 ? list.length - 1 : next];
  const from = list[next - 1];
  if (!to) throw new RangeError('a track without keyframes');
  if (next === -1 || !from) return to.position;
  const u = (share - from.share) / (to.share - from.share);
  return from.position + (to.position - from.position) * easeAt(from.ease, u);
}

/** Position in the axis's unit at a frame counted from 0, whole or not. */
export function positionAt(track: Track, list: readonly Placed[], frame: number, frames: number): number {
  const last = lastIndexOf(track, frames);
  const index = track.thereAndBack ? Math.min(frame, frames - 1 - frame) : frame;
  return positionOnWay(list, last === 0 ? 0 : index / last);
}

/** Whether a track goes on between a frame, counted from 0, and the one before it; standing still at its turn. */
export function goesOnBefore(track: Track, list: readonly Placed[], frame: number, frames: number): boolean {
  const last = lastIndexOf(track, frames);
  const mirrored = track.thereAndBack && frame > last;
  const [from, to] = mirrored ? [frames - 1 - frame, frames - frame] : [frame - 1, frame];
  // Over the middle it goes there and comes back.
  if (track.thereAndBack && to > last) return false;
  return list.some((keyframe, i) => {
    const next = list[i + 1];
    if (!next || next.position === keyframe.position || keyframe.ease.kind === 'hold') return false;
    return Math.max(from / last, keyframe.share) < Math.min(to / last, next.share);
  });
}

/** Where an axis without a track stays: its zero, or the end of its travel that is nearest to it. */
export const restingPosition = (axis: Axis): number => Math.min(axis.travelMax, Math.max(axis.travelMin, 0));

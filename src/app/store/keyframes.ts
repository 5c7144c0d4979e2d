/**
 * Keyframes of a track: where they stand in the run, and how they are moved, added and removed.
 *
 * Places are indices of frames, counted from 0; between two frames they are fractions. However an edit is made, the
 * keyframes stay in order, and each stays a share, a frame or a time.
 */

import { easeFunction } from '../../engine/motion/ease.ts';
import { splitEase } from '../../engine/motion/ease-split.ts';
import { isAimed } from '../../engine/motion/motion.ts';
import { aims } from '../../engine/path/aim.ts';
import { FARTHEST, MAX_KEYFRAMES } from '../../engine/plan/constants.ts';
import { newKeyframe } from '../../engine/plan/parse.ts';
import type { Keyframe, Plan } from '../../engine/plan/schema.ts';
import { lastWhere } from '../../engine/search.ts';

/** The stretch of the run that the keyframes of a track lie in. */
export interface Span {
  /** Index, whole or half, at which the track ends. */
  lastIndex: number;
  /** Seconds from the first shutter opening, one entry a frame of the whole run. */
  elapsedS: ArrayLike<number>;
}

/** A plan with one more keyframe, and the place of that in its track. */
export interface Added {
  plan: Plan;
  index: number;
}

/** What is nearer to a whole frame than this stands at it. */
const NEAR = 0.02;

/** Axes whose tracks are not followed: their positions are worked out so that the subject stays framed. */
export const aimedAxes = (plan: Plan): readonly string[] =>
  aims(plan) ? plan.rig.axes.filter((axis) => isAimed(plan, axis)).map(({ name }) => name) : [];

/** The stretch of a run that a track's keyframes lie in: all of it, or its first half. */
export function spanOf(elapsedS: ArrayLike<number>, thereAndBack: boolean): Span {
  const last = Math.max(0, elapsedS.length - 1);
  return { lastIndex: thereAndBack ? last / 2 : last, elapsedS };
}

/** Seconds from the first shutter opening at an index; beyond the run, at its last interval. */
export function elapsedAt({ elapsedS }: Span, index: number): number {
  const last = elapsedS.length - 1;
  if (last < 1) return index;
  const from = Math.min(last - 1, Math.max(0, Math.floor(index)));
  const [before, after] = [Number(elapsedS[from]), Number(elapsedS[from + 1])];
  return index === from + 1 ? after : before + (after - before) * (index - from);
}

/** Index at so many seconds from the first shutter opening. */
export function indexAt({ elapsedS }: Span, seconds: number): number {
  const last = elapsedS.length - 1;
  if (last < 1) return seconds;
  const k = lastWhere(0, last, (i) => Number(elapsedS[i]) <= seconds);
  const [before, after] = [Number(elapsedS[k]), Number(elapsedS[k + 1])];
  return k + (seconds - before) / (after - before);
}

/** Where a keyframe stands. */
export function indexOf({ at, share, frame, timeS }: Keyframe, span: Span): number {
  if (at === 'share') return share * span.lastIndex;
  return at === 'frame' ? frame - 1 : indexAt(span, timeS);
}

/** The keyframe at another place, placed as it was, or in another way. */
function placed(keyframe: Keyframe, index: number, span: Span, at = keyframe.at): Keyframe {
  if (at === 'frame') return { ...keyframe, at, frame: Math.max(1, Math.round(index) + 1) };
  if (at === 'time') return { ...keyframe, at, timeS: Math.max(0, elapsedAt(span, index)) };
  const share = span.lastIndex > 0 ? Math.min(1, Math.max(0, index / span.lastIndex)) : keyframe.share;
  return { ...keyframe, at, share };
}

export const keyframesOf = (plan: Plan, track: number): readonly Keyframe[] =>
  plan.move.tracks[track]?.keyframes ?? [];

const withKeyframes = (plan: Plan, track: number, keyframes: readonly Keyframe[]): Plan => ({
  ...plan,
  move: {
    ...plan.move,
    tracks: plan.move.tracks.map((one, i) => (i === track ? { ...one, keyframes: [...keyframes] } : one)),
  },
});

/** First and last index that a keyframe can stand at between its neighbours; the first is larger if there is none. */
export function roomOf(keyframes: readonly Keyframe[], k: number, span: Span): [number, number] {
  const [before, after] = [keyframes[k - 1], keyframes[k + 1]];
  const low = before ? Math.floor(indexOf(before, span) + NEAR) + 1 : 0;
  const high = after ? Math.ceil(indexOf(after, span) - NEAR) - 1 : span.lastIndex;
  return [Math.max(0, low), Math.min(span.lastIndex, high)];
}

/** A whole index; at the end of a track that turns between two frames, that end. */
const whole = (index: number, { lastIndex }: Span): number => Math.min(Math.round(index), lastIndex);

/**
 * Moves a keyframe; it stays between its neighbours.
 * @param to - index, taken to the nearest frame, and position; what is left out stays
 */
export function moveKeyframe(
  plan: Plan,
  track: number,
  k: number,
  to: { index?: number; position?: number },
  span: Span,
): Plan {
  const keyframes = keyframesOf(plan, track);
  const keyframe = keyframes[k];
  if (!keyframe) return plan;
  const position = Math.min(FARTHEST, Math.max(-FARTHEST, to.position ?? keyframe.position));
  const [low, high] = roomOf(keyframes, k, span);
  const stays = to.index === undefined || low > high;
  const moved = stays
    ? keyframe
    : placed(keyframe, Math.min(high, Math.max(low, whole(to.index as number, span))), span);
  return withKeyframes(plan, track, keyframes.with(k, { ...moved, position }));
}

/** Places a keyframe in another way, where it stands; at a frame, at the nearest one that is free, if any is. */
export function placeBy(plan: Plan, track: number, k: number, at: Keyframe['at'], span: Span): Plan {
  const keyframes = keyframesOf(plan, track);
  const keyframe = keyframes[k];
  if (!keyframe) return plan;
  const index = indexOf(keyframe, span);
  const [low, high] = roomOf(keyframes, k, span);
  if (at === 'frame' && low > high) return plan;
  const to = at === 'frame' ? Math.min(high, Math.max(low, Math.round(index))) : index;
  return withKeyframes(plan, track, keyframes.with(k, placed(keyframe, to, span, at)));
}

export const removeKeyframe = (plan: Plan, track: number, k: number): Plan =>
  withKeyframes(
    plan,
    track,
    keyframesOf(plan, track).filter((_, i) => i !== k),
  );

const rounded = (position: number): number => Number(position.toFixed(3));

/** One on the way between two, and the first of the two with the ease that leads to it. */
function between(from: Keyframe, to: Keyframe, index: number, span: Span): [Keyframe, Keyframe] {
  const start = indexOf(from, span);
  const u = (index - start) / (indexOf(to, span) - start);
  const share = easeFunction(from.ease)(u);
  const position = rounded(from.position + (to.position - from.position) * share);
  const [before, after] = splitEase(from.ease, u);
  return [{ ...from, ease: before }, placed({ ...from, position, ease: after }, index, span)];
}

/** Whether a track takes one more keyframe at a frame. */
export function isFree(keyframes: readonly Keyframe[], index: number, span: Span): boolean {
  const taken = keyframes.some((one) => Math.abs(indexOf(one, span) - index) < 0.5);
  return !taken && keyframes.length > 0 && keyframes.length < MAX_KEYFRAMES && index <= span.lastIndex;
}

/**
 * One more keyframe on the way, where the axis is at that frame anyway: the move stays what it is.
 * @returns null where there is one already, and where there are as many as a track takes
 */
export function addKeyframeAt(plan: Plan, track: number, index: number, span: Span): Added | null {
  const keyframes = keyframesOf(plan, track);
  const at = whole(Math.max(0, index), span);
  if (!isFree(keyframes, at, span)) return null;
  const next = keyframes.findIndex((one) => indexOf(one, span) > at);
  const k = next === -1 ? keyframes.length : next;
  const [before, after] = [keyframes[k - 1], keyframes[k]];
  const beside = (before ?? after) as Keyframe;
  const made =
    before && after
      ? between(before, after, at, span)
      : [placed(newKeyframe({ ...beside, ease: { kind: 'smooth' } }), at, span)];
  const replaced = made.length - 1;
  const all = keyframes.toSpliced(k - replaced, replaced, ...made);
  return { plan: withKeyframes(plan, track, all), index: k };
}

/** Half way from a keyframe to the next, or the end of the track. */
function indexAfter(keyframes: readonly Keyframe[], k: number, span: Span): number {
  const [keyframe, next] = keyframes.slice(k, k + 2);
  if (!keyframe || !next) return span.lastIndex;
  return Math.floor((indexOf(keyframe, span) + indexOf(next, span)) / 2 + NEAR);
}

/** Whether there is room for one more after a keyframe. */
export const hasRoomAfter = (plan: Plan, track: number, k: number, span: Span): boolean => {
  const keyframes = keyframesOf(plan, track);
  return isFree(keyframes, indexAfter(keyframes, k, span), span);
};

/** One more half way to the next keyframe, or at the end of the track; null where there is no room. */
export const addKeyframeAfter = (plan: Plan, track: number, k: number, span: Span): Added | null =>
  addKeyframeAt(plan, track, indexAfter(keyframesOf(plan, track), k, span), span);

/** One more at the end of the run that a single one leaves free, else in the widest gap; null where there is none. */
export function addKeyframe(plan: Plan, track: number, span: Span): Added | null {
  const places = keyframesOf(plan, track).map((one) => indexOf(one, span));
  if (places.length === 1)
    return addKeyframeAt(plan, track, (places[0] as number) >= span.lastIndex ? 0 : span.lastIndex, span);
  const gaps = places.slice(1).map((place, i) => place - (places[i] as number));
  return addKeyframeAfter(plan, track, gaps.indexOf(Math.max(...gaps)), span);
}

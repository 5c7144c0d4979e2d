/** Where an axis has to be at an exposure: a keyframe at its first frame. */

import { placeKeyframes } from '../../motion/keyframes.ts';
import { FARTHEST, MAX_FRAMES } from '../../plan/constants.ts';

import { type Ease, type Keyframe, memberSchemas, type Plan, type Track } from '../../plan/schema.ts';
import { shotFrames } from '../production.ts';
import { shotClock } from '../rig.ts';
import { tracksOf } from '../shots.ts';
import type { ExposurePlace } from '../texts.ts';
import { framesAt } from './cues.ts';
import { listWithin, Refused, wholeWithin } from './refused.ts';
import { shotNumbered, shotsWith, withSheet } from './shots.ts';

const MOST_KEYFRAMES = 1000;

/**
 * Puts an axis at a position at an exposure's first frame. A shot without tracks of its own gets a copy of the plan's
 * first; a track that comes back is written out both ways.
 * @param axis - its name
 * @param position - in the axis's unit
 */
export function setAxisPosition(plan: Plan, place: ExposurePlace, axis: string, position: number): Plan {
  const names = plan.rig.axes.map(({ name }) => name);
  if (!names.includes(axis))
    throw new Refused({ path: 'axis', found: JSON.stringify(axis), allowed: `one of ${names.join(', ')}` });
  if (!(Math.abs(position) <= FARTHEST)) {
    const allowed = `a number from ${-FARTHEST} to ${FARTHEST}`;
    throw new Refused({ path: 'position', found: String(position), allowed });
  }
  const shot = shotNumbered(plan, place.shot);
  const frame = wholeWithin('frame of a keyframe', framesAt(plan, place).first, 1, MAX_FRAMES);
  const frames = shotFrames(shot, plan.clip.frameRate);
  const tracks = [...tracksOf(plan, shot)];
  const index = tracks.findIndex((track) => track.axis === axis);
  const known = tracks[index];
  const track = known
    ? withKeyframe(plan, known, frames, frame, position)
    : memberSchemas.track.parse({ axis, keyframes: [{ at: 'frame', frame, position }] });
  if (known) tracks[index] = track;
  else tracks.push(track);
  return withSheet(plan, {
    shots: shotsWith(plan, place.shot, { tracks: listWithin('tracks', tracks, 12) }),
  });
}

/** Index of each keyframe in the shot, counted from 0, whole or between two frames. */
function indicesOf(plan: Plan, track: Track, frames: number): number[] {
  const placed = placeKeyframes(track, shotClock(frames, plan.clip.frameRate));
  return placed.keyframes.map(({ share }) => share * (placed.lastIndex || 1));
}

function withKeyframe(plan: Plan, track: Track, frames: number, frame: number, position: number): Track {
  const oneWay = track.thereAndBack ? writtenOut(plan, track, frames) : track;
  const indices = indicesOf(plan, oneWay, frames);
  const index = frame - 1;
  const same = indices.findIndex((at) => Math.abs(at - index) < 1e-6);
  if (same !== -1) {
    const keyframes = oneWay.keyframes.map((keyframe, k) =>
      k === same ? { ...keyframe, position } : keyframe,
    );
    return { ...oneWay, keyframes };
  }
  const after = indices.filter((at) => at < index).length;
  const ease = (oneWay.keyframes[after - 1] ?? oneWay.keyframes[after])?.ease;
  const keyframe = memberSchemas.keyframe.parse({ at: 'frame', frame, position, ease });
  const keyframes = [...oneWay.keyframes.slice(0, after), keyframe, ...oneWay.keyframes.slice(after)];
  return { ...oneWay, keyframes: listWithin('keyframes', keyframes, MOST_KEYFRAMES) };
}

/** The same ease run backwards. */
function backwards(ease: Ease): Ease {
  if (ease.kind === 'ramped') return { ...ease, headShare: ease.tailShare, tailShare: ease.headShare };
  if (ease.kind !== 'cubicBezier') return ease;
  const { x1, y1, x2, y2 } = ease;
  return { ...ease, x1: 1 - x2, y1: 1 - y2, x2: 1 - x1, y2: 1 - y1 };
}

/**
 * A track that comes back as one that goes on: its keyframes, and the same in reverse, at shares of the shot.
 *
 * One that stays and goes in a single move goes in that move on the way back too: right after the keyframe there.
 */
function writtenOut(plan: Plan, track: Track, frames: number): Track {
  const last = frames - 1 || 1;
  const indices = indicesOf(plan, track, frames);
  const at = (index: number, keyframe: Keyframe, ease: Ease): Keyframe => ({
    ...keyframe,
    at: 'share',
    share: Math.min(1, Math.max(0, index / last)),
    ease,
  });
  const there = track.keyframes.map((keyframe, k) => at(indices[k] as number, keyframe, keyframe.ease));
  const back = track.keyframes.flatMap((keyframe, k): Keyframe[] => {
    const before = track.keyframes[k - 1];
    const index = last - (indices[k] as number);
    if (before?.ease.kind !== 'hold') return [at(index, keyframe, backwards(before?.ease ?? keyframe.ease))];
    const held = { ...keyframe, position: before.position };
    return [at(index + 1, held, before.ease), at(index, keyframe, { kind: 'linear' })];
  });
  const all = [...there, ...back.reverse()].filter(
    ({ share }, k, list) => k === 0 || share > (list[k - 1] as Keyframe).share,
  );
  return { ...track, thereAndBack: false, keyframes: listWithin('keyframes', all, MOST_KEYFRAMES) };
}

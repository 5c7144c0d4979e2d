/** What is left of the tracks of a run from a frame on, as tracks of their own. */

import { ramped } from '../motion/ease.ts';
import { splitEase } from '../motion/ease-split.ts';
import { type PlacedKeyframe, placeKeyframes, runClock } from '../motion/keyframes.ts';
import { stepsPerUnit } from '../motion/tracks.ts';
import type { Ease, Keyframe, Plan, Track } from '../plan/schema.ts';
import type { Schedule } from '../schedule-types.ts';

/** A keyframe at an index of the run, whole or not. */
interface Point {
  index: number;
  position: number;
  ease: Ease;
}

/** An ease gone backwards. A hold has none: it jumps at its beginning. */
function reversed(ease: Ease): Ease {
  if (ease.kind === 'ramped') return { ...ease, headShare: ease.tailShare, tailShare: ease.headShare };
  if (ease.kind !== 'cubicBezier') return ease;
  const { x1, y1, x2, y2 } = ease;
  return { kind: 'cubicBezier', x1: 1 - x2, y1: 1 - y2, x2: 1 - x1, y2: 1 - y1 };
}

/** Half a frame: between two frames nothing is shot, so that a jump there is one from frame to frame. */
const BETWEEN = 0.5;

/** The way back of a track, behind its way there. */
function backOf(there: readonly Point[], last: number): Point[] {
  return there.toReversed().flatMap((point, i, back): Point[] => {
    const towards = back[i + 1];
    const index = last - point.index;
    if (towards?.ease.kind !== 'hold')
      return [{ ...point, index, ease: reversed(towards?.ease ?? point.ease) }];
    return [
      { ...point, index, ease: { kind: 'linear' } },
      { ...towards, index: index + BETWEEN, ease: { kind: 'hold' } },
    ];
  });
}

/**
 * An ease of constant acceleration, speed and deceleration in those three parts, each of which is cut exactly.
 * @param to - where it leads
 */
function inParts(from: Point, to: Point | undefined): Point[] {
  const { ease, index, position } = from;
  if (ease.kind !== 'ramped' || !to || to.index <= index) return [from];
  const { headShare, tailShare } = ease;
  const [head, both] = headShare > 0 && headShare < 1 ? splitEase(ease, headShare) : [null, ease];
  const atU = (u: number) => position + (to.position - position) * ramped(u, headShare, tailShare);
  const at = (u: number, part: Ease) => ({
    index: index + u * (to.index - index),
    position: atU(u),
    ease: part,
  });
  const u = 1 - tailShare;
  if (tailShare <= 0 || u <= headShare) return head ? [{ ...from, ease: head }, at(headShare, both)] : [from];
  const [even, tail] = splitEase(both, (u - headShare) / (1 - headShare));
  const last = at(u, tail);
  return head ? [{ ...from, ease: head }, at(headShare, even), last] : [{ ...from, ease: even }, last];
}

/** The points of a track over the whole run, the way back written out. */
function pointsOf(track: Track, made: Schedule): Point[] {
  const last = made.totals.frames - 1;
  const { keyframes, lastIndex } = placeKeyframes(track, runClock(made.columns.intervalS));
  const point = ({ share, position, ease }: PlacedKeyframe) => ({ index: share * lastIndex, position, ease });
  const there = keyframes.map(point).flatMap((from, i, all) => inParts(from, all[i + 1]));
  if (!track.thereAndBack) return there;
  const turn = there.at(-1);
  const back = backOf(there, last);
  return turn && turn.index >= last / 2 ? [...there.slice(0, -1), ...back] : [...there, ...back];
}

/** The points before an index, with the ease towards it cut there: a point at `position` ends them. */
function upTo(points: readonly Point[], index: number, positionAt: (index: number) => number): Point[] {
  const over = points.findIndex((point) => point.index > index);
  if (over === -1) return [...points];
  // Before the first keyframe the axis waits at it.
  if (over === 0) return [{ ...(points[0] as Point), index }];
  const from = points[over - 1] as Point;
  const to = points[over] as Point;
  const u = (index - from.index) / (to.index - from.index);
  if (u <= 0) return points.slice(0, over);
  const [before] = splitEase(from.ease, u);
  const end = { index, position: positionAt(index), ease: { kind: 'linear' as const } };
  return [...points.slice(0, over - 1), { ...from, ease: before }, end];
}

/** The points from an index on, beginning with one at `position`. */
function fromOn(points: readonly Point[], index: number, position: number): Point[] {
  const next = points.findIndex((point) => point.index > index);
  if (next === -1) return [{ index, position, ease: { kind: 'linear' } }];
  const to = points[next] as Point;
  const from = points[next - 1];
  if (!from) return [...points];
  const u = (index - from.index) / (to.index - from.index);
  const ease = u <= 0 ? from.ease : splitEase(from.ease, u)[1];
  return [{ index, position, ease }, ...points.slice(next)];
}

// Less than any frame.
const APART = 1e-9;

/** Keyframes at shares of the rest, each later than the one before; what would be later than its end is not reached. */
function keyframesOf(points: readonly Point[], first: number, span: number): Keyframe[] {
  const keyframes: Keyframe[] = [];
  for (const { index, position, ease } of points) {
    const before = keyframes.at(-1)?.share ?? -APART;
    const share = Math.max(before + APART, Math.min(1, (index - first) / span));
    if (share <= 1) keyframes.push({ at: 'share', share, frame: 1, timeS: 0, position, ease });
  }
  return keyframes;
}

/** A track that stays where it is. */
const resting = (axis: string, position: number): Track => ({
  axis,
  keyframes: [{ at: 'share', share: 0, frame: 1, timeS: 0, position, ease: { kind: 'linear' } }],
  thereAndBack: false,
});

/**
 * What is left of the tracks.
 * @param made - schedule of the whole
 * @param first - index of the first frame of the rest
 * @param last - index of the last one; with none left the axes stay where the last frame has them
 * @returns tracks over the rest alone, whatever number of frames it has in the end; where an ease is cut, see
 *   `splitEase` for how nearly it goes on
 */
export function restTracks(plan: Plan, made: Schedule, first: number, last: number): Track[] {
  return plan.move.tracks.map((track) => {
    const axis = plan.rig.axes.find(({ name }) => name === track.axis);
    const columns = made.columns.axes.find(({ name }) => name === track.axis);
    if (!axis || !columns) return track;
    const positionAt = (index: number) => (columns.steps[Math.round(index)] ?? 0) / stepsPerUnit(axis);
    if (first >= last) return resting(track.axis, positionAt(Math.min(first, last)));
    const points = fromOn(upTo(pointsOf(track, made), last, positionAt), first, positionAt(first));
    const keyframes = keyframesOf(points, first, last - first);
    return { axis: track.axis, keyframes, thereAndBack: false };
  });
}

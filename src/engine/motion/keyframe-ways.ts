/** Ways out by the keyframes of a track: how it goes from one to the next, and where in the run they stand. */
import { planWith, tidy, way, wayOver } from '../fixes/build.ts';
import type { Way } from '../fixes/types.ts';
import type { Edit } from '../plan/paths.ts';
import type { Ease, Plan } from '../plan/schema.ts';
import { placeKeyframes, runClock } from './keyframes.ts';
import { isMoving, trackOf } from './track-ways.ts';

const ramped = (share: number): Ease => ({ kind: 'ramped', headShare: share, tailShare: share });

/** Gentler and gentler: over its share h of the time an axis speeds up by 1 / (h (1 - h)), way and time being 1. */
const GENTLE: readonly Ease[] = [0.1, 0.2, 0.3, 0.4, 0.5].map(ramped);
/** Evener and evener: the peak speed is 1 / (1 - h), down to 1. */
const EVEN: readonly Ease[] = [...[0.4, 0.3, 0.2, 0.1].map(ramped), { kind: 'linear' }];

/** Peak speed of an ease over its mean speed, from its formula; null where it depends on its handles. */
function peakSpeed(ease: Ease): number | null {
  if (ease.kind === 'linear') return 1;
  if (ease.kind === 'smooth') return 1.5;
  if (ease.kind === 'smoother') return 15 / 8;
  return ease.kind === 'ramped' ? 1 / (1 - (ease.headShare + ease.tailShare) / 2) : null;
}

function eased(plan: Plan, axis: string, kind: string, eases: readonly Ease[], text: string): Way[] {
  const placed = trackOf(plan, axis);
  if (!placed || !isMoving(placed)) return [];
  const { keyframes } = placed.track;
  const path = (k: number) => `move.tracks.${placed.index}.keyframes.${k}.ease`;
  return wayOver(eases, {
    plan,
    kind: `${kind}:${axis}`,
    edits: (ease) =>
      keyframes.flatMap((keyframe, k): Edit[] =>
        k === keyframes.length - 1 || keyframe.ease.kind === 'hold' ? [] : [[path(k), ease]],
      ),
    label: () => text,
  });
}

/** The axis speeds up and slows down over more of its way. */
export function gentlerEase(plan: Plan, axis: string): Way[] {
  const first = trackOf(plan, axis)?.track.keyframes[0]?.ease;
  const share = first?.kind === 'ramped' ? Math.min(first.headShare, first.tailShare) : 0;
  const gentler = GENTLE.filter((ease) => ease.kind === 'ramped' && ease.headShare > share + 1e-9);
  return eased(plan, axis, 'ease-gentler', gentler, `A gentler start and stop of ${axis}’s move`);
}

/** The axis goes more evenly: slower in the middle, sooner at its ends. */
export function evenerEase(plan: Plan, axis: string): Way[] {
  const first = trackOf(plan, axis)?.track.keyframes[0]?.ease;
  const present = first ? (peakSpeed(first) ?? Number.POSITIVE_INFINITY) : 0;
  const evener = EVEN.filter((ease) => (peakSpeed(ease) ?? 1) < present - 1e-9);
  return eased(plan, axis, 'ease-evener', evener, `An evener speed of ${axis}’s move`);
}

/** Index of the frame, counted from 0, that a track's last keyframe is meant to stand at; 0 without a track. */
export function lastMeant(plan: Plan, axis: string, intervalS: Float64Array): number {
  const track = trackOf(plan, axis)?.track;
  if (!track) return 0;
  const { faults } = placeKeyframes(track, runClock(intervalS));
  return Math.max(0, ...faults.map(({ index }) => index)) * (track.thereAndBack ? 2 : 1);
}

/** Keyframes that do not do what they say: their places are shares of the run, the last one at its end. */
export function keyframesFitted(plan: Plan, axis: string, intervalS: Float64Array): Way[] {
  const placed = trackOf(plan, axis);
  if (!placed) return [];
  const { track, index } = placed;
  const { faults, lastIndex, keyframes: stand } = placeKeyframes(track, runClock(intervalS));
  const meantAt = (k: number): number =>
    faults.find(({ keyframe }) => keyframe === k + 1)?.index ?? (stand[k]?.share ?? 0) * lastIndex;
  const farthest = Math.max(lastIndex, ...track.keyframes.map((_, k) => meantAt(k)));
  // In the order in which they were meant to come.
  const keyframes = track.keyframes
    .map((keyframe, k) => ({
      ...keyframe,
      at: 'share' as const,
      share: tidy(meantAt(k) / (farthest || 1), 4),
    }))
    .sort((a, b) => a.share - b.share);
  return way({
    kind: `keyframes-fitted:${axis}`,
    steps: 1,
    at: () => planWith(plan, [[`move.tracks.${index}.keyframes`, keyframes]]),
    label: () => `Fit ${axis}’s keyframes into the run`,
  });
}

/** Keyframes that do not do what they say are left out. */
export function keyframesDropped(plan: Plan, axis: string, intervalS: Float64Array): Way[] {
  const placed = trackOf(plan, axis);
  if (!placed) return [];
  const { track, index } = placed;
  const { faults } = placeKeyframes(track, runClock(intervalS));
  const kept = track.keyframes.filter((_, k) => faults.every((fault) => fault.keyframe !== k + 1));
  const dropped = track.keyframes.length - kept.length;
  return way({
    kind: `keyframes-dropped:${axis}`,
    steps: kept.length > 0 && dropped > 0 ? 1 : 0,
    at: () => planWith(plan, [[`move.tracks.${index}.keyframes`, kept]]),
    label: () =>
      `Leave out ${dropped === 1 ? 'the misplaced keyframe' : `${dropped} misplaced keyframes`} of ${axis}`,
    needs: 'another move',
  });
}

/** Ways out by the tracks: shorter, elsewhere, gentler, and keyframes back to where they can be. */
import { withUnit } from '../findings/words.ts';
import { planWith, tidy, way, wayOver } from '../fixes/build.ts';
import type { Way } from '../fixes/types.ts';
import type { Edit } from '../plan/paths.ts';
import type { Axis, Ease, Plan, Track } from '../plan/schema.ts';
import { placeKeyframes, runClock } from './keyframes.ts';
import { takeUpOf } from './take-up.ts';

/** A track with its place in the plan. */
interface Placed {
  track: Track;
  index: number;
  axis: Axis;
}

const placedTracks = ({ move, rig }: Plan): Placed[] =>
  move.tracks.flatMap((track, index) => {
    const axis = rig.axes.find(({ name }) => name === track.axis);
    return axis ? [{ track, index, axis }] : [];
  });

const trackOf = (plan: Plan, axis: string): Placed | undefined =>
  placedTracks(plan).find(({ track }) => track.axis === axis);

const positionsOf = ({ keyframes }: Track): number[] => keyframes.map(({ position }) => position);

const isMoving = ({ track }: Placed): boolean => new Set(positionsOf(track)).size > 1;

/** Edits that put every keyframe of a track elsewhere. */
const repositioned = ({ track, index }: Placed, to: (position: number) => number): Edit[] =>
  track.keyframes.map(({ position }, k) => [
    `move.tracks.${index}.keyframes.${k}.position`,
    tidy(to(position), 3),
  ]);

/** The same move over a smaller way, from where it begins. */
const scaled = (placed: Placed, share: number): Edit[] => {
  const first = placed.track.keyframes[0]?.position ?? 0;
  return repositioned(placed, (position) => first + (position - first) * share);
};

const spanOf = (track: Track): number => Math.max(...positionsOf(track)) - Math.min(...positionsOf(track));

/** One hundredth less at each step. */
const shareAt = (step: number): number => tidy(1 - step / 100, 2);

const MOST_SMALLER = 95;

/** The step at which a track is scaled to a share. */
const stepFor = (share: number): number => Math.ceil((1 - share) * 100 - 1e-9);

/** One axis moves over a smaller way. @param share - of the present way that should just suffice */
export function smallerTrack(plan: Plan, axis: string, share = 0.99): Way[] {
  const placed = trackOf(plan, axis);
  if (!placed || !isMoving(placed)) return [];
  return way({
    kind: `track-smaller:${axis}`,
    steps: MOST_SMALLER,
    first: stepFor(share),
    at: (step) => planWith(plan, scaled(placed, shareAt(step))),
    label: (changed) => {
      const track = changed.move.tracks[placed.index] ?? placed.track;
      return `Shorten ${axis}’s move to ${withUnit(tidy(spanOf(track), 2), placed.axis.unit)}`;
    },
    needs: 'less of a move to see',
  });
}

/** All axes move over a smaller way. @param share - of the present way that should just suffice */
export function smallerTracks(plan: Plan, share = 0.99): Way[] {
  const moving = placedTracks(plan).filter(isMoving);
  const [first] = moving;
  if (!first) return [];
  if (moving.length === 1) return smallerTrack(plan, first.track.axis, share);
  const shareOf = (changed: Plan) =>
    spanOf(changed.move.tracks[first.index] ?? first.track) / spanOf(first.track);
  return way({
    kind: 'tracks-smaller',
    steps: MOST_SMALLER,
    first: stepFor(share),
    at: (step) =>
      planWith(
        plan,
        moving.flatMap((placed) => scaled(placed, shareAt(step))),
      ),
    label: (changed) => `Shorten all moves to ${Math.round(100 * shareOf(changed))}\u00A0%`,
    needs: 'less of a move to see',
  });
}

/** Where an axis may be sent: it overruns on its way to a position, if it arrives from one side. */
function limitsOf({ move }: Plan, axis: Axis): [number, number] {
  const { side, overrun } = takeUpOf(axis);
  const past = move.mode === 'moveShootMove' ? overrun : 0;
  return [axis.travelMin + (side === 1 ? past : 0), axis.travelMax - (side === -1 ? past : 0)];
}

/** Keyframes beyond the travel go to its end. */
export function trackClamped(plan: Plan, axis: string): Way[] {
  const placed = trackOf(plan, axis);
  if (!placed) return [];
  const [low, high] = limitsOf(plan, placed.axis);
  const within = (position: number) => Math.min(high, Math.max(low, position));
  if (low > high || positionsOf(placed.track).every((position) => within(position) === position)) return [];
  return way({
    kind: `track-clamped:${axis}`,
    steps: 1,
    at: () => planWith(plan, repositioned(placed, within)),
    label: () => `End ${axis}’s move at its limits`,
    needs: 'less of a move to see',
  });
}

/** The whole track elsewhere, its shape kept. @param by - in the axis's unit */
export function trackShifted(plan: Plan, axis: string, by: number): Way[] {
  const placed = trackOf(plan, axis);
  if (!placed || !Number.isFinite(by) || by === 0) return [];
  const size = Math.abs(by);
  const unit = size >= 10 ? 1 : size >= 1 ? 0.1 : 0.001;
  const wholeBy = Math.sign(by) * tidy(Math.ceil(size / unit - 1e-9) * unit, 3);
  return way({
    kind: `track-shifted:${axis}`,
    steps: 1,
    at: () =>
      planWith(
        plan,
        repositioned(placed, (position) => position + wholeBy),
      ),
    label: () => `Shift ${axis}’s move by ${withUnit(wholeBy, placed.axis.unit)}`,
    needs: 'another framing',
  });
}

const ramped = (share: number): Ease => ({ kind: 'ramped', headShare: share, tailShare: share });

/** From the gentlest start to the hardest: peak acceleration 4 to infinite, peak speed 2 down to 1. */
const GENTLE: readonly Ease[] = [0.1, 0.2, 0.3, 0.4, 0.5].map(ramped);
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

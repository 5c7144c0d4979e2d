/** Ways out by the tracks: shorter, elsewhere, or ending where the axis does. */
import { withUnit } from '../findings/words.ts';
import { planWith, tidy, way } from '../fixes/build.ts';
import type { Way } from '../fixes/types.ts';
import type { Edit } from '../plan/paths.ts';
import type { Axis, Plan, Track } from '../plan/schema.ts';
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

/** The track of an axis; undefined if it has none. */
export const trackOf = (plan: Plan, axis: string): Placed | undefined =>
  placedTracks(plan).find(({ track }) => track.axis === axis);

const positionsOf = ({ keyframes }: Track): number[] => keyframes.map(({ position }) => position);

/** Whether a track goes anywhere. */
export const isMoving = ({ track }: Placed): boolean => new Set(positionsOf(track)).size > 1;

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

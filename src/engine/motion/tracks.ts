/** Keyframe tracks: the position of an axis at every frame, in whole microsteps. */
import type { Axis, Track } from '../plan/schema.ts';
import { fillEased, type Stretch } from './eased-steps.ts';
import { type PlacedTrack, placeKeyframes, type RunClock } from './keyframes.ts';

/** Microsteps that move an axis by one of its units (mm or degrees). */
export const stepsPerUnit = (axis: Axis): number =>
  (axis.fullStepsPerTurn * axis.microsteps * axis.gearRatio) / axis.unitsPerTurn;

/** Frames of the run that a track fills by itself: all, or the first half if it comes back. */
const framesOf = (track: Track, frames: number): number =>
  track.thereAndBack ? Math.ceil(frames / 2) : frames;

/**
 * Fills the steps of an axis for a whole run.
 * @param steps - one entry a frame, to be filled: whole microsteps from the axis's zero
 * @param track - undefined for an axis that stays at its zero, or at the nearest end of its travel if zero is outside
 * @param clock - of the run
 *
 * Before the first keyframe the axis waits at it, after the last it stays. There and back runs the track in the
 * first half and mirrors it exactly in the second.
 */
export function fillSteps(steps: Int32Array, axis: Axis, track: Track | undefined, clock: RunClock): void {
  const perUnit = stepsPerUnit(axis);
  if (!track) {
    steps.fill(Math.round(Math.min(Math.max(0, axis.travelMin), axis.travelMax) * perUnit));
    return;
  }
  const count = framesOf(track, steps.length);
  const { keyframes } = track;
  const stretches = stretchesOf(placeKeyframes(track, clock), count, perUnit);
  const ends = (i: number) => Math.round((keyframes.at(i)?.position ?? 0) * perUnit);
  steps.fill(ends(0), 0, stretches[0]?.begin ?? count);
  stretches.forEach((stretch, i) => {
    fillEased(steps, keyframes[i]?.ease ?? { kind: 'linear' }, stretch);
  });
  steps.fill(ends(-1), stretches.at(-1)?.end ?? count, count);
  for (let k = count; k < steps.length; k += 1) steps[k] = steps[steps.length - 1 - k] as number;
}

/** From each keyframe to the next, within the first `count` frames. */
function stretchesOf({ keyframes, lastIndex }: PlacedTrack, count: number, perUnit: number): Stretch[] {
  /** First index beyond a share of the run, at most `count`. */
  const beyond = (share: number): number => {
    let index = Math.max(0, Math.floor(share * lastIndex) - 1);
    while (index < count && (lastIndex > 0 ? index / lastIndex : 0) <= share) index += 1;
    return Math.min(index, count);
  };
  return keyframes.slice(1).map((to, i) => {
    const from = keyframes[i] ?? to;
    const place = { position: from.position, travel: to.position - from.position, perUnit };
    const time = { lastIndex, fromShare: from.share, span: to.share - from.share };
    return { begin: beyond(from.share), end: beyond(to.share), ...time, ...place };
  });
}

/** From one index to the one before another. */
export interface Span {
  begin: number;
  end: number;
}

/**
 * Frames before which a track goes on, whether its axis makes a whole step of it or not.
 * @returns spans of indices in order, those of the way back left out
 */
export function goingOn(track: Track, clock: RunClock): Span[] {
  const count = framesOf(track, clock.frames);
  const placed = placeKeyframes(track, clock);
  const spans: Span[] = [];
  let from = 1;
  stretchesOf(placed, count, 1).forEach(({ begin, end, travel, lastIndex }, i) => {
    if (travel === 0 || placed.keyframes[i]?.ease.kind === 'hold') return;
    // A stretch that ends between two frames still goes on before the second of them.
    const goesOver = (end - 1) / lastIndex < (placed.keyframes[i + 1]?.share ?? 0);
    const last = Math.min(count, goesOver ? end + 1 : end);
    spans.push({ begin: Math.max(from, begin), end: last });
    from = Math.max(from, last);
  });
  return spans;
}

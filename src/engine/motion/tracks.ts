/** Keyframe tracks: the position of an axis at every frame, in whole microsteps. */
import type { Axis, Keyframe, Track } from '../plan/schema.ts';
import { fillEased } from './eased-steps.ts';

/** Microsteps that move an axis by one of its units (mm or degrees). */
export const stepsPerUnit = (axis: Axis): number =>
  (axis.fullStepsPerTurn * axis.microsteps * axis.gearRatio) / axis.unitsPerTurn;

/**
 * Fills the steps of an axis for a whole run.
 * @param steps - one entry a frame, to be filled: whole microsteps from the axis's zero
 * @param track - keyframes at shares of the run, or undefined for an axis that stays at its zero, or at the
 *   nearest end of its travel if zero is outside
 *
 * Before the first keyframe the axis waits at it, after the last it stays. There and back runs the track in the
 * first half and mirrors it exactly in the second.
 */
export function fillSteps(steps: Int32Array, axis: Axis, track: Track | undefined): void {
  const perUnit = stepsPerUnit(axis);
  if (!track) {
    steps.fill(Math.round(Math.min(Math.max(0, axis.travelMin), axis.travelMax) * perUnit));
    return;
  }
  const frames = steps.length;
  if (!track.thereAndBack) {
    fillRange(steps, frames, frames - 1, track.keyframes, perUnit);
    return;
  }
  const half = Math.ceil(frames / 2);
  fillRange(steps, half, (frames - 1) / 2, track.keyframes, perUnit);
  for (let k = half; k < frames; k += 1) steps[k] = steps[frames - 1 - k] ?? 0;
}

/**
 * Fills the first `count` entries.
 * @param lastIndex - index (whole or half) at which the track ends: share of the run = index / lastIndex
 */
function fillRange(
  steps: Int32Array,
  count: number,
  lastIndex: number,
  keyframes: readonly Keyframe[],
  perUnit: number,
): void {
  const first = keyframes[0] as Keyframe;
  const final = keyframes.at(-1) as Keyframe;
  /** First index beyond a share of the run, at most `count`. */
  const beyond = (share: number): number => {
    let index = Math.max(0, Math.floor(share * lastIndex) - 1);
    while (index < count && (lastIndex > 0 ? index / lastIndex : 0) <= share) index += 1;
    return Math.min(index, count);
  };
  let k = beyond(first.share);
  steps.fill(Math.round(first.position * perUnit), 0, k);
  for (let i = 1; i < keyframes.length; i += 1) {
    const from = keyframes[i - 1] as Keyframe;
    const to = keyframes[i] as Keyframe;
    const begin = k;
    const end = beyond(to.share);
    const travel = to.position - from.position;
    const time = { fromShare: from.share, span: to.share - from.share, lastIndex };
    fillEased(steps, from.ease, { begin, end, ...time, position: from.position, travel, perUnit });
    k = Math.max(begin, end);
  }
  steps.fill(Math.round(final.position * perUnit), k, count);
}

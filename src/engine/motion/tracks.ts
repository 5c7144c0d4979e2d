/** Keyframe tracks: the position of an axis at every frame, in whole microsteps. */
import type { Axis, Keyframe, Track } from '../plan/schema.ts';
import { easeAll } from './ease.ts';

/** Microsteps that move an axis by one of its units (mm or degrees). */
export const stepsPerUnit = (axis: Axis): number =>
  (axis.fullStepsPerTurn * axis.microsteps * axis.gearRatio) / axis.unitsPerTurn;

/**
 * Fills the steps of an axis for a whole run.
 * @param steps - one entry a frame, to be filled: whole microsteps from the axis's zero
 * @param track - keyframes at shares of the run, or undefined for an axis that stays at its zero, or at the
 *   nearest end of its travel if zero is outside
 * @param scratch - room for one number a frame; what stood there is lost
 *
 * Before the first keyframe the axis waits at it, after the last it stays. There and back runs the track in the
 * first half and mirrors it exactly in the second.
 */
export function fillSteps(
  steps: Int32Array,
  axis: Axis,
  track: Track | undefined,
  scratch: Float64Array,
): void {
  const perUnit = stepsPerUnit(axis);
  if (!track) {
    steps.fill(Math.round(Math.min(Math.max(0, axis.travelMin), axis.travelMax) * perUnit));
    return;
  }
  const frames = steps.length;
  if (!track.thereAndBack) {
    fillRange(steps, frames, frames - 1, track.keyframes, perUnit, scratch);
    return;
  }
  const half = Math.ceil(frames / 2);
  fillRange(steps, half, (frames - 1) / 2, track.keyframes, perUnit, scratch);
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
  shares: Float64Array,
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
    fillShares(shares, begin, end, lastIndex, from.share, to.share - from.share);
    easeAll(shares, begin, end, from.ease);
    fillRounded(steps, shares, begin, end, from.position, to.position - from.position, perUnit);
    k = Math.max(begin, end);
  }
  steps.fill(Math.round(final.position * perUnit), k, count);
}

/** Time shares within a segment that begins at share `fromShare` of the run and lasts for `span` of it. */
function fillShares(
  shares: Float64Array,
  begin: number,
  end: number,
  lastIndex: number,
  fromShare: number,
  span: number,
): void {
  if (span === 1) for (let k = begin; k < end; k += 1) shares[k] = k / lastIndex;
  else for (let k = begin; k < end; k += 1) shares[k] = (k / lastIndex - fromShare) / span;
}

function fillRounded(
  steps: Int32Array,
  shares: Float64Array,
  begin: number,
  end: number,
  position: number,
  travel: number,
  perUnit: number,
): void {
  for (let k = begin; k < end; k += 1) {
    steps[k] = Math.round((position + travel * (shares[k] as number)) * perUnit);
  }
}

/** Where the keyframes of a track fall in the run: shares, frames and times, all as shares. */

import type { Ease, Keyframe, Track } from '../plan/schema.ts';
import { lastWhere } from '../search.ts';

/** The run as keyframes see it. */
export interface RunClock {
  frames: number;
  /** Index, whole or between two frames, at a time from the first shutter opening; past the last it goes on. */
  indexAt: (timeS: number) => number;
}

/** A keyframe at a share of the run, or of its first half if the track comes back. */
export interface PlacedKeyframe {
  share: number;
  position: number;
  ease: Ease;
}

/** A keyframe that does not do what it says: it stands no later than the one before, or is never reached. */
export interface KeyframeFault {
  /** Counted from 1. */
  keyframe: number;
  what: 'order' | 'beyond';
  /** Index, counted from 0, of where it was meant to be. */
  index: number;
}

/** The keyframes of a track as they are, and what is wrong with them. */
export interface PlacedTrack {
  /** Index (whole or half) at which the track ends: share = index / lastIndex. */
  lastIndex: number;
  /** In order. */
  keyframes: PlacedKeyframe[];
  faults: KeyframeFault[];
}

// Sums of many intervals carry a rounding: a time this near to a frame is that frame.
const NEAR = 1e-6;

/**
 * The clock of a run.
 * @param intervalS - seconds from each frame to the next, positive, one entry a frame
 */
export function runClock(intervalS: Float64Array): RunClock {
  let elapsedS: Float64Array | null = null;
  const indexAt = (timeS: number): number => {
    elapsedS ??= summed(intervalS);
    const opensS = elapsedS;
    const k = lastWhere(0, opensS.length, (i) => (opensS[i] as number) <= timeS);
    const index = k + (timeS - (opensS[k] as number)) / (intervalS[k] as number);
    const whole = Math.round(index);
    return Math.abs(index - whole) < NEAR ? whole : index;
  };
  return { frames: intervalS.length, indexAt };
}

function summed(intervalS: Float64Array): Float64Array {
  const elapsedS = new Float64Array(intervalS.length);
  for (let k = 1; k < elapsedS.length; k += 1)
    elapsedS[k] = (elapsedS[k - 1] as number) + (intervalS[k - 1] as number);
  return elapsedS;
}

function indexOf(keyframe: Keyframe, lastIndex: number, clock: RunClock): number {
  if (keyframe.at === 'frame') return keyframe.frame - 1;
  return keyframe.at === 'time' ? clock.indexAt(keyframe.timeS) : keyframe.share * lastIndex;
}

/**
 * Places the keyframes of a track.
 *
 * A share is one of the run, or of its first half if the track comes back; so are frames and times then: those of the
 * way there. A keyframe that would go backwards is moved up to the one before it; one beyond the run is gone towards
 * but not reached.
 */
export function placeKeyframes({ keyframes, thereAndBack }: Track, clock: RunClock): PlacedTrack {
  const lastIndex = thereAndBack ? (clock.frames - 1) / 2 : clock.frames - 1;
  const placed: PlacedKeyframe[] = [];
  const faults: KeyframeFault[] = [];
  let before = Number.NEGATIVE_INFINITY;
  keyframes.forEach((keyframe, i) => {
    const { at, position, ease } = keyframe;
    const index = indexOf(keyframe, lastIndex, clock);
    const share = at === 'share' ? keyframe.share : index / (lastIndex || 1);
    if (share <= before) faults.push({ keyframe: i + 1, what: 'order', index });
    // A run of one frame has no time for any.
    else if (share > 1 && lastIndex > 0) faults.push({ keyframe: i + 1, what: 'beyond', index });
    before = Math.max(before, share);
    placed.push({ share: before, position, ease });
  });
  return { lastIndex, keyframes: placed, faults };
}

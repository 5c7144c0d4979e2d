/** Keyframes at frames and times, out of order and beyond the run. */
import { describe, expect, test } from 'vitest';
import { placeKeyframes, runClock } from '../../../src/engine/motion/keyframes.ts';
import { newKeyframe } from '../../../src/engine/plan/parse.ts';
import type { Ease, Keyframe, Plan, Track } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { axisOf, plainPlan } from '../../reference/plans.ts';

const LINEAR: Ease = { kind: 'linear' };
const at = (place: Partial<Keyframe>, position: number, ease: Ease = LINEAR): Keyframe =>
  newKeyframe({ ...place, position, ease });
const frame = (number: number, position: number, ease?: Ease) =>
  at({ at: 'frame', frame: number }, position, ease);
const time = (timeS: number, position: number, ease?: Ease) => at({ at: 'time', timeS }, position, ease);
const share = (of: number, position: number, ease?: Ease) => at({ share: of }, position, ease);

const trackOf = (keyframes: Keyframe[], thereAndBack = false): Track => ({
  axis: 'A',
  keyframes,
  thereAndBack,
});

/** 100 steps a unit, frames every 10 s. */
const planOf = (frames: number, track: Track): Plan =>
  plainPlan(frames, 10, {
    rig: {
      axes: [axisOf({ name: 'A', fullStepsPerTurn: 100, microsteps: 1, unitsPerTurn: 1, travelMin: -1000 })],
    },
    move: { mode: 'moveShootMove', tracks: [track] },
  });

function positions(frames: number, keyframes: Keyframe[], thereAndBack = false): number[] {
  const steps = schedule(planOf(frames, trackOf(keyframes, thereAndBack))).columns.axes[0]?.steps ?? [];
  return Array.from(steps, (step) => step / 100);
}

const said = (frames: number, keyframes: Keyframe[], thereAndBack = false) =>
  schedule(planOf(frames, trackOf(keyframes, thereAndBack))).findings.filter(
    ({ id }) => id === 'keyframe-order',
  );

describe('where keyframes fall', () => {
  test('frames are counted from 1', () => {
    expect(positions(7, [frame(2, 1), frame(6, 5)])).toEqual([1, 1, 2, 3, 4, 5, 5]);
  });

  test('times count from the first shutter opening', () => {
    expect(positions(7, [time(10, 1), time(50, 5)])).toEqual([1, 1, 2, 3, 4, 5, 5]);
  });

  test('a stretch as long as the run may begin within it', () => {
    expect(positions(11, [frame(6, 0), frame(16, 10)])).toEqual([0, 0, 0, 0, 0, 0, 1, 2, 3, 4, 5]);
  });

  test('between two frames a time is between them', () => {
    expect(positions(5, [time(5, 0), time(35, 6)])).toEqual([0, 1, 3, 5, 6]);
  });

  test('all three kinds in one track', () => {
    expect(positions(9, [share(0, 0), frame(5, 4), time(60, 8), share(1, 0)])).toEqual([
      0, 1, 2, 3, 4, 6, 8, 4, 0,
    ]);
  });

  test('times go by the intervals as they are, also where these grow', () => {
    const clock = runClock(Float64Array.of(1, 2, 4, 8, 16));
    expect([0, 1, 2, 3, 7, 11, 15, 31].map(clock.indexAt)).toEqual([0, 1, 1.5, 2, 3, 3.5, 4, 5]);
  });

  test('a time that is a frame but for the rounding of a sum is that frame', () => {
    const clock = runClock(new Float64Array(100_000).fill(0.1));
    for (const index of [3, 7, 777, 9_999, 99_999]) expect(clock.indexAt(index / 10)).toBe(index);
  });

  test('there and back: frames and times are those of the way there', () => {
    expect(positions(9, [frame(1, 0), frame(5, 4)], true)).toEqual([0, 1, 2, 3, 4, 3, 2, 1, 0]);
    expect(positions(9, [time(10, 0), time(30, 4)], true)).toEqual([0, 0, 2, 4, 4, 4, 2, 0, 0]);
  });
});

describe('hold', () => {
  const HOLD: Ease = { kind: 'hold' };

  test('stays, and goes in the one move that ends at the next keyframe', () => {
    expect(positions(6, [frame(1, 2, HOLD), frame(4, 5, HOLD), frame(6, 3)])).toEqual([2, 2, 2, 5, 5, 3]);
    expect(positions(6, [time(0, 2, HOLD), time(30, 5, HOLD), time(50, 3)])).toEqual([2, 2, 2, 5, 5, 3]);
  });

  test('a keyframe between two frames is reached by the second', () => {
    expect(positions(4, [time(0, 2, HOLD), time(15, 5)])).toEqual([2, 2, 5, 5]);
  });

  test('is mirrored on the way back', () => {
    expect(positions(5, [frame(1, 2, HOLD), frame(2, 5)], true)).toEqual([2, 5, 5, 5, 2]);
  });
});

describe('what cannot be as it is written', () => {
  test('a keyframe that would go back is moved up to the one before', () => {
    const placed = placeKeyframes(
      trackOf([share(0, 0), share(0.5, 4), frame(3, 8), share(1, 0)]),
      runClock(new Float64Array(11).fill(1)),
    );
    expect(placed.keyframes.map((keyframe) => keyframe.share)).toEqual([0, 0.5, 0.5, 1]);
    expect(placed.faults).toEqual([{ keyframe: 3, what: 'order', index: 2 }]);
  });

  test('that is said, with its number', () => {
    const keyframes = [share(0, 0), share(0.5, 4), frame(3, 8), share(1, 0)];
    expect(positions(11, keyframes)).toEqual([0, 0.8, 1.6, 2.4, 3.2, 4, 6.4, 4.8, 3.2, 1.6, 0]);
    expect(said(11, keyframes)).toMatchObject([
      {
        severity: 'warning',
        subject: 'move',
        message: 'Keyframe 3 of A stands no later than keyframe 2, and is moved up to it.',
        values: { axis: 'A', keyframe: 3, misplaced: 1 },
      },
    ]);
  });

  test('two kinds at the same place are out of order too', () => {
    expect(said(11, [share(0, 0), share(0.5, 4), frame(6, 8)])).toHaveLength(1);
    expect(said(11, [share(0, 0), share(0.5, 4), frame(7, 8)])).toHaveLength(0);
  });

  test('one beyond the run is gone towards and not reached', () => {
    const keyframes = [frame(1, 0), frame(9, 8)];
    expect(positions(5, keyframes)).toEqual([0, 1, 2, 3, 4]);
    expect(said(5, keyframes)[0]?.message).toBe(
      'Keyframe 2 of A would be at frame 9, beyond the run of 5 frames: it is not reached.',
    );
    expect(positions(5, [time(0, 0), time(80, 8)])).toEqual([0, 1, 2, 3, 4]);
    expect(said(5, [time(0, 0), time(40, 8)])).toEqual([]);
    expect(said(5, [time(0, 0), time(41, 8)])).toHaveLength(1);
  });

  test('one beyond the turn is not reached either, and the rest are counted', () => {
    const keyframes = [frame(1, 0), frame(9, 8), frame(9, 9)];
    expect(positions(9, keyframes, true)).toEqual([0, 1, 2, 3, 4, 3, 2, 1, 0]);
    expect(said(9, keyframes, true)[0]?.message).toBe(
      'Keyframe 2 of A would be at frame 9, beyond the turn halfway through its 9 frames: it is not reached. 1 more of its keyframes are misplaced.',
    );
  });

  test('far beyond, and in a run of one frame', () => {
    expect(positions(3, [frame(1, 0), time(1e7, 1e6)])).toEqual([0, 1, 2]);
    expect(positions(1, [frame(1, 2), frame(7, 3), time(1e6, 4)])).toEqual([2]);
    expect(positions(2, [frame(2, 2), frame(7, 3)], true)).toEqual([2, 2]);
  });

  test('shares alone are never misplaced', () => {
    expect(said(2, [share(0, 0), share(0.1, 1), share(0.9, 2), share(1, 0)])).toEqual([]);
  });
});

test('moves are taken over from before an edit only where their times are the same', () => {
  const timed = planOf(5, trackOf([time(0, 0), time(40, 8)]));
  const before = schedule(timed);
  const slower: Plan = { ...timed, pacing: { ...timed.pacing, intervalS: 20 } };
  const after = schedule(slower, { before });
  expect(after.columns.axes[0]?.steps).toEqual(schedule(slower).columns.axes[0]?.steps);
  expect(after.columns.axes[0]?.steps).not.toEqual(before.columns.axes[0]?.steps);
});

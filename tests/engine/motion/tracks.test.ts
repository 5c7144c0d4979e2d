import { describe, expect, test } from 'vitest';
import { newKeyframe } from '../../../src/engine/plan/parse.ts';
import type { Axis, Ease, Plan } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { axisOf, plainPlan, type Some } from '../../reference/plans.ts';

type Point = [share: number, position: number, ease?: Ease];

/** Positions in the axis's unit at every frame; 100 steps a unit unless the axis says otherwise. */
function positions(
  frames: number,
  points: Point[],
  options: { back?: boolean; axis?: Some<Axis> } = {},
): number[] {
  const axis = axisOf({
    name: 'A',
    fullStepsPerTurn: 100,
    microsteps: 1,
    unitsPerTurn: 1,
    travelMin: -1000,
    ...options.axis,
  });
  const keyframes = points.map(([share, position, ease = { kind: 'linear' }]) =>
    newKeyframe({ share, position, ease }),
  );
  const plan: Plan = plainPlan(frames, 100, {
    rig: { axes: [axis] },
    move: {
      mode: 'moveShootMove',
      tracks: points.length > 0 ? [{ axis: 'A', keyframes, thereAndBack: options.back ?? false }] : [],
    },
  });
  const columns = schedule(plan).columns.axes[0];
  return Array.from(columns?.steps ?? [], (steps) => steps / (columns?.stepsPerUnit ?? Number.NaN));
}

describe('keyframes', () => {
  test('first frame at the first, last frame at the last', () => {
    expect(
      positions(5, [
        [0, 0],
        [1, 8],
      ]),
    ).toEqual([0, 2, 4, 6, 8]);
  });

  test('waits before the first and stays after the last', () => {
    expect(
      positions(9, [
        [0.25, 1],
        [0.75, 5],
      ]),
    ).toEqual([1, 1, 1, 2, 3, 4, 5, 5, 5]);
  });

  test('a single keyframe is a place to stand', () => {
    expect(positions(3, [[0.5, 7]])).toEqual([7, 7, 7]);
  });

  test('each stretch has the ease of the keyframe it starts from', () => {
    const got = positions(9, [
      [0, 0, { kind: 'smooth' }],
      [0.5, 8, { kind: 'linear' }],
      [1, 0],
    ]);
    // Smooth at 1/4, 1/2, 3/4: 0.15625, 0.5, 0.84375.
    expect(got).toEqual([0, 1.25, 4, 6.75, 8, 6, 4, 2, 0]);
  });

  test('a bezier may swing beyond its keyframes', () => {
    const got = positions(101, [
      [0, 0, { kind: 'cubicBezier', x1: 0.3, y1: -1, x2: 0.7, y2: 2 }],
      [1, 10],
    ]);
    expect(Math.min(...got)).toBeLessThan(-1);
    expect(Math.max(...got)).toBeGreaterThan(11);
    expect([got[0], got[50], got[100]]).toEqual([0, 5, 10]);
  });

  test('one frame, and two', () => {
    expect(
      positions(1, [
        [0, 3],
        [1, 9],
      ]),
    ).toEqual([3]);
    expect(
      positions(2, [
        [0, 3],
        [1, 9],
      ]),
    ).toEqual([3, 9]);
  });
});

describe('there and back', () => {
  test('odd: turns on the middle frame', () => {
    expect(
      positions(
        5,
        [
          [0, 0],
          [1, 4],
        ],
        { back: true },
      ),
    ).toEqual([0, 2, 4, 2, 0]);
  });

  test('even: the two middle frames stand at the same place, just short of the end', () => {
    expect(
      positions(
        6,
        [
          [0, 0],
          [1, 5],
        ],
        { back: true },
      ),
    ).toEqual([0, 2, 4, 4, 2, 0]);
  });

  test('an uneven ease is mirrored, not repeated', () => {
    const got = positions(
      201,
      [
        [0, 0, { kind: 'cubicBezier', x1: 0.42, y1: 0, x2: 1, y2: 1 }],
        [1, 90],
      ],
      { back: true },
    );
    expect(got.slice(0, 101)).toEqual(got.slice(100).reverse());
  });

  test('one frame, and two', () => {
    expect(
      positions(
        1,
        [
          [0, 3],
          [1, 9],
        ],
        { back: true },
      ),
    ).toEqual([3]);
    expect(
      positions(
        2,
        [
          [0, 3],
          [1, 9],
        ],
        { back: true },
      ),
    ).toEqual([3, 3]);
  });
});

describe('whole microsteps', () => {
  test('a slow move repeats positions rather than splitting steps', () => {
    expect(
      positions(5, [
        [0, 0],
        [1, 0.02],
      ]),
    ).toEqual([0, 0.01, 0.01, 0.02, 0.02]);
  });

  test('an axis without a track stays at zero, or at the end of its travel nearest to it', () => {
    expect(positions(2, [])).toEqual([0, 0]);
    expect(positions(2, [], { axis: { travelMin: 30, travelMax: 60 } })).toEqual([30, 30]);
    expect(positions(2, [], { axis: { travelMin: -60, travelMax: -30 } })).toEqual([-30, -30]);
  });
});

import { describe, expect, test } from 'vitest';
import { type PathSummary, pathOf } from '../../../src/engine/path/path.ts';
import { geometryOf, lensAt, stanceAt } from '../../../src/engine/path/pose.ts';
import type { Axis, Plan } from '../../../src/engine/plan/schema.ts';
import type { AxisColumns } from '../../../src/engine/schedule-types.ts';
import { sliding, stepsOf, turning } from '../../reference/path/rigs.ts';
import { plainPlan, type Some, straight } from '../../reference/plans.ts';

type Move = readonly [axis: Axis, from: number, to: number];

function planOf(
  frames: number,
  moves: readonly Move[],
  rig: Some<Plan['rig']> = {},
  thereAndBack = false,
): Plan {
  return plainPlan(frames, 10, {
    rig: { pivotHeightMm: 1000, ...rig, axes: moves.map(([axis]) => axis) },
    move: {
      mode: 'moveShootMove',
      tracks: moves.map(([{ name }, from, to]) => ({ ...straight(name, from, to), thereAndBack })),
    },
  });
}

function knownPath(plan: Plan, axes: readonly AxisColumns[]): PathSummary {
  const path = pathOf(plan, axes);
  if (!path) throw new Error('no path');
  return path;
}

const pathFor = (plan: Plan, frames: number) => knownPath(plan, stepsOf(plan, frames));

describe('the path', () => {
  test('of a slide is straight: no deviation, no sagitta, its travel is its length', () => {
    const slide = { bearingDeg: 90, inclineDeg: 30 };
    const path = pathFor(planOf(101, [[sliding(), 0, 800]], { slide }), 101);
    expect(path.lengthMm).toBeCloseTo(800, 6);
    expect(path.riseMm).toBeCloseTo(400, 6);
    expect(path.reachMm).toBeCloseTo(800 * Math.cos(Math.PI / 6), 6);
    expect(path.deviationMm).toBeLessThan(1e-9);
    expect(path).toMatchObject({ swingDeg: 0, sagittaMm: 0, clearanceMm: 1000 });
    expect(path.first).toEqual({ frame: 1, rightMm: 0, forwardMm: 0, heightMm: 1000 });
    expect(path.last.frame).toBe(101);
  });

  test('of an upright boom rises, and bulges by its sagitta', () => {
    // From 20 deg below level to 20 deg above: 684 mm up, chord 684, bulge 1000 (1 - cos 20).
    const path = pathFor(planOf(101, [[turning('boom'), -20, 20]], { arm: { lengthMm: 1000 } }), 101);
    expect(path.riseMm).toBeCloseTo(2000 * Math.sin(Math.PI / 9), 1);
    expect(path.sagittaMm).toBeCloseTo(60.307, 2);
    expect(path.deviationMm).toBeCloseTo(60.307, 2);
    expect(path.reachMm).toBeCloseTo(1000, 4);
    expect(path.clearanceMm).toBeCloseTo(1000 - 342.02, 1);
    expect(path.highest.frame).toBe(101);
    expect(path.lowest.frame).toBe(1);
  });

  test('there and back deviates from the line to where it turns', () => {
    const path = pathFor(planOf(101, [[turning('boom'), -20, 20]], {}, true), 101);
    expect(path.deviationMm).toBeCloseTo(60.307, 2);
    expect(path.lengthMm).toBeCloseTo((2 * 1000 * 40 * Math.PI) / 180, 0);
    expect(path.highest.frame).toBe(51);
  });

  test('of an arm in millimetres is as long as its travel', () => {
    const arc = { ...sliding(), name: 'boom', kind: 'boom' as const };
    const path = pathFor(planOf(501, [[arc, 0, 500]], { arm: { lengthMm: 1000 } }), 501);
    expect(path.swingDeg).toBeCloseTo(90 / Math.PI, 9);
    expect(path.lengthMm).toBeCloseTo(500, 2);
  });

  test('of a head alone is a point', () => {
    const path = pathFor(planOf(11, [[turning('pan'), 0, 90]]), 11);
    expect(path).toMatchObject({ riseMm: 0, reachMm: 0, lengthMm: 0, deviationMm: 0, clearanceMm: 1000 });
  });

  test('of a long run finds a short visit to the highest point', () => {
    const frames = 20_001;
    const plan = planOf(frames, [[turning('boom'), 0, 0]]);
    const axes = stepsOf(plan, frames);
    const boom = axes[0] as AxisColumns;
    boom.steps[12_345] = 16_000;
    boom.highestSteps = 16_000;
    boom.largestMoveSteps = 16_000;
    const path = knownPath(plan, axes);
    expect(path.highest.frame).toBe(12_346);
    expect(path.riseMm).toBeCloseTo(500, 6);
  });

  test('of a single frame is where it stands', () => {
    const path = pathFor(planOf(1, [[turning('boom'), 30, 60]]), 1);
    expect(path.first).toEqual(path.last);
    expect(path.first.heightMm).toBeCloseTo(1500, 6);
  });

  test('is none of a rig that neither moves nor turns anything', () => {
    expect(pathOf(planOf(3, [[turning('focus'), 0, 10]]), stepsOf(planOf(3, []), 3))).toBeNull();
    expect(pathOf(planOf(3, []), [])).toBeNull();
  });

  test('a second axis of a kind does nothing', () => {
    const plan = planOf(11, [
      [sliding(), 0, 100],
      [sliding({ name: 'other' }), 0, 500],
    ]);
    expect(pathFor(plan, 11).lengthMm).toBeCloseTo(100, 6);
    const place = lensAt(geometryOf(plan), stanceAt(plan, stepsOf(plan, 11), 10));
    expect(place.x).toBeCloseTo(100, 6);
  });
});

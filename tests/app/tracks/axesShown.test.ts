import { describe, expect, test } from 'vitest';
import { axesCharts } from '../../../src/app/charts/axesChart.ts';
import { runView } from '../../../src/app/charts/runView.ts';
import type { Quantity } from '../../../src/app/tracks/shown.ts';
import { movesOf, speedsOf } from '../../../src/engine/motion/speeds.ts';
import type { Axis, Plan } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { straight } from '../../reference/plans.ts';
import { testPlan } from '../plan.ts';

const spaced = (text: string) => text.replaceAll('\u00a0', ' ');

/** The plan of 301 frames 12 s apart; its slide goes from 0 to 300 mm, 1 mm and 80 microsteps a frame. */
function slide(changed: Partial<Axis> = {}, move: Partial<Plan['move']> = {}): Plan {
  const plan = testPlan();
  const axes = [{ ...plan.rig.axes[0], ...changed } as Axis, ...plan.rig.axes.slice(1)];
  const tracks = [straight('Slide', 0, 300)];
  return { ...plan, rig: { ...plan.rig, axes }, move: { ...plan.move, tracks, ...move } };
}

function shown(
  plan: Plan,
  quantity: Quantity,
  held: Parameters<typeof axesCharts>[2] = { quantity, held: null },
) {
  const [mm, deg] = axesCharts(runView(schedule(plan), 520), plan, held);
  if (!mm || !deg) throw new Error('two charts are missing');
  return { mm, deg };
}

function speeds(plan: Plan): Float64Array {
  const worked = schedule(plan);
  const [columns] = worked.columns.axes;
  if (!columns) throw new Error('no axis');
  return speedsOf(columns, plan, worked);
}

describe('speed of a move', () => {
  test('is the peak between exposures: of a triangle sqrt(d a), at most the top speed', () => {
    expect(speeds(slide({ maxAccel: 40, maxSpeed: 20 }))[5]).toBeCloseTo(Math.sqrt(40), 6);
    expect(speeds(slide({ maxAccel: 40, maxSpeed: 5 }))[5]).toBeCloseTo(5, 6);
  });

  test('in a fixed time of 2 s: the smaller root of d = v T - v^2/a', () => {
    const peak = speeds(slide({ maxAccel: 40 }, { moveS: 2 }))[5] as number;
    expect(peak * 2 - peak ** 2 / 40).toBeCloseTo(1, 9);
    expect(peak).toBeLessThan(1);
  });

  test('with jerk limited to 100 and no time to reach the acceleration: (d^2 j / 4)^(1/3)', () => {
    const plan = slide({ maxAccel: 1000, maxSpeed: 100, maxJerk: 100 }, { profile: 'jerkLimited' });
    expect(speeds(plan)[5]).toBeCloseTo(Math.cbrt(100 / 4), 5);
  });

  test('in continuous motion it is the travel over the interval, down its scale below zero', () => {
    expect(speeds(slide({}, { mode: 'continuous' }))[5]).toBeCloseTo(1 / 12, 9);
    const down = slide({}, { mode: 'continuous', tracks: [straight('Slide', 300, 0)] });
    expect(speeds(down)[5]).toBeCloseTo(-1 / 12, 9);
  });

  test('lost motion after a reversal is travelled too', () => {
    const back = [{ ...straight('Slide', 0, 300), thereAndBack: true }];
    const found = speeds(slide({ backlash: 1, maxAccel: 40, maxSpeed: 50 }, { tracks: back }));
    // 2 mm a frame there and back; the first on the way back 3 mm.
    expect(found[10]).toBeCloseTo(Math.sqrt(2 * 40), 6);
    expect(found[150]).toBeCloseTo(-Math.sqrt(3 * 40), 6);
    expect(found[151]).toBeCloseTo(-Math.sqrt(2 * 40), 6);
  });

  test('none follows the last frame', () => {
    const found = speeds(slide());
    expect(found).toHaveLength(301);
    expect(found[300]).toBeNaN();
    expect(found.slice(0, 300).every(Number.isFinite)).toBe(true);
  });
});

test('steps are what the motor does, in whole microsteps', () => {
  const [columns] = schedule(slide()).columns.axes;
  const moves = columns ? movesOf(columns) : [];
  expect(moves[0]).toBe(80);
  expect(moves[300]).toBeNaN();
});

describe('what the charts of the axes show', () => {
  test('one frame wide, a peak is kept at any width', () => {
    const keyframes = [0, 150 / 300, 151 / 300, 1].map((share, i) => ({
      ...straight('Slide', 0, 0).keyframes[0],
      share,
      position: i < 2 ? i : i + 40,
    }));
    const plan = slide({}, { tracks: [{ axis: 'Slide', keyframes, thereAndBack: false } as never] });
    const [mm] = axesCharts(runView(schedule(plan), 60), plan, { quantity: 'steps', held: null });
    const peak = schedule(plan).columns.axes[0]?.largestMoveSteps ?? 0;
    expect(peak).toBe(41 * 80);
    // The highest point of the line stands at the upper end of its scale.
    expect(Math.min(...(mm?.traces[0]?.ys ?? []))).toBeCloseTo(8, 0);
  });

  test('speed with the top speed where it comes near, and its passing', () => {
    const near = shown(slide({ maxSpeed: 8 }), 'speed').mm;
    expect(near.unit).toBe('mm/s');
    expect(near.levels).toMatchObject([{ value: 8, kind: 'limit' }]);
    expect(near.names.map(({ text }) => spaced(text))).toContain('Slide at most 8 mm/s');
    expect(near.read(4).map(({ name, value, unit }) => [name, value, unit])).toEqual([
      ['Slide', '+6.32', 'mm/s'],
      ['At most', '8', 'mm/s'],
    ]);
    expect(shown(slide({ maxSpeed: 80 }), 'speed').mm.levels).toEqual([]);
    const fast = slide({ maxSpeed: 0.05 }, { mode: 'continuous' });
    expect(shown(fast, 'speed').mm.levels).toMatchObject([{ value: 0.05, kind: 'exceeded' }]);
    expect(spaced(near.summary)).toBe('Slide runs at up to 6.32 mm/s, and can do 8 mm/s.');
  });

  test('steps, and the zero that a track goes through', () => {
    const there = slide({}, { tracks: [{ ...straight('Slide', 0, 300), thereAndBack: true }] });
    const { mm, deg } = shown(there, 'steps');
    expect(mm.levels).toMatchObject([{ value: 0, kind: 'zero' }]);
    expect(spaced(mm.summary)).toBe('Slide makes up to 160 microsteps from one frame to the next.');
    expect(mm.read(4)[0]).toMatchObject({ name: 'Slide', value: '+160' });
    expect(mm.read(300)[0]).toMatchObject({ value: '\u2013' });
    expect(mm.table[0]?.cell(299)).toBe('\u2212160');
    expect(deg.domain.every(Number.isFinite)).toBe(true);
  });

  test('tracks can be edited where positions are drawn, unless nothing moves or they are aimed', () => {
    const plan = slide();
    expect(shown(plan, 'position').mm.editable).toMatchObject({
      axes: ['Slide'],
      unit: 'mm',
      low: 0,
      high: 300,
    });
    expect(shown(plan, 'position').deg.editable?.axes).toEqual(['Pan']);
    expect(shown(plan, 'speed').mm.editable).toBeUndefined();
    expect(shown(slide({}, { mode: 'still' }), 'position').mm.editable).toBeUndefined();
    const aimed = { ...plan, subject: { ...plan.subject, used: true, aimed: true } };
    expect(shown(aimed, 'position').deg.editable).toBeUndefined();
  });

  test('a scale that is held does not shrink, and grows with the line', () => {
    const held = (low: number, high: number, chart = 'axes-mm') =>
      shown(slide(), 'position', { quantity: 'position', held: { chart, low, high } });
    expect(held(-50, 500).mm.editable).toMatchObject({ low: -50, high: 500 });
    expect(held(100, 200).mm.editable).toMatchObject({ low: 0, high: 300 });
    expect(held(-50, 500, 'axes-deg').mm.editable).toMatchObject({ low: 0, high: 300 });
  });
});

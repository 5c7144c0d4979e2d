/** Whole steps, reversals, and the time that lost motion costs. */
import { describe, expect, test } from 'vitest';
import { newKeyframe } from '../../../src/engine/plan/parse.ts';
import type { Axis, Plan } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { axisOf, plainPlan, type Some } from '../../reference/plans.ts';

/** An axis of 100 steps a unit that visits the positions one after another, a frame at each. */
function visiting(places: readonly number[], axis: Some<Axis>, move: Some<Plan['move']> = {}): Plan {
  const keyframes = places.map((position, i) =>
    newKeyframe({ at: 'frame', frame: i + 1, position, ease: { kind: 'linear' } }),
  );
  const own = axisOf({
    name: 'A',
    fullStepsPerTurn: 100,
    microsteps: 1,
    unitsPerTurn: 1,
    travelMin: -1000,
    maxSpeed: 10,
    maxAccel: 10,
    ...axis,
  });
  return plainPlan(places.length, 100, {
    rig: { axes: [own] },
    move: {
      mode: 'moveShootMove',
      settleS: 0,
      ...move,
      tracks: [{ axis: 'A', keyframes, thereAndBack: false }],
    },
  });
}

const columnsOf = (plan: Plan) => {
  const columns = schedule(plan).columns.axes[0];
  if (!columns) throw new RangeError('no axis in the schedule');
  return columns;
};
const secondsOf = (places: readonly number[], axis: Some<Axis>, move: Some<Plan['move']> = {}) =>
  Array.from(columnsOf(visiting(places, axis, move)).moveS, (s) => Math.round(s * 1e6) / 1e6);
const saidOf = (plan: Plan, id: string) => schedule(plan).findings.filter((finding) => finding.id === id);

// Triangles at 10 units/s^2: 2 sqrt(d/10). d = 0.9 takes 0.6 s, 1.6 takes 0.8 s, 2.5 takes 1 s, 3.6 takes 1.2 s.
describe('backlash', () => {
  test('a reversal travels it too, and nothing else does', () => {
    expect(secondsOf([0, 0.9, 1.8, 0.9, 0, 0.9], { backlash: 0.7 })).toEqual([0.6, 0.6, 0.8, 0.6, 0.8, 0]);
  });

  test('a pause does not hide a reversal', () => {
    expect(secondsOf([0, 0.9, 0.9, 0], { backlash: 0.7 })).toEqual([0.6, 0, 0.8, 0]);
  });

  test('the first move has none, whichever way it goes', () => {
    expect(secondsOf([0, -0.9, -1.8], { backlash: 0.7 })).toEqual([0.6, 0.6, 0]);
  });

  test('positions are those of the load', () => {
    const { steps } = columnsOf(visiting([0, 0.9, 0, 0.9], { backlash: 0.7 }));
    expect([...steps]).toEqual([0, 90, 0, 90]);
  });

  test('takes part in a move of fixed time without making it longer', () => {
    expect(secondsOf([0, 0.9, 0], { backlash: 0.7 }, { moveS: 3 })).toEqual([3, 3, 0]);
  });

  test('what it costs is said', () => {
    const plan = visiting([0, 0.9, 1.8, 0.9, 0, 0.9], { backlash: 0.7 });
    expect(columnsOf(plan)).toMatchObject({ reversals: 2, firstReversal: 4, takeUps: 2 });
    expect(columnsOf(plan).takeUpS).toBeCloseTo(0.4, 12);
    expect(saidOf(plan, 'backlash-taken-up')).toMatchObject([
      {
        severity: 'note',
        frame: 4,
        message:
          'A turns back 2 times, first before frame 4: its backlash of 0.7\u00A0mm is taken up, which takes 0.4\u00A0s in all.',
      },
    ]);
  });

  test('without any, nobody is told of a reversal', () => {
    expect(saidOf(visiting([0, 1, 0], { backlash: 0 }), 'reversal')).toEqual([]);
  });

  test('while the rig moves all the time it cannot be taken up', () => {
    const plan = visiting([0, 1, 0], { backlash: 0.7 }, { mode: 'continuous' });
    expect(secondsOf([0, 1, 0], { backlash: 0.7 }, { mode: 'continuous' })).toEqual([100, 100, 0]);
    expect(saidOf(plan, 'reversal')).toMatchObject([{ severity: 'warning', frame: 3 }]);
  });
});

describe('arriving from one side', () => {
  test('going up: a move down goes past by the overrun and comes back', () => {
    // Down 0.9 + overrun 0.5 + backlash 0.2 = 1.6: 0.8 s. Back 0.5 + 0.2 = 0.7: 2 sqrt(0.07).
    const back = Math.round(2 * Math.sqrt(0.07) * 1e6) / 1e6;
    const axis = { backlash: 0.2, overrun: 0.5, arrive: 'upwards' } as const;
    expect(secondsOf([0, 0.9, 0, 0.9], axis)).toEqual([0.6, 0.8 + back, 0.6, 0]);
  });

  test('every move the other way does, one after another', () => {
    const axis = { backlash: 0, overrun: 0.7, arrive: 'upwards' } as const;
    const [first, second] = secondsOf([1.8, 0.9, 0], axis);
    expect(first).toBeCloseTo(0.8 + 2 * Math.sqrt(0.07), 5);
    expect(second).toBe(first);
  });

  test('going down: a move up does', () => {
    const axis = { backlash: 0, overrun: 0.7, arrive: 'downwards' } as const;
    const [up, down] = secondsOf([0, 0.9, 0], axis);
    expect(up).toBeCloseTo(0.8 + 2 * Math.sqrt(0.07), 5);
    expect(down).toBe(0.6);
  });

  test('an overrun that is not given is twice the backlash; with neither there is nothing to do', () => {
    const given = { backlash: 0.2, overrun: 0.4, arrive: 'upwards' } as const;
    expect(secondsOf([0, 1, 0], { ...given, overrun: null })).toEqual(secondsOf([0, 1, 0], given));
    expect(secondsOf([0, 0.9, 0], { backlash: 0, overrun: null, arrive: 'upwards' })).toEqual([0.6, 0.6, 0]);
  });

  test('with a fixed time, each of the two moves takes it', () => {
    const axis = { backlash: 0.2, arrive: 'upwards' } as const;
    expect(secondsOf([0, 1, 0], axis, { moveS: 3 })).toEqual([3, 6, 0]);
  });

  test('what it costs is said', () => {
    const plan = visiting([1.8, 0.9, 0, 0.9], { overrun: 0.7, arrive: 'upwards' });
    expect(columnsOf(plan)).toMatchObject({ takeUps: 2, reversals: 1 });
    const more = 2 * (0.2 + 2 * Math.sqrt(0.07));
    expect(columnsOf(plan).takeUpS).toBeCloseTo(more, 12);
    expect(saidOf(plan, 'backlash-taken-up')).toMatchObject([
      {
        severity: 'note',
        frame: 2,
        message:
          'A arrives going up: 2 times, first before frame 2, it overruns by 0.7\u00A0mm and comes back, which takes 1.46\u00A0s in all.',
      },
    ]);
  });

  test('the load must have room to overrun', () => {
    const axis = { overrun: 0.5, arrive: 'upwards', travelMin: 0 } as const;
    expect(saidOf(visiting([1, 0.5], axis), 'travel')).toEqual([]);
    expect(saidOf(visiting([1, 0.4], axis), 'travel')).toMatchObject([
      { frame: 2, values: { minimum: expect.closeTo(-0.1, 9) } },
    ]);
    expect(saidOf(visiting([1, 0.4], axis), 'travel')[0]?.message).toContain('0.1\u00A0mm beyond its travel');
    expect(saidOf(visiting([0, 0.4], { ...axis, travelMin: 0 }), 'travel')).toEqual([]);
    expect(saidOf(visiting([1, 0.4], { ...axis }, { mode: 'continuous' }), 'travel')).toEqual([]);
  });
});

describe('limits of a move of fixed time', () => {
  test('count the lost motion', () => {
    // 1 unit in 1 s asks for 4 units/s^2, with 1.5 more for 10.
    const limits = { maxSpeed: 100, maxAccel: 9.9 };
    expect(saidOf(visiting([0, 1, 2], { ...limits, backlash: 1.5 }, { moveS: 1 }), 'acceleration')).toEqual(
      [],
    );
    expect(
      saidOf(visiting([0, 1, 2, 1], { ...limits, backlash: 1.5 }, { moveS: 1 }), 'acceleration'),
    ).toMatchObject([{ frame: 3, values: { needed: expect.closeTo(10, 9) } }]);
  });

  test('count the jerk where it is limited', () => {
    // 1 unit in 2 s asks for at least 32/8 = 4 units/s^3.
    const plan = (maxJerk: number, profile: Plan['move']['profile'] = 'jerkLimited') =>
      visiting([0, 1], { maxSpeed: 100, maxAccel: 100, maxJerk }, { moveS: 2, profile });
    expect(saidOf(plan(4.01), 'acceleration')).toEqual([]);
    expect(saidOf(plan(3.9, 'trapezoidal'), 'acceleration')).toEqual([]);
    expect(saidOf(plan(3.9), 'acceleration')).toMatchObject([
      {
        message:
          'A would have to change its acceleration by 4\u00A0mm/s³, and can do 3.9\u00A0mm/s³, from frame 1.',
      },
    ]);
  });
});

describe('whole steps', () => {
  test('largest and smallest move', () => {
    expect(columnsOf(visiting([0, 0.05, 0.05, 0.08, 1], {}))).toMatchObject({
      largestMoveSteps: 92,
      moves: 3,
      smallestMoveSteps: 3,
    });
    expect(columnsOf(visiting([1, 1], {}))).toMatchObject({ largestMoveSteps: 0, smallestMoveSteps: 0 });
  });

  test('frames that repeat a position count only while the track goes on', () => {
    // Half a step a frame, then a pause, then on.
    const places = [0, 0.005, 0.01, 0.015, 0.02, 0.02, 0.02, 0.1];
    expect(columnsOf(visiting(places, {}))).toMatchObject({ repeats: 2, firstRepeat: 3 });
    expect([...columnsOf(visiting(places, {})).steps]).toEqual([0, 1, 1, 2, 2, 2, 2, 10]);
  });

  test('a track that ends between two frames still goes on before the second', () => {
    const keyframes = [
      newKeyframe({ share: 0, position: 0, ease: { kind: 'linear' } }),
      newKeyframe({ at: 'time', timeS: 250, position: 0.012 }),
    ];
    const plan = visiting([0, 0, 0, 0, 0], {});
    const tracks = [{ axis: 'A', thereAndBack: false, keyframes }];
    const columns = columnsOf({ ...plan, move: { ...plan.move, tracks } });
    expect([...columns.steps]).toEqual([0, 0, 1, 1, 1]);
    expect(columns).toMatchObject({ repeats: 2, firstRepeat: 2 });
  });

  test('stair-stepping is said from three such frames on, not of a rig that stands still', () => {
    const places = [0, 0.005, 0.01, 0.015, 0.02, 0.025, 0.03];
    expect(saidOf(visiting(places.slice(0, 6), {}), 'stair-stepping')).toEqual([]);
    expect(saidOf(visiting(places, {}), 'stair-stepping')).toMatchObject([
      {
        severity: 'warning',
        frame: 3,
        message:
          'A repeats its position on 3 frames while its track goes on, from frame 3: a microstep is 0.01\u00A0mm, and the track moves 0.005\u00A0mm a frame.',
      },
    ]);
    expect(saidOf(visiting(places, {}, { mode: 'still' }), 'stair-stepping')).toEqual([]);
  });

  test('there and back repeats as often on the way back; the turn is none', () => {
    const keyframes = [0, 0.02].map((position, i) =>
      newKeyframe({ share: i, position, ease: { kind: 'linear' } }),
    );
    const there = visiting([0], {});
    const plan: Plan = {
      ...there,
      ...plainPlan(10, 100, {}),
      rig: there.rig,
      move: { ...there.move, tracks: [{ axis: 'A', keyframes, thereAndBack: true }] },
    };
    const { steps, repeats, firstRepeat } = columnsOf(plan);
    expect([...steps]).toEqual([0, 0, 1, 1, 2, 2, 1, 1, 0, 0]);
    expect({ repeats, firstRepeat }).toEqual({ repeats: 4, firstRepeat: 2 });
  });

  test('a held axis does not stall', () => {
    const plan = visiting([0, 0.005, 0.01], {});
    const hold = newKeyframe({ share: 0, position: 0, ease: { kind: 'hold' } });
    const tracks = [
      { axis: 'A', thereAndBack: false, keyframes: [hold, newKeyframe({ share: 1, position: 1 })] },
    ];
    expect(columnsOf({ ...plan, move: { ...plan.move, tracks } })).toMatchObject({ repeats: 0 });
  });
});

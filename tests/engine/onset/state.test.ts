import { describe, expect, test } from 'vitest';
import { cycleParts, type Doing, stateAt } from '../../../src/engine/onset/state.ts';
import { newAxis } from '../../../src/engine/plan/parse.ts';
import { schedule, startFor } from '../../../src/engine/schedule.ts';
import { planOf } from '../../outputs/plans.ts';

/**
 * By hand, of the definitions of the cycle: lag 0.5 + exposure 1 (marked 1 s) = hold 1.5; move 2; settle 1; the camera
 * writes for 4 s after closing: 5.5; interval 10, guard 1.
 */
const PLAN = planOf({
  start: { date: '2026-03-01', time: '10:00:00' },
  place: { zone: 'Etc/UTC' },
  pacing: { workedOut: 'clip', eventS: 40, intervalS: 10 },
  camera: { shutterLagS: 0.5, writeS: 4, exactStops: false },
  exposure: { shutterS: 1 },
  cycle: { guardS: 1 },
  rig: { axes: [{ ...newAxis(), name: 'Slide', kind: 'slide', travelMax: 1000 }] },
  move: {
    mode: 'moveShootMove',
    moveS: 2,
    settleS: 1,
    tracks: [
      {
        axis: 'Slide',
        keyframes: [
          { share: 0, position: 0, ease: { kind: 'linear' } },
          { share: 1, position: 400, ease: { kind: 'linear' } },
        ],
      },
    ],
  },
});
const MADE = schedule(PLAN);
const START = Date.parse('2026-03-01T10:00:00Z');
const at = (second: number) => stateAt(MADE, PLAN.cycle.guardS, START + second * 1000);

describe('the state of a run at an instant', () => {
  test.each<[number, Doing, number, number | null]>([
    [-65, 'before', 0, 65],
    [-0.001, 'before', 0, 0.001],
    [0, 'exposing', 1, 10],
    [1.499, 'exposing', 1, 8.501],
    [1.5, 'moving', 1, 8.5],
    [3.499, 'moving', 1, 6.501],
    [3.5, 'settling', 1, 6.5],
    [4.5, 'writing', 1, 5.5],
    [5.5, 'spare', 1, 4.5],
    [8.999, 'spare', 1, 1.001],
    [9, 'ready', 1, 1],
    [9.999, 'ready', 1, 0.001],
    [10, 'exposing', 2, 10],
    [34, 'settling', 4, 6],
    // The last frame: nothing moves after it, and nothing follows.
    [40, 'exposing', 5, null],
    [41.5, 'writing', 5, null],
    [45.499, 'writing', 5, null],
    [45.5, 'after', 5, null],
    [9000, 'after', 5, null],
  ])('%s s after the start: %s, %i begun', (second, doing, begun, toNext) => {
    const state = at(second);
    expect([state.doing, state.begun]).toEqual([doing, begun]);
    if (toNext === null) expect(state.toNextS).toBeNull();
    else expect(state.toNextS).toBeCloseTo(toNext, 6);
  });

  test('parts of a cycle follow each other without a gap', () => {
    const parts = cycleParts(MADE, 0, PLAN.cycle.guardS);
    expect(parts.map(({ doing, fromS, toS }) => [doing, fromS, toS])).toEqual([
      ['exposing', 0, 1.5],
      ['moving', 1.5, 3.5],
      ['settling', 3.5, 4.5],
      ['writing', 4.5, 5.5],
      ['spare', 5.5, 9],
      ['ready', 9, 10],
    ]);
  });

  test('a cycle that overruns is cut off by the next frame', () => {
    const tight = { ...PLAN, pacing: { ...PLAN.pacing, intervalS: 4 } };
    const made = schedule(tight);
    const last = cycleParts(made, 0, 1).at(-1);
    expect([last?.doing, last?.toS]).toEqual(['settling', 4]);
    expect(stateAt(made, 1, START + 4000)).toMatchObject({ doing: 'exposing', begun: 2 });
  });

  test('a rig that moves all the time has no lane: only the camera is told', () => {
    const made = schedule({ ...PLAN, move: { ...PLAN.move, mode: 'continuous' } });
    expect(cycleParts(made, 1, 1).map(({ doing }) => doing)).toEqual([
      'exposing',
      'writing',
      'spare',
      'ready',
    ]);
  });

  test('the day of the plan in its zone is what counts', () => {
    expect(startFor(PLAN).startMs).toBe(START);
  });
});

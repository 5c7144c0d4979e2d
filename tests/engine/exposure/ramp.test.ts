import { describe, expect, test } from 'vitest';
import { fixedLadder, ladderOf } from '../../../src/engine/exposure/ladder.ts';
import {
  fillRamp,
  type RampColumns,
  type RampInput,
  rampChanges,
} from '../../../src/engine/exposure/ramp.ts';
import { rampLadder, rampOf, rungsUsed } from '../../../src/engine/exposure/ramp-run.ts';
import { rampWords, rungWords } from '../../../src/engine/exposure/ramp-words.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import type { Spell } from '../../../src/engine/spell.ts';
import { plainPlan, type Some } from '../../reference/plans.ts';

const columnsOf = (frames: number): RampColumns => ({
  rung: new Uint16Array(frames),
  evScene: new Float32Array(frames),
  evError: new Float32Array(frames),
  elapsedS: new Float64Array(frames),
  intervalS: new Float64Array(frames),
});

/** Rungs at EV 12, 11, 10, 9, which keep the shutter open for 1, 2, 4 and 8 s; a node every 60 s, a frame every 60 s. */
function run(targetEv: number[], change: Partial<RampInput> = {}, frames = targetEv.length) {
  const columns = columnsOf(frames);
  const target = Float64Array.from(targetEv);
  const spells = fillRamp(
    {
      ladderEv: Float64Array.of(12, 11, 10, 9),
      openSpanS: Float64Array.of(1, 2, 4, 8),
      targetEv: target,
      sceneEv: target.map((value) => value - 1),
      nodeStepS: 60,
      firstNode: 0,
      dialS: 60,
      endToStart: false,
      hysteresisStops: 0.1,
      ...change,
    },
    columns,
  );
  return { ...columns, spells };
}

const rungs = (targetEv: number[], change: Partial<RampInput> = {}) => [...run(targetEv, change).rung];

describe('the rung of a frame', () => {
  test('of the first is the nearest', () => {
    for (const [ev, rung] of [
      [20, 0],
      [11.6, 0],
      [11.4, 1],
      [10.1, 2],
      [9.6, 2],
      [9.4, 3],
      [-5, 3],
    ] as const)
      expect(rungs([ev, ev])).toEqual([rung, rung]);
  });

  test('changes only beyond half a step and the hysteresis', () => {
    expect(rungs([12, 11.55, 11.45, 11.41, 11.39, 11.55, 11.59, 11.61])).toEqual([0, 0, 0, 0, 1, 1, 1, 0]);
  });

  test('goes to the nearest at once, however far', () => {
    expect(rungs([12, 9.4, 12])).toEqual([0, 3, 0]);
  });

  test('stays at the ends', () => {
    expect(rungs([12, 30, 12, -30, 9])).toEqual([0, 0, 0, 3, 3]);
  });

  test('with a hysteresis of more than a step is late, and still goes to the nearest', () => {
    // From 12: nothing until below 11.5 - 1.5.
    expect(rungs([12, 10.1, 9.9, 11.9, 12.1], { hysteresisStops: 1.5 })).toEqual([0, 0, 2, 2, 0]);
  });
});

describe('the columns', () => {
  test('error is how much brighter than wanted the picture is, scene is the scene', () => {
    const { evError, evScene } = run([12, 12.25, 11.75, 8]);
    expect([...evError]).toEqual([0, 0.25, -0.25, -1]);
    expect([...evScene]).toEqual([11, 11.25, 10.75, 7]);
  });

  test('light runs straight between nodes, from where frame 1 lies, and stays as it is after the last', () => {
    const { evScene } = run([12, 10, 9], { dialS: 30, firstNode: 0.25 }, 6);
    expect([...evScene]).toEqual([10.5, 9.5, 8.75, 8.25, 8, 8]);
  });

  test('start to start, frame k is at k intervals exactly', () => {
    const { elapsedS, intervalS } = run([12, 9], { dialS: 0.1 }, 1000);
    for (const k of [1, 3, 999]) expect(elapsedS[k]).toBe(k * 0.1);
    expect(new Set(intervalS)).toEqual(new Set([0.1]));
  });

  test('end to start, each interval is the gap and the shutter, and the light is read when it comes', () => {
    const { elapsedS, intervalS, rung, evScene } = run(
      [12, 11, 10, 9],
      { dialS: 40, endToStart: true, hysteresisStops: 0 },
      5,
    );
    // 12 at 0 s; 41 s later 11.32; 42 s later 10.62; 42 s later 9.92; 44 s later 9.18.
    expect([...rung]).toEqual([0, 1, 1, 2, 3]);
    expect([...intervalS]).toEqual([41, 42, 42, 44, 48]);
    expect([...elapsedS]).toEqual([0, 41, 83, 125, 169]);
    expect(evScene[3]).toBeCloseTo(12 - 125 / 60 - 1, 5);
  });

  test('are the same over each spell, which ends where the settings change', () => {
    const light = [12, 11, 11, 9, 12];
    expect(run(light).spells).toEqual([
      { begin: 0, end: 1, rung: 0, intervalS: 60 },
      { begin: 1, end: 3, rung: 1, intervalS: 60 },
      { begin: 3, end: 4, rung: 3, intervalS: 60 },
      { begin: 4, end: 5, rung: 0, intervalS: 60 },
    ]);
    // Each interval is longer by what the shutter is open, so that the last frame comes when the light is at 9.2.
    const { spells, intervalS } = run([12, 11, 11, 9, 9], { endToStart: true }, 4);
    expect(spells.map(({ begin, end, intervalS: s }) => [begin, end, s])).toEqual([
      [0, 1, 61],
      [1, 3, 62],
      [3, 4, 68],
    ]);
    expect([...intervalS]).toEqual([61, 62, 62, 68]);
  });

  test('a single rung gives the error of settings that stay', () => {
    const { rung, evError } = run([12, 14, 9], { ladderEv: Float64Array.of(12) });
    expect([...rung]).toEqual([0, 0, 0]);
    expect([...evError]).toEqual([0, 2, -3]);
  });
});

const rampPlan = (exposure: Some<Plan['exposure']> = {}, change: Some<Plan> = {}) =>
  plainPlan(10, 10, {
    camera: { exactStops: true },
    exposure: {
      shutterS: 1 / 4,
      apertureF: 8,
      iso: 100,
      timedBy: 'camera',
      ...exposure,
      ramp: {
        used: true,
        hysteresisStops: 0.1,
        steps: [
          { setting: 'shutter', to: 1, step: 'full', by: 'camera' },
          { setting: 'iso', to: 400, step: 'full', by: 'hand' },
        ],
        ...exposure.ramp,
      },
    },
    ...change,
  });

describe('changes', () => {
  const ladder = ladderOf(rampPlan(), 100);

  test('are listed with their frame, and are made by hand if any part of them is', () => {
    const changes = rampChanges(spellsOf(0, 0, 1, 3, 4, 4, 2, 2), ladder);
    expect(changes.map(({ frame, from, to, by }) => [frame, from.index, to.index, by])).toEqual([
      [3, 0, 1, 'camera'],
      [4, 1, 3, 'hand'],
      [5, 3, 4, 'hand'],
      [7, 4, 2, 'hand'],
    ]);
    // Back from ISO 100 to a shorter shutter time takes no hand.
    expect(rampChanges(spellsOf(2, 1), ladder)[0]?.by).toBe('camera');
    expect(rampChanges(spellsOf(2), ladder)).toEqual([]);
  });

  test('in words', () => {
    const words = (from: number, to: number) =>
      rampChanges(spellsOf(from, to), ladder).map(rampWords).join('').replaceAll('\u00A0', ' ');
    expect(words(0, 1)).toBe('shutter 1/4 to 0.5 s');
    expect(words(2, 3)).toBe('ISO 100 to 200');
    expect(words(1, 4)).toBe('shutter 0.5 to 1 s, ISO 100 to 400');
    const open = ladderOf(rampPlan({ ramp: { steps: [step('aperture', 5.6)] } }), 100);
    expect(rampChanges(spellsOf(0, 1), open).map(rampWords)).toEqual(['f/8 to f/5.6']);
    expect(rungWords(ladder.rungs[4] ?? raise()).replaceAll('\u00A0', ' ')).toBe('1 s, f/8, ISO 400');
  });
});

/** Frames of such rungs, as spells. */
const spellsOf = (...rungs: number[]): Spell[] =>
  rungs.flatMap((rung, begin) =>
    rung === rungs[begin - 1] ? [] : [{ begin, end: rungs.length, rung, intervalS: 10 }],
  );

const step = (setting: 'aperture', to: number) => ({ setting, to, step: 'full', by: 'camera' }) as const;

const raise = (): never => {
  throw new RangeError('no such rung');
};

describe('the exposure of a run', () => {
  const falling = { sceneEv: Float64Array.of(8, 2), targetEv: Float64Array.of(8, 2) };
  const light = { track: falling, nodeStepS: 90, firstNode: 0 };
  const pace = { intervalS: 10, dialS: 10 };

  test('has its ladder, its changes and the intervals it comes to', () => {
    const plan = rampPlan({}, { trigger: { counts: 'endToStart' } });
    const columns = columnsOf(10);
    const got = rampOf(plan, pace, rampLadder(plan, pace, 0), light, columns);
    expect(got.follows).toBe(true);
    expect(got.changes.map(({ to }) => to.index)).toEqual([1, 2, 3, 4]);
    expect(rungsUsed(got).map(({ index }) => index)).toEqual([0, 1, 2, 3, 4]);
    expect(got).toMatchObject({ firstIntervalS: 10.25, shortestIntervalS: 10.25, longestIntervalS: 11 });
    expect(columns.elapsedS[1]).toBe(10.25);
    expect(got.evError).toBe(columns.evError);
  });

  test('that does not follow has one rung', () => {
    const plan = rampPlan({ ramp: { used: false } });
    const columns = columnsOf(10);
    const got = rampOf(plan, pace, rampLadder(plan, pace, 0), light, columns);
    expect(got).toMatchObject({ follows: false, changes: [], shortestIntervalS: 10, longestIntervalS: 10 });
    const { ev100 } = fixedLadder(plan);
    expect(got.evError[9]).toBeCloseTo(2 - (ev100[0] as number), 5);
  });

  test('goes no further than the ceiling', () => {
    const plan = rampPlan({ shutterAngleMaxDeg: 18 });
    const { ladder, ceiling } = rampLadder(plan, pace, 0);
    expect(ceiling).toMatchObject({ ceilingS: 0.5, binds: 'angle' });
    expect(ladder.cuts).toEqual([{ stepIndex: 0, wantedS: 1, reachedS: 0.5 }]);
  });
});

/** Each kind of finding: a plan that has it, with its numbers, and the same plan changed so that it has it no more. */
import { describe, expect, test } from 'vitest';
import { inOrder, verdictOf } from '../../../src/engine/findings/order.ts';
import type { Finding, FindingId } from '../../../src/engine/findings/types.ts';
import { defaultPlan } from '../../../src/engine/plan/parse.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { axisOf, cardOf, loadOf, plainPlan, type Some, sourceOf, straight } from '../../reference/plans.ts';

interface Trial {
  id: FindingId;
  /** 11 frames every 10 s, shutter 0.5 s, nothing else; and this. */
  has: Some<Plan>;
  hasNot: Some<Plan>;
  severity: Finding['severity'];
  frame: number | null;
  values?: Record<string, unknown>;
}

/** A slide that moves 10 mm after each frame; 20 mm/s and 40 mm/s2 take 2 sqrt(10/40) = 1 s. */
const slide = (to: number, move: Some<Plan['move']> = {}, axis = {}): Some<Plan> => ({
  rig: { axes: [axisOf({ name: 'Slide', ...axis })] },
  move: { mode: 'moveShootMove', settleS: 0, tracks: [straight('Slide', 0, to)], ...move },
});

/** 36 W over 11 periods of 10 s, the last of 0.5 s: 0.1 Wh a frame. */
const power = (energyWh: number, count: number, swapS = 0): Some<Plan> => ({
  power: {
    temperatureC: 25,
    sources: [sourceOf({ name: 'Pack', energyWh, count, swapS, reserveShare: 0 })],
    loads: [loadOf({ name: 'Load', source: 'Pack', alwaysOnW: 36 })],
  },
});

const cards = (sizes: number[], cardChangeS = 0): Some<Plan> => ({
  camera: { frameBytes: 100e6 },
  storage: {
    cardChangeS,
    cards: sizes.map((cardBytes, i) => cardOf({ name: `C${i}`, cardBytes, reserveShare: 0 })),
  },
});

const TRIALS: Trial[] = [
  {
    id: 'no-clip',
    has: { clip: { handlesFrames: 6 }, pacing: { workedOut: 'clip', eventS: 100 } },
    hasNot: { clip: { handlesFrames: 5 }, pacing: { workedOut: 'clip', eventS: 100 } },
    severity: 'stop',
    frame: null,
    values: { clipFrames: 11, handlesFrames: 6 },
  },
  {
    id: 'interval-not-settable',
    has: { trigger: { stepS: 4 } },
    hasNot: { trigger: { stepS: 2.5 } },
    severity: 'stop',
    frame: null,
    values: { dialS: 10 },
  },
  {
    id: 'interval-stretched',
    has: { trigger: { counts: 'endToStart', stepS: 1 } },
    hasNot: { trigger: { counts: 'endToStart', stepS: 0.5 } },
    severity: 'note',
    frame: null,
    values: { intervalS: 10.5, rawIntervalS: 10, dialS: 10 },
  },
  {
    id: 'cycle-overrun',
    has: slide(100, { settleS: 8.6 }),
    hasNot: slide(100, { settleS: 8.5 }),
    severity: 'stop',
    frame: 1,
  },
  {
    id: 'camera-not-ready',
    has: { camera: { writeS: 9.6 } },
    hasNot: { camera: { writeS: 9.5 } },
    severity: 'stop',
    frame: 1,
  },
  {
    id: 'guard-used',
    has: { camera: { writeS: 9 }, cycle: { guardS: 0.6 } },
    hasNot: { camera: { writeS: 9 }, cycle: { guardS: 0.5 } },
    severity: 'warning',
    frame: 1,
    values: { guardS: 0.6, freeS: 0.5 },
  },
  {
    id: 'shutter-marked-exact',
    has: { camera: { exactStops: true }, exposure: { shutterS: 3.2, timedBy: 'camera', bracketCount: 5 } },
    hasNot: {
      camera: { exactStops: true },
      exposure: { shutterS: 3.2, timedBy: 'trigger', bracketCount: 5 },
    },
    severity: 'note',
    frame: 1,
    values: { markedS: 3.2 },
  },
  {
    id: 'travel',
    has: slide(1100),
    hasNot: slide(1000),
    severity: 'stop',
    frame: 11,
    values: { axis: 'Slide', beyond: 100, maximum: 1100 },
  },
  {
    id: 'speed',
    // 200 mm in 9 s with 40 mm/s2: v (9 - v/40) = 200: v = 24.9 mm/s.
    has: slide(2000, { moveS: 9 }, { travelMax: 2000 }),
    // 100 mm in 9 s: 11.7 mm/s.
    hasNot: slide(1000, { moveS: 9 }),
    severity: 'stop',
    frame: 1,
    values: { axis: 'Slide', limit: 20 },
  },
  {
    id: 'acceleration',
    // 4 x 10 / 0.9^2 = 49.4; in 1.1 s 33.1.
    has: slide(100, { moveS: 0.9 }),
    hasNot: slide(100, { moveS: 1.1 }),
    severity: 'stop',
    frame: 1,
    values: { axis: 'Slide', limit: 40, needed: 40 / 0.81 },
  },
  {
    id: 'source-short',
    // 10 frames of 0.1 Wh and one of 0.005: five packs of two frames, and a sixth for the last.
    has: power(0.2, 5),
    hasNot: power(0.2, 6),
    severity: 'stop',
    frame: 11,
    values: { source: 'Pack', needed: 6, brought: 5 },
  },
  {
    id: 'swap-does-not-fit',
    has: power(0.5, 3, 9.6),
    hasNot: power(0.5, 3, 9.5),
    severity: 'warning',
    frame: 6,
    values: { source: 'Pack', lostFrames: 1, swaps: 2 },
  },
  {
    id: 'flight-limit',
    has: power(100.5, 1),
    hasNot: power(100, 1),
    severity: 'note',
    frame: null,
    values: { source: 'Pack', ratedWh: 100.5 },
  },
  {
    id: 'card-full',
    has: cards([500e6, 599e6]),
    hasNot: cards([500e6, 600e6]),
    severity: 'stop',
    frame: 11,
    values: { neededBytes: 1100e6, usableBytes: 1099e6 },
  },
  {
    id: 'card-change-does-not-fit',
    has: cards([500e6, 600e6], 30),
    hasNot: cards([500e6, 600e6], 9.5),
    severity: 'warning',
    frame: 6,
    values: { lostFrames: 3, changes: 1 },
  },
  {
    id: 'buffer-fills',
    // 100 MB come, 80 go in 10 s: 100, 120, 140, ... above 190 at frame 6.
    has: {
      camera: { frameBytes: 100e6, bufferBytes: 190e6 },
      storage: { cards: [cardOf({ writeBytesPerS: 8e6 })] },
    },
    hasNot: {
      camera: { frameBytes: 100e6, bufferBytes: 300e6 },
      storage: { cards: [cardOf({ writeBytesPerS: 8e6 })] },
    },
    severity: 'stop',
    frame: 6,
  },
  {
    id: 'clock-skipped',
    has: { place: { zone: 'Europe/London' }, start: { date: '2026-03-29', time: '01:30' } },
    hasNot: { place: { zone: 'Europe/London' }, start: { date: '2026-03-29', time: '02:30' } },
    severity: 'warning',
    frame: 1,
  },
  {
    id: 'clock-repeated',
    has: { place: { zone: 'Europe/London' }, start: { date: '2026-10-25', time: '01:30' } },
    hasNot: { place: { zone: 'Europe/London' }, start: { date: '2026-10-25', time: '02:30' } },
    severity: 'note',
    frame: 1,
  },
  {
    id: 'clock-change',
    // The clock goes on at 01:00, 30 s after the first frame: frame 4.
    has: { place: { zone: 'Europe/London' }, start: { date: '2026-03-29', time: '00:59:30' } },
    hasNot: { place: { zone: 'Europe/London' }, start: { date: '2026-03-29', time: '00:58:19' } },
    severity: 'note',
    frame: 4,
    values: { fromMin: 0, toMin: 60 },
  },
];

const findingsOf = (change: Some<Plan>) => schedule(plainPlan(11, 10, change)).findings;

describe('each finding', () => {
  test('nothing is wrong to begin with', () => {
    expect(findingsOf({})).toEqual([]);
  });

  test.each(TRIALS.map((trial) => [trial.id, trial] as const))(
    '%s',
    (id, { has, hasNot, severity, frame, values }) => {
      const finding = findingsOf(has).find((candidate) => candidate.id === id);
      expect(finding).toMatchObject({
        id,
        severity,
        frame,
        elapsedS: frame === null ? null : (frame - 1) * 10,
      });
      for (const [name, value] of Object.entries(values ?? {})) {
        if (typeof value === 'number') expect(finding?.values[name], name).toBeCloseTo(value, 9);
        else expect(finding?.values[name], name).toBe(value);
      }
      expect(finding?.message).toMatch(/^\S.*\.$/s);
      expect(findingsOf(hasNot).map((candidate) => candidate.id)).not.toContain(id);
    },
  );

  test('a marked time that would fit where the exact one does not is a warning', () => {
    // Marked 30 s every 31 s: it is open for 32 s.
    const plan = plainPlan(11, 31, {
      camera: { exactStops: true },
      exposure: { shutterS: 30, timedBy: 'camera' },
    });
    const ids = schedule(plan).findings.map(({ id, severity }) => `${severity} ${id}`);
    expect(ids).toEqual(['stop camera-not-ready', 'warning shutter-marked-exact']);
  });

  test('a limit met exactly is met', () => {
    // 100 mm in 10 s and 20 mm/s: continuous at 10 mm/s; 200 mm at just 20.
    const at = (to: number) =>
      findingsOf(slide(to, { mode: 'continuous' }, { travelMax: 5000 })).map(({ id }) => id);
    expect(at(2000)).not.toContain('speed');
    expect(at(2010)).toContain('speed');
  });

  test('a rig that stands still outside its travel is told so', () => {
    const still = slide(0, { mode: 'still', tracks: [straight('Slide', -50, 0)] });
    expect(findingsOf(still).map(({ id }) => id)).toContain('travel');
  });

  test('a plan of one frame has no interval to be in time for', () => {
    const plan = plainPlan(1, 10, { camera: { writeS: 20 }, cycle: { guardS: 5 } });
    expect(schedule(plan).findings).toEqual([]);
  });
});

describe('order and verdict', () => {
  const finding = (severity: Finding['severity'], frame: number | null): Finding => ({
    id: 'travel',
    severity,
    subject: 'move',
    message: `The ${severity} at ${frame}.`,
    frame,
    about: null,
    elapsedS: null,
    at: null,
    values: {},
  });

  test('worst first, then the whole run, then by frame', () => {
    const sorted = inOrder([
      finding('note', 1),
      finding('stop', 9),
      finding('warning', null),
      finding('stop', 2),
      finding('warning', 3),
    ]);
    expect(sorted.map(({ severity, frame }) => `${severity} ${frame}`)).toEqual([
      'stop 2',
      'stop 9',
      'warning null',
      'warning 3',
      'note 1',
    ]);
  });

  test('the verdict is the worst finding, or says that it can be shot', () => {
    expect(verdictOf([finding('stop', 2)], [])).toBe('Not shootable: the stop at 2.');
    expect(verdictOf([finding('warning', 2)], [])).toMatch(/^Shootable, with 1.warning\.$/);
    expect(verdictOf([], [])).toBe('Shootable.');
    expect(schedule(defaultPlan()).verdict).toMatch(/^Shootable\./);
  });
});

describe('margins', () => {
  const marginsOf = (change: Some<Plan>) =>
    new Map(schedule(plainPlan(11, 10, change)).margins.map((margin) => [margin.id, margin]));

  test('interval: what the longest lane leaves, guard included', () => {
    expect(marginsOf({ camera: { writeS: 4 }, cycle: { guardS: 1 } }).get('interval')).toMatchObject({
      used: 4.5,
      available: 10,
      reserve: 1,
      left: 5.5,
      unit: 's',
    });
  });

  test('source, cards, travel', () => {
    const source = marginsOf(power(0.5, 3)).get('source:Pack');
    expect(source).toMatchObject({ available: 1.5, reserve: 0, unit: 'Wh' });
    expect(source?.used).toBeCloseTo(1.005, 9);
    expect(marginsOf(cards([500e6, 600e6])).get('cards')).toMatchObject({
      used: 1100e6,
      available: 1100e6,
      left: 0,
    });
    expect(marginsOf(slide(400)).get('travel:Slide')).toMatchObject({
      used: 400,
      available: 1000,
      left: 600,
      unit: 'mm',
    });
  });

  test('a small buffer does not look overdrawn where every frame finds its place', () => {
    const buffer = marginsOf({
      camera: { frameBytes: 100e6, bufferBytes: 10e6 },
      storage: { cards: [cardOf({ writeBytesPerS: 90e6 })] },
    }).get('buffer');
    expect(buffer === undefined || buffer.left >= 0).toBe(true);
  });
});

describe('events', () => {
  test('in order of time, with what they cost', () => {
    const { events } = schedule(
      plainPlan(11, 10, {
        ...power(0.5, 3, 15),
        ...cards([300e6, 900e6], 5),
        place: { zone: 'Europe/London' },
        start: { date: '2026-03-29', time: '00:59:30' },
      }),
    );
    expect(events.map(({ kind, frame, lostFrames }) => `${frame} ${kind} ${lostFrames}`)).toEqual([
      '1 firstFrame 0',
      '4 cardChange 0',
      '4 clockChange 0',
      // 9.5 s are free, 15 needed: one frame is lost.
      '6 swap 1',
      '11 swap 1',
      '11 lastFrame 0',
    ]);
    expect(events[2]).toMatchObject({ elapsedS: 30, at: '2026-03-29T02:00:00+01:00' });
  });
});

/** How the figures of a run that is being shot came about: worked by hand, and over random runs by mathjs. */
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { outcomeOf } from '../../../src/engine/onset/outcome.ts';
import { type Happened, replanned } from '../../../src/engine/onset/rest.ts';
import { stateAt } from '../../../src/engine/onset/state.ts';
import { firstStretch, framesUpTo, lastOpensMs, madeOf, opensMs } from '../../../src/engine/onset/stretch.ts';
import { momentsOf } from '../../../src/engine/onset/todo.ts';
import { type OnSet, onsetWorkings } from '../../../src/engine/onset/working.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { startFor } from '../../../src/engine/schedule.ts';
import { workingOf } from '../../../src/engine/working/working.ts';
import { planOf } from '../../outputs/plans.ts';
import { close } from '../../property/close.ts';
import { litPlans, plans, rigPlans } from '../../property/plans.ts';
import { PATIENCE_MS, settings } from '../../property/settings.ts';
import { clockS } from '../working/besides.ts';
import { judgeWorking } from '../working/judge.ts';
import { harbour } from './demo.ts';

vi.setConfig({ testTimeout: PATIENCE_MS });

/** A run by its plan alone, begun at an instant, at another one. */
function runAt(plan: Plan, startMs: number, nowMs: number, rest: Partial<OnSet> = {}): OnSet {
  const stretch = firstStretch(plan, startMs);
  const instant = stateAt(madeOf(stretch), plan.cycle.guardS, nowMs);
  return {
    plan,
    nowMs,
    pausedMs: null,
    stretch,
    last: stretch,
    planned: firstStretch(plan, startFor(plan).startMs),
    instant,
    begun: instant.begun,
    frames: framesUpTo(stretch),
    moments: momentsOf([stretch]),
    stepsBefore: [],
    ...rest,
  };
}

const working = (run: OnSet, figure: string) => {
  const made = madeOf(run.stretch);
  const found = workingOf(run.stretch.plan, made, figure, run);
  if (!found) throw new Error(`${figure} has no working`);
  return found;
};
const value = (run: OnSet, figure: string): number => working(run, figure).value;

describe('a hundred frames at 10 s from 20:00, by hand', () => {
  const plan = planOf({
    pacing: { workedOut: 'event', intervalS: 10, clipLengthS: 4 },
    clip: { frameRate: '25' },
    start: { date: '2026-08-08', time: '20:00' },
    place: { zone: 'Europe/Paris' },
  });
  const startMs = Date.parse('2026-08-08T20:00:00+02:00');
  const at = (seconds: number, rest: Partial<OnSet> = {}) =>
    runAt(plan, startMs, startMs + seconds * 1000, rest);

  // 64 s: frames opened at 0, 10, ... 60 s, which is seven; the eighth at 70 s.
  test('64 s after the first: seven begun, the next in 6 s, the end at 20:16:30', () => {
    expect(value(at(64), 'onset.begun')).toBe(7);
    expect(value(at(64), 'onset.frames')).toBe(100);
    expect(value(at(64), 'onset.left')).toBe(93);
    expect(value(at(64), 'onset.percent')).toBe(7);
    // 7 of 99 are 7.07 %.
    expect(value(at(64, { frames: 99 }), 'onset.percent')).toBe(7);
    expect(value(at(64), 'onset.toNextS')).toBeCloseTo(6, 9);
    expect(working(at(64), 'onset.nextAt').label).toBe('2026-08-08T20:01:10+02:00');
    expect(working(at(64), 'onset.endAt').label).toBe('2026-08-08T20:16:30+02:00');
    expect(value(at(64), 'onset.lateS')).toBe(0);
  });

  test('five minutes late it ends five minutes late', () => {
    const late = runAt(plan, startMs + 300_000, startMs + 300_000);
    expect(value(late, 'onset.lateS')).toBe(300);
    expect(working(late, 'onset.endAt').label).toBe('2026-08-08T20:21:30+02:00');
    // The camera is busy with the last frame as long as its lane is.
    const laneS = madeOf(late.last).columns.cameraS.at(-1) ?? 0;
    expect(laneS).toBeGreaterThan(0);
    const endS = 20 * 3600 + 21 * 60 + 30;
    expect(value(late, 'onset.doneAt')).toBeCloseTo(endS + laneS, 6);
  });

  test('before the first frame, and once it was due', () => {
    expect(working(at(-90), 'onset.toFirstS')).toMatchObject({ value: 90, title: 'First frame in' });
    expect(working(at(90), 'onset.toFirstS')).toMatchObject({
      value: 90,
      title: 'First frame was due, since',
    });
  });

  test('in a pause', () => {
    const run = at(200, { pausedMs: startMs + 75_000 });
    expect(value(run, 'onset.pausedS')).toBe(125);
    expect(working(run, 'onset.pausedAt').label).toBe('2026-08-08T20:01:15+02:00');
  });

  // Set-up of an hour and test frames of a quarter of one, right before the first frame: 18:45 and 19:45.
  test('steps before the first frame', () => {
    const quarterMs = 15 * 60_000;
    const run = at(-7200, {
      stepsBefore: [
        { name: 'Set-up', fromMs: startMs - 5 * quarterMs, toMs: startMs - quarterMs },
        { name: 'Test frames', fromMs: startMs - quarterMs, toMs: startMs },
      ],
    });
    expect(working(run, 'onset.step.1.at').label).toBe('2026-08-08T18:45:00+02:00');
    expect(working(run, 'onset.step.2.at').label).toBe('2026-08-08T19:45:00+02:00');
    judgeRun(run);
  });

  // 36 W are 0.1 Wh in 10 s: a pack of 4 Wh lasts for 40 frames. Lag and write leave 9 s of an interval, of the 25 s of a
  // swap 16 s are more than that: two frames.
  test('frames lost by a swap', () => {
    const swapped = planOf({
      ...plan,
      camera: { shutterLagS: 0, writeS: 1, exactStops: false },
      exposure: { shutterS: 0.001, timedBy: 'trigger' },
      power: {
        temperatureC: 25,
        sources: [{ name: 'Pack', energyWh: 4, count: 3, swapS: 25, reserveShare: 0 }],
        loads: [{ name: 'Load', source: 'Pack', alwaysOnW: 36 }],
      },
    });
    const run = runAt(swapped, startMs, startMs + 64_000);
    const swaps = run.moments.filter(({ kind }) => kind === 'swap');
    expect(swaps.map(({ lostFrames }) => lostFrames)).toContain(2);
    for (const { key, lostFrames } of swaps) expect(value(run, `onset.moment.${key}.lost`)).toBe(lostFrames);
    judgeRun(run);
  });

  test('across midnight', () => {
    const late = Date.parse('2026-08-08T23:59:30+02:00');
    const run = runAt(plan, late, late + 25_000);
    expect(value(run, 'onset.toNextS')).toBeCloseTo(5, 9);
    expect(working(runAt(plan, late, late + 35_000), 'onset.nextAt').label).toBe('2026-08-09T00:00:10+02:00');
    judgeRun(run);
  });
});

test('a run that nobody says anything of has no such figures', () => {
  const plan = harbour();
  const made = madeOf(firstStretch(plan, startFor(plan).startMs));
  expect(workingOf(plan, made, 'onset.begun')).toBe(null);
});

/** Judges every figure of a run. */
function judgeRun(run: OnSet): void {
  const made = madeOf(run.stretch);
  for (const figure of Object.keys(onsetWorkings(run))) judgeWorking(run.stretch.plan, made, figure, run);
}

const anyPlan: fc.Arbitrary<Plan> = fc.oneof(
  litPlans,
  plans.map(({ plan }) => plan),
  rigPlans.map(({ plan }) => plan),
);

test('over random runs every formula gives its figure, and that is what the state says', () => {
  fc.assert(
    fc.property(
      anyPlan,
      fc.double({ min: -0.1, max: 1.1, noNaN: true }),
      fc.integer({ min: -4000, max: 90_000 }),
      (plan, share, lateS) => {
        const startMs = startFor(plan).startMs + lateS * 1000;
        const made = madeOf(firstStretch(plan, startMs));
        const nowMs = made.startMs + Math.round(share * (made.totals.eventDurationS + 5) * 1000);
        const run = runAt(plan, startMs, nowMs, share > 0.5 ? { pausedMs: nowMs - 7000 } : {});
        judgeRun(run);
        const { toNextS, begun } = run.instant;
        if (toNextS !== null) close(value(run, 'onset.toNextS'), toNextS, 'next', 86_400);
        expect(value(run, 'onset.begun')).toBe(begun);
        close(value(run, 'onset.endAt'), clockS(plan.place, lastOpensMs(run.last)), 'end', 86_400);
      },
    ),
    settings(0.2),
  );
});

test('what is planned again after a pause counts from what was shot', () => {
  const plan = harbour();
  const first = firstStretch(plan, startFor(plan).startMs);
  const made = madeOf(first);
  const happened: Happened = {
    shot: 100,
    nextMs: opensMs(made, 100) + 600_000,
    endMs: lastOpensMs(first),
    more: 0,
  };
  const rest = replanned(first, happened, 'endAndInterval');
  if ('why' in rest) throw new Error(rest.why);
  const { stretch } = rest;
  const nowMs = stretch.startMs + 30_000;
  const instant = stateAt(madeOf(stretch), plan.cycle.guardS, nowMs);
  const run: OnSet = {
    plan,
    nowMs,
    pausedMs: null,
    stretch,
    last: stretch,
    planned: first,
    instant,
    begun: 100 + instant.begun,
    frames: framesUpTo(stretch),
    moments: momentsOf([first, stretch]),
    stepsBefore: [],
  };
  judgeRun(run);
  const given = { plan, of: first, was: first, lost: 2, happened };
  const outcome = { ...outcomeOf(given, stretch), lost: 2 };
  const then = { ...run, outcome };
  judgeRun(then);
  expect(value(then, 'onset.then.frames')).toBe(outcome.now.frames);
  // Two of the 343 frames are lost: 341 at 25 fps.
  expect(value(then, 'onset.then.clipS')).toBeCloseTo(341 / 25, 9);
  expect(value(then, 'onset.then.dialS')).toBe(14);
  expect(Date.parse(working(then, 'onset.then.endAt').label ?? '')).toBeCloseTo(outcome.now.endMs, -1);
  // 14 s apart: 0, 14 and 28 s after it went on.
  expect(value(run, 'onset.begun')).toBe(103);
  expect(value(run, 'onset.frames')).toBe(framesUpTo(stretch));
  // Ten minutes less at 14 s are 43 frames at least; the end is kept to an interval.
  expect(386 - value(run, 'onset.frames')).toBe(43);
});

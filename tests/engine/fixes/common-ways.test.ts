/** The ways that many findings share: what they hold, what they change, where they end. */
import { describe, expect, test } from 'vitest';
import { planWith } from '../../../src/engine/fixes/build.ts';
import {
  fasterRun,
  intervalLonger,
  intervalShorter,
  longerRun,
  shorterRun,
  slowerRun,
} from '../../../src/engine/fixes/common-ways.ts';
import { dayEarlier, dayLater, startEarlier, startLater } from '../../../src/engine/fixes/start-ways.ts';
import type { Way } from '../../../src/engine/fixes/types.ts';
import { paceOf } from '../../../src/engine/pacing/pacing.ts';
import { MAX_FRAMES } from '../../../src/engine/plan/constants.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { plainPlan, type Some } from '../../reference/plans.ts';

type Free = Plan['pacing']['workedOut'];

/** 25 fps; 1000 s at 10 s are 101 frames. */
const planOf = (workedOut: Free, trigger: Some<Plan['trigger']> = {}): Plan =>
  plainPlan(101, 10, {
    clip: { frameRate: '25' },
    pacing: { workedOut, eventS: 1000, intervalS: 10, clipLengthS: 4.04 },
    trigger: { stepS: 0.5, minS: 0.5, maxS: 60, ...trigger },
  });

/** The only way of a list, and its n-th plan, which there must be. */
function only([way, ...others]: Way[], step = 1): { way: Way; changed: Plan } {
  expect(others).toEqual([]);
  const changed = way?.at(step);
  if (!way || !changed) throw new Error(`no plan at ${step}`);
  return { way, changed };
}

const spaced = (text: string) => text.replaceAll('\u00A0', ' ');

describe.each(['event', 'interval', 'clip'] as const)('with the %s worked out', (workedOut) => {
  const plan = planOf(workedOut);
  const made = schedule(plan);

  test('it begins with 101 frames every 10 s', () =>
    expect(paceOf(plan)).toMatchObject({ frames: 101, dialS: 10, eventDurationS: 1000 }));

  test('a longer interval keeps the event and costs frames', () => {
    const { changed, way } = only(intervalLonger(plan, made), 5);
    const pace = paceOf(changed);
    expect(pace).toMatchObject({ dialS: 12.5, settable: true, frames: 81, eventDurationS: 1000 });
    expect(changed.pacing.workedOut).toBe(workedOut === 'interval' ? 'clip' : workedOut);
    expect(spaced(way.label(changed))).toMatch(/^Interval to 12.5 s/);
  });

  test('a slower run keeps the frames and takes longer', () => {
    const { changed } = only(slowerRun(plan, made), 5);
    expect(paceOf(changed)).toMatchObject({ dialS: 12.5, frames: 101, eventDurationS: 1250 });
    expect(changed.pacing.workedOut).toBe(workedOut);
  });

  test('a shorter interval and a faster run go the other way', () => {
    expect(paceOf(only(intervalShorter(plan, made), 4).changed)).toMatchObject({ dialS: 8, frames: 126 });
    expect(paceOf(only(fasterRun(plan, made), 4).changed)).toMatchObject({ dialS: 8, frames: 101 });
  });

  test('a shorter and a longer run keep the interval', () => {
    const shorter = paceOf(only(shorterRun(plan, made, 500)).changed);
    expect(shorter.intervalS).toBe(10);
    expect(shorter.frames).toBeLessThan(101);
    const longer = paceOf(only(longerRun(plan, made)).changed);
    expect(longer.intervalS).toBe(10);
    expect(longer.frames).toBeGreaterThan(101);
  });

  test('the guess is the setting, or the length, that is asked for', () => {
    const [interval] = intervalLonger(plan, made, 13.2);
    expect(paceOf(interval?.at(interval.first) as Plan).dialS).toBe(13.5);
    const [run] = shorterRun(plan, made, 505);
    const { eventDurationS } = paceOf(run?.at(run.first) as Plan);
    expect(eventDurationS).toBeLessThanOrEqual(505);
    expect(eventDurationS).toBeGreaterThan(450);
  });

  test('ends with the dial', () => {
    const [way] = intervalLonger(plan, made);
    expect(way?.steps).toBe(100);
    expect(paceOf(way?.at(100) as Plan).dialS).toBe(60);
    expect(intervalShorter(plan, made)[0]?.steps).toBe(19);
    expect(intervalLonger(planOf(workedOut, { maxS: 10 }), made)).toEqual([]);
  });

  test('a trigger that waits for the shutter is turned by its own settings', () => {
    const waits = planOf(workedOut, { counts: 'endToStart' });
    const { dialS } = paceOf(waits);
    const { changed, way } = only(intervalLonger(waits, schedule(waits)), 3);
    expect(paceOf(changed)).toMatchObject({ dialS: dialS + 1.5, settable: true });
    expect(paceOf(changed).intervalS).toBeCloseTo(dialS + 2, 9);
    expect(spaced(way.label(changed))).toMatch(new RegExp(`^Trigger to ${dialS + 1.5} s`));
  });
});

describe('another start', () => {
  const clock = plainPlan(11, 10, { start: { date: '2026-12-31', time: '23:50' } });

  test('wraps to the next date, and to the one before', () => {
    expect(only(startLater(clock), 25).changed.start).toMatchObject({ date: '2027-01-01', time: '00:15' });
    const early = plainPlan(11, 10, { start: { date: '2026-03-01', time: '00:10:30' } });
    const { way, changed } = only(startEarlier(early), 85);
    expect(changed.start).toMatchObject({ date: '2026-02-28', time: '22:45:30' });
    expect(spaced(way.label(changed))).toBe('Start 1 h 25 min earlier, at 22:45:30');
  });

  test('says what the clock makes of it', () => {
    // At 01:00 the clocks go on to 02:00: half an hour later by the clock is half an hour earlier than it would have been.
    const skipped = plainPlan(11, 10, {
      place: { zone: 'Europe/London' },
      start: { date: '2026-03-29', time: '01:30' },
    });
    const { way, changed } = only(startLater(skipped), 30);
    expect(spaced(way.label(changed))).toBe('Start 30 min earlier, at 02:00');
  });

  test('by the sky is counted from its event, within a day of it', () => {
    const sky = { ...clock, start: { ...clock.start, tiedTo: 'sky' as const, offsetMin: -1430 } };
    const [way] = startEarlier(sky);
    expect(way?.at(10)?.start).toMatchObject({ offsetMin: -1440, date: '2026-12-31' });
    expect(way?.at(11)).toBeNull();
  });

  test('another day is one of the calendar', () => {
    expect(only(dayLater(clock), 60).changed.start.date).toBe('2027-03-01');
    expect(only(dayEarlier(clock), 366).changed.start.date).toBe('2025-12-30');
  });
});

describe('a plan with edits', () => {
  const plan = planOf('clip');

  test('is none where a number leaves its range', () => {
    expect(planWith(plan, [['cycle.guardS', -0.1]])).toBeNull();
    expect(planWith(plan, [['rig.arm.lengthMm', 9]])).toBeNull();
    expect(planWith(plan, [['cycle.guardS', 3600]])?.cycle.guardS).toBe(3600);
  });

  test('is none where nothing changes', () => {
    expect(planWith(plan, [['cycle.guardS', plan.cycle.guardS]])).toBeNull();
    expect(planWith(plan, [['move.tracks', [...plan.move.tracks]]])).toBeNull();
  });

  test('is none where the run gets too long to be worked out', () => {
    expect(planWith(plan, [['pacing.eventS', 10 * MAX_FRAMES]])).toBeNull();
  });
});

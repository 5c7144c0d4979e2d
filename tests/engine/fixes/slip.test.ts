import { describe, expect, test } from 'vitest';
import { slipMargin, slipOf } from '../../../src/engine/fixes/slip.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { plainPlan } from '../../reference/plans.ts';

/** One frame a minute for an hour from 10:00, in a window that closes at 13:00. */
const morning = plainPlan(61, 60, {
  place: { zone: 'Etc/UTC', latitudeDeg: 45, longitudeDeg: 0 },
  start: { date: '2026-06-21', time: '10:00' },
  window: { used: true, clockFrom: '08:00', clockTo: '13:00' },
});

describe('how late a run can begin', () => {
  test('ends to the second where a finding comes', () => {
    const made = schedule(morning);
    expect(made.findings).toEqual([]);
    const { delayS, limited, by } = slipOf(morning, made);
    // The last frame is an hour after the first: a start up to 12:00 keeps it within.
    expect(delayS).toBeGreaterThanOrEqual(7200 - 1);
    expect(delayS).toBeLessThanOrEqual(7200 + 60);
    expect([limited, by?.id]).toEqual([true, 'outside-window']);
    const new_ = (at: number) => schedule(morning, { delayS: at }).findings.map(({ id }) => id);
    expect(new_(delayS)).toEqual([]);
    expect(new_(delayS + 1)).toContain('outside-window');
  });

  const evening = (time: string) =>
    plainPlan(61, 60, {
      place: { zone: 'Etc/UTC', latitudeDeg: 45, longitudeDeg: 0 },
      start: { date: '2026-06-21', time },
      light: { kind: 'sky' },
      exposure: { shutterS: 1 / 60, apertureF: 8, iso: 100 },
    });

  test('what is wrong already and goes away does not count', () => {
    // In the afternoon it is too bright; as the light falls that goes, and too dark comes.
    const plan = evening('17:00');
    const made = schedule(plan);
    expect(made.findings.map(({ about }) => about)).toEqual(['too bright']);
    const { delayS, limited, by } = slipOf(plan, made);
    expect([limited, by?.about]).toEqual([true, 'too dark']);
    expect(delayS).toBeGreaterThan(1800);
  });

  test('what is wrong already and takes more frames does', () => {
    const plan = evening('18:30');
    const made = schedule(plan);
    expect(made.findings.map(({ about }) => about)).toContain('too dark');
    const { delayS, limited, by } = slipOf(plan, made);
    expect([limited, by?.about]).toEqual([true, 'too dark']);
    expect(delayS).toBeLessThan(60);
  });

  test('has no limit within a day where nothing comes', () => {
    const plan = plainPlan(10, 10);
    expect(slipOf(plan, schedule(plan))).toEqual({ delayS: 86_400, limited: false, by: null });
  });
});

test('a note that comes is no limit', () => {
  // The clocks change 13 hours after the start.
  const plan = plainPlan(61, 60, {
    place: { zone: 'Europe/London' },
    start: { date: '2026-03-28', time: '12:00' },
  });
  const made = schedule(plan);
  expect(schedule(plan, { delayS: 46_000 }).findings.map(({ id }) => id)).toEqual(['clock-change']);
  expect(slipOf(plan, made)).toEqual({ delayS: 86_400, limited: false, by: null });
});

describe('as a margin', () => {
  test('is left of a day, and says what comes then', () => {
    const made = schedule(morning);
    const slip = slipOf(morning, made);
    expect(slipMargin(morning, made, slip)).toEqual({
      id: 'start',
      subject: 'place',
      label: 'Start may slip by',
      used: 86_400 - slip.delayS,
      available: 86_400,
      unit: 's',
      reserve: 0,
      left: slip.delayS,
      frame: slip.by?.frame,
      when: expect.stringMatching(/^then: 1\u00A0frame of the run lies outside the window, first frame 61$/),
    });
  });

  test('is none where nothing goes by the clock', () => {
    const plan = plainPlan(10, 10);
    const made = schedule(plan);
    expect(slipMargin(plan, made, slipOf(plan, made))).toBeNull();
  });
});

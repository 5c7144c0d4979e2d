import { describe, expect, test } from 'vitest';
import { schedule } from '../../../src/engine/schedule.ts';
import { clockAt, isoAt, offsetSpans, offsetText } from '../../../src/engine/time/clock.ts';
import { plainPlan } from '../../reference/plans.ts';

const HOUR_MS = 3_600_000;

describe('ISO text', () => {
  const spans = [
    { fromMs: 0, offsetMin: 0 },
    { fromMs: HOUR_MS, offsetMin: -570 },
  ];

  test.each([
    [0, '1970-01-01T00:00:00+00:00'],
    [HOUR_MS - 1, '1970-01-01T00:59:59.999+00:00'],
    [HOUR_MS, '1969-12-31T15:30:00-09:30'],
    [HOUR_MS + 0.4, '1969-12-31T15:30:00-09:30'],
    [-1, '1969-12-31T23:59:59.999+00:00'],
  ])('%d ms is %s', (ms, text) => expect(isoAt(ms, spans)).toBe(text));

  test.each([
    [0, '+00:00'],
    [345, '+05:45'],
    [-570, '-09:30'],
    [840, '+14:00'],
  ])('%d min is written %s', (minutes, text) => expect(offsetText(minutes)).toBe(text));

  test('the clock part', () => expect(clockAt(HOUR_MS, spans)).toBe('15:30:00'));
});

describe('a run across a change of the clocks', () => {
  const run = (zone: string, date: string, time: string, frames: number, intervalS: number) =>
    schedule(
      plainPlan(frames, intervalS, {
        place: { zone },
        start: { date, time, whenRepeated: 'first' },
        trigger: { maxS: 90_000 },
      }),
    );

  test('London in spring: two hours of frames end three hours later on the clock', () => {
    const { totals, events, findings } = run('Europe/London', '2026-03-29', '00:30', 121, 60);
    expect(totals.firstFrameAt).toBe('2026-03-29T00:30:00+00:00');
    expect(totals.lastFrameAt).toBe('2026-03-29T03:30:00+01:00');
    // 00:59 is frame 30; frame 31 is taken at 02:00.
    expect(events.find(({ kind }) => kind === 'clockChange')).toMatchObject({
      frame: 31,
      elapsedS: 1800,
      at: '2026-03-29T02:00:00+01:00',
    });
    expect(findings.map(({ id }) => id)).toContain('clock-change');
  });

  test('Lord Howe goes back by half an hour', () => {
    const { totals } = run('Australia/Lord_Howe', '2026-04-05', '01:00', 121, 60);
    expect(totals.lastFrameAt).toBe('2026-04-05T02:30:00+10:30');
  });

  test('Troll goes back by two hours', () => {
    const { totals } = run('Antarctica/Troll', '2026-10-25', '02:00', 181, 60);
    expect(totals.lastFrameAt).toBe('2026-10-25T03:00:00+00:00');
  });

  test('Apia has no 30 December 2011', () => {
    const { totals, events } = run('Pacific/Apia', '2011-12-29', '22:00', 5, 3600);
    expect(totals.lastFrameAt).toBe('2011-12-31T02:00:00+14:00');
    expect(events.find(({ kind }) => kind === 'clockChange')?.frame).toBe(3);
  });

  test('a year of days sees both changes', () => {
    const { events } = run('Europe/London', '2026-01-01', '12:00', 366, 86_400);
    const changes = events.filter(({ kind }) => kind === 'clockChange');
    // 29 March is day 88 of the year, 25 October day 298; noon of that day is the first frame after.
    expect(changes.map(({ frame }) => frame)).toEqual([88, 298]);
  });

  test('a change between two frames is told at the later one', () => {
    const { events } = run('Europe/London', '2026-10-25', '00:59:59', 3, 7);
    expect(events.filter(({ kind }) => kind === 'clockChange')).toHaveLength(0);
    const later = run('Europe/London', '2026-10-25', '00:00:05', 1200, 7).events;
    // 01:00 UTC is 7195 s after 00:00:05 BST (23:00:05 UTC): 7195 / 7 = 1027.9, so frame 1029 is the first after it.
    expect(later.find(({ kind }) => kind === 'clockChange')?.frame).toBe(1029);
  });

  test('an offset by hand knows no change', () => {
    expect(offsetSpans('Europe/London', 0, 1e12, 90)).toEqual([{ fromMs: 0, offsetMin: 90 }]);
  });
});

describe('a start that is past', () => {
  const plan = plainPlan(3, 10);
  const { startMs } = schedule(plan);
  const said = (nowMs?: number) =>
    schedule(plan, nowMs === undefined ? {} : { nowMs }).findings.filter(({ id }) => id === 'start-past');

  test('is a note once the present is later, and not before', () => {
    expect(said(startMs + 1)).toMatchObject([{ severity: 'note', frame: null }]);
    expect(said(startMs)).toEqual([]);
  });

  test('is not spoken of where nobody says what the present is', () => expect(said()).toEqual([]));
});

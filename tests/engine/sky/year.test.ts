import { describe, expect, test } from 'vitest';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { sunEvents } from '../../../src/engine/sky/day.ts';
import { skyStart } from '../../../src/engine/sky/start.ts';
import { windowSpans } from '../../../src/engine/sky/windows.ts';
import { dayOfYear, yearOfDays } from '../../../src/engine/sky/year.ts';
import { startOf } from '../../../src/engine/time/clock.ts';
import { localDay } from '../../../src/engine/time/day.ts';
import { plainPlan, type Some } from '../../reference/plans.ts';

const LISBON = { zone: 'Europe/Lisbon', latitudeDeg: 38.7, longitudeDeg: -9.14 };
const DUSK = { used: true, sunAltitudeMinDeg: -12.5, sunAltitudeMaxDeg: 3 } as const;
const planOf = (change: Some<Plan>) => plainPlan(2, 10, { place: LISBON, window: DUSK, ...change });

const HOUR_S = 3600;

describe('the days of a year', () => {
  const plan = planOf({ window: { ...DUSK, moon: 'downOrDim', moonLitMaxShare: 0.25 } });
  const days = [...yearOfDays(plan, 2026, 1.45 * HOUR_S)];

  test('are all of them, one after another', () => {
    expect(days).toHaveLength(365);
    expect([...yearOfDays(plan, 2028, HOUR_S)]).toHaveLength(366);
    expect([days[0]?.date, days[58]?.date, days[59]?.date, days[364]?.date]).toEqual([
      '2026-01-01',
      '2026-02-28',
      '2026-03-01',
      '2026-12-31',
    ]);
    for (const [i, day] of days.entries()) if (i > 0) expect(day.startMs).toBe(days[i - 1]?.endMs);
  });

  test('say for each what the day by itself says', () => {
    for (const i of [0, 87, 88, 180, 297, 298, 364]) {
      const day = days[i];
      if (!day) throw new Error('no such day');
      const alone = dayOfYear(plan, day.date, 1.45 * HOUR_S);
      expect(alone).toEqual(day);
      expect(day.events).toEqual(
        sunEvents(localDay(day.date, LISBON.zone), LISBON.latitudeDeg, LISBON.longitudeDeg),
      );
      expect([day.bands[0]?.fromMs, day.bands.at(-1)?.toMs]).toEqual([day.startMs, day.endMs]);
    }
  });

  test('have windows as they come, and fit if one holds the run', () => {
    const verdicts = new Set(days.map(({ verdict }) => verdict));
    expect([...verdicts].sort()).toEqual(['fits', 'moon', 'too short']);
    for (const { startMs, endMs, windows, best, longest, verdict } of days) {
      const all = windowSpans(plan, startMs, endMs);
      for (const span of windows) {
        expect(all.some(({ fromMs }) => Math.abs(fromMs - span.fromMs) < 20)).toBe(true);
        expect(span.fromMs).toBeGreaterThanOrEqual(startMs);
      }
      const longestS = ((longest?.toMs ?? 0) - (longest?.fromMs ?? 0)) / 1000;
      expect(verdict === 'fits').toBe(longestS >= 1.45 * HOUR_S);
      if (best === null) continue;
      expect(best.startMs).toBeGreaterThanOrEqual(startMs);
      expect(best.startMs).toBeLessThanOrEqual(endMs);
      expect(best.startMs + 1.45 * HOUR_S * 1000).toBeLessThanOrEqual(best.span.toMs + 0.001);
    }
  });

  test('without a place are none', () => {
    const nowhere = { ...plan, place: { ...plan.place, longitudeDeg: null } };
    expect([...yearOfDays(nowhere, 2026, HOUR_S)]).toEqual([]);
    expect(dayOfYear(nowhere, '2026-01-01', HOUR_S)).toBe(null);
  });
});

describe('a day', () => {
  test('keeps the planned start if it fits, by the clock or by the sky', () => {
    const clock = planOf({ start: { time: '19:30:00', date: '2026-01-01' } });
    const summer = dayOfYear(clock, '2026-04-20', HOUR_S);
    expect(summer?.best?.startMs).not.toBe(
      startOf({ ...clock, start: { ...clock.start, date: '2026-04-20' } }).startMs,
    );
    const later = planOf({ start: { time: '20:10:00', date: '2026-01-01' } });
    const wanted = startOf({ ...later, start: { ...later.start, date: '2026-04-20' } }).startMs;
    expect(dayOfYear(later, '2026-04-20', HOUR_S)?.best?.startMs).toBe(wanted);

    const sky = planOf({ start: { tiedTo: 'sky', event: 'sunset', offsetMin: -10 } });
    for (const date of ['2026-04-20', '2026-11-03']) {
      const start = skyStart({ ...sky, start: { ...sky.start, date } });
      expect(dayOfYear(sky, date, HOUR_S)?.best?.startMs).toBeCloseTo(
        'ms' in start ? start.ms : Number.NaN,
        3,
      );
    }
  });

  test('follows a window past midnight as far as the run needs', () => {
    const night = planOf({ window: { ...DUSK, sunAltitudeMinDeg: null, sunAltitudeMaxDeg: -18 } });
    const day = dayOfYear(night, '2026-12-21', 8 * HOUR_S);
    expect(day?.verdict).toBe('fits');
    // The morning's part began the day before: it is counted from midnight, and is too short by itself.
    expect(day?.windows).toHaveLength(2);
    expect(day?.windows[0]?.fromMs).toBe(day?.startMs);
    expect(day?.longest?.toMs).toBeGreaterThan(day?.endMs ?? 0);
    expect(day?.best?.startMs).toBeGreaterThan(day?.startMs ?? 0);
    expect(dayOfYear(night, '2026-12-21', 13 * HOUR_S)?.verdict).toBe('too short');
  });

  test('in polar summer has no night, in polar winter no day', () => {
    const tromso = { zone: 'Europe/Oslo', latitudeDeg: 69.65, longitudeDeg: 18.96 };
    const night = planOf({ place: tromso, window: { used: true, sunAltitudeMaxDeg: -6 } });
    expect(dayOfYear(night, '2026-06-21', 60)).toMatchObject({
      verdict: 'no window',
      windows: [],
      longest: null,
    });
    expect(dayOfYear(night, '2026-12-21', 10 * HOUR_S)?.verdict).toBe('fits');
    expect(dayOfYear(night, '2026-06-21', 60)?.bands.map(({ band }) => band)).toEqual([
      'golden',
      'day',
      'golden',
    ]);
  });

  test('that the calendar skips has nothing', () => {
    const apia = planOf({ place: { zone: 'Pacific/Apia', latitudeDeg: -13.8, longitudeDeg: -171.8 } });
    expect(dayOfYear(apia, '2011-12-30', 60)).toMatchObject({ windows: [], bands: [], best: null });
  });

  test('holds a run of several days where no window is asked for', () => {
    const free = planOf({ window: { used: false } });
    expect(dayOfYear(free, '2026-06-21', 100 * HOUR_S)?.verdict).toBe('fits');
  });
});

// tz database: Apia has no 30 December 2011.
test('a day that the calendar skips has no window, and no start', () => {
  const apia = { zone: 'Pacific/Apia', latitudeDeg: -13.8, longitudeDeg: -171.8 };
  const day = dayOfYear(planOf({ place: apia }), '2011-12-30', 60);
  expect(day).toMatchObject({ windows: [], longest: null, best: null, verdict: 'no window' });
  expect(dayOfYear(planOf({ place: apia }), '2011-12-31', 60)?.verdict).toBe('fits');
});

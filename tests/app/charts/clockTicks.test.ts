import { describe, expect, it } from 'vitest';
import { clockTicks, dateText, sameDay } from '../../../src/app/charts/clockTicks.ts';

const HOUR_MS = 3_600_000;
const labels = (ticks: { label: string }[]) => ticks.map((tick) => tick.label);

describe('clock ticks', () => {
  it('stand on round local times', () => {
    // India is 5 h 30 min ahead of UTC (tz database): 10:10 UTC is 15:40 there.
    const from = Date.UTC(2026, 0, 1, 10, 10);
    const ticks = clockTicks(from, from + HOUR_MS, [{ fromMs: from, offsetMin: 330 }], 4);
    expect(labels(ticks)).toEqual(['15:45', '16:00', '16:15', '16:30']);
    expect(ticks[0]?.ms).toBe(Date.UTC(2026, 0, 1, 10, 15));
  });

  it('mark an hour that comes twice twice', () => {
    // Paris, 25 October 2026: 03:00 +02:00 becomes 02:00 +01:00 at 01:00 UTC (tz database, europe, rule EU).
    const from = Date.UTC(2026, 9, 24, 23);
    const change = Date.UTC(2026, 9, 25, 1);
    const offsets = [
      { fromMs: from, offsetMin: 120 },
      { fromMs: change, offsetMin: 60 },
    ];
    const ticks = clockTicks(from, from + 4 * HOUR_MS, offsets, 5);
    expect(labels(ticks)).toEqual(['01:00', '02:00', '02:00', '03:00', '04:00']);
    expect(ticks[2]?.ms).toBe(change);
  });

  it('skip an hour that is skipped', () => {
    // Paris, 29 March 2026: 02:00 +01:00 becomes 03:00 +02:00 at 01:00 UTC (tz database, europe, rule EU).
    const from = Date.UTC(2026, 2, 29, 0);
    const offsets = [
      { fromMs: from, offsetMin: 60 },
      { fromMs: Date.UTC(2026, 2, 29, 1), offsetMin: 120 },
    ];
    expect(labels(clockTicks(from, from + 3 * HOUR_MS, offsets, 4))).toEqual([
      '01:00',
      '03:00',
      '04:00',
      '05:00',
    ]);
  });

  it('give the date at midnight, and dates or months on long runs', () => {
    const from = Date.UTC(2026, 7, 8, 22);
    const utc = [{ fromMs: from, offsetMin: 0 }];
    expect(labels(clockTicks(from, from + 3 * HOUR_MS, utc, 3))).toEqual([
      '22:00',
      '23:00',
      '9 Aug',
      '01:00',
    ]);
    expect(labels(clockTicks(from, from + 96 * HOUR_MS, utc, 4))).toEqual([
      '9 Aug',
      '10 Aug',
      '11 Aug',
      '12 Aug',
    ]);
    const year = labels(clockTicks(from, from + 400 * 24 * HOUR_MS, utc, 12));
    expect(year.slice(0, 6)).toEqual(['Sep', 'Nov', '2027', 'Mar', 'May', 'Jul']);
  });

  it('show seconds where they are seconds apart', () => {
    const from = Date.UTC(2026, 7, 8, 20, 0, 1);
    const utc = [{ fromMs: from, offsetMin: 0 }];
    expect(labels(clockTicks(from, from + 20_000, utc, 4))).toEqual([
      '20:00:05',
      '20:00:10',
      '20:00:15',
      '20:00:20',
    ]);
  });

  it('never crowd', () => {
    const from = Date.UTC(2026, 9, 24, 20, 17);
    const offsets = [
      { fromMs: from, offsetMin: 120 },
      { fromMs: Date.UTC(2026, 9, 25, 1), offsetMin: 60 },
    ];
    for (const hours of [0.1, 1, 7, 30, 200, 3000, 80_000]) {
      const ticks = clockTicks(from, from + hours * HOUR_MS, offsets, 8);
      expect(ticks.length).toBeLessThanOrEqual(10);
      expect(ticks.every((tick, i) => i === 0 || tick.ms > Number(ticks[i - 1]?.ms))).toBe(true);
    }
  });
});

describe('local dates', () => {
  const offsets = [{ fromMs: 0, offsetMin: 120 }];
  it('turn at local midnight', () => {
    const before = Date.UTC(2026, 7, 8, 21, 59, 59);
    expect(dateText(before, offsets)).toBe('8 Aug');
    expect(dateText(before + 1000, offsets)).toBe('9 Aug');
    expect(sameDay(before, before + 1000, offsets)).toBe(false);
    expect(sameDay(before - 1000, before, offsets)).toBe(true);
  });
});

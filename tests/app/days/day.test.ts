import { describe, expect, test } from 'vitest';
import { calendarOf } from '../../../src/app/days/calendar.ts';
import {
  aimOf,
  betterOffsetMin,
  handyStart,
  lightPieces,
  plannedPieces,
  startEdits,
  startOn,
  windowName,
} from '../../../src/app/days/day.ts';
import { plainText } from '../../../src/app/working/sentence.ts';
import type { BestStart } from '../../../src/engine/sky/windows.ts';
import { type DayOfYear, dayOfYear } from '../../../src/engine/sky/year.ts';
import { plain } from '../../browser/parts.ts';
import { planOf } from '../../outputs/plans.ts';

const HOUR_MS = 3_600_000;
const paris = planOf({ place: { zone: 'Europe/Paris' } }).place;
const { offsets } = calendarOf(paris, 2026);
// 8 August 2026, 18:00 UTC, is 20:00 in Paris.
const EVENING = Date.UTC(2026, 7, 8, 18);

const starts = (earliestMin: number, latestMin: number, runMin = 90): BestStart => {
  const [earliestMs, latestMs] = [EVENING + earliestMin * 60_000, EVENING + latestMin * 60_000];
  const span = { fromMs: earliestMs, toMs: latestMs + runMin * 60_000 };
  return { startMs: (earliestMs + latestMs) / 2, earliestMs, latestMs, span };
};

describe('a start that is easy to say', () => {
  const minutes = (best: BestStart) => (handyStart(best, offsets) - EVENING) / 60_000;

  test('goes by five minutes, by minutes, or by seconds, as there is room', () => {
    expect(minutes(starts(0, 14))).toBe(5);
    expect(minutes(starts(6, 8))).toBe(7);
    expect(minutes(starts(6.2, 6.6)) * 60).toBe(384);
  });

  test('always lies within what fits', () => {
    for (let k = 0; k < 60; k += 1) {
      const best = starts(k * 0.37, k * 0.37 + 0.1 + k * 0.2);
      const ms = handyStart(best, offsets);
      expect(ms).toBeGreaterThanOrEqual(best.earliestMs);
      expect(ms).toBeLessThanOrEqual(best.latestMs);
    }
  });
});

describe('the edits of a start', () => {
  test('are the local date and clock', () => {
    expect(startEdits(EVENING + 5 * 60_000, offsets)).toEqual([
      ['start.date', '2026-08-08'],
      ['start.time', '20:05:00'],
      ['start.whenRepeated', 'first'],
    ]);
  });

  // Clocks go back from 03:00 to 02:00 on 25 October 2026 at 01:00 UTC (Directive 2000/84/EC).
  test('say which of two hours is meant', () => {
    const half = Date.UTC(2026, 9, 25, 0, 30);
    expect(startEdits(half, offsets)).toContainEqual(['start.time', '02:30:00']);
    expect(startEdits(half, offsets)).toContainEqual(['start.whenRepeated', 'first']);
    expect(startEdits(half + HOUR_MS, offsets)).toContainEqual(['start.time', '02:30:00']);
    expect(startEdits(half + HOUR_MS, offsets)).toContainEqual(['start.whenRepeated', 'second']);
  });
});

describe('a start tied to the sky', () => {
  test('moves by whole minutes, as little as it can', () => {
    const best = starts(0, 6.5);
    expect(betterOffsetMin(-15, EVENING + 8 * 60_000, best)).toBe(-17);
    expect(betterOffsetMin(-15, EVENING - 4.5 * 60_000, best)).toBe(-10);
    expect(betterOffsetMin(-15, EVENING + 8.2 * 60_000, starts(0.3, 0.9))).toBeNull();
  });

  const plan = planOf({
    place: { zone: 'Europe/Paris', latitudeDeg: 43.3, longitudeDeg: 6.4 },
    start: { date: '2026-08-08', time: '12:00:00', tiedTo: 'sky', event: 'sunset', offsetMin: -15 },
    window: { used: true, sunAltitudeMinDeg: -12, sunAltitudeMaxDeg: 4 },
  });
  const day = dayOfYear(plan, '2026-08-08', 3600) as DayOfYear;

  test('aims at the evening although the morning is as long', () => {
    expect(day.windows).toHaveLength(2);
    const aim = aimOf(plan, day, 3600, startOn(plan, day.date));
    expect(aim?.span).toEqual(day.windows[1]);
    expect(day.windows.map((window) => windowName(window, day))).toEqual([
      'Morning window',
      'Evening window',
    ]);
  });

  test('goes along with the date, and falls back on the clock where there is no event', () => {
    // A month earlier the sun sets later there; a day of the plan's own clock is 24 h longer than that.
    const [july, august] = ['2026-07-08', '2026-08-08'].map((date) => startOn(plan, date)) as [
      number,
      number,
    ];
    expect(august - july).toBeLessThan(31 * 24 * HOUR_MS);
    const polar = { ...plan, place: { ...plan.place, latitudeDeg: 75 } };
    expect(startOn(polar, '2026-06-21')).toBe(Date.UTC(2026, 5, 21, 10));
  });
});

describe('what a window comes to', () => {
  const day = { endMs: Date.UTC(2026, 7, 8, 22), longest: null } as DayOfYear;

  test('light, need and the starts that fit', () => {
    const best = starts(24.5, 31.5);
    expect(plain(plainText(lightPieces(best.span, day, 0, best, 5400, offsets)))).toBe(
      '1 h 37 min of light, 1 h 30 min needed. Start between 20:24:30 and 20:31:30.',
    );
    expect(plain(plainText(lightPieces(best.span, day, 0, null, 6000, offsets)))).toBe(
      '1 h 37 min of light, 1 h 40 min needed.',
    );
  });

  test('the planned start lies within, before or after', () => {
    const best = starts(0, 6);
    expect(plain(plainText(plannedPieces(EVENING + 5 * 60_000, day, best, offsets)))).toBe(
      'starts at 20:05:00, 1 min before the latest',
    );
    expect(plain(plainText(plannedPieces(EVENING - 60_000, day, best, offsets)))).toBe(
      'would start at 19:59:00, 1 min too early',
    );
    expect(plain(plainText(plannedPieces(EVENING + 9 * 60_000, day, best, offsets)))).toBe(
      'would start at 20:09:00, 3 min too late',
    );
  });
});

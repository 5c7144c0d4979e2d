import { describe, expect, test } from 'vitest';
import {
  calendarOf,
  dayOf,
  daysIn,
  inYear,
  isSkipped,
  monthStarts,
  stretchesOf,
} from '../../../src/app/days/calendar.ts';
import { planOf } from '../../outputs/plans.ts';

const placeIn = (zone: string, utcOffsetMin: number | null = null) =>
  planOf({ place: { zone, utcOffsetMin } }).place;

describe('the days of a year', () => {
  // ISO 8601, 4.2.1: a year has 366 days if it can be divided by 4, but not by 100 unless by 400.
  test.each([
    [2026, 365],
    [2028, 366],
    [2100, 365],
    [2000, 366],
  ])('%i has %i, its months follow one another', (year, days) => {
    expect(daysIn(year)).toBe(days);
    const calendar = calendarOf(placeIn('Europe/Paris'), year);
    expect(calendar.days).toHaveLength(days);
    expect(calendar.days[0]?.date).toBe(`${year}-01-01`);
    expect(calendar.days.at(-1)?.date).toBe(`${year}-12-31`);
    const starts = monthStarts(year);
    expect(starts).toHaveLength(13);
    expect(starts.slice(0, 12).map((start) => calendar.days[start]?.date.slice(8))).toEqual(
      Array(12).fill('01'),
    );
    expect(calendar.days.map(({ date }) => dayOf(date))).toEqual(calendar.days.map((_, i) => i));
  });

  test('the same day of another year, and what stands in for 29 February', () => {
    expect(inYear('2026-08-08', 2027)).toBe('2027-08-08');
    expect(inYear('2028-02-29', 2032)).toBe('2032-02-29');
    expect(inYear('2028-02-29', 2029)).toBe('2029-02-28');
  });
});

describe('clock changes', () => {
  // Directive 2000/84/EC: last Sundays of March and October, 01:00 UTC. In 2026 these are the 29th and the 25th.
  test('Paris goes an hour forward and back', () => {
    const { changes, days } = calendarOf(placeIn('Europe/Paris'), 2026);
    expect(changes.map(({ day, byMin }) => [days[day]?.date, byMin])).toEqual([
      ['2026-03-29', 60],
      ['2026-10-25', -60],
    ]);
  });

  // IANA time zone database, australasia, Lord_Howe: half an hour, first Sundays of April and October.
  test('Lord Howe Island goes half an hour', () => {
    const { changes, days } = calendarOf(placeIn('Australia/Lord_Howe'), 2026);
    expect(changes.map(({ day, byMin }) => [days[day]?.date, byMin])).toEqual([
      ['2026-04-05', -30],
      ['2026-10-04', 30],
    ]);
  });

  test('an offset that replaces the zone does not change', () => {
    expect(calendarOf(placeIn('Europe/Paris', 60), 2026).changes).toEqual([]);
  });

  // IANA time zone database, australasia, Apia: 30 December 2011 was left out.
  test('a day that the calendar leaves out', () => {
    const { days, changes } = calendarOf(placeIn('Pacific/Apia'), 2011);
    expect(days.filter(isSkipped).map(({ date }) => date)).toEqual(['2011-12-30']);
    expect(changes.at(-1)).toEqual({ day: 364, byMin: 1440 });
  });
});

describe('a span on the clock of a day', () => {
  const { days, offsets } = calendarOf(placeIn('Europe/Paris'), 2026);
  const day = (date: string) => days[dayOf(date)] ?? { date: '', startMs: 0, endMs: 0 };
  const whole = (date: string) => ({ fromMs: day(date).startMs, toMs: day(date).endMs });

  test('an ordinary day runs from 0 to 24', () => {
    expect(stretchesOf(whole('2026-08-08'), day('2026-08-08'), offsets)).toEqual([{ fromH: 0, toH: 24 }]);
  });

  test('the clock that is put forward leaves a gap', () => {
    expect(stretchesOf(whole('2026-03-29'), day('2026-03-29'), offsets)).toEqual([
      { fromH: 0, toH: 2 },
      { fromH: 3, toH: 24 },
    ]);
  });

  test('the clock that is put back shows an hour twice', () => {
    expect(stretchesOf(whole('2026-10-25'), day('2026-10-25'), offsets)).toEqual([
      { fromH: 0, toH: 3 },
      { fromH: 2, toH: 24 },
    ]);
  });

  test('only the part that lies on the day counts', () => {
    const night = { fromMs: Date.UTC(2026, 7, 8, 20), toMs: Date.UTC(2026, 7, 9, 3) };
    expect(stretchesOf(night, day('2026-08-08'), offsets)).toEqual([{ fromH: 22, toH: 24 }]);
    expect(stretchesOf(night, day('2026-08-09'), offsets)).toEqual([{ fromH: 0, toH: 5 }]);
    expect(stretchesOf(night, day('2026-08-10'), offsets)).toEqual([]);
  });
});

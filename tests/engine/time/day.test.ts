import { describe, expect, test } from 'vitest';
import { dayAt, instantOf, localDay, localDays, nextDate } from '../../../src/engine/time/day.ts';

const iso = (ms: number) => new Date(ms).toISOString().slice(0, 16);
const hours = ({ startMs, endMs }: { startMs: number; endMs: number }) => (endMs - startMs) / 3_600_000;

/** From the tz database, as in tests/reference/clock (V1): zone, date, first instant in UTC, hours. */
const DAYS: readonly (readonly [string, string, string, number])[] = [
  ['Etc/UTC', '2026-06-21', '2026-06-21T00:00', 24],
  ['Europe/London', '2026-03-29', '2026-03-29T00:00', 23],
  ['Europe/London', '2026-10-25', '2026-10-24T23:00', 25],
  ['Australia/Lord_Howe', '2026-04-05', '2026-04-04T13:00', 24.5],
  ['Antarctica/Troll', '2026-03-29', '2026-03-29T00:00', 22],
  ['Pacific/Kiritimati', '2026-06-21', '2026-06-20T10:00', 24],
  ['Asia/Kathmandu', '2026-06-21', '2026-06-20T18:15', 24],
  // Midnight is skipped: the day begins at 01:00.
  ['Africa/Cairo', '2026-04-24', '2026-04-23T22:00', 23],
  ['America/Santiago', '2026-09-06', '2026-09-06T04:00', 23],
  // The hour before midnight comes twice, and with it that day has 25 hours.
  ['Africa/Cairo', '2026-10-29', '2026-10-28T21:00', 25],
  ['America/Santiago', '2026-04-04', '2026-04-04T03:00', 25],
  ['America/Nuuk', '2026-03-28', '2026-03-28T02:00', 23],
  // The calendar skips 30 December.
  ['Pacific/Apia', '2011-12-29', '2011-12-29T10:00', 24],
  ['Pacific/Apia', '2011-12-30', '2011-12-30T10:00', 0],
  ['Pacific/Apia', '2011-12-31', '2011-12-30T10:00', 24],
];

describe('a local day', () => {
  test.each(DAYS)('%s, %s begins at %s UTC and has %d hours', (zone, date, begins, length) => {
    const day = localDay(date, zone);
    expect(iso(day.startMs)).toBe(begins);
    expect(hours(day)).toBe(length);
  });

  test('an offset that is given replaces the zone’s', () => {
    const day = localDay('2026-03-29', 'Europe/London', 840);
    expect(iso(day.startMs)).toBe('2026-03-28T10:00');
    expect(hours(day)).toBe(24);
  });

  test.each(['Europe/London', 'America/Santiago', 'Pacific/Apia', 'Australia/Lord_Howe'])(
    'the days of a year in %s follow one another without a gap',
    (zone) => {
      const days = localDays('2011-01-01', 365, zone);
      expect(days).toHaveLength(365);
      for (const [i, day] of days.entries()) {
        expect(day).toEqual(localDay(nextDate('2011-01-01', i), zone));
        if (i > 0) expect(day.startMs).toBe(days[i - 1]?.endMs);
      }
    },
  );

  test.each([
    ['2026-10-25T00:30Z', 'Europe/London', '2026-10-25'],
    ['2026-06-20T10:00Z', 'Pacific/Kiritimati', '2026-06-21'],
    ['2026-06-20T09:59Z', 'Pacific/Kiritimati', '2026-06-20'],
    ['2011-12-30T10:00Z', 'Pacific/Apia', '2011-12-31'],
  ])('%s falls in %s on %s', (at, zone, date) => {
    const day = dayAt(Date.parse(at), zone);
    expect(day.date).toBe(date);
    expect(day.startMs).toBeLessThanOrEqual(Date.parse(at));
    expect(day.endMs).toBeGreaterThan(Date.parse(at));
  });
});

describe('the instant of a local time', () => {
  const at = (local: string, offsets: [string, number][], which: 'first' | 'second' = 'first') =>
    iso(
      instantOf(
        Date.parse(`${local}Z`),
        offsets.map(([from, offsetMin]) => ({ fromMs: Date.parse(from), offsetMin })),
        which,
      ),
    );
  const spring: [string, number][] = [
    ['2026-03-27T00:00Z', 0],
    ['2026-03-29T01:00Z', 60],
  ];
  const autumn: [string, number][] = [
    ['2026-10-23T00:00Z', 60],
    ['2026-10-25T01:00Z', 0],
  ];

  test.each([
    ['2026-03-29T00:59', '2026-03-29T00:59'],
    // Skipped: the offset before the gap (RFC 5545, section 3.3.5).
    ['2026-03-29T01:30', '2026-03-29T01:30'],
    ['2026-03-29T02:00', '2026-03-29T01:00'],
  ])('%s in spring is %s UTC', (local, utc) => expect(at(local, spring)).toBe(utc));

  test('one that is skipped goes by the offset just before the gap, not by an earlier one', () => {
    const both: [string, number][] = [...autumn, ['2027-03-28T01:00Z', 60]];
    expect(at('2027-03-28T01:30', both)).toBe('2027-03-28T01:30');
  });

  test('one that comes twice is the first or the second', () => {
    expect(at('2026-10-25T01:30', autumn, 'first')).toBe('2026-10-25T00:30');
    expect(at('2026-10-25T01:30', autumn, 'second')).toBe('2026-10-25T01:30');
    expect(at('2026-10-25T02:30', autumn, 'second')).toBe('2026-10-25T02:30');
  });
});

test.each([
  ['2026-12-31', 1, '2027-01-01'],
  ['2028-02-28', 1, '2028-02-29'],
  ['2026-03-01', -1, '2026-02-28'],
])('%s and %d days is %s', (date, days, later) => expect(nextDate(date, days)).toBe(later));

import { describe, expect, test } from 'vitest';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { skyStart } from '../../../src/engine/sky/start.ts';
import { plainPlan, type Some } from '../../reference/plans.ts';

const LONDON = { zone: 'Europe/London', latitudeDeg: 51.5074, longitudeDeg: -0.1278 };
const TROMSO = { zone: 'Europe/Oslo', latitudeDeg: 69.6492, longitudeDeg: 18.9553 };

const startOf = (place: Some<Plan['place']>, start: Some<Plan['start']>) => {
  const found = skyStart(plainPlan(2, 10, { place, start: { tiedTo: 'sky', ...start } }));
  return 'ms' in found ? new Date(Math.round(found.ms / 1000) * 1000).toISOString() : found.noEvent;
};

const offBy = (iso: string, want: string) => Math.abs(Date.parse(iso) - Date.parse(want)) / 1000;

describe('a start that goes by the sky', () => {
  // London, 2026-03-20: SPA and ephem agree on 18:13:29 UTC for sunset (CHECK-VALUES 1.4, computed).
  test('is the event and its minutes', () => {
    expect(
      offBy(startOf(LONDON, { date: '2026-03-20', event: 'sunset' }), '2026-03-20T18:13:29Z'),
    ).toBeLessThan(10);
    expect(
      offBy(startOf(LONDON, { date: '2026-03-20', event: 'sunset', offsetMin: -50 }), '2026-03-20T17:23:29Z'),
    ).toBeLessThan(10);
    expect(
      offBy(
        startOf(LONDON, { date: '2026-06-21', event: 'nauticalDusk', offsetMin: 30 }),
        '2026-06-21T22:53:58Z',
      ),
    ).toBeLessThan(15);
  });

  test('moves with the date', () => {
    const march = startOf(LONDON, { date: '2026-03-20', event: 'sunset', offsetMin: -50 });
    const april = startOf(LONDON, { date: '2026-04-20', event: 'sunset', offsetMin: -50 });
    // A month of spring: sunset comes 52 minutes later in UTC at that latitude.
    expect(april.slice(11, 16) > march.slice(11, 16)).toBe(true);
    expect(april.slice(0, 10)).toBe('2026-04-20');
  });

  test('goes by the local date: in Sydney the sunrise of 21 December falls on the 20th in UTC', () => {
    const place = { zone: 'Australia/Sydney', latitudeDeg: -33.8688, longitudeDeg: 151.2093 };
    expect(
      offBy(startOf(place, { date: '2026-12-21', event: 'sunrise' }), '2026-12-20T18:40:38Z'),
    ).toBeLessThan(10);
  });

  test('can go by the moon', () => {
    expect(startOf(LONDON, { date: '2026-08-08', event: 'moonset' })).toMatch(/^2026-08-08T1[67]/);
  });

  test.each([
    [TROMSO, '2026-06-21', 'sunset', 'above all day'],
    [TROMSO, '2026-12-21', 'sunrise', 'below all day'],
    [LONDON, '2026-06-21', 'astronomicalDusk', 'above all day'],
    [
      { zone: 'Pacific/Apia', latitudeDeg: -13.8, longitudeDeg: -171.8 },
      '2011-12-30',
      'sunset',
      'no such day',
    ],
    [{ latitudeDeg: null, longitudeDeg: 3 }, '2026-06-21', 'sunset', 'no place'],
    [{ latitudeDeg: 3, longitudeDeg: null }, '2026-06-21', 'sunset', 'no place'],
  ] as const)('%j on %s has no %s: %s', (place, date, event, why) =>
    expect(startOf(place, { date, event })).toBe(why),
  );

  test('of an event that does not happen at the poles but for noon', () => {
    expect(startOf({ latitudeDeg: 90, longitudeDeg: 0 }, { date: '2026-06-21', event: 'solarNoon' })).toMatch(
      /T1[12]:/,
    );
    expect(startOf({ latitudeDeg: -90, longitudeDeg: 0 }, { date: '2026-06-21', event: 'sunset' })).toBe(
      'below all day',
    );
  });

  test('takes the first or the second of two', () => {
    // Tromsø in September: sunset comes minutes earlier every day, so that a day which begins just before it has two.
    const place = { ...TROMSO, zone: 'Etc/UTC' };
    const sunset = Date.parse(startOf(place, { date: '2026-09-10', event: 'sunset' }));
    const utcOffsetMin = 1440 - Math.ceil((sunset % 86_400_000) / 60_000) + 1;
    const clock = { ...place, utcOffsetMin };
    const starts = (['first', 'second'] as const).map((whenRepeated) =>
      [9, 10, 11, 12].map((day) =>
        startOf(clock, { date: `2026-09-${String(day).padStart(2, '0')}`, event: 'sunset', whenRepeated }),
      ),
    );
    const differ = starts[0]?.filter((iso, i) => iso !== starts[1]?.[i]) ?? [];
    expect(differ).toHaveLength(1);
  });
});

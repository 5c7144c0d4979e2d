import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bandOf, lightBands } from '../../../src/engine/sky/bands.ts';
import { moonEvents, SUNRISE_ALTITUDE_DEG, sunEvents } from '../../../src/engine/sky/day.ts';
import { SUN_EVENTS } from '../../../src/engine/sky/names.ts';
import { sunAt } from '../../../src/engine/sky/position.ts';
import { localDay } from '../../../src/engine/time/day.ts';
import { settings } from '../../property/settings.ts';
import { plainPlan } from '../../reference/plans.ts';

const eventsOn = (date: string, zone: string, latitude: number, longitude: number) =>
  sunEvents(localDay(date, zone), latitude, longitude);

const times = (events: ReturnType<typeof eventsOn>, name: string) =>
  events.flatMap((event) =>
    event.name === name && event.ms !== null ? [new Date(event.ms).toISOString()] : [],
  );

const why = (events: readonly { name: string; noEvent: string | null }[], name: string) =>
  events.find((event) => event.name === name)?.noEvent;

describe('the sun on a local day', () => {
  test('of 23 hours, of 25: no event is lost or doubled', () => {
    for (const date of ['2026-03-29', '2026-10-25']) {
      const events = eventsOn(date, 'Europe/London', 51.5, -0.13);
      expect(events.map(({ name }) => name)).toEqual([...SUN_EVENTS]);
      expect(events.every(({ ms }) => ms !== null)).toBe(true);
    }
  });

  test('whose midnight is skipped', () => {
    expect(eventsOn('2026-04-24', 'Africa/Cairo', 30, 31.2).map(({ name }) => name)).toEqual([...SUN_EVENTS]);
    expect(eventsOn('2026-09-06', 'America/Santiago', -33.4, -70.6).every(({ ms }) => ms !== null)).toBe(
      true,
    );
  });

  test('that the calendar skips has no events', () => {
    const events = eventsOn('2011-12-30', 'Pacific/Apia', -13.8, -171.8);
    expect(events.map(({ noEvent }) => noEvent)).toEqual(SUN_EVENTS.map(() => 'no such day'));
    expect(times(eventsOn('2011-12-29', 'Pacific/Apia', -13.8, -171.8), 'sunset')).toHaveLength(1);
    expect(times(eventsOn('2011-12-31', 'Pacific/Apia', -13.8, -171.8), 'sunset')).toHaveLength(1);
  });

  test('at UTC+14 begins the day before in UTC', () => {
    const events = eventsOn('2026-06-21', 'Pacific/Kiritimati', 1.87, -157.4);
    expect(times(events, 'sunrise')[0]).toMatch(/^2026-06-20T16:/);
    expect(times(events, 'sunset')[0]).toMatch(/^2026-06-21T04:/);
  });

  test('with a clock far from the sun: sunset first, then sunrise', () => {
    const events = eventsOn('2026-03-20', 'Etc/UTC', 0, 170);
    const order = events.map(({ name }) => name).filter((name) => name === 'sunrise' || name === 'sunset');
    expect(order).toEqual(['sunset', 'sunrise']);
    expect(times(events, 'solarNoon')).toHaveLength(1);
  });

  test('has two sunsets where the second comes earlier by the clock of the same day', () => {
    // In spring Tromsø's sunset gets later: the zone is chosen so that one falls just before local midnight. In
    // autumn it gets earlier by minutes a day: one just after the first midnight, the next just before the second.
    const sunset = Date.parse(times(eventsOn('2026-09-10', 'Etc/UTC', 69.65, 18.96), 'sunset')[0] ?? '');
    const midnight = sunset - 60_000;
    const day = { date: '', startMs: midnight, endMs: midnight + 86_400_000 };
    const twice = sunEvents(day, 69.65, 18.96).filter(({ name }) => name === 'sunset');
    expect(twice.map(({ ms }) => ms !== null)).toEqual([true, true]);
    // And in spring a day may pass without one, though the sun does go up and down.
    const spring = Date.parse(times(eventsOn('2026-04-10', 'Etc/UTC', 69.65, 18.96), 'sunset')[0] ?? '');
    const without = sunEvents(
      { date: '', startMs: spring + 60_000, endMs: spring + 86_460_000 },
      69.65,
      18.96,
    );
    expect(why(without, 'sunset')).toBe('not on this day');
    expect(why(without, 'sunrise')).toBe(null);
  });

  test('in polar summer and winter says on which side the sun stays', () => {
    const summer = eventsOn('2026-06-21', 'Europe/Oslo', 69.65, 18.96);
    expect(why(summer, 'sunset')).toBe('above all day');
    expect(why(summer, 'solarNoon')).toBe(null);
    const winter = eventsOn('2026-12-21', 'Europe/Oslo', 69.65, 18.96);
    expect(why(winter, 'sunrise')).toBe('below all day');
    expect(why(winter, 'civilDawn')).toBe(null);
    expect(winter.filter(({ ms }) => ms === null).map(({ name }) => name)).toEqual(['sunrise', 'sunset']);
  });

  test.each([90, -90])('at latitude %d', (latitude) => {
    const june = eventsOn('2026-06-21', 'Etc/UTC', latitude, 0);
    const side = latitude > 0 ? 'above all day' : 'below all day';
    expect(june.filter(({ name }) => name !== 'solarNoon').every(({ noEvent }) => noEvent === side)).toBe(
      true,
    );
    // The sun rises once a year, at an equinox.
    const rises = Array.from(
      { length: 12 },
      (_, i) => `2026-${latitude > 0 ? '03' : '09'}-${15 + i}`,
    ).flatMap((date) => times(eventsOn(date, 'Etc/UTC', latitude, 0), 'sunrise'));
    expect(rises).toHaveLength(1);
  });
});

const anywhere = fc.record({
  ms: fc.integer({ min: Date.UTC(1970, 0, 1), max: Date.UTC(2100, 0, 1) }),
  latitude: fc.double({ min: -90, max: 90, noNaN: true }),
  longitude: fc.double({ min: -180, max: 180, noNaN: true }),
});

describe('on any day anywhere', () => {
  test('events lie within the day, at their altitude, and rises alternate with sets', () => {
    fc.assert(
      fc.property(anywhere, ({ ms, latitude, longitude }) => {
        const day = { date: '', startMs: ms, endMs: ms + 86_400_000 };
        const events = sunEvents(day, latitude, longitude).filter((event) => event.ms !== null);
        for (const event of events) {
          const at = event.ms as number;
          expect(at).toBeGreaterThanOrEqual(day.startMs);
          expect(at).toBeLessThanOrEqual(day.endMs);
          if (event.name !== 'sunrise' && event.name !== 'sunset') continue;
          const { geometricAltitudeDeg } = sunAt(at, latitude, longitude);
          expect(Math.abs(geometricAltitudeDeg - SUNRISE_ALTITUDE_DEG)).toBeLessThan(0.001);
        }
        for (const pair of [/^sun/, /^civil/, /^nautical/, /^astronomical/]) {
          const rising = events
            .filter(({ name }) => pair.test(name))
            .map(({ name }) => /Dawn|rise/.test(name));
          for (let i = 1; i < rising.length; i += 1) expect(rising[i]).toBe(!rising[i - 1]);
        }
        const moon = moonEvents(day, latitude, longitude).filter((event) => event.ms !== null);
        for (let i = 1; i < moon.length; i += 1) expect(moon[i]?.name).not.toBe(moon[i - 1]?.name);
      }),
      settings(),
    );
  });

  test('bands follow one another without a gap, differ, and are those of the altitude', () => {
    const { sky } = plainPlan(2, 10);
    fc.assert(
      fc.property(anywhere, fc.integer({ min: 1, max: 200_000 }), ({ ms, latitude, longitude }, lengthS) => {
        const toMs = ms + lengthS * 1000;
        const bands = lightBands(ms, toMs, latitude, longitude, sky);
        expect(bands[0]?.fromMs).toBe(ms);
        expect(bands.at(-1)?.toMs).toBe(toMs);
        for (const [i, { band, fromMs, toMs: endMs }] of bands.entries()) {
          if (i > 0) {
            expect(fromMs).toBe(bands[i - 1]?.toMs);
            expect(band).not.toBe(bands[i - 1]?.band);
          }
          // Close to the ends the two ways of working it out may differ.
          for (const share of [0.1, 0.5, 0.9]) {
            const at = fromMs + (endMs - fromMs) * share;
            const { geometricAltitudeDeg } = sunAt(at, latitude, longitude);
            const sides = [
              bandOf(geometricAltitudeDeg - 0.001, sky),
              bandOf(geometricAltitudeDeg + 0.001, sky),
            ];
            expect(sides).toContain(band);
          }
        }
      }),
      settings(0.3),
    );
  });
});

test('the user’s golden hour comes before the blue one, both before the others', () => {
  const sky = { goldenLowDeg: -4, goldenHighDeg: 6, blueLowDeg: -8, blueHighDeg: -2 };
  const bands = [10, 5.9, -3.9, -4.1, -7, -9, -13, -19].map((deg) => bandOf(deg, sky));
  expect(bands).toEqual(['day', 'golden', 'golden', 'blue', 'blue', 'nautical', 'astronomical', 'night']);
  expect(bandOf(-5, { ...sky, blueLowDeg: -4.5 })).toBe('civil');
});

import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, test } from 'vitest';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { horizonOf } from '../../../src/engine/sky/horizon.ts';
import { hitsSet } from '../../../src/engine/sky/pane.ts';
import { moonAt, moonLitShare, sunAt } from '../../../src/engine/sky/position.ts';
import { bestStart, setHitSpans, windowSpans } from '../../../src/engine/sky/windows.ts';
import { settings } from '../../property/settings.ts';
import { plainPlan, type Some } from '../../reference/plans.ts';

const HOUR_MS = 3_600_000;
const RAD = Math.PI / 180;

/**
 * How well an instant fulfils each condition, in degrees (or minutes of the clock, or shares): positive inside,
 * negative outside, near nought close to an edge. Asked of suncalc at the instant, and of the zone by luxon.
 */
function* margins({ window, place, pane }: Plan, ms: number): Generator<number> {
  const [latitude, longitude] = [place.latitudeDeg as number, place.longitudeDeg as number];
  const sun = sunAt(ms, latitude, longitude);
  const turned = (deg: number) => ((deg % 360) + 360) % 360;
  if (window.sunAltitudeMinDeg !== null) yield sun.geometricAltitudeDeg - window.sunAltitudeMinDeg;
  if (window.sunAltitudeMaxDeg !== null) yield window.sunAltitudeMaxDeg - sun.geometricAltitudeDeg;
  if (window.sunAzimuthFromDeg !== null || window.sunAzimuthToDeg !== null) {
    const from = window.sunAzimuthFromDeg ?? 0;
    const width = turned((window.sunAzimuthToDeg ?? 360) - from);
    const along = turned(sun.azimuthDeg - from);
    const inside = along <= width ? Math.min(along, width - along) : -Math.min(along - width, 360 - along);
    if (width > 0) yield inside * Math.cos(sun.geometricAltitudeDeg * RAD);
  }
  const over = sun.apparentAltitudeDeg - horizonOf(place.horizon)(sun.azimuthDeg);
  if (window.sunAndHorizon !== 'any') yield window.sunAndHorizon === 'above' ? over : -over;
  if (window.sunOnPane !== 'any' && pane.used) {
    const on = over >= 0 && hitsSet(pane, sun.apparentAltitudeDeg, sun.azimuthDeg) ? 1 : -1;
    yield window.sunOnPane === 'onSet' ? on : -on;
  }
  if (window.clockFrom !== '' || window.clockTo !== '') {
    const { hour, minute, second } = DateTime.fromMillis(ms, { zone: place.zone });
    const now = hour * 60 + minute + second / 60;
    const minuteOf = (text: string) => Number(text.slice(0, 2)) * 60 + Number(text.slice(3));
    const from = minuteOf(window.clockFrom || '00:00');
    const length = (((window.clockTo ? minuteOf(window.clockTo) : 1440) - from + 1439) % 1440) + 1;
    const along = (now - from + 1440) % 1440;
    if (length < 1440)
      yield along < length ? Math.min(along, length - along) : -Math.min(along - length, 1440 - along);
  }
  if (window.moon !== 'any') {
    const moon = moonAt(ms, latitude, longitude);
    const up = moon.geometricAltitudeDeg + (0.2725 * 6378.14) / moon.distanceKm / RAD + 34 / 60;
    const bright = moonLitShare(ms) - window.moonLitMaxShare;
    yield window.moon === 'down' ? -up : Math.max(-up, -bright * 100);
  }
}

const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: null, freq: 1 });
const clock = fc.oneof(fc.constant(''), fc.constantFrom('00:00', '04:30', '12:00', '19:15', '23:59'));

const windowOf = fc.record({
  used: fc.constant(true),
  sunAltitudeMinDeg: maybe(fc.integer({ min: -20, max: 20 })),
  sunAltitudeMaxDeg: maybe(fc.integer({ min: 21, max: 80 })),
  sunAzimuthFromDeg: maybe(fc.integer({ min: 0, max: 360 })),
  sunAzimuthToDeg: maybe(fc.integer({ min: 0, max: 360 })),
  sunAndHorizon: fc.constantFrom('any' as const, 'any' as const, 'above' as const, 'below' as const),
  sunOnPane: fc.constantFrom('any' as const, 'any' as const, 'onSet' as const, 'offSet' as const),
  clockFrom: clock,
  clockTo: clock,
  moon: fc.constantFrom('any' as const, 'any' as const, 'down' as const, 'downOrDim' as const),
  moonLitMaxShare: fc.constantFrom(0.1, 0.25, 0.9),
});

const cases = fc.record({
  window: windowOf,
  place: fc.record({
    latitudeDeg: fc.oneof(fc.integer({ min: -89, max: 89 }), fc.constantFrom(90, -90, 0, 23)),
    longitudeDeg: fc.integer({ min: -180, max: 180 }),
    zone: fc.constantFrom(
      'Etc/UTC',
      'Europe/London',
      'Pacific/Kiritimati',
      'America/Santiago',
      'Australia/Lord_Howe',
    ),
    horizon: fc
      .uniqueArray(fc.integer({ min: 0, max: 36 }), { maxLength: 12 })
      .map((tens) => tens.sort((a, b) => a - b))
      .map((tens) => tens.map((ten, i) => ({ azimuthDeg: ten * 10, altitudeDeg: ((i * 7) % 12) - 2 }))),
  }),
  pane: fc.record({
    used: fc.constant(true),
    facingDeg: fc.integer({ min: 0, max: 360 }),
    setFarMm: fc.integer({ min: 1000, max: 4000 }),
  }),
  // Around the changes of the clocks too.
  fromMs: fc
    .constantFrom('2026-03-28T07:11Z', '2026-10-24T20:00Z', '2026-06-20T00:00Z', '2026-04-04T13:30Z')
    .map(Date.parse),
});

describe('windows', () => {
  test('hold what is asked for, and all of it: every instant agrees, and spans are in order and apart', () => {
    let [held, failed] = [0, 0];
    fc.assert(
      fc.property(cases, ({ window, place, pane, fromMs }) => {
        const plan = plainPlan(2, 10, { window, place, pane } as Some<Plan>);
        const toMs = fromMs + 40 * HOUR_MS;
        const spans = windowSpans(plan, fromMs, toMs);
        for (const [i, span] of spans.entries()) {
          if (span.toMs <= span.fromMs || span.fromMs < (spans[i - 1]?.toMs ?? fromMs) || span.toMs > toMs)
            throw new Error(`span ${i} of ${JSON.stringify(spans)}`);
        }
        for (let ms = fromMs + 1; ms < toMs; ms += 1_234_567) {
          const inside = spans.some((span) => ms >= span.fromMs && ms < span.toMs);
          const all = [...margins(plan, ms)];
          // Close to an edge the two ways of working it out may differ; the pane's has no measure.
          if (all.some((margin) => Math.abs(margin) < 0.01) || nearPaneEdge(plan, ms)) continue;
          if (all.every((margin) => margin > 0) !== inside)
            throw new Error(
              `${new Date(ms).toISOString()}: ${inside ? 'inside' : 'outside'}, margins ${all.join(', ')}`,
            );
          if (inside) held += 1;
          else failed += 1;
        }
      }),
      settings(0.3),
    );
    expect(held).toBeGreaterThan(300);
    expect(failed).toBeGreaterThan(300);
  });

  const dusk = plainPlan(2, 10, {
    place: { zone: 'Europe/Lisbon', latitudeDeg: 38.7, longitudeDeg: -9.14 },
    window: { used: true, sunAltitudeMinDeg: -12.5, sunAltitudeMaxDeg: 3 },
  });

  test('that nobody asks for are all the time, also without a place', () => {
    const whole = [{ fromMs: 5, toMs: 500 }];
    expect(windowSpans(plainPlan(2, 10), 5, 500)).toEqual(whole);
    expect(windowSpans({ ...dusk, window: { ...dusk.window, used: false } }, 5, 500)).toEqual(whole);
  });

  test('without a place are none', () => {
    const place = { ...dusk.place, latitudeDeg: null };
    expect(windowSpans({ ...dusk, place }, 5, 500)).toEqual([]);
    expect(setHitSpans({ ...dusk, place, pane: { ...dusk.pane, used: true } }, 5, 500)).toEqual([]);
  });

  test('of a dusk and a dawn a day are two a day', () => {
    const fromMs = Date.parse('2026-08-08T00:00+01:00');
    const spans = windowSpans(dusk, fromMs, fromMs + 24 * HOUR_MS);
    expect(spans).toHaveLength(2);
    for (const { fromMs: from, toMs: to } of spans) {
      const ends = [from, to].map((ms) => sunAt(ms, 38.7, -9.14).geometricAltitudeDeg).sort((a, b) => a - b);
      expect(ends[0]).toBeCloseTo(-12.5, 3);
      expect(ends[1]).toBeCloseTo(3, 3);
    }
  });
});

/** Whether hitting the set turns within half a minute of an instant. */
function nearPaneEdge(plan: Plan, ms: number): boolean {
  if (plan.window.sunOnPane === 'any') return false;
  const hit = (at: number) => {
    const sun = sunAt(at, plan.place.latitudeDeg as number, plan.place.longitudeDeg as number);
    return hitsSet(plan.pane, sun.apparentAltitudeDeg, sun.azimuthDeg);
  };
  return hit(ms - 30_000) !== hit(ms) || hit(ms + 30_000) !== hit(ms);
}

describe('sun on the set', () => {
  test('comes when the sun stands before the pane, low enough', () => {
    // Pane to the south, head 1 m over the table, table from 0.8 to 1.6 m: the head's shadow line reaches 0.8 m at
    // a profile angle of 51.3 deg, the sill's 1.6 m at 5.4 deg. On 14 November in Lisbon the sun reaches 32.9 deg.
    const plan = plainPlan(2, 10, {
      place: { zone: 'Europe/Lisbon', latitudeDeg: 38.7, longitudeDeg: -9.14 },
      pane: { used: true, facingDeg: 180, sillMm: 900, headMm: 1750, setHeightMm: 750 },
    });
    const fromMs = Date.parse('2026-11-14T00:00Z');
    const spans = setHitSpans(plan, fromMs, fromMs + 24 * HOUR_MS);
    expect(spans).toHaveLength(1);
    const noonMs = Date.parse('2026-11-14T12:21Z');
    expect(spans[0]?.fromMs).toBeLessThan(noonMs);
    expect(spans[0]?.toMs).toBeGreaterThan(noonMs);
    // A house across the street, 40 deg high, keeps it out.
    const shaded = { ...plan, place: { ...plan.place, horizon: [{ azimuthDeg: 180, altitudeDeg: 40 }] } };
    expect(setHitSpans(shaded, fromMs, fromMs + 24 * HOUR_MS)).toEqual([]);
    // A pane to the north gets none in November.
    expect(
      setHitSpans({ ...plan, pane: { ...plan.pane, facingDeg: 0 } }, fromMs, fromMs + 24 * HOUR_MS),
    ).toEqual([]);
  });
});

describe('the best start', () => {
  const spans = [
    { fromMs: 0, toMs: 10_000 },
    { fromMs: 20_000, toMs: 60_000 },
    { fromMs: 70_000, toMs: 90_000 },
  ];

  test('is in the middle of the longest span that holds the run', () => {
    expect(bestStart(spans, 30)).toEqual({
      startMs: 25_000,
      earliestMs: 20_000,
      latestMs: 30_000,
      span: spans[1],
    });
    expect(bestStart(spans, 40)?.startMs).toBe(20_000);
    expect(bestStart(spans, 40.001)).toBe(null);
    expect(bestStart([], 1)).toBe(null);
  });

  test('is the planned one if that fits', () => {
    expect(bestStart(spans, 5, 71_000)).toMatchObject({
      startMs: 71_000,
      earliestMs: 70_000,
      latestMs: 85_000,
    });
    expect(bestStart(spans, 5, 86_000)?.startMs).toBe(37_500);
    expect(bestStart(spans, 5, 15_000)?.startMs).toBe(37_500);
  });
});

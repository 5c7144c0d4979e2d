import { describe, expect, test } from 'vitest';
import {
  ev100OfLux,
  lightTrack,
  luxOfEv100,
  nightAllowanceStops,
  readingEv,
  type SkyAt,
  type SkyNodes,
  sceneEv,
  sceneOffsetStops,
} from '../../../src/engine/light/scene.ts';
import { MOON_DISTANCE_KM, moonLux, sunLux } from '../../../src/engine/light/sky-light.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { moonAt, moonLitShare, sunAt } from '../../../src/engine/sky/position.ts';
import { plainPlan, type Some } from '../../reference/plans.ts';

const LISBON = { latitudeDeg: 38.7, longitudeDeg: -9.1, zone: 'Europe/Lisbon' };

const skyPlan = (light: Some<Plan['light']> = {}, change: Some<Plan> = {}) =>
  plainPlan(10, 10, {
    place: LISBON,
    light: { kind: 'sky', ...light },
    camera: { exactStops: true },
    ...change,
  });

const under = (sunAltitudeDeg: number, moonAltitudeDeg = -40): SkyAt => ({
  sunAltitudeDeg,
  moonAltitudeDeg,
  moonLitShare: 1,
  moonDistanceKm: MOON_DISTANCE_KM,
});

const at = (ms: number): SkyAt => {
  const moon = moonAt(ms, LISBON.latitudeDeg, LISBON.longitudeDeg);
  return {
    sunAltitudeDeg: sunAt(ms, LISBON.latitudeDeg, LISBON.longitudeDeg).geometricAltitudeDeg,
    moonAltitudeDeg: moon.geometricAltitudeDeg,
    moonLitShare: moonLitShare(ms),
    moonDistanceKm: moon.distanceKm,
  };
};

const nodesOf = (skies: SkyAt[]): SkyNodes => ({
  startMs: 0,
  stepMs: 60_000,
  sunAltitudeDeg: Float64Array.from(skies, (sky) => sky.sunAltitudeDeg),
  sunLux: Float64Array.from(skies, (sky) => sunLux(sky.sunAltitudeDeg)),
  moonLux: Float64Array.from(skies, (sky) =>
    moonLux(sky.moonAltitudeDeg, sky.moonLitShare, sky.moonDistanceKm),
  ),
});

test('lux and exposure value are each other’s way back', () => {
  for (const lux of [0.0006, 1, 80, 1e5]) expect(luxOfEv100(ev100OfLux(lux, 320), 320)).toBeCloseTo(lux, 10);
});

describe('the scene', () => {
  test('is the sky’s light, less cloud, and as much brighter as typed', () => {
    const clear = sceneEv(skyPlan(), under(30));
    expect(clear).toBeCloseTo(ev100OfLux(sunLux(30), 250), 1);
    expect(sceneEv(skyPlan({ cloudStops: 2 }), under(30))).toBeCloseTo(clear - 2, 12);
    expect(sceneEv(skyPlan({ sceneStops: -3 }), under(30))).toBeCloseTo(clear - 3, 12);
  });

  test('counts the moon only if it is to be counted', () => {
    const without = sceneEv(skyPlan({ moonlight: false }), under(-40, 50));
    expect(without).toBeCloseTo(ev100OfLux(sunLux(-40), 250), 12);
    const withMoon = ev100OfLux(sunLux(-40) + moonLux(50, 1), 250);
    expect(sceneEv(skyPlan(), under(-40, 50))).toBeCloseTo(withMoon, 12);
    expect(withMoon - without).toBeGreaterThan(7);
  });

  test('of a studio is what the meter says, whatever the sky', () => {
    expect(sceneEv(skyPlan({ kind: 'studio', studioEv: 7.5, cloudStops: 2 }), under(30))).toBe(7.5);
  });
});

describe('a metered reading', () => {
  const read = {
    metered: true,
    meteredDate: '2026-07-10',
    meteredTime: '20:40',
    meteredShutterS: 1 / 60,
    meteredApertureF: 11,
    meteredIso: 125,
    meteredFilterStops: 3,
  };
  // Lisbon keeps UTC+1 in summer.
  const readMs = Date.UTC(2026, 6, 10, 19, 40);

  test('goes by the exact stops behind the marks, and counts its filter', () => {
    // f/11 is 2^3.5, so Av 7; 1/64 is Tv 6; ISO 126 a third over 100; 3 stops of filter: 7 + 6 - 1/3 + 3.
    expect(readingEv(skyPlan(read))).toBeCloseTo(16 - 1 / 3, 12);
  });

  test('is what the scene has at that moment, on the local clock', () => {
    const plan = skyPlan(read);
    expect(sceneEv(plan, at(readMs))).toBeCloseTo(readingEv(plan), 12);
    expect(sceneEv(plan, at(readMs - 3_600_000))).toBeGreaterThan(readingEv(plan) + 1);
  });

  test('replaces what was typed, holds whatever starts the run, and cloud counts against its sky', () => {
    const plan = skyPlan(read);
    const typed = skyPlan({ ...read, sceneStops: 5 });
    expect(sceneOffsetStops(typed)).toBe(sceneOffsetStops(plan));
    const tied = skyPlan(read, { start: { tiedTo: 'sky', event: 'sunset', date: '2026-12-01' } });
    expect(sceneOffsetStops(tied)).toBe(sceneOffsetStops(plan));
    const cloudy = skyPlan({ ...read, cloudStops: 1.5 });
    expect(sceneEv(cloudy, at(readMs))).toBeCloseTo(readingEv(plan) - 1.5, 12);
  });

  test('without a place leaves what was typed', () => {
    const plan = skyPlan(
      { ...read, sceneStops: -2 },
      { place: { zone: 'Etc/UTC', latitudeDeg: null, longitudeDeg: null } },
    );
    expect(sceneOffsetStops(plan)).toBe(-2);
  });
});

describe('the night allowance', () => {
  const allowance = (deg: number, ramp: Some<Plan['exposure']['ramp']> = {}) =>
    nightAllowanceStops(
      skyPlan({}, { exposure: { ramp: { nightStops: 2, nightFromDeg: 0, nightFullDeg: -12, ...ramp } } }),
      deg,
    );

  test.each([
    [10, 0],
    [0, 0],
    [-3, 0.5],
    [-6, 1],
    [-12, 2],
    [-50, 2],
  ])('at %d deg is %d', (deg, stops) => expect(allowance(deg)).toBeCloseTo(stops, 12));

  test('whose end is not below its beginning comes all at once', () => {
    expect(allowance(0, { nightFullDeg: 0 })).toBe(0);
    expect(allowance(-0.001, { nightFullDeg: 0 })).toBe(2);
    expect(allowance(-0.001, { nightFullDeg: 5 })).toBe(2);
  });
});

describe('the light of a run', () => {
  test('has the scene at each node, and a target as much higher as the night is to stay darker', () => {
    const plan = skyPlan();
    const skies = [20, 3, -3, -9, -20].map((deg) => under(deg));
    const track = lightTrack(plan, nodesOf(skies));
    skies.forEach((sky, i) => {
      const scene = sceneEv(plan, sky);
      expect(track?.sceneEv[i]).toBeCloseTo(scene, 12);
      expect(track?.targetEv[i]).toBeCloseTo(scene + nightAllowanceStops(plan, sky.sunAltitudeDeg), 12);
    });
  });

  test('is steady in a studio, even without a place, and without a night', () => {
    const track = lightTrack(skyPlan({ kind: 'studio', studioEv: 9 }), null);
    expect(track).toEqual({ sceneEv: new Float64Array([9, 9]), targetEv: new Float64Array([9, 9]) });
  });

  test('is unknown if it is not planned, or the sky is not known', () => {
    expect(lightTrack(skyPlan({ kind: 'none' }), nodesOf([under(3), under(2)]))).toBeNull();
    expect(lightTrack(skyPlan(), null)).toBeNull();
  });
});

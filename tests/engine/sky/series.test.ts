import { describe, expect, test } from 'vitest';
import { altitudeOn, azimuthOn, moonPath, sunPath } from '../../../src/engine/sky/path.ts';
import { moonAt, moonLitShare, refractionDeg, sunAt } from '../../../src/engine/sky/position.ts';
import { nodesOver, valueAt } from '../../../src/engine/sky/series.ts';

const HOUR_MS = 3_600_000;
const RAD = Math.PI / 180;

describe('a series', () => {
  const made = (fromMs: number, toMs: number, at: (ms: number) => number) => {
    const { firstMs, count } = nodesOver(fromMs, toMs, HOUR_MS);
    const values = Float64Array.from({ length: count }, (_, i) => at(firstMs + i * HOUR_MS));
    return { firstMs, stepMs: HOUR_MS, values };
  };

  test('is exact for a polynomial of fifth degree, nodes and ends included', () => {
    const at = (ms: number) => {
      const x = ms / HOUR_MS;
      return 3 - 2 * x + x ** 2 / 3 - x ** 3 / 7 + x ** 4 / 50 - x ** 5 / 400;
    };
    const series = made(-2.5 * HOUR_MS, 4 * HOUR_MS, at);
    for (let ms = -2.5 * HOUR_MS; ms <= 4 * HOUR_MS; ms += HOUR_MS / 8)
      expect(valueAt(series, ms)).toBeCloseTo(at(ms), 11);
  });

  test('keeps its promise for a sinusoid of a day: 0.0049 (2 pi / 24)^6', () => {
    const at = (ms: number) => Math.sin((ms / HOUR_MS / 24) * 2 * Math.PI);
    const series = made(0, 24 * HOUR_MS, at);
    let worst = 0;
    for (let ms = 0; ms <= 24 * HOUR_MS; ms += 60_000)
      worst = Math.max(worst, Math.abs(valueAt(series, ms) - at(ms)));
    expect(worst).toBeLessThan(0.0049 * ((2 * Math.PI) / 24) ** 6);
    expect(worst).toBeGreaterThan(1e-7);
  });
});

describe('a path', () => {
  const fromMs = Date.parse('2026-03-20T05:21Z');
  const toMs = fromMs + 30 * HOUR_MS;

  test.each([
    [51.5, -0.1],
    [-0.18, -78.47],
    [90, 0],
    [-89.99, 170],
  ])('stays within 0.0003 deg of suncalc at %d, %d', (latitude, longitude) => {
    const [sun, moon] = [
      sunPath(fromMs, toMs, latitude, longitude),
      moonPath(fromMs, toMs, latitude, longitude),
    ];
    const worst = { deg: 0, km: 0, share: 0 };
    for (let ms = fromMs - HOUR_MS; ms <= toMs + HOUR_MS; ms += 7 * 60_000) {
      const want = sunAt(ms, latitude, longitude);
      const off = azimuthOn(sun, ms) - want.azimuthDeg;
      const level = Math.cos(want.geometricAltitudeDeg * RAD);
      const moonWant = moonAt(ms, latitude, longitude);
      worst.deg = Math.max(
        worst.deg,
        Math.abs(altitudeOn(sun, ms) - want.geometricAltitudeDeg),
        Math.abs(off - 360 * Math.round(off / 360)) * level,
        Math.abs(altitudeOn(moon, ms) - moonWant.geometricAltitudeDeg),
      );
      worst.km = Math.max(worst.km, Math.abs(valueAt(moon.distanceKm, ms) - moonWant.distanceKm));
      worst.share = Math.max(worst.share, Math.abs(valueAt(moon.litShare, ms) - moonLitShare(ms)));
    }
    expect(worst.deg).toBeLessThan(0.0003);
    expect(worst.km).toBeLessThan(0.5);
    expect(worst.share).toBeLessThan(1e-5);
  });

  test('is the same at an instant whatever stretch it was made for', () => {
    const ms = fromMs + 3.21 * HOUR_MS;
    expect(altitudeOn(sunPath(ms, ms, 40, 9), ms)).toBe(altitudeOn(sunPath(fromMs, toMs, 40, 9), ms));
  });
});

describe('refraction', () => {
  test('never lowers, and fades out without a jump from 1 deg under the horizon', () => {
    const lifts = Array.from({ length: 18_001 }, (_, i) => refractionDeg(-90 + i / 100));
    expect(Math.min(...lifts)).toBe(0);
    const jumps = lifts.slice(1).map((lift, i) => Math.abs(lift - (lifts[i] as number)));
    expect(Math.max(...jumps)).toBeLessThan(0.003);
    expect(refractionDeg(-6)).toBe(0);
    expect(refractionDeg(90)).toBe(0);
  });
});

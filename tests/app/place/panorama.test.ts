/** The drawing of the horizon: where directions come to lie, and how the sun's way is cut. */
import { describe, expect, test } from 'vitest';
import { groundLine, panorama, sunLines, sunOver } from '../../../src/app/sections/panorama.ts';

const NORTH = { latitudeDeg: 43.3, longitudeDeg: 6.4 };
const SOUTH = { latitudeDeg: -41.3, longitudeDeg: 174.8 };
const numbers = (line: string) => (line.match(/-?[\d.]+/g) ?? []).map(Number);

describe('the strip', () => {
  test('has the noon side of the sky in its middle', () => {
    const middle = (view: ReturnType<typeof panorama>) => (view.left + view.width) / 2;
    const north = panorama([], NORTH);
    expect(north.x(180)).toBeCloseTo(middle(north));
    const south = panorama([], SOUTH);
    expect(south.x(0)).toBeCloseTo(middle(south));
    expect(south.x(90)).toBeGreaterThan(middle(south));
  });

  test('is as high as the horizon needs', () => {
    for (const altitudeDeg of [0, 20, 40, 90]) {
      const view = panorama([{ azimuthDeg: 10, altitudeDeg }], NORTH);
      expect(view.y(altitudeDeg)).toBeGreaterThanOrEqual(0);
      expect(view.y(0)).toBeLessThan(view.bottom);
    }
  });
});

describe('the sun’s way', () => {
  test('is one line by day in the north, and two where it passes the ends of the strip', () => {
    const sun = sunOver('2026-08-08', 'Europe/Paris', null, NORTH);
    const high = Math.max(...sun.map(({ altitudeDeg }) => altitudeDeg));
    // Noon altitude is 90 - latitude + declination; 16.1 deg on 8 August. Source: an almanac, from memory.
    expect(high).toBeCloseTo(90 - 43.3 + 16.1, 0);
    const lines = sunLines(panorama([], NORTH), sun);
    expect(lines.length).toBeLessThanOrEqual(2);
    const whole = sunLines(panorama([], SOUTH), sunOver('2026-01-08', 'Pacific/Auckland', null, SOUTH));
    expect(whole.length).toBeLessThanOrEqual(3);
    expect(whole.flatMap(numbers).every(Number.isFinite)).toBe(true);
  });
});

test('the ground goes from end to end and through every point', () => {
  const points = [
    { azimuthDeg: 100.5, altitudeDeg: 12 },
    { azimuthDeg: 200, altitudeDeg: 3 },
  ];
  const view = panorama(points, NORTH);
  const line = groundLine(view, points);
  for (const { azimuthDeg, altitudeDeg } of points)
    expect(line).toContain(`L${view.x(azimuthDeg).toFixed(1)} ${view.y(altitudeDeg).toFixed(1)}`);
  expect(line.startsWith(`M${view.left} ${view.bottom}`)).toBe(true);
  expect(line.endsWith(`V${view.bottom}Z`)).toBe(true);
});

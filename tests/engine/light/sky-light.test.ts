import { describe, expect, test } from 'vitest';
import {
  lightAltitudeDeg,
  moonLux,
  moonTableLux,
  NIGHT_FLOOR_LUX,
  sunLux,
} from '../../../src/engine/light/sky-light.ts';

const STEP_DEG = 0.01;
const altitudes = Array.from({ length: 18_001 }, (_, i) => -90 + i * STEP_DEG);

/** Largest ratio in stops from one altitude to the next, and whether it ever falls. */
function climb(luxOf: (deg: number) => number): { largest: number; falls: number[] } {
  const falls: number[] = [];
  let largest = 0;
  for (let i = 1; i < altitudes.length; i += 1) {
    const [a, b] = [altitudes[i - 1] as number, altitudes[i] as number];
    const stops = Math.log2(luxOf(b) / luxOf(a));
    if (!(stops >= 0)) falls.push(b);
    largest = Math.max(largest, stops);
  }
  return { largest, falls };
}

describe('light by altitude', () => {
  test('the sun never gives less as it rises, and nowhere jumps', () => {
    const { largest, falls } = climb(sunLux);
    expect(falls).toEqual([]);
    // The steepest twilight gains 1.6 stops a degree; refraction as it is counted in adds to the sunrise.
    expect(largest).toBeLessThan(1.8 * STEP_DEG);
  });

  test('nor does the moon', () => {
    const { largest, falls } = climb((deg) => NIGHT_FLOOR_LUX + moonLux(deg, 0.7));
    expect(falls).toEqual([]);
    expect(largest).toBeLessThan(2 * STEP_DEG);
  });

  test('the moon gives more the more of it is lit and the nearer it is', () => {
    const lit = Array.from({ length: 101 }, (_, i) => moonLux(40, i / 100));
    for (let i = 1; i < lit.length; i += 1) expect(lit[i]).toBeGreaterThan(lit[i - 1] as number);
    expect(moonLux(40, 1, 356_500)).toBeGreaterThan(moonLux(40, 1, 406_700));
  });

  test('a lit share of rounding more than all of it is all of it', () => {
    expect(moonLux(40, 1 + 1e-12)).toBe(moonLux(40, 1));
    expect(moonLux(40, -1e-12)).toBe(moonLux(40, 0));
  });

  test('the night is as bright at -18 deg as at any time after', () => {
    for (const deg of [-18, -18.1, -40, -90]) expect(sunLux(deg)).toBe(NIGHT_FLOOR_LUX);
    expect(sunLux(-17.9)).toBeGreaterThan(NIGHT_FLOOR_LUX);
  });

  test('a moon that is far down adds nothing to the night', () => {
    expect(moonLux(-6, 1)).toBeLessThan(NIGHT_FLOOR_LUX / 100);
    expect(moonLux(-90, 1)).toBeGreaterThanOrEqual(0);
  });

  test('a half moon gives about a ninth of a full one', () => {
    expect(moonTableLux(45, 1) / moonTableLux(45, 0.5)).toBeCloseTo(8.42, 1);
  });
});

describe('the altitude that counts', () => {
  test('is geometric from sunset down', () => {
    for (const deg of [-0.8333, -1, -6, -30]) expect(lightAltitudeDeg(deg)).toBe(deg);
  });

  test('is apparent above the horizon: 29 minutes of arc at 0 (Saemundsson)', () => {
    expect((lightAltitudeDeg(0) - 0) * 60).toBeCloseTo(28.98, 1);
    expect(lightAltitudeDeg(10) - 10).toBeCloseTo(0.09, 2);
  });

  test('always rises', () => {
    const falls = altitudes.filter((deg) => !(lightAltitudeDeg(deg + STEP_DEG) > lightAltitudeDeg(deg)));
    expect(falls).toEqual([]);
  });
});

import { describe, expect, test } from 'vitest';
import {
  BETWEEN,
  bytesPerSOf,
  dyingError,
  FRAMES,
  readEntry,
  SAG,
  SECONDS,
  sagHz,
  swingsDamping,
  swingsHz,
  tapped,
  writeSOf,
} from '../../../src/app/measure/figures.ts';

const spaced = (text: string | null) => text?.replaceAll('\u00a0', ' ');

describe('what was measured, as it is typed', () => {
  test('is read with its unit, by comma or point', () => {
    expect(readEntry('2,5', SAG)).toEqual({ value: 2.5, error: null });
    expect(readEntry('2.5 mm', SAG)).toEqual({ value: 2.5, error: null });
    expect(readEntry('1:30', SECONDS)).toEqual({ value: 90, error: null });
    expect(readEntry(' ', SAG)).toEqual({ value: null, error: null });
  });

  test.each([
    ['some', SAG, 'Not a number. Allowed: 0.001 mm to 1000 mm.'],
    ['0', SAG, 'Allowed: 0.001 mm to 1000 mm.'],
    ['-3', SAG, 'Allowed: 0.001 mm to 1000 mm.'],
    ['1e400', SAG, 'Not a number. Allowed: 0.001 mm to 1000 mm.'],
    ['0.2', BETWEEN, 'Allowed: 0.5 to 10000.'],
    ['2.5', FRAMES, 'Allowed: whole numbers from 1 to 10000.'],
    ['soon', SECONDS, 'Not a length of time. Allowed: 0.01 s to 1 h.'],
  ])('%s is refused with what is allowed', (text, entry, error) => {
    const read = readEntry(text, entry);
    expect(read.value).toBeNull();
    expect(spaced(read.error)).toBe(error);
  });
});

describe('what follows from it', () => {
  // Static deflection of the handbooks of vibration isolation: f = 15.76 / sqrt(mm) Hz (from memory).
  test.each([1, 4, 25])('a sag of %d mm', (mm) => {
    expect(sagHz(mm)).toBeCloseTo(15.76 / Math.sqrt(mm), 2);
  });

  test('swings counted over a time', () => {
    expect(swingsHz(10, 4)).toBe(2.5);
  });

  // Half the height after n swings: zeta = 0.110 / n (the textbooks' rule for small damping, from memory).
  test.each([5, 20])('half the height after %d swings', (n) => {
    expect(swingsDamping(8, 4, n)).toBeCloseTo(0.11 / n, 3);
  });

  test('a ring that grows names both fields', () => {
    expect(spaced(dyingError(10, 12))).toBe('Allowed: less than First swing, 10 mm. A ring dies away.');
    expect(dyingError(10, 10)).not.toBeNull();
    expect(dyingError(10, 9)).toBeNull();
    expect(dyingError(null, 9)).toBeNull();
  });

  test('frames that were timed', () => {
    expect(writeSOf(20, 24)).toBe(1.2);
    expect(writeSOf(3, 1)).toBe(0.333);
    expect(bytesPerSOf(20, 24, 48e6)).toBe(40e6);
  });

  test('taps are one swing fewer than there are taps', () => {
    expect(tapped([])).toBeNull();
    expect(tapped([100])).toBeNull();
    expect(tapped([100, 400, 710, 1010])).toEqual({ swings: 3, seconds: 0.91 });
  });
});

import { expect, test } from 'vitest';
import {
  dampingFromSwings,
  frequencyFromSag,
  frequencyFromSwings,
} from '../../../src/engine/ringing/measure.ts';

test('sag: 10 mm rings at 4.984 Hz, four times the sag at half of that', () => {
  expect(frequencyFromSag(10)).toBeCloseTo(4.984, 4);
  expect(frequencyFromSag(40) / frequencyFromSag(10)).toBeCloseTo(0.5, 12);
});

test('swings: 30 in 6 s are 5 Hz', () => {
  expect(frequencyFromSwings(30, 6)).toBe(5);
});

test('damping: the same decrement over more swings', () => {
  const one = dampingFromSwings(120, 96, 1);
  expect(one).toBeCloseTo(0.035492, 6);
  expect(dampingFromSwings(120, 120 * 0.8 ** 7, 7)).toBeCloseTo(one, 12);
});

test.each([
  ['sagMm', () => frequencyFromSag(0), 'sagMm is 0: allowed is 0.001 to 1000 mm'],
  ['sagMm', () => frequencyFromSag(-3), 'sagMm is -3: allowed is 0.001 to 1000 mm'],
  ['sagMm', () => frequencyFromSag(Number.NaN), 'sagMm is NaN: allowed is 0.001 to 1000 mm'],
  ['sagMm', () => frequencyFromSag(1001), 'sagMm is 1001: allowed is 0.001 to 1000 mm'],
  ['first', () => dampingFromSwings(0, 1, 3), 'first is 0: allowed is more than 0'],
  [
    'first',
    () => dampingFromSwings(Number.POSITIVE_INFINITY, 1, 3),
    'first is Infinity: allowed is more than 0',
  ],
  ['last', () => dampingFromSwings(5, 5, 3), 'last is 5: allowed is more than 0 and less than first, 5'],
  ['last', () => dampingFromSwings(5, 0, 3), 'last is 0: allowed is more than 0 and less than first, 5'],
  ['swings', () => dampingFromSwings(5, 4, 0), 'swings is 0: allowed is 0.5 to 10000'],
  ['swings', () => frequencyFromSwings(0, 4), 'swings is 0: allowed is 0.5 to 10000'],
  ['seconds', () => frequencyFromSwings(3, 0), 'seconds is 0: allowed is 0.01 to 3600 s'],
])('%s out of range names what was found and what is allowed', (_field, attempt, message) => {
  expect(attempt).toThrow(new RangeError(message));
});

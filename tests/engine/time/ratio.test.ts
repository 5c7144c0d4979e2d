import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  ceil,
  decimalRatio,
  floor,
  minus,
  over,
  parseRate,
  times,
  toNumber,
} from '../../../src/engine/time/ratio.ts';
import { settings } from '../../property/settings.ts';

const ratio = (num: number, den: number) => ({ num: BigInt(num), den: BigInt(den) });

describe('frame rates', () => {
  test.each([
    ['25', 25n, 1n],
    ['24000/1001', 24_000n, 1001n],
    ['1', 1n, 1n],
  ])('%s is exact', (text, num, den) => expect(parseRate(text)).toEqual({ num, den }));

  test.each(['', '0', '-25', '25.0', '24000/0', '1/', '/1', ' 25', '1e3', '٢٥', '25/1/1', '025'])(
    "'%s' is refused",
    (text) => expect(() => parseRate(text)).toThrow(RangeError),
  );
});

describe('decimals', () => {
  test.each([
    [0.1, 1n, 10n],
    [-2.5, -25n, 10n],
    [1e21, 10n ** 21n, 1n],
    [1e-7, 1n, 10n ** 7n],
    [1.5e-10, 15n, 10n ** 11n],
    [0, 0n, 1n],
    [-0, 0n, 1n],
  ])('%d', (value, num, den) => {
    const got = decimalRatio(value);
    expect(got.num * den).toBe(num * got.den);
    expect(got.den > 0n).toBe(true);
  });

  test.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])('%d is refused', (value) =>
    expect(() => decimalRatio(value)).toThrow(RangeError),
  );

  test('every finite number comes back as it was', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e25, max: 1e25 }), (value) => {
        // Below this the last places of a double are no longer those of the plan's quantities.
        fc.pre(value === 0 || Math.abs(value) > 1e-100);
        expect(toNumber(decimalRatio(value))).toBe(value === 0 ? 0 : value);
      }),
      settings(4),
    );
  });
});

describe('whole parts', () => {
  test.each([
    [7, 2, 3, 4],
    [-7, 2, -4, -3],
    [6, 3, 2, 2],
    [-6, 3, -2, -2],
    [0, 5, 0, 0],
    [1, 1_000_000, 0, 1],
    [-1, 1_000_000, -1, 0],
  ])('%d/%d: floor %d, ceil %d', (num, den, low, high) => {
    expect(floor(ratio(num, den))).toBe(BigInt(low));
    expect(ceil(ratio(num, den))).toBe(BigInt(high));
  });

  test.each([
    [-1, 4, -0.25],
    [-7, 2, -3.5],
    [-1, 3, -1 / 3],
    [2, 3, 2 / 3],
    [10 ** 15 + 1, 3, (10 ** 15 + 1) / 3],
  ])('%d/%d as a number is %d', (num, den, want) => expect(toNumber(ratio(num, den))).toBe(want));

  test('a huge ratio and a tiny one', () => {
    expect(toNumber({ num: 10n ** 400n, den: 10n ** 399n })).toBe(10);
    expect(toNumber({ num: -(10n ** 30n), den: 3n })).toBe(-1e30 / 3);
    expect(toNumber({ num: 1n, den: 10n ** 20n })).toBe(1e-20);
  });
});

describe('counting', () => {
  test.each([
    [0.3, 0.1, 3],
    [1, 0.1, 10],
    [0.7, 0.1, 7],
    [2400, 8, 300],
    [2399.999, 8, 299],
    [1e9, 0.001, 1_000_000_000_000],
    [-0.05, 0.1, -1],
  ])('%d holds %d as often as %d', (value, step, want) =>
    expect(floor(over(decimalRatio(value), decimalRatio(step)))).toBe(BigInt(want)),
  );

  test('the four operations', () => {
    expect(toNumber(times(ratio(2, 3), ratio(3, 4)))).toBe(0.5);
    expect(toNumber(over(ratio(1, 2), ratio(1, 8)))).toBe(4);
    expect(toNumber(minus(ratio(1, 2), ratio(3, 4)))).toBe(-0.25);
  });
});

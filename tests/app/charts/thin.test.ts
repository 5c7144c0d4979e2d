import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bucketStarts, thin as thinBuckets } from '../../../src/app/charts/thin.ts';

const thin = (xs: ArrayLike<number>, ys: ArrayLike<number>, buckets: number) =>
  thinBuckets(bucketStarts(xs, buckets), ys);

const ascending = (count: number) => Float64Array.from({ length: count }, (_, i) => i);

describe('thin', () => {
  it('keeps everything that fits', () => {
    expect(thin(ascending(6), [3, 1, 4, 1, 5, 9], 2)).toEqual([0, 1, 2, 3, 4, 5]);
  });

  it('keeps a peak that is one frame wide', () => {
    const ys = new Float64Array(86_400);
    ys[40_001] = 1;
    expect(thin(ascending(86_400), ys, 300)).toContain(40_001);
  });

  it('keeps lowest and highest of each bucket, in their order', () => {
    // Two buckets: 0 to 4 and 5 to 9 of the range 0 to 9.
    const ys = [5, 9, 1, 5, 5, 0, 5, 5, 8, 5];
    expect(thin(ascending(10), ys, 2)).toEqual([0, 1, 2, 5, 8, 9]);
  });

  it('leaves out what is not finite', () => {
    expect(thin(ascending(3), [1, Number.NaN, Number.POSITIVE_INFINITY], 4)).toEqual([0]);
    expect(thin(ascending(100), new Float64Array(100).fill(Number.POSITIVE_INFINITY), 4)).toEqual([]);
  });

  it('has nothing to keep of nothing', () => {
    expect(thin([], [], 10)).toEqual([]);
  });

  it('always keeps first, last, lowest and highest of all, ascending and few', () => {
    const values = fc.array(fc.double({ noNaN: true, noDefaultInfinity: true }), {
      minLength: 1,
      maxLength: 400,
    });
    fc.assert(
      fc.property(values, fc.integer({ min: 1, max: 60 }), (ys, buckets) => {
        const kept = thin(ascending(ys.length), ys, buckets);
        const of = kept.map((i) => Number(ys[i]));
        expect(kept[0]).toBe(0);
        expect(kept.at(-1)).toBe(ys.length - 1);
        expect(Math.min(...of)).toBe(Math.min(...ys));
        expect(Math.max(...of)).toBe(Math.max(...ys));
        expect(kept.length).toBeLessThanOrEqual(2 * buckets + 2);
        expect(kept.every((index, n) => n === 0 || index > Number(kept[n - 1]))).toBe(true);
      }),
    );
  });

  it('keeps the extremes of every bucket, by a plain search', () => {
    const values = fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 60, maxLength: 300 });
    fc.assert(
      fc.property(values, fc.integer({ min: 1, max: 20 }), (ys, buckets) => {
        const kept = new Set(
          thin(ascending(ys.length), ys, buckets).map((i) => `${bucketOf(i, ys, buckets)} ${ys[i]}`),
        );
        for (let bucket = 0; bucket < buckets; bucket++) {
          const inside = ys.filter((_, i) => bucketOf(i, ys, buckets) === bucket);
          if (inside.length === 0) continue;
          expect(kept).toContain(`${bucket} ${Math.min(...inside)}`);
          expect(kept).toContain(`${bucket} ${Math.max(...inside)}`);
        }
      }),
    );
  });
});

const bucketOf = (index: number, ys: readonly number[], buckets: number) =>
  Math.min(Math.floor((index * buckets) / (ys.length - 1)), buckets - 1);

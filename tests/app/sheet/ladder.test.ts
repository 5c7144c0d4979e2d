import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  drawnAt,
  evenLadder,
  ladderOf,
  scaleOf,
  scrollFor,
  TALLEST_PX,
} from '../../../src/app/sheet/ladder.ts';

const heights = fc.array(fc.constantFrom(28, 32, 36, 44), { minLength: 1, maxLength: 300 });

describe('rows one under another', () => {
  test('each pixel lies in the row whose top is at or above it, and the next below', () => {
    fc.assert(
      fc.property(heights, fc.double({ min: 0, max: 1, noNaN: true, maxExcluded: true }), (list, share) => {
        const ladder = ladderOf(list);
        const px = share * ladder.totalPx;
        const row = ladder.rowAt(px);
        // Counted the slow way.
        let top = 0;
        let slow = 0;
        while (slow + 1 < list.length && top + (list[slow] as number) <= px) {
          top += list[slow] as number;
          slow += 1;
        }
        expect(row).toBe(slow);
        expect(ladder.topOf(row)).toBe(top);
      }),
    );
  });

  test('rows of one height are the same ladder', () => {
    const [even, listed] = [evenLadder(50, 28), ladderOf(Array(50).fill(28))];
    for (const px of [-5, 0, 27.9, 28, 700, 1399, 5000]) expect(even.rowAt(px)).toBe(listed.rowAt(px));
    expect(even.totalPx).toBe(listed.totalPx);
  });
});

describe('the rows that are drawn', () => {
  test('every visible pixel has its row, wherever it is scrolled to', () => {
    fc.assert(
      fc.property(
        heights,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.integer({ min: 50, max: 900 }),
        (list, share, viewPx) => {
          const ladder = ladderOf(list);
          const scrollPx = share * Math.max(0, ladder.totalPx - viewPx);
          const { first, end, shiftPx } = drawnAt(ladder, scrollPx, viewPx);
          expect(shiftPx).toBe(ladder.topOf(first));
          expect(ladder.topOf(first)).toBeLessThanOrEqual(scrollPx);
          const bottom = end < ladder.count ? ladder.topOf(end) : ladder.totalPx;
          expect(bottom).toBeGreaterThanOrEqual(Math.min(ladder.totalPx, scrollPx + viewPx));
        },
      ),
    );
  });

  test('what is too tall for a browser is scaled: both ends are reached, rows keep their height', () => {
    const ladder = evenLadder(2_000_000, 28);
    const viewPx = 700;
    expect(scaleOf(ladder, viewPx).heightPx).toBe(TALLEST_PX);
    expect(drawnAt(ladder, 0, viewPx).first).toBe(0);
    const foot = drawnAt(ladder, TALLEST_PX - viewPx, viewPx);
    expect(foot.end).toBe(2_000_000);
    // The last row ends where the view ends.
    const lastBottom = foot.shiftPx + (2_000_000 - foot.first) * 28;
    expect(lastBottom).toBeCloseTo(TALLEST_PX, 3);
  });

  test.each([10, 1_000_000, 2_000_000])('a row that is asked for is seen, of %i rows', (count) => {
    const ladder = evenLadder(count, 28);
    const viewPx = 140;
    for (const row of [0, 3, count >> 1, count - 1]) {
      const scrollPx = scrollFor(ladder, row, 0, viewPx, 'near');
      const { first, end, shiftPx } = drawnAt(ladder, scrollPx, viewPx);
      expect(row).toBeGreaterThanOrEqual(first);
      expect(row).toBeLessThan(end);
      const top = shiftPx + (row - first) * 28 - scrollPx;
      expect(top).toBeGreaterThan(-1);
      expect(top + 28).toBeLessThan(viewPx + 1);
    }
    // One that is seen already leaves the view as it is.
    expect(scrollFor(ladder, 2, 10, viewPx, 'near')).toBe(10);
  });
});

/** Rows one under another: where each begins, and which lies where. Pixels from the top of the first. */
import { lastWhere } from '../../engine/search.ts';

export interface Ladder {
  count: number;
  totalPx: number;
  topOf: (row: number) => number;
  /** Row at a height; the nearest one above the first and below the last. */
  rowAt: (px: number) => number;
}

const within = (row: number, count: number): number => Math.max(0, Math.min(count - 1, row));

/** Rows of one height: no memory, however many. */
export const evenLadder = (count: number, rowPx: number): Ladder => ({
  count,
  totalPx: count * rowPx,
  topOf: (row) => row * rowPx,
  rowAt: (px) => within(Math.floor(px / rowPx), count),
});

/** Rows of different heights. */
export function ladderOf(heightsPx: ArrayLike<number>): Ladder {
  const count = heightsPx.length;
  const tops = new Float64Array(count + 1);
  for (let row = 0; row < count; row += 1) tops[row + 1] = (tops[row] as number) + (heightsPx[row] as number);
  const rowAt = (px: number): number =>
    within(
      lastWhere(0, count, (row) => (tops[row] as number) <= px),
      count,
    );
  return { count, totalPx: tops[count] as number, topOf: (row) => tops[row] as number, rowAt };
}

/**
 * Tallest that the scrolled content gets. Browsers clamp taller elements: Firefox near 17.9 million pixels, Chromium at
 * 33.5 million (measured there). Beyond it scrolling is scaled: the bar still goes from the first row to the last.
 */
export const TALLEST_PX = 15_000_000;

/** Rows above and below the visible ones, so that none is missing while one scrolls. */
const AROUND_PX = 240;

/** The rows that are drawn. */
export interface Drawn {
  first: number;
  /** After the last. */
  end: number;
  /** Where the first of them begins within the scrolled content. */
  shiftPx: number;
}

/** What the scrolled content comes to, and how far a pixel of scrolling goes in the rows. */
export interface Scale {
  heightPx: number;
  rowsPx: number;
}

export function scaleOf({ totalPx }: Ladder, viewPx: number): Scale {
  if (totalPx <= TALLEST_PX) return { heightPx: totalPx, rowsPx: 1 };
  return { heightPx: TALLEST_PX, rowsPx: (totalPx - viewPx) / (TALLEST_PX - viewPx) };
}

/** The rows to draw. @param viewPx - height of what is seen of them */
export function drawnAt(ladder: Ladder, scrollPx: number, viewPx: number): Drawn {
  if (ladder.count === 0) return { first: 0, end: 0, shiftPx: 0 };
  const offsetPx = scrollPx * scaleOf(ladder, viewPx).rowsPx;
  const first = ladder.rowAt(offsetPx - AROUND_PX);
  const end = ladder.rowAt(offsetPx + viewPx + AROUND_PX) + 1;
  return { first, end, shiftPx: scrollPx - offsetPx + ladder.topOf(first) };
}

/** Where to scroll to so that a row is seen; where it is if it is seen already. @param place - or in the middle */
export function scrollFor(
  ladder: Ladder,
  row: number,
  scrollPx: number,
  viewPx: number,
  place: 'near' | 'middle',
): number {
  const { rowsPx } = scaleOf(ladder, viewPx);
  const [top, bottom] = [ladder.topOf(row), row + 1 < ladder.count ? ladder.topOf(row + 1) : ladder.totalPx];
  const offsetPx = scrollPx * rowsPx;
  const seen = top >= offsetPx && bottom <= offsetPx + viewPx;
  if (seen) return scrollPx;
  const to =
    place === 'middle'
      ? (top + bottom - viewPx) / 2
      : top < offsetPx
        ? top - rowsPx
        : bottom - viewPx + rowsPx;
  const farthest = scaleOf(ladder, viewPx).heightPx - viewPx;
  return Math.max(0, Math.min(farthest, to / rowsPx));
}

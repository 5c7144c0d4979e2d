/**
 * Fewer points for the same picture: the first and the last, and the lowest and the highest of every bucket.
 *
 * A peak one frame wide is still there at any width, which even spacing or averaging would lose.
 */

/**
 * Cuts a row of points into buckets of equal width.
 * @param xs ascending, any unit.
 * @param buckets how many equal parts of the x range; at least 1. Usually one a pixel.
 * @returns index at which each bucket begins, and the number of points at the end; every point a bucket of its own
 *   if there are few of them.
 */
export function bucketStarts(xs: ArrayLike<number>, buckets: number): Int32Array {
  const count = xs.length;
  if (count <= 2 * buckets + 2) return Int32Array.from({ length: count + 1 }, (_, i) => i);
  const from = Number(xs[0]);
  const width = Number(xs[count - 1]) - from;
  const starts = new Int32Array(buckets + 1);
  starts[buckets] = count;
  for (let bucket = 1; bucket < buckets; bucket += 1) {
    starts[bucket] = firstFrom(xs, from + (width * bucket) / buckets, Number(starts[bucket - 1]));
  }
  return starts;
}

/** First index, not below `low`, whose x is at least `x`; the number of points if there is none. */
function firstFrom(xs: ArrayLike<number>, x: number, low: number): number {
  let below = low - 1;
  let above = xs.length;
  while (above - below > 1) {
    const middle = (below + above) >> 1;
    if (Number(xs[middle]) < x) below = middle;
    else above = middle;
  }
  return above;
}

/**
 * Thins a series.
 * @param starts as {@link bucketStarts} gives them
 * @param ys one to each x. Values that are not finite are left out.
 * @returns indices to keep, ascending, at most two a bucket and the two ends
 */
export function thin(starts: Int32Array, ys: ArrayLike<number>): number[] {
  const kept: number[] = [];
  const last = ys.length - 1;
  if (Number.isFinite(ys[0])) kept.push(0);
  for (let bucket = 0; bucket + 1 < starts.length; bucket += 1) {
    keepExtremes(kept, ys, Number(starts[bucket]), Number(starts[bucket + 1]));
  }
  if (Number.isFinite(ys[last])) keep(kept, last);
  return kept;
}

function keepExtremes(kept: number[], ys: ArrayLike<number>, from: number, end: number): void {
  let low = -1;
  let high = -1;
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  for (let i = from; i < end; i += 1) {
    const y = ys[i] as number;
    // Neither comparison holds for what is not finite.
    if (y < lowest && y > Number.NEGATIVE_INFINITY) {
      lowest = y;
      low = i;
    }
    if (y > highest && y < Number.POSITIVE_INFINITY) {
      highest = y;
      high = i;
    }
  }
  if (low < 0) return;
  keep(kept, Math.min(low, high));
  keep(kept, Math.max(low, high));
}

function keep(kept: number[], index: number): void {
  if (kept.length === 0 || Number(kept[kept.length - 1]) < index) kept.push(index);
}

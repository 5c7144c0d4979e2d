/**
 * Fewer points for the same picture: the first and the last, and the lowest and the highest of every bucket.
 *
 * A peak one frame wide is still there at any width, which even spacing or averaging would lose.
 *
 * @param xs ascending, any unit.
 * @param ys one to each x. Values that are not finite are left out.
 * @param buckets how many equal parts of the x range; at least 1. Usually one a pixel.
 * @returns indices to keep, ascending, at most `2 x buckets + 2` of them; all of them if there are no more.
 */
export function thin(xs: ArrayLike<number>, ys: ArrayLike<number>, buckets: number): number[] {
  const last = xs.length - 1;
  if (last < 0) return [];
  if (last + 1 <= 2 * buckets + 2) return finiteOnly(ys);
  const from = Number(xs[0]);
  const perBucket = (Number(xs[last]) - from) / buckets || 1;
  const kept: number[] = [];
  let bucket = 0;
  let low = -1;
  let high = -1;
  const close = () => {
    if (low < 0) return;
    keep(kept, Math.min(low, high));
    keep(kept, Math.max(low, high));
  };
  for (let i = 0; i <= last; i++) {
    const y = Number(ys[i]);
    if (!Number.isFinite(y)) continue;
    const here = Math.min(Math.floor((Number(xs[i]) - from) / perBucket), buckets - 1);
    if (here !== bucket) {
      close();
      bucket = here;
      low = high = -1;
    }
    if (low < 0 || y < Number(ys[low])) low = i;
    if (high < 0 || y > Number(ys[high])) high = i;
    if (kept.length === 0) keep(kept, i);
  }
  close();
  if (Number.isFinite(Number(ys[last]))) keep(kept, last);
  return kept;
}

function keep(kept: number[], index: number): void {
  if (kept[kept.length - 1] !== index) kept.push(index);
}

function finiteOnly(ys: ArrayLike<number>): number[] {
  const kept: number[] = [];
  for (let i = 0; i < ys.length; i++) if (Number.isFinite(Number(ys[i]))) kept.push(i);
  return kept;
}

/** Searching what is in order: by halving. */

/**
 * First index of a stretch at which something holds, given that it holds from there on.
 * @param from - first index of the stretch
 * @param end - the one after its last
 * @returns `end` if it holds nowhere
 */
export function firstWhere(from: number, end: number, holds: (index: number) => boolean): number {
  let low = from;
  let high = end;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (holds(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** Last index of a stretch at which something holds, given that it holds up to there; `from` if it holds nowhere. */
export const lastWhere = (from: number, end: number, holds: (index: number) => boolean): number =>
  Math.max(from, firstWhere(from, end, (index) => !holds(index)) - 1);

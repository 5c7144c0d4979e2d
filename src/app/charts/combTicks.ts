/** The teeth of the comb: real time on the left, the clip on the right. */

const FIRST_GAP_PX = 24;
const LAST_GAP_PX = 3.6;

/**
 * Places of the teeth along a width, the first at 0: far apart, then closing up at an even rate.
 * @param frames no more teeth than this
 * @returns pixels, ascending; empty for no width or no frames
 */
export function combTicks(widthPx: number, frames: number): number[] {
  const ratio = Math.log(FIRST_GAP_PX / LAST_GAP_PX);
  const fitting = Math.floor((widthPx * ratio) / (FIRST_GAP_PX - LAST_GAP_PX));
  const teeth = Math.min(fitting, frames);
  const shrunk = (share: number) => (1 - Math.exp(-ratio * share)) / (1 - Math.exp(-ratio));
  return Array.from({ length: Math.max(0, teeth) }, (_, n) => widthPx * shrunk(n / teeth));
}

/** What is left in the packs of a source, frame by frame, and when they are swapped. */
import type { Spell } from '../spell.ts';

/** What a source gives in each frame. */
export interface Flow {
  /** Watt-hours that are the same in every frame of a spell. */
  sameWh: (spell: Spell) => number;
  /** What it gives besides: of each frame the entry of `whOf` that the code of the frame says. */
  codes: Int32Array;
  /** Watt-hours. It may be the column to be filled, if the code of each frame is its place. */
  whOf: Float64Array;
}

/** The packs of a source: what each holds, how much of that may be drawn, and how many there are. */
export interface Packs {
  fullWh: number;
  limitWh: number;
  brought: number;
  /** What the first has given before the first frame. */
  usedWh: number;
}

/** How the packs of a source last. */
export interface Drained {
  totalWh: number;
  needed: number;
  /** First frames, counted from 1, on a fresh pack. */
  swapFrames: number[];
  /** First frame that no pack is left for; null if they last. */
  shortAtFrame: number | null;
}

/**
 * Places in the figures of a source: watt-hours that are the same in every frame of a spell; in a full pack; drawn since
 * a swap was due, since there was a pack for one, and in all.
 *
 * Sums of doubles are at home in an array of doubles: in an object they begin as whole numbers, and the loop over the
 * frames, compiled for those, is given up again.
 */
const SAME = 0;
const FULL = 1;
const SINCE_SWAP = 2;
const SINCE_LAST_PACK = 3;
const IN_ALL = 4;

/** A source, and how far it has come. */
interface Draining {
  leftWh: Float64Array;
  flow: Flow;
  figures: Float64Array;
  packs: Packs;
  drained: Drained;
}

/**
 * Fills what is left when each shutter opens, watt-hours.
 *
 * A pack is swapped before the frame that would take it below its reserve. When none is left the last one goes
 * on to nothing, and the packs needed are counted on.
 * @param leftWh - one entry a frame, to be filled
 * @param spells - all frames, in order
 */
export function drain(leftWh: Float64Array, spells: readonly Spell[], flow: Flow, packs: Packs): Drained {
  const figures = Float64Array.of(0, packs.fullWh, packs.usedWh, packs.usedWh, 0);
  const drained: Drained = { totalWh: 0, needed: 1, swapFrames: [], shortAtFrame: null };
  const draining = { leftWh, flow, figures, packs, drained };
  for (const spell of spells) {
    figures[SAME] = flow.sameWh(spell);
    drainSpell(draining, spell);
  }
  return { ...drained, totalWh: figures[IN_ALL] as number };
}

function drainSpell({ leftWh, flow, figures, packs, drained }: Draining, { begin, end }: Spell): void {
  const { codes, whOf } = flow;
  let k = drainPack(leftWh, begin, end, codes, whOf, figures, packs.limitWh);
  while (k < end) {
    const fresh = swapBefore(packs, figures, drained, k);
    // It takes this frame whatever comes.
    drainPack(leftWh, k, k + 1, codes, whOf, figures, Number.POSITIVE_INFINITY);
    // A pack that does not last for one frame is short at once, fresh or not.
    if (!fresh || (figures[SINCE_SWAP] as number) > packs.limitWh) drained.shortAtFrame ??= k + 1;
    k = drainPack(leftWh, k + 1, end, codes, whOf, figures, packs.limitWh);
  }
}

/** A swap is due before the frame at an index. Returns whether there is a pack for it. */
function swapBefore(packs: Packs, figures: Float64Array, drained: Drained, k: number): boolean {
  // A fresh pack that does not last for the first frame is not followed by another.
  if (k === 0 && packs.usedWh === 0) return false;
  drained.needed += 1;
  figures[SINCE_SWAP] = 0;
  if (drained.needed > packs.brought) return false;
  drained.swapFrames.push(k + 1);
  figures[SINCE_LAST_PACK] = 0;
  return true;
}

/**
 * Fills frames from one index to before another, as long as the pack lasts.
 * @returns index of the first frame that would overdraw it
 */
function drainPack(
  leftWh: Float64Array,
  from: number,
  to: number,
  codes: Int32Array,
  whOf: Float64Array,
  figures: Float64Array,
  limitWh: number,
): number {
  const sameWh = figures[SAME] as number;
  const fullWh = figures[FULL] as number;
  let sinceSwap = figures[SINCE_SWAP] as number;
  let sinceLastPack = figures[SINCE_LAST_PACK] as number;
  let total = figures[IN_ALL] as number;
  let k = from;
  for (; k < to; k += 1) {
    const wh = sameWh + (whOf[codes[k] as number] as number);
    if (sinceSwap + wh > limitWh) break;
    leftWh[k] = Math.max(0, fullWh - sinceLastPack);
    sinceSwap += wh;
    sinceLastPack += wh;
    total += wh;
  }
  figures[SINCE_SWAP] = sinceSwap;
  figures[SINCE_LAST_PACK] = sinceLastPack;
  figures[IN_ALL] = total;
  return k;
}

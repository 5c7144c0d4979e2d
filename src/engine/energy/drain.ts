/** What is left in the packs of a source, frame by frame, and when they are swapped. */
import type { Spell } from '../spell.ts';

/** Something that draws for part of each frame. */
export interface Part {
  /** One entry a frame. */
  durationS: Float64Array;
  whPerS: number;
}

/** Watt-hours of each frame by its code. */
export interface CodedWh {
  codes: Int32Array;
  whOf: Float64Array;
}

/** What a source gives. */
export interface Flow {
  /** Watt-hours that are the same in every frame of a spell. */
  sameWh: (spell: Spell) => number;
  /** What it gives besides: at least one part, or by code. */
  besides: readonly Part[] | CodedWh;
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
 * Places in the figures of a source: watt-hours that are the same in every frame of a spell, and each second of each
 * duration; in a full pack; drawn since a swap was due, since there was a pack for one, and in all.
 *
 * Sums of doubles are at home in an array of doubles: in an object they begin as whole numbers, and the loop over the
 * frames, compiled for those, is given up again.
 */
const SAME = 0;
const PER_A = 1;
const PER_B = 2;
const PER_C = 3;
const FULL = 4;
const SINCE_SWAP = 5;
const SINCE_LAST_PACK = 6;
const IN_ALL = 7;

/** As many durations as one loop takes: as a rule the rig's move and that of an axis or two. */
type Durations = readonly [Float64Array, Float64Array, Float64Array];
const AT_ONCE = 3;

/** A source, and how far it has come. */
interface Draining {
  /** Takes from the pack what frames give, as {@link drainPack} does. */
  take: (from: number, to: number, limitWh: number) => number;
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
  const { besides, sameWh: sameWhOf } = flow;
  const figures = figuresOf(packs);
  const { ahead, take } =
    'codes' in besides ? takeCoded(leftWh, besides, figures) : takeParts(leftWh, besides, figures);
  const drained: Drained = { totalWh: 0, needed: 1, swapFrames: [], shortAtFrame: null };
  for (const spell of spells) {
    const sameWh = sameWhOf(spell);
    if (ahead.length > 0) sumAhead(leftWh, spell, sameWh, ahead);
    figures[SAME] = ahead.length > 0 ? 0 : sameWh;
    drainSpell({ take, figures, packs, drained }, spell);
  }
  return { ...drained, totalWh: figures[IN_ALL] as number };
}

function figuresOf({ fullWh, usedWh }: Packs): Float64Array {
  const figures = new Float64Array(8);
  figures[FULL] = fullWh;
  figures[SINCE_SWAP] = usedWh;
  figures[SINCE_LAST_PACK] = usedWh;
  return figures;
}

type Way = Pick<Draining, 'take'> & { ahead: readonly Part[] };

const takeCoded = (leftWh: Float64Array, { codes, whOf }: CodedWh, figures: Float64Array): Way => ({
  ahead: [],
  take: (from, to, limitWh) => drainCoded(leftWh, from, to, codes, whOf, figures, limitWh),
});

function takeParts(leftWh: Float64Array, parts: readonly Part[], figures: Float64Array): Way {
  const { ahead, atOnce } = lotsOf(parts, leftWh);
  figures.set(
    atOnce.map(({ whPerS }) => whPerS),
    PER_A,
  );
  const [a, b, c] = atOnce.map(({ durationS }) => durationS) as [Float64Array, Float64Array, Float64Array];
  return { ahead, take: (from, to, limitWh) => drainPack(leftWh, from, to, [a, b, c], figures, limitWh) };
}

/** Durations in two lots: what is summed ahead, in the column that is to be filled, and what is taken with that sum. */
function lotsOf(parts: readonly Part[], sum: Float64Array): { ahead: readonly Part[]; atOnce: Part[] } {
  const nothing = { durationS: (parts[0] as Part).durationS, whPerS: 0 };
  if (parts.length <= AT_ONCE) return { ahead: [], atOnce: [...parts, nothing, nothing].slice(0, AT_ONCE) };
  const ahead = parts.slice(0, 1 - AT_ONCE);
  return { ahead, atOnce: [{ durationS: sum, whPerS: 1 }, ...parts.slice(1 - AT_ONCE)] };
}

function sumAhead(sum: Float64Array, { begin, end }: Spell, sameWh: number, parts: readonly Part[]): void {
  sum.fill(sameWh, begin, end);
  for (const { durationS, whPerS } of parts)
    for (let k = begin; k < end; k += 1) sum[k] = (sum[k] as number) + whPerS * (durationS[k] as number);
}

function drainSpell({ take, figures, packs, drained }: Draining, { begin, end }: Spell): void {
  let k = take(begin, end, packs.limitWh);
  while (k < end) {
    const fresh = swapBefore(packs, figures, drained, k);
    // It takes this frame whatever comes.
    take(k, k + 1, Number.POSITIVE_INFINITY);
    // A pack that does not last for one frame is short at once, fresh or not.
    if (!fresh || (figures[SINCE_SWAP] as number) > packs.limitWh) drained.shortAtFrame ??= k + 1;
    k = take(k + 1, end, packs.limitWh);
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
  [a, b, c]: Durations,
  figures: Float64Array,
  limitWh: number,
): number {
  const sameWh = figures[SAME] as number;
  const perA = figures[PER_A] as number;
  const perB = figures[PER_B] as number;
  const perC = figures[PER_C] as number;
  const fullWh = figures[FULL] as number;
  let sinceSwap = figures[SINCE_SWAP] as number;
  let sinceLastPack = figures[SINCE_LAST_PACK] as number;
  let total = figures[IN_ALL] as number;
  let k = from;
  for (; k < to; k += 1) {
    const wh = sameWh + perA * (a[k] as number) + perB * (b[k] as number) + perC * (c[k] as number);
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

/** The same, by code. */
function drainCoded(
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

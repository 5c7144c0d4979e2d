/**
 * Frame size, cards and buffer over a run.
 *
 * Card sizes are decimal bytes. A card is changed before the frame that does not fit on it; a frame's bracket
 * stays on one card. The buffer empties at the card's sustained rate and takes each frame whole.
 */
import type { Plan } from '../plan/schema.ts';
import type { Room } from '../room.ts';
import type { CardSummary } from '../schedule-types.ts';
import type { Spell } from '../spell.ts';

/** Whole bytes of one exposure: measured, else pixels x bits / 8 x compression. */
export function exposureBytes(plan: Plan): number {
  const { frameBytes, imageWidthPx, imageHeightPx, bitsPerPixel, compression } = plan.camera;
  const bits = imageWidthPx * imageHeightPx * bitsPerPixel * compression;
  return Math.round(frameBytes ?? Math.max(1, bits / 8));
}

/** Bytes of one frame: all exposures of its bracket. */
export const frameBytesOf = (plan: Plan): number => exposureBytes(plan) * plan.exposure.bracketCount;

/** What the run leaves on the cards. */
export interface StorageRun {
  cardIndex: Uint8Array;
  cardBytes: Float64Array;
  bufferBytes: Float64Array;
  frameBytes: number;
  cards: CardSummary[];
  /** First frames, counted from 1, on the second and later cards. */
  changeFrames: number[];
  /** First frame that no card has room for; null if they all fit. */
  fullAtFrame: number | null;
  /** First frame that the buffer has no room for; null if they all fit. */
  bufferFullAtFrame: number | null;
  /** Most that ever waits in the buffer, and the frame, counted from 1, after which it does. */
  bufferPeakBytes: number;
  bufferPeakFrame: number;
}

/** Whole frames that fit into a card's usable bytes. */
function framesOn(usableBytes: number, bytes: number): number {
  let frames = Math.floor(usableBytes / bytes);
  // The quotient carries a rounding; the product decides.
  if ((frames + 1) * bytes <= usableBytes) frames += 1;
  if (frames * bytes > usableBytes) frames -= 1;
  return frames;
}

type CardRun = Pick<StorageRun, 'cardIndex' | 'cardBytes' | 'cards' | 'changeFrames' | 'fullAtFrame'>;

/** Fills the cards in their order. A card too small for one frame is passed over. */
function cardsOf(plan: Plan, frames: number, bytes: number, room: Room): CardRun {
  const cardIndex = room.u8(frames).fill(0);
  const cardBytes = room.f64(frames);
  const changeFrames: number[] = [];
  let done = 0;
  let lastUsed = 0;
  const cards = plan.storage.cards.map((card, index): CardSummary => {
    const usableBytes = Math.round(card.cardBytes * (1 - card.reserveShare));
    const onCard = Math.min(frames - done, framesOn(usableBytes, bytes));
    if (onCard <= 0) return { name: card.name, usableBytes, usedBytes: 0, firstFrame: null, lastFrame: null };
    if (done > 0) changeFrames.push(done + 1);
    cardIndex.fill(index, done);
    fillCard(cardBytes, done, onCard, bytes);
    const firstFrame = done + 1;
    done += onCard;
    lastUsed = onCard * bytes;
    return { name: card.name, usableBytes, usedBytes: lastUsed, firstFrame, lastFrame: done };
  });
  cardBytes.fill(lastUsed, done);
  return { cardIndex, cardBytes, cards, changeFrames, fullAtFrame: done < frames ? done + 1 : null };
}

/** A loop of its own: within the other one its bounds would be looked up again for each frame. */
function fillCard(cardBytes: Float64Array, from: number, frames: number, bytes: number): void {
  for (let k = 0; k < frames; k += 1) cardBytes[from + k] = (k + 1) * bytes;
}

/**
 * Fills cards and buffer.
 * @param spells - frames of the same interval, in order
 */
export function storageOf(plan: Plan, spells: readonly Spell[], room: Room): StorageRun {
  const bytes = frameBytesOf(plan);
  const cards = cardsOf(plan, spells.at(-1)?.end ?? 0, bytes, room);
  const buffer = bufferOf(plan, spells, cards.cardIndex, bytes, room);
  return { frameBytes: bytes, ...cards, ...buffer };
}

type BufferRun = Pick<
  StorageRun,
  'bufferBytes' | 'bufferFullAtFrame' | 'bufferPeakBytes' | 'bufferPeakFrame'
>;

function bufferOf(
  plan: Plan,
  spells: readonly Spell[],
  cardIndex: Uint8Array,
  bytes: number,
  room: Room,
): BufferRun {
  const bufferBytes = room.f64(cardIndex.length);
  const rates = plan.storage.cards.map((card) => card.writeBytesPerS);
  // Where the card takes each frame before the next one comes, nothing piles up: as with most plans.
  if (bytes <= Math.min(...rates) * shortestS(spells)) {
    bufferBytes.fill(bytes);
    return { bufferBytes, bufferFullAtFrame: null, bufferPeakBytes: bytes, bufferPeakFrame: 1 };
  }
  // Even without a buffer the frame that is being written has its place.
  const holdsBytes = Math.max(plan.camera.bufferBytes, bytes);
  let waiting = 0;
  let bufferFullAtFrame: number | null = null;
  let bufferPeakBytes = 0;
  let bufferPeakFrame = 1;
  for (const { begin, end, intervalS } of spells)
    for (let k = begin; k < end; k += 1) {
      if (waiting + bytes > holdsBytes) bufferFullAtFrame ??= k + 1;
      // A full buffer holds the camera up; beyond that the figure says nothing, so it stays at its brim.
      const held = Math.min(holdsBytes, waiting + bytes);
      bufferBytes[k] = held;
      if (held > bufferPeakBytes) {
        bufferPeakBytes = held;
        bufferPeakFrame = k + 1;
      }
      waiting = Math.max(0, held - (rates[cardIndex[k] as number] as number) * intervalS);
    }
  return { bufferBytes, bufferFullAtFrame, bufferPeakBytes, bufferPeakFrame };
}

const shortestS = (spells: readonly Spell[]): number =>
  spells.reduce((shortest, { intervalS }) => Math.min(shortest, intervalS), Number.POSITIVE_INFINITY);

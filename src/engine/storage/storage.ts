/**
 * Frame size, cards and buffer over a run.
 *
 * Card sizes are decimal bytes. A card is changed before the frame that does not fit on it; a frame's bracket
 * stays on one card. The buffer empties at the card's sustained rate and takes each frame whole.
 */
import type { Plan } from '../plan/schema.ts';
import type { CardSummary } from '../schedule-types.ts';

/** Bytes of one exposure: measured, else pixels x bits / 8 x compression. */
export function exposureBytes(plan: Plan): number {
  const { frameBytes, imageWidthPx, imageHeightPx, bitsPerPixel, compression } = plan.camera;
  return frameBytes ?? (imageWidthPx * imageHeightPx * bitsPerPixel * compression) / 8;
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

/**
 * Fills cards and buffer.
 * @param intervalS - seconds from each frame to the next, one entry a frame
 */
export function storageOf(plan: Plan, intervalS: Float64Array): StorageRun {
  const frames = intervalS.length;
  const bytes = frameBytesOf(plan);
  const cards: CardSummary[] = plan.storage.cards.map((card) => ({
    name: card.name,
    usableBytes: card.cardBytes * (1 - card.reserveShare),
    usedBytes: 0,
    firstFrame: null,
    lastFrame: null,
  }));
  const cardIndex = new Uint8Array(frames);
  const cardBytes = new Float64Array(frames);
  const changeFrames: number[] = [];
  let fullAtFrame: number | null = null;
  let index = 0;
  let frameOnCard = 0;
  for (let k = 0; k < frames; k += 1) {
    let usable = cards[index]?.usableBytes ?? 0;
    while ((frameOnCard + 1) * bytes > usable && index + 1 < cards.length) {
      index += 1;
      frameOnCard = 0;
      usable = cards[index]?.usableBytes ?? 0;
      // A card too small for one frame is passed over: no change of its own.
      if (bytes <= usable && k > 0) changeFrames.push(k + 1);
    }
    if ((frameOnCard + 1) * bytes > usable) fullAtFrame ??= k + 1;
    else {
      frameOnCard += 1;
      const card = cards[index] as CardSummary;
      card.firstFrame ??= k + 1;
      card.lastFrame = k + 1;
      card.usedBytes = frameOnCard * bytes;
    }
    cardIndex[k] = index;
    cardBytes[k] = frameOnCard * bytes;
  }
  return {
    cardIndex,
    cardBytes,
    frameBytes: bytes,
    cards,
    changeFrames,
    fullAtFrame,
    ...bufferOf(plan, intervalS, cardIndex, bytes),
  };
}

type BufferRun = Pick<
  StorageRun,
  'bufferBytes' | 'bufferFullAtFrame' | 'bufferPeakBytes' | 'bufferPeakFrame'
>;

function bufferOf(plan: Plan, intervalS: Float64Array, cardIndex: Uint8Array, bytes: number): BufferRun {
  const bufferBytes = new Float64Array(intervalS.length);
  const rates = plan.storage.cards.map((card) => card.writeBytesPerS);
  // Even without a buffer the frame that is being written has its place.
  const room = Math.max(plan.camera.bufferBytes, bytes);
  let waiting = 0;
  let bufferFullAtFrame: number | null = null;
  let bufferPeakBytes = 0;
  let bufferPeakFrame = 1;
  for (let k = 0; k < bufferBytes.length; k += 1) {
    if (waiting + bytes > room) bufferFullAtFrame ??= k + 1;
    // A full buffer holds the camera up; beyond that the figure says nothing, so it stays at its brim.
    const held = Math.min(room, waiting + bytes);
    bufferBytes[k] = held;
    if (held > bufferPeakBytes) {
      bufferPeakBytes = held;
      bufferPeakFrame = k + 1;
    }
    waiting = Math.max(0, held - (rates[cardIndex[k] as number] as number) * (intervalS[k] as number));
  }
  return { bufferBytes, bufferFullAtFrame, bufferPeakBytes, bufferPeakFrame };
}

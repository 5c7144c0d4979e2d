/** What the storage says: do the frames fit on the cards, and does the buffer keep up. */
import type { Margin } from '../findings/types.ts';
import { bytes, counted, seconds } from '../findings/words.ts';
import { type Draft, type Judge, lostBefore, type Run } from '../run.ts';

function full({ storage, pace }: Run): Draft[] {
  const { fullAtFrame, frameBytes, cards } = storage;
  if (fullAtFrame === null) return [];
  const usable = cards.reduce((sum, card) => sum + card.usableBytes, 0);
  const need = frameBytes * pace.frames;
  const which = cards.length === 1 ? 'The card is' : `All ${cards.length} cards are`;
  return [
    {
      id: 'card-full',
      severity: 'stop',
      subject: 'storage',
      message: `${which} full at frame ${fullAtFrame}: ${bytes(need)} needed, ${bytes(usable)} usable.`,
      frame: fullAtFrame,
      values: { neededBytes: need, usableBytes: usable, frameBytes },
    },
  ];
}

function changes(run: Run): Draft[] {
  const { cardChangeS } = run.plan.storage;
  const { changeFrames } = run.storage;
  const lost = changeFrames.map((frame) => lostBefore(run, frame, cardChangeS));
  const frame = changeFrames[lost.findIndex((frames) => frames > 0)];
  if (frame === undefined) return [];
  const worst = Math.max(...lost);
  return [
    {
      id: 'card-change-does-not-fit',
      severity: 'warning',
      subject: 'storage',
      message: `The card is changed before frame ${frame}. A change takes ${seconds(cardChangeS)} and loses ${counted(worst, 'frame')}.`,
      frame,
      values: { cardChangeS, lostFrames: worst, changes: changeFrames.length },
    },
  ];
}

function buffer(run: Run): Draft[] {
  const { bufferFullAtFrame: frame, frameBytes } = run.storage;
  if (frame === null) return [];
  const index = run.columns.cardIndex[frame - 1] ?? 0;
  const rate = run.plan.storage.cards[index]?.writeBytesPerS ?? 0;
  const intervalS = run.columns.intervalS[frame - 1] ?? run.pace.intervalS;
  return [
    {
      id: 'buffer-fills',
      severity: 'stop',
      subject: 'storage',
      message: `The buffer is full at frame ${frame}: ${bytes(frameBytes)} every ${seconds(intervalS)}, and the card takes ${bytes(rate * intervalS)} in that time.`,
      frame,
      values: { frameBytes, intervalS, writeBytesPerS: rate, bufferBytes: run.plan.camera.bufferBytes },
    },
  ];
}

function margins(run: Run): Margin[] {
  const { cards, frameBytes, bufferPeakBytes, bufferPeakFrame } = run.storage;
  const used = frameBytes * run.pace.frames;
  const available = run.plan.storage.cards.reduce((sum, card) => sum + card.cardBytes, 0);
  const usable = cards.reduce((sum, card) => sum + card.usableBytes, 0);
  const fits = cards.reduce((sum, card) => sum + Math.floor(card.usableBytes / frameBytes), 0);
  const storage: Margin = {
    id: 'cards',
    subject: 'storage',
    label: cards.length === 1 ? (cards[0]?.name ?? 'Card') : 'Cards',
    used,
    available,
    unit: 'bytes',
    reserve: available - usable,
    left: available - used,
    frame: run.pace.frames,
    when: `room for ${counted(fits, 'frame')}`,
  };
  const { bufferBytes } = run.plan.camera;
  // A buffer that cannot take one frame is none.
  if (bufferBytes < frameBytes) return [storage];
  return [
    storage,
    {
      id: 'buffer',
      subject: 'storage',
      label: 'Buffer',
      used: bufferPeakBytes,
      available: bufferBytes,
      unit: 'bytes',
      reserve: 0,
      left: bufferBytes - bufferPeakBytes,
      frame: bufferPeakFrame,
      when: `fullest after frame ${bufferPeakFrame}`,
    },
  ];
}

export const judgeStorage: Judge = (run) => ({
  findings: [...full(run), ...changes(run), ...buffer(run)],
  margins: margins(run),
});

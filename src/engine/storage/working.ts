/** How frame size, cards and buffer came about. */
import type { CardSummary } from '../schedule-types.ts';
import {
  DEFINITION,
  type Draft,
  none,
  ofFrame,
  sameAs,
  term,
  type Worked,
  type Workings,
} from '../working/make.ts';
import { ofMargin } from '../working/margins.ts';
import type { Term } from '../working/types.ts';
import { exposureBytes } from './storage.ts';

const SIZES = 'Decimal bytes (IEC 80000-13, from memory).';

const frameBytes = ({ made }: Worked): Term =>
  term('frameBytes', 'bytes of a frame', made.totals.frameBytes, 'bytes', 'totals.frameBytes');
const frames = ({ made }: Worked): Term =>
  term('frames', 'frames', made.totals.frames, 'frames', 'totals.frames');

function frameSize({ plan, made }: Worked): Draft {
  const { frameBytes: typed, imageWidthPx, imageHeightPx, bitsPerPixel, compression } = plan.camera;
  const { bracketCount } = plan.exposure;
  const many = bracketCount > 1;
  const one =
    typed === null ? 'max(1, widthPx * heightPx * bitsPerPixel * compression / 8)' : 'exposureBytes';
  return {
    title: 'Size of a frame',
    value: made.totals.frameBytes,
    unit: 'bytes',
    expression: many ? `exposures * round(${one})` : `round(${one})`,
    terms: [
      ...(many ? [term('exposures', 'exposures of the frame', bracketCount, 'exposures')] : []),
      ...(typed === null
        ? [
            term('widthPx', 'width of the image', imageWidthPx, 'px'),
            term('heightPx', 'height of the image', imageHeightPx, 'px'),
            term('bitsPerPixel', 'bits a pixel', bitsPerPixel, 'bits'),
            term('compression', 'compression', compression, ''),
          ]
        : [term('exposureBytes', 'bytes of an exposure, measured', typed, 'bytes')]),
    ],
    remarks: [`An exposure takes ${exposureBytes(plan)} bytes, to whole ones.`],
    source:
      typed === null
        ? `Pixels times bits, less what compression saves: a measured frame knows better. ${SIZES}`
        : SIZES,
  };
}

const storage = (of: Worked): Draft => ({
  title: 'Storage',
  value: of.made.totals.storageBytes,
  unit: 'bytes',
  expression: 'frameBytes * frames',
  terms: [frameBytes(of), frames(of)],
  source: SIZES,
});

const copies = ({ plan, made }: Worked): Draft => ({
  title: 'All copies',
  value: made.totals.copiesBytes,
  unit: 'bytes',
  expression: 'storageBytes * copies',
  terms: [
    term('storageBytes', 'storage', made.totals.storageBytes, 'bytes', 'totals.storageBytes'),
    term('copies', 'copies', plan.storage.copies, ''),
  ],
  source: SIZES,
});

const ofCard = (name: string, what: string): string => `cards.${name}.${what}`;

function usable({ plan }: Worked, card: CardSummary, i: number): Draft {
  const { cardBytes, reserveShare } = plan.storage.cards[i] ?? { cardBytes: 0, reserveShare: 0 };
  return {
    title: `${card.name}: usable`,
    value: card.usableBytes,
    unit: 'bytes',
    expression: 'round(cardBytes * (1 - reserveShare))',
    terms: [
      term('cardBytes', 'size of the card', cardBytes, 'bytes'),
      term('reserveShare', 'reserve', reserveShare, ''),
    ],
    source: SIZES,
  };
}

function used(of: Worked, card: CardSummary): Draft {
  const title = `${card.name}: used`;
  const { firstFrame, lastFrame } = card;
  if (firstFrame === null || lastFrame === null) return none(title, 'bytes', 'No frame goes onto this card.');
  return {
    title,
    value: card.usedBytes,
    unit: 'bytes',
    expression: '(lastFrame - firstFrame + 1) * frameBytes',
    terms: [
      term('lastFrame', 'last frame on it', lastFrame, ''),
      term('firstFrame', 'first frame on it', firstFrame, ''),
      frameBytes(of),
    ],
    remarks: ['A card is changed before the frame that does not fit on it.'],
    source: SIZES,
  };
}

function cardsMargin(of: Worked): Workings {
  const margin = of.made.margins.find(({ id }) => id === 'cards');
  if (!margin) return {};
  const { cards } = of.plan.storage;
  const shared = { unit: 'bytes', source: SIZES };
  return {
    [ofMargin(margin, 'used')]: () => ({
      ...shared,
      title: `${margin.label}: used`,
      value: margin.used,
      expression: 'frameBytes * frames',
      terms: [frameBytes(of), frames(of)],
    }),
    [ofMargin(margin, 'available')]: () => ({
      ...shared,
      title: `${margin.label}: available`,
      value: margin.available,
      expression: cards.map((_, i) => `card${i + 1}Bytes`).join(' + '),
      terms: cards.map(({ name, cardBytes }, i) => term(`card${i + 1}Bytes`, name, cardBytes, 'bytes')),
      remarks: ['All cards, with what you asked to keep free.'],
    }),
  };
}

/** Bytes that wait in the buffer just after a frame. */
function buffer(of: Worked, k: number): Draft {
  const { plan, made } = of;
  const { bufferBytes, intervalS, cardIndex } = made.columns;
  const bytes = made.totals.frameBytes;
  const base = { title: 'Waiting in the buffer', value: bufferBytes[k] as number, unit: 'bytes' };
  const before = k === 0 ? 0 : (bufferBytes[k - 1] as number);
  const rate = k === 0 ? 0 : (plan.storage.cards[cardIndex[k - 1] as number]?.writeBytesPerS ?? 0);
  return {
    ...base,
    expression:
      k === 0 ? 'frameBytes' : 'min(roomBytes, max(0, beforeBytes - writeRate * intervalS) + frameBytes)',
    terms: [
      ...(k === 0
        ? []
        : [
            term(
              'roomBytes',
              'buffer, at least one frame',
              Math.max(plan.camera.bufferBytes, bytes),
              'bytes',
            ),
            term(
              'beforeBytes',
              'waiting after the frame before',
              before,
              'bytes',
              ofFrame(k - 1, 'bufferBytes'),
            ),
            term('writeRate', 'sustained rate of the card', rate, 'bytes/s'),
            term(
              'intervalS',
              'interval of the frame before',
              intervalS[k - 1] as number,
              's',
              ofFrame(k - 1, 'intervalS'),
            ),
          ]),
      frameBytes(of),
    ],
    remarks: ['The buffer empties at the rate of the card, and takes each frame whole.'],
    source: DEFINITION,
  };
}

function bufferMargin(of: Worked): Workings {
  const margin = of.made.margins.find(({ id }) => id === 'buffer');
  if (!margin) return {};
  return {
    [ofMargin(margin, 'used')]: () => ({
      ...buffer(of, margin.frame - 1),
      title: 'Buffer: used',
      value: margin.used,
      frame: margin.frame,
    }),
    [ofMargin(margin, 'available')]: () => ({
      title: 'Buffer: available',
      value: margin.available,
      unit: 'bytes',
      expression: 'bufferBytes',
      terms: [term('bufferBytes', 'buffer of the camera', of.plan.camera.bufferBytes, 'bytes')],
      source: DEFINITION,
    }),
  };
}

function cardsUsed({ made: { cards } }: Worked): Draft {
  const used = cards.filter(({ firstFrame }) => firstFrame !== null);
  return sameAs('Cards used', 'cards with frames on them', used.length, 'cards', null, {
    remarks: used.map(({ name, firstFrame }) => `${name} from frame ${firstFrame}.`),
  });
}

/** Workings of the storage. */
export const storageWorkings = (of: Worked): Workings => ({
  'totals.frameBytes': () => frameSize(of),
  'totals.storageBytes': () => storage(of),
  'totals.copiesBytes': () => copies(of),
  'cards.used': () => cardsUsed(of),
  ...Object.assign(
    {},
    ...of.made.cards.map((card, i) => ({
      [ofCard(card.name, 'usableBytes')]: () => usable(of, card, i),
      [ofCard(card.name, 'usedBytes')]: () => used(of, card),
    })),
  ),
  ...cardsMargin(of),
  ...bufferMargin(of),
});

/** Bytes on the card in use after a frame. */
function filled(of: Worked, k: number): Draft {
  const { cardBytes, cardIndex } = of.made.columns;
  const card = of.made.cards[cardIndex[k] as number];
  const base = {
    title: `${card?.name ?? 'Card'}: filled`,
    value: cardBytes[k] as number,
    unit: 'bytes',
    source: DEFINITION,
  };
  if (k + 1 > (card?.lastFrame ?? 0))
    return {
      ...base,
      expression: 'fullBytes',
      terms: [term('fullBytes', 'what fits on the cards', base.value, 'bytes')],
      remarks: ['The cards are full: this frame fits on none.'],
    };
  if (k + 1 === card?.firstFrame) return { ...base, expression: 'frameBytes', terms: [frameBytes(of)] };
  const before = cardBytes[k - 1] as number;
  return {
    ...base,
    expression: 'beforeBytes + frameBytes',
    terms: [
      term('beforeBytes', 'on it after the frame before', before, 'bytes', ofFrame(k - 1, 'cardBytes')),
      frameBytes(of),
    ],
  };
}

/** Workings of the storage at one frame. */
export const frameStorageWorkings = (of: Worked, k: number): Workings => ({
  bufferBytes: () => buffer(of, k),
  cardBytes: () => filled(of, k),
});

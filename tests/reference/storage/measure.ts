/** Frame sizes, cards and buffer of worked cases, through the whole schedule. */
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { cardOf, plainPlan, type Some } from '../plans.ts';
import { type NumberCase, numberRow, type Row, relative, type TextCase, textRow } from '../rows.ts';

const RAW = 'STO-03: uncompressed raw, 6000 x 4000 (computed)';
const DECIMAL = 'STO-02: card sizes are decimal, kodakflash.com FAQ 3 (V1), linuxleech.com/article/269 (V2)';
const FRAMES = 'STO-04: frames of 42 MB on 64 GB (computed)';
const SPEED = 'STO-01, STO-05: video speed classes, sdcard.org, nextorage.net (V1, V2); times computed';
const HAND = 'worked by hand, arithmetic beside the case (computed)';

const raw = (bitsPerPixel: number, change: Some<Plan['camera']> = {}) =>
  schedule(
    plainPlan(2, 10, {
      camera: { imageWidthPx: 6000, imageHeightPx: 4000, bitsPerPixel, compression: 1, ...change },
    }),
  ).totals;

/** Frames of 42 MB until the card is full. */
function framesOn(cardBytes: number, reserveShare: number, frameBytes = 42e6): number {
  const plan = plainPlan(2500, 10, {
    camera: { frameBytes },
    storage: { cards: [cardOf({ name: 'A', cardBytes, reserveShare })] },
  });
  const full = schedule(plan).findings.find((finding) => finding.id === 'card-full');
  return (full?.frame ?? Number.NaN) - 1;
}

/** First frame at which the buffer is full, or 'never'. */
function bufferFullAt(writeBytesPerS: number, intervalS: number, bufferBytes: number, frames = 400): string {
  const plan = plainPlan(frames, intervalS, {
    exposure: { shutterS: 0.01 },
    camera: { frameBytes: 42e6, bufferBytes },
    storage: { cards: [cardOf({ name: 'A', cardBytes: 1e12, writeBytesPerS })] },
  });
  return String(schedule(plan).findings.find((finding) => finding.id === 'buffer-fills')?.frame ?? 'never');
}

/** Three cards of 10, 4 and 10 frames of 100 MB, without reserve. */
const three = (frames: number, bracketCount = 1) =>
  schedule(
    plainPlan(frames, 60, {
      camera: { frameBytes: 100e6 },
      exposure: { bracketCount, bracketStops: 0.1 },
      storage: {
        copies: 3,
        cards: [1000e6, 400e6, 1050e6].map((cardBytes, i) =>
          cardOf({ name: `C${i + 1}`, cardBytes, reserveShare: 0 }),
        ),
      },
    }),
  );

const cardsText = (frames: number, bracketCount = 1): string => {
  const run = three(frames, bracketCount);
  const cards = run.cards.map(
    (card) => `${card.firstFrame ?? '-'}..${card.lastFrame ?? '-'} ${card.usedBytes / 1e6}`,
  );
  const changes = run.events.filter((event) => event.kind === 'cardChange').map((event) => event.frame);
  const full = run.findings.find((finding) => finding.id === 'card-full')?.frame ?? 'never';
  return `${cards.join(', ')}; changes ${changes.join(' ') || 'none'}; full ${full}`;
};

const CARDS: readonly TextCase[] = [
  { at: '10 frames', got: cardsText(10), want: '1..10 1000, -..- 0, -..- 0; changes none; full never' },
  { at: '11 frames', got: cardsText(11), want: '1..10 1000, 11..11 100, -..- 0; changes 11; full never' },
  {
    at: '20 frames',
    got: cardsText(20),
    want: '1..10 1000, 11..14 400, 15..20 600; changes 11 15; full never',
  },
  {
    at: '24 frames',
    got: cardsText(24),
    want: '1..10 1000, 11..14 400, 15..24 1000; changes 11 15; full never',
  },
  {
    at: '26 frames',
    got: cardsText(26),
    want: '1..10 1000, 11..14 400, 15..24 1000; changes 11 15; full 25',
  },
  // A bracket of 3 is 300 MB and stays on one card: 3, 1 and 3 frames.
  {
    at: '7 frames of 3',
    got: cardsText(7, 3),
    want: '1..3 900, 4..4 300, 5..7 900; changes 4 5; full never',
  },
  { at: '8 frames of 3', got: cardsText(8, 3), want: '1..3 900, 4..4 300, 5..7 900; changes 4 5; full 8' },
  // 500 MB does not fit on the middle card at all: 2 and 2 frames, one change.
  { at: '4 frames of 5', got: cardsText(4, 5), want: '1..2 1000, -..- 0, 3..4 1000; changes 3; full never' },
];

/** Rounded reserves at which the card is filled to the byte: frames that fit exactly, reserve, card. */
function* toTheByte(): Generator<NumberCase> {
  for (const reserveShare of [0, 0.05, 0.07, 0.1, 0.15, 0.3, 0.35, 0.55, 0.7, 0.8, 0.9]) {
    // 100 000 frames' worth of bytes, of which (1 - reserve) x 1000 frames are usable.
    const frameBytes = 1e6;
    const want = Math.round(1000 * (1 - reserveShare));
    yield { at: `reserve ${reserveShare}`, got: framesOn(1000 * frameBytes, reserveShare, frameBytes), want };
  }
}

function* bufferLevels(): Generator<NumberCase> {
  const plan = plainPlan(5, 2, {
    exposure: { shutterS: 0.01 },
    camera: { frameBytes: 100e6, bufferBytes: 250e6 },
    storage: { cards: [cardOf({ name: 'A', cardBytes: 1e12, writeBytesPerS: 30e6 })] },
  });
  // 100 MB come, 60 MB go: 100, 40 + 100, 80 + 100, 120 + 100, then 160 + 100 is cut off at 250.
  const levels = schedule(plan).columns.bufferBytes;
  for (const [k, want] of [100e6, 140e6, 180e6, 220e6, 250e6].entries()) {
    yield { at: `frame ${k + 1}`, got: levels[k] ?? Number.NaN, want };
  }
}

export function measureStorage(): Row[] {
  return [
    numberRow(
      { quantity: 'bytes of a frame', reference: RAW, regime: '12, 14 and 16 bits', bound: 0, unit: 'bytes' },
      [
        { at: '14 bit', got: raw(14).frameBytes, want: 42e6 },
        { at: '16 bit', got: raw(16).frameBytes, want: 48e6 },
        { at: '12 bit', got: raw(12).frameBytes, want: 36e6 },
      ],
    ),
    numberRow(
      {
        quantity: 'bytes of a frame',
        reference: HAND,
        regime: 'compressed, measured, bracketed',
        bound: 1e-12,
        unit: 'relative',
      },
      [
        { at: '14 bit to 60 %', got: raw(14, { compression: 0.6 }).frameBytes, want: 25.2e6 },
        { at: 'measured 31 MB', got: raw(14, { compression: 0.6, frameBytes: 31e6 }).frameBytes, want: 31e6 },
        { at: 'run of 7 frames of 3', got: three(7, 3).totals.storageBytes, want: 2100e6 },
        { at: 'in 3 copies', got: three(7, 3).totals.copiesBytes, want: 6300e6 },
      ],
      relative,
    ),
    numberRow(
      {
        quantity: 'frames on a card',
        reference: FRAMES,
        regime: '64 GB without reserve, and with 7 %',
        bound: 0,
        unit: 'frames',
      },
      [
        { at: 'no reserve', got: framesOn(64e9, 0), want: 1523 },
        { at: 'reserve 7 %', got: framesOn(64e9, 0.07), want: 1417 },
      ],
    ),
    numberRow(
      {
        quantity: 'frames on a card',
        reference: DECIMAL,
        regime: '64 GB taken as GiB would give 7.4 % more',
        bound: 0,
        unit: 'frames',
      },
      [
        { at: '64 GiB, for comparison', got: framesOn(64 * 2 ** 30, 0), want: 1636 },
        { at: '31e9 bytes = 28.871 GiB', got: framesOn(28.871 * 2 ** 30, 0), want: Math.floor(31e9 / 42e6) },
      ],
    ),
    numberRow(
      {
        quantity: 'frames on a card',
        reference: HAND,
        regime: 'filled to the byte, 11 reserves',
        bound: 0,
        unit: 'frames',
      },
      toTheByte(),
    ),
    textRow(
      { quantity: 'cards, their frames and changes', reference: HAND, regime: '8 runs on three cards' },
      CARDS,
    ),
    textRow(
      {
        quantity: 'frame at which the buffer is full',
        reference: SPEED,
        regime: '42 MB frames, V30 1.40 s, V90 0.467 s',
      },
      [
        { at: 'V30 every 1.4 s', got: bufferFullAt(30e6, 1.4, 42e6), want: 'never' },
        { at: 'V30 every 1.39 s', got: bufferFullAt(30e6, 1.39, 42e6), want: '2' },
        { at: 'V90 every 0.467 s', got: bufferFullAt(90e6, 0.467, 42e6), want: 'never' },
        { at: 'V90 every 0.466 s', got: bufferFullAt(90e6, 0.466, 42e6), want: '2' },
        // 42 MB come, 30 go each second: frame n brings it to 42 + 12 (n - 1) MB; above 420 MB at n = 33.
        { at: 'V30 every 1 s, buffer of 10 frames', got: bufferFullAt(30e6, 1, 420e6), want: '33' },
      ],
    ),
    numberRow(
      {
        quantity: 'bytes waiting in the buffer',
        reference: HAND,
        regime: '100 MB every 2 s at V30',
        bound: 1e-3,
        unit: 'bytes',
      },
      bufferLevels(),
    ),
  ];
}

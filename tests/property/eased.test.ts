/** Whole steps along long stretches: those of the ease itself at every frame, however few frames it is asked at. */
import fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import { easeFunction } from '../../src/engine/motion/ease.ts';
import { fillEased, type Stretch } from '../../src/engine/motion/eased-steps.ts';
import type { Ease } from '../../src/engine/plan/schema.ts';
import { PATIENCE_MS, settings } from './settings.ts';

vi.setConfig({ testTimeout: PATIENCE_MS });

const hundredths = (from: number, to: number) =>
  fc.integer({ min: Math.round(from * 100), max: Math.round(to * 100) }).map((n) => n / 100);
const share = hundredths(0, 1);

const eases: fc.Arbitrary<Ease> = fc.oneof(
  fc.constantFrom<Ease>({ kind: 'hold' }, { kind: 'linear' }, { kind: 'smooth' }, { kind: 'smoother' }),
  fc
    .record({ x1: share, y1: hundredths(-10, 10), x2: share, y2: hundredths(-10, 10) })
    .map((handles): Ease => ({ kind: 'cubicBezier', ...handles })),
  // A vertical tangent at an end, in the middle.
  fc.constantFrom<Ease>(
    { kind: 'cubicBezier', x1: 0, y1: 1, x2: 1, y2: 0 },
    { kind: 'cubicBezier', x1: 1, y1: 0, x2: 0, y2: 1 },
    { kind: 'cubicBezier', x1: 0.99, y1: 0, x2: 0.01, y2: 1 },
  ),
  share.chain((headShare) =>
    hundredths(0, 1 - headShare).map((tailShare): Ease => ({ kind: 'ramped', headShare, tailShare })),
  ),
);

const stretches: fc.Arbitrary<Stretch> = fc
  .record({
    frames: fc.oneof(fc.integer({ min: 2, max: 400 }), fc.integer({ min: 400, max: 30_000 })),
    fromShare: fc.constantFrom(0, 0, 0.1, 1 / 3),
    toShare: fc.constantFrom(1, 1, 0.9, 2 / 3, 1.5),
    position: hundredths(-100, 100),
    travel: fc.oneof(hundredths(-1000, 1000), fc.constant(0)),
    perUnit: fc.constantFrom(1, 80, 533.3333333333334, 1_000_000),
  })
  .map(({ frames, fromShare, toShare, ...place }) => {
    const lastIndex = frames - 1;
    const begin = Math.floor(fromShare * lastIndex) + 1;
    const end = Math.min(frames, Math.floor(toShare * lastIndex) + 1);
    return { begin, end, lastIndex, fromShare, span: toShare - fromShare, ...place };
  });

test('they are those of the ease at every frame', () => {
  fc.assert(
    fc.property(eases, stretches, (ease, stretch) => {
      const { begin, end, lastIndex, fromShare, span, position, travel, perUnit } = stretch;
      const shareAt = easeFunction(ease);
      const steps = new Int32Array(lastIndex + 1).fill(7);
      fillEased(steps, ease, stretch);
      const expected = Int32Array.from(steps, (_, k) => {
        if (k < begin || k >= end) return 7;
        return Math.round((position + travel * shareAt((k / lastIndex - fromShare) / span)) * perUnit);
      });
      const at = steps.findIndex((step, k) => step !== expected[k]);
      expect([at, steps[at]], `frame ${at + 1}`).toEqual([-1, undefined]);
    }),
    settings(),
  );
});

test('where frames fall on half steps again and again, the ease rounds them', () => {
  // A power of two of frames, so that every other one is on a half step to the last digit.
  const [steps, lastIndex] = [new Int32Array(4097), 4096];
  const stretch = { begin: 0, end: 4097, lastIndex, fromShare: 0, span: 1, perUnit: 1 };
  fillEased(steps, { kind: 'linear' }, { ...stretch, position: -1024, travel: 2048 });
  expect(steps.every((step, k) => step === Math.round(k / 2) - 1024)).toBe(true);
});

import { describe, expect, test } from 'vitest';
import { easePath } from '../../../src/app/tracks/eases.ts';
import { trackFacts } from '../../../src/app/tracks/trackFacts.ts';
import { type Piece, plainText } from '../../../src/app/working/sentence.ts';
import type { AxisColumns } from '../../../src/engine/schedule-types.ts';

const spaced = (sentences: readonly Piece[][]) =>
  sentences.map((pieces) => plainText(pieces).replaceAll('\u00a0', ' '));
const columns = (changed: Partial<AxisColumns>) => ({
  name: 'Slide',
  unit: 'mm' as const,
  stepsPerUnit: 80,
  largestMoveSteps: 160,
  smallestMoveSteps: 2,
  repeats: 0,
  firstRepeat: null,
  reversals: 0,
  firstReversal: null,
  ...changed,
});

describe('facts of a track', () => {
  test('sizes of its moves', () => {
    expect(spaced(trackFacts(columns({})))).toEqual([
      'Largest move 2 mm (160 microsteps), smallest 0.025 mm (2 microsteps).',
    ]);
    expect(spaced(trackFacts(columns({ smallestMoveSteps: 160, unit: 'deg' })))).toEqual([
      'Every move is 2° (160 microsteps).',
    ]);
    expect(spaced(trackFacts(columns({ largestMoveSteps: 0, smallestMoveSteps: 0 })))).toEqual([
      'It stays where it is.',
    ]);
  });

  test('where it stalls and turns back', () => {
    const facts = trackFacts(columns({ repeats: 3, firstRepeat: 12, reversals: 1, firstReversal: 90 }));
    expect(spaced(facts.slice(1))).toEqual([
      '3 frames of the move repeat a position, the first is 12.',
      'It turns back once, before frame 90.',
    ]);
    expect(
      spaced(trackFacts(columns({ repeats: 1, firstRepeat: 2, reversals: 4, firstReversal: 7 })).slice(1)),
    ).toEqual([
      '1 frame of the move repeats a position, the first is 2.',
      'It turns back 4 times, first before frame 7.',
    ]);
  });
});

test('eases are drawn from the lower left to the upper right, what overshoots included', () => {
  expect(easePath({ kind: 'linear' }, 32, 16)).toMatch(/^M0 16\.0L2 15\.0.*L32 0\.0$/);
  expect(easePath({ kind: 'hold' }, 32, 16)).toBe('M0 16H32V0');
  const over = easePath({ kind: 'cubicBezier', x1: 0.2, y1: 2, x2: 0.8, y2: 1 }, 32, 16);
  const ys = [...over.matchAll(/ ([\d.]+)/g)].map(([, y]) => Number(y));
  expect(Math.min(...ys)).toBe(0);
  expect(ys.at(-1)).toBeGreaterThan(1);
});

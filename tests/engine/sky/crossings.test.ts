import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { crossings, turningPoints } from '../../../src/engine/sky/crossings.ts';
import { both, either, type Span, spansAbove, spansWhere, without } from '../../../src/engine/sky/spans.ts';
import { settings } from '../../property/settings.ts';

const DAY_MS = 86_400_000;
const STEP_MS = 1_800_000;

/** A sine of a day with its summit at a share of it. */
const wave = (summit: number) => (ms: number) => Math.cos((ms / DAY_MS - summit) * 2 * Math.PI);

describe('crossings', () => {
  test('of a sine at half its height lie a sixth of the period from the summit', () => {
    const curve = wave(0.5);
    const found = crossings(curve, turningPoints(curve, 0, DAY_MS, STEP_MS), 0.5);
    expect(found.map(({ rising }) => rising)).toEqual([true, false]);
    expect(found[0]?.ms).toBeCloseTo(DAY_MS / 3, 0);
    expect(found[1]?.ms).toBeCloseTo((DAY_MS * 2) / 3, 0);
  });

  test.each([0.001, 0.01, 0.02, 0.3, 0.5, 0.98, 0.99, 0.999])(
    'a summit at %d of the day that just reaches a level crosses it twice',
    (summit) => {
      const curve = wave(summit);
      // 1 - 2 pi^2 x^2 with x = 40 s: both crossings lie within the day.
      const level = Math.cos((40_000 / DAY_MS) * 2 * Math.PI);
      const found = crossings(curve, turningPoints(curve, 0, DAY_MS, STEP_MS), level);
      expect(found.map(({ rising }) => rising)).toEqual([true, false]);
      expect(Math.abs((found[0]?.ms ?? 0) - (summit * DAY_MS - 40_000))).toBeLessThan(20);
      expect(Math.abs((found[1]?.ms ?? 0) - (summit * DAY_MS + 40_000))).toBeLessThan(20);
    },
  );

  test('a level that is never reached is never crossed', () => {
    const curve = wave(0.25);
    const turns = turningPoints(curve, 0, DAY_MS, STEP_MS);
    expect(crossings(curve, turns, 1.0001)).toEqual([]);
    expect(crossings(curve, turns, -1.0001)).toEqual([]);
  });

  test('an empty stretch has none', () => {
    const curve = wave(0.25);
    expect(crossings(curve, turningPoints(curve, 5, 5, STEP_MS), 0.3)).toEqual([]);
  });
});

/** Spans from 0 to 100 with whole ends, in order and apart. */
const spans = fc
  .uniqueArray(fc.integer({ min: 0, max: 100 }), { maxLength: 12 })
  .map((ends) => ends.sort((a, b) => a - b))
  .map((ends) =>
    Array.from(
      { length: ends.length >> 1 },
      (_, i): Span => ({ fromMs: ends[2 * i] as number, toMs: ends[2 * i + 1] as number }),
    ),
  );

const has = (list: readonly Span[], ms: number) => list.some((span) => ms >= span.fromMs && ms < span.toMs);

describe('spans', () => {
  test('in both, in either, in one without the other, instant by instant', () => {
    fc.assert(
      fc.property(spans, spans, (a, b) => {
        const [and, or, not] = [both(a, b), either(a, b), without(a, b)];
        for (let ms = -0.5; ms < 101; ms += 0.5) {
          const [inA, inB] = [has(a, ms), has(b, ms)];
          const right =
            has(and, ms) === (inA && inB) && has(or, ms) === (inA || inB) && has(not, ms) === (inA && !inB);
          if (!right) throw new Error(`at ${ms}`);
        }
        for (const list of [and, or, not])
          for (const [i, span] of list.entries()) {
            expect(span.toMs).toBeGreaterThan(span.fromMs);
            expect(span.fromMs).toBeGreaterThanOrEqual(list[i - 1]?.toMs ?? 0);
          }
      }),
      settings(),
    );
  });

  test('above a level, of a sine that starts above it', () => {
    const curve = wave(0);
    const found = spansAbove(curve, turningPoints(curve, 0, DAY_MS, STEP_MS), 0);
    expect(found.map((span) => [Math.round(span.fromMs), Math.round(span.toMs)])).toEqual([
      [0, DAY_MS / 4],
      [(DAY_MS * 3) / 4, DAY_MS],
    ]);
  });

  test('where a condition holds, ends to the millisecond', () => {
    const found = spansWhere(
      [
        { fromMs: 0, toMs: 1000 },
        { fromMs: 2000, toMs: 9000 },
      ],
      500,
      (ms) => ms > 700 && ms < 7777.4,
    );
    expect(found).toHaveLength(2);
    expect(found[0]?.fromMs).toBeGreaterThanOrEqual(700);
    expect(found[0]?.fromMs).toBeLessThan(701);
    expect(found[0]?.toMs).toBe(1000);
    expect(found[1]?.fromMs).toBe(2000);
    expect(Math.abs((found[1]?.toMs ?? 0) - 7777.4)).toBeLessThan(1);
  });
});

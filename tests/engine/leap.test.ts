import fc from 'fast-check';
import { expect, test } from 'vitest';
import { firstAt } from '../../src/engine/leap.ts';

// Going on at one speed for a while, as axes do.
const stretch = fc
  .tuple(fc.integer({ min: -3, max: 3 }), fc.integer({ min: 1, max: 20 }))
  .map(([by, times]) => Array<number>(times).fill(by));
const moves = fc.array(stretch, { maxLength: 9 }).map((stretches) => stretches.flat());

test('leaping finds what looking at every frame finds', () => {
  fc.assert(
    fc.property(moves, fc.integer({ min: -30, max: 30 }), (by, position) => {
      const steps = Int32Array.of(0, ...by);
      for (let k = 1; k < steps.length; k += 1) steps[k] = (steps[k - 1] as number) + (steps[k] as number);
      const largestMoveSteps = Math.max(0, ...by.map(Math.abs));
      expect(firstAt({ steps, largestMoveSteps }, position)).toBe(steps.indexOf(position));
    }),
  );
});

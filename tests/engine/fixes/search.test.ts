import { describe, expect, test } from 'vitest';
import type { Finding } from '../../../src/engine/findings/types.ts';
import { type Attempt, passes, searchWay } from '../../../src/engine/fixes/search.ts';
import { setAt } from '../../../src/engine/plan/paths.ts';
import { plainPlan } from '../../reference/plans.ts';
import { wayOf } from './own-ways.ts';

const plan = plainPlan(10, 10);
const blocker = { id: 'no-clip', about: null } as Finding;

/** A way along the guard whose values are judged by rules of the case: what is enough, and what is in the way. */
function search(
  steps: number,
  first: number,
  enough: (n: number) => boolean,
  blocked: (n: number) => boolean = () => false,
  exists: (n: number) => boolean = () => true,
) {
  const tried: number[] = [];
  const at = (n: number) => (exists(n) ? setAt(plan, 'cycle.guardS', n) : null);
  const found = searchWay(wayOf('guard', steps, first, at), (changed) => {
    const n = changed.cycle.guardS;
    tried.push(n);
    return { plan: changed, enough: enough(n), blockers: blocked(n) ? [blocker] : [] } as unknown as Attempt;
  });
  return { passes: found.passes, n: found.attempt?.plan.cycle.guardS ?? null, tried };
}

describe('the smallest value that suffices', () => {
  test.each([1, 2, 7, 30, 99, 100])('is found from any first guess: %i of 100', (least) => {
    for (let first = Math.max(1, least - 156); first <= 100; first += 1) {
      const { passes: ok, n, tried } = search(100, first, (step) => step >= least);
      expect([ok, n], `from ${first}`).toEqual([true, least]);
      if (least > 1) expect(tried, `from ${first}`).toContain(least - 1);
    }
  });

  test('takes two trials if the guess is right, one if it is the first value', () => {
    expect(search(100, 40, (n) => n >= 40).tried).toEqual([40, 39]);
    expect(search(100, 1, (n) => n >= 1).tried).toEqual([1]);
    expect(search(1, 1, () => true).tried).toEqual([1]);
  });

  test('is looked for beyond what is in the way', () => {
    const { passes: ok, n } = search(
      50,
      5,
      (step) => step >= 5,
      (step) => step < 12,
    );
    expect([ok, n]).toEqual([true, 12]);
    expect(
      search(
        50,
        20,
        (step) => step >= 5,
        (step) => step < 12,
      ).n,
    ).toBe(12);
  });

  test('is looked for before what comes later', () => {
    const { passes: ok, n } = search(
      50,
      9,
      (step) => step >= 5,
      (step) => step > 6,
    );
    expect([ok, n]).toEqual([true, 5]);
  });

  test('a guess outside the values is drawn to the nearest', () => {
    expect(search(10, 400, (n) => n >= 10).n).toBe(10);
    expect(search(10, -3, (n) => n >= 2).n).toBe(2);
  });

  test('a value that makes no plan is one too far', () => {
    const { passes: ok, n } = search(
      1000,
      1,
      (step) => step >= 8,
      undefined,
      (step) => step <= 9,
    );
    expect([ok, n]).toEqual([true, 8]);
  });
});

describe('a way that does not help', () => {
  test('is given up at its end, with the farthest value', () => {
    const { passes: ok, n, tried } = search(8, 3, () => false);
    expect([ok, n]).toEqual([false, 8]);
    expect(tried).toEqual([3, 4, 8]);
  });

  test('is given up after a few strides if it has no end in sight', () => {
    const { n, tried } = search(1_000_000, 3, () => false);
    expect(n).toBe(159);
    expect(tried.length).toBe(5);
  });

  test('names the least that would be enough if something is in its way', () => {
    const { passes: ok, n } = search(
      1000,
      10,
      (step) => step >= 7,
      () => true,
    );
    expect([ok, n]).toEqual([false, 7]);
  });

  test('names nothing if no value makes a plan', () => {
    expect(
      search(
        5,
        2,
        () => true,
        undefined,
        () => false,
      ),
    ).toEqual({ passes: false, n: null, tried: [] });
  });
});

test('an attempt passes if it is enough and nothing is in its way', () => {
  expect(passes(null)).toBe(false);
  const attempt = { enough: true, blockers: [] } as unknown as Attempt;
  expect(passes(attempt)).toBe(true);
  expect(passes({ ...attempt, enough: false })).toBe(false);
  expect(passes({ ...attempt, blockers: [blocker] })).toBe(false);
});

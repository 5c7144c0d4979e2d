/** What is kept in the browser, and what the build has made ready, against the checker. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { keepable } from '../../src/app/store/keepable.ts';
import { readKept } from '../../src/app/store/kept.ts';
import { DEMOS, demoPlan } from '../../src/app/store/opening.ts';
import { currentPlan } from '../../src/app/store/plan.ts';
import { defaultPlan, parsePlan } from '../../src/engine/plan/parse.ts';
import { testPlan } from './plan.ts';

const MARK = 'this program';
const kept = (text: string, mark: string | null) => ({ text, mark });
const { text } = keepable(testPlan());
/** No plan file: the checker would refuse it, so that what comes back tells whether it was asked. */
const unchecked = text.replace(/"guardS": [\d.]+/, '"guardS": -3');

describe('what was kept', () => {
  test('by this very program is taken as it is', async () => {
    expect(await readKept(kept(text, MARK), MARK)).toEqual(testPlan());
    expect((await readKept(kept(unchecked, MARK), MARK))?.cycle.guardS).toBe(-3);
  });

  test.each([
    ['another program', 'another program', MARK],
    ['a program without a mark', null, MARK],
    ['a program without a mark, for another without one', null, null],
  ])('by %s is checked', async (_by, writtenBy, mark) => {
    expect(await readKept(kept(text, writtenBy), mark)).toEqual(testPlan());
    expect(await readKept(kept(unchecked, writtenBy), mark)).toBeNull();
  });

  test('as text alone, as it once was, is checked, and its defaults are filled in', async () => {
    expect(await readKept(text, MARK)).toEqual(testPlan());
    expect(await readKept('{"format":"escapement-plan","version":1}', MARK)).toEqual(defaultPlan());
    expect(await readKept(unchecked, MARK)).toBeNull();
  });

  test.each([
    ['text that breaks off', kept(text.slice(0, 200), MARK)],
    ['nothing', undefined],
    ['null', null],
    ['something else', { plan: 1 }],
    ['no text', kept(7 as never, MARK)],
  ])('is no plan: %s', async (_what, found) => {
    expect(await readKept(found, MARK)).toBeNull();
  });
});

describe('what the build has made ready', () => {
  test('is the default plan', () => expect(currentPlan()).toEqual(defaultPlan()));

  test.each(DEMOS.map((demo) => [demo.title, demo] as const))(
    '%s is what its file says',
    async (title, demo) => {
      const read = parsePlan(readFileSync(`public/examples/${demo.name}.json`, 'utf8'));
      if (!read.ok) throw new Error(JSON.stringify(read.faults));
      expect(await demoPlan(demo)).toEqual(read.plan);
      expect(read.plan.title).toBe(title);
    },
  );
});

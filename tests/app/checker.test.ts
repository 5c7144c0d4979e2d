/** The checker comes after the figures: what is typed meanwhile waits for it, in its turn. */
import { beforeEach, describe, expect, test, vi } from 'vitest';

/** The store as it is before the checker has come. */
async function fresh() {
  vi.resetModules();
  const checker = await import('../../src/app/store/checker.ts');
  const drafts = await import('../../src/app/store/drafts.ts');
  const plan = await import('../../src/app/store/plan.ts');
  return { ...checker, ...drafts, ...plan };
}

beforeEach(() => vi.doUnmock('../../src/app/store/checks.ts'));

describe('before the checker is here', () => {
  test('what is typed is on screen at once, and in the plan as soon as it has come', async () => {
    const { takeTyped, draftAt, currentPlan, fetchChecks } = await fresh();
    const before = currentPlan();
    takeTyped('pacing.intervalS', '30 s', ({ typeSeconds }) => typeSeconds('interval', '30 s'));
    expect(draftAt('pacing.intervalS')).toEqual({ text: '30 s', error: null });
    expect(currentPlan()).toBe(before);
    await fetchChecks();
    expect(currentPlan().pacing.intervalS).toBe(30);
  });

  test('what cannot be used is said then', async () => {
    const { takeTyped, draftAt, fetchChecks } = await fresh();
    takeTyped('pacing.intervalS', 'soon', ({ typeSeconds }) => typeSeconds('interval', 'soon'));
    await fetchChecks();
    expect(draftAt('pacing.intervalS')?.error).toMatch(/^Not a length of time/);
  });

  test('all is done in the order of asking', async () => {
    const { withChecks, fetchChecks } = await fresh();
    const done: number[] = [];
    for (const n of [1, 2, 3]) withChecks(() => done.push(n));
    expect(done).toEqual([]);
    await fetchChecks();
    withChecks(() => done.push(4));
    expect(done).toEqual([1, 2, 3, 4]);
  });

  test('nothing changes the plan unchecked', async () => {
    const { change, currentPlan } = await fresh();
    expect(() => change({ ...currentPlan(), title: 'Another' })).toThrow(/has not come/);
  });
});

test('without the checker what was typed stays as a draft, with the reason; it is fetched anew later', async () => {
  const { takeTyped, draftAt, fetchChecks, currentPlan } = await fresh();
  vi.doMock('../../src/app/store/checks.ts', () => {
    throw new Error('no network');
  });
  takeTyped('title', 'Dusk', () => null);
  await expect(fetchChecks()).rejects.toThrow();
  await vi.waitFor(() => expect(draftAt('title')?.error).toMatch(/could not be fetched/));
  vi.doUnmock('../../src/app/store/checks.ts');
  takeTyped('title', 'Dusk', ({ enterText }) =>
    enterText('title', 'Dusk', (plan, title) => ({ ...plan, title })),
  );
  await fetchChecks();
  expect(currentPlan().title).toBe('Dusk');
});

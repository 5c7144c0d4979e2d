/** Each plan has its own place among the kept ones, through edits, openings and undo. */
import { beforeEach, describe, expect, test } from 'vitest';
import { enter, presentEntry } from '../../../src/app/store/entries.ts';
import { planFor } from '../../../src/app/store/files.ts';
import { DEMOS, demoPlan, openDemo, openPlan } from '../../../src/app/store/opening.ts';
import { changeField, endGesture, redo, replacePlan, startWith, undo } from '../../../src/app/store/plan.ts';
import { testPlan } from '../plan.ts';

const rename = (title: string) => {
  endGesture();
  changeField('title', title);
};
const here = () => presentEntry().id;

beforeEach(() => startWith(enter(testPlan())));

describe('the place of a plan', () => {
  test('stays the same through edits and what is put in its place', () => {
    const first = here();
    rename('Another');
    replacePlan({ ...testPlan(), title: 'Put in its place' });
    expect(here()).toBe(first);
  });

  test('is another for a plan that is opened, and an undo leads back', () => {
    const first = here();
    openPlan(planFor(2400, 12));
    const second = here();
    rename('Second');
    expect(here()).toBe(second);
    expect(second).not.toBe(first);
    undo();
    undo();
    expect(here()).toBe(first);
    rename('First, edited again');
    expect(here()).toBe(first);
    undo();
    redo();
    expect(here()).toBe(first);
  });

  test('is another each time that the same demo is opened', async () => {
    await openDemo('loaf-proving');
    const first = presentEntry();
    await openDemo('loaf-proving');
    expect(presentEntry().id).not.toBe(first.id);
    expect(first.demo?.name).toBe('loaf-proving');
  });

  test('is the same for all that can be undone to', async () => {
    const demo = await demoPlan(DEMOS[0]);
    if (demo) startWith(demo);
    rename('Changed');
    const entry = presentEntry();
    undo();
    expect(presentEntry()).toBe(entry);
  });
});

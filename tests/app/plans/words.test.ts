/** The lines of the list of plans. */
import { describe, expect, test } from 'vitest';
import { changedText, factsText, freeTitle, isFound } from '../../../src/app/plans/words.ts';
import { factsOf, NO_FACTS } from '../../../src/app/store/facts.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { testPlan } from '../plan.ts';

const spaced = (text: string) => text.replaceAll('\u00a0', ' ');

describe('the facts of a plan', () => {
  test('are those of its schedule', () => {
    const plan = { ...testPlan(), place: { ...testPlan().place, name: 'Quarry' } };
    // By pencil: an hour at 12 s is 300 intervals and 301 frames, 12.04 s at 25 fps.
    const facts = factsOf(plan, schedule(plan, { nowMs: 0 }));
    expect(facts).toEqual({
      title: 'Test',
      technique: 'timeLapse',
      frames: 301,
      clipLengthS: 12.04,
      date: '2026-06-21',
      place: 'Quarry',
    });
    expect(spaced(factsText(facts))).toBe('Time-lapse, 301 frames, 12 s, Sun 21 Jun 2026, Quarry');
  });

  test('of what cannot be read are none', () => expect(factsText(NO_FACTS)).toBe(''));
});

test('the last change is a time today, and a day before', () => {
  const at = (...parts: [number, number, number, number, number]) => new Date(...parts).getTime();
  const now = at(2026, 7, 8, 21, 5);
  expect(changedText(at(2026, 7, 8, 0, 1), now)).toBe('00:01');
  expect(changedText(at(2026, 7, 7, 23, 59), now)).toBe('7 Aug 2026');
  expect(changedText(at(2025, 7, 8, 21, 5), now)).toBe('8 Aug 2025');
});

test.each([
  ['dusk', true],
  ['DUSK mole', true],
  ['mole dusk 386', true],
  ['386 frames', true],
  ['dawn', false],
  ['dusk dawn', false],
])('looked for by title and facts: %s', (query, found) => {
  const facts = {
    title: 'Harbour at dusk',
    technique: 'timeLapse',
    frames: 386,
    clipLengthS: 15,
    date: '2026-08-08',
  };
  const listed = { ...facts, technique: 'timeLapse' as const, place: 'Mole', id: '', changedMs: 0, by: '' };
  expect(isFound(listed, query)).toBe(found);
});

describe('a copy has a title that no other plan has', () => {
  test.each([
    [['Dusk'], 'Dusk', 'Dusk 2'],
    [['Dusk', 'Dusk 2'], 'Dusk', 'Dusk 3'],
    [['Dusk', 'Dusk 2'], 'Dusk 2', 'Dusk 3'],
    [[], 'Dusk', 'Dusk'],
  ])('beside %j: %s is %s', (titles, title, copy) => expect(freeTitle(titles, title)).toBe(copy));

  test('not longer than a title may be', () => {
    const title = 'x'.repeat(120);
    expect(freeTitle([title], title).length).toBeLessThanOrEqual(120);
  });
});

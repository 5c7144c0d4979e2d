/** The figures of another setting of the trigger: worked by hand, against the ladder, and their formulas by mathjs. */
import { expect, test } from 'vitest';
import { intervalLadder } from '../../../src/engine/fixes/interval-ladder.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { type Working, workingOf } from '../../../src/engine/working/working.ts';
import { planOf } from '../../outputs/plans.ts';
import { judgeWorking } from './judge.ts';

/** 90 min at 10 s, 25 fps; the trigger counts whole seconds. */
const plan = planOf({
  pacing: { workedOut: 'clip', eventS: 5400, intervalS: 10 },
  trigger: { stepS: 1 },
  clip: { frameRate: '25' },
});
const made = schedule(plan);

function working(figure: string): Working {
  const found = workingOf(plan, made, figure);
  if (!found) throw new Error(`${figure} has no working`);
  return found;
}

// 5400 s / 15 s = 360 intervals, 361 frames: 361 / 25 = 14.44 s of clip.
test('frames and clip at 15 s, by hand', () => {
  expect(working('ladder.15.totals.intervalS').value).toBe(15);
  expect(working('ladder.15.totals.frames')).toMatchObject({
    value: 361,
    remarks: expect.arrayContaining(['With the trigger at 15 s.']),
  });
  expect(working('ladder.15.totals.clipLengthS').value).toBeCloseTo(14.44, 12);
  expect(working('totals.frames').value).toBe(541);
  expect(working('ladder.10.totals.frames').value).toBe(541);
});

test('every row of the ladder has its figures, and each formula gives its figure', () => {
  const rows = intervalLadder(plan, made);
  expect(rows.length).toBeGreaterThan(6);
  for (const row of rows) {
    const figures = {
      'totals.frames': row.frames,
      'totals.clipLengthS': row.clipLengthS,
      'totals.tightestSpareS': row.tightestSpareS,
      'run.swaps': row.swaps,
      'cards.used': row.cards,
    };
    for (const [what, value] of Object.entries(figures)) {
      const figure = `ladder.${row.dialS}.${what}`;
      expect(judgeWorking(plan, made, figure).value, figure).toBeCloseTo(value, 9);
    }
    expect(judgeWorking(plan, made, `ladder.${row.dialS}.totals.lastFrameAt`).label).toBe(row.lastFrameAt);
  }
});

test('one goes on to figures at the same setting', () => {
  const onward = working('ladder.15.totals.frames').terms.map(({ figure }) => figure);
  expect(onward).toEqual(['ladder.15.pacing.intervalsInEvent']);
  expect(working('ladder.15.pacing.intervalsInEvent').value).toBe(360);
});

test.each([
  'ladder.15.5.totals.frames',
  'ladder.0.totals.frames',
  'ladder.15.nothing',
  'ladder.15.ladder.15.totals.frames',
])('%s is no figure', (figure) => expect(workingOf(plan, made, figure)).toBe(null));

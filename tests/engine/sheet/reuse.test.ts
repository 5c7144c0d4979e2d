import { expect, test } from 'vitest';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { setAction, setText, tick } from '../../../src/engine/sheet/edits.ts';
import { sheetOf } from '../../../src/engine/sheet/sheet.ts';
import { production } from './plans.ts';

const TRACKS = [
  {
    axis: 'Slide',
    keyframes: [
      { share: 0, position: 0 },
      { share: 1, position: 600 },
    ],
  },
];

/** Two shots of eight frames that go by the plan's own track. */
const twoShots = (): Plan =>
  production(
    {
      shots: [1, 2].map((n) => ({ name: `Shot ${n}`, actions: [{ frames: 8, holds: [1, 3] }] })),
    },
    { rig: { axes: [{ name: 'Slide' }] }, move: { mode: 'moveShootMove', tracks: TRACKS } },
  );

const stepsOf = (plan: Plan, before: Plan) =>
  Array.from(sheetOf(plan, { before: sheetOf(before) }).columns.axes[0]?.steps ?? []);

test('a shot whose frames are held otherwise goes otherwise, however much is taken from before', () => {
  const before = twoShots();
  const swapped = setAction(before, 1, 1, { holds: [3, 1] });
  expect(stepsOf(swapped, before)).toEqual(Array.from(sheetOf(swapped).columns.axes[0]?.steps ?? []));
  expect(stepsOf(swapped, before)).not.toEqual(stepsOf(before, before));
});

test('words leave the rig as it was, a tick leaves all columns but the clock', () => {
  const before = twoShots();
  const sheet = sheetOf(before);
  const worded = setText(before, { shot: 2, exposure: 1 }, 'Wakes');
  expect(sheetOf(worded, { before: sheet }).columns.axes).toBe(sheet.columns.axes);
  const ticked = tick(before, { first: 1, last: 2 }, Date.UTC(2026, 2, 2, 10));
  const { columns, totals } = sheetOf(ticked, { before: sheet });
  expect(columns.frames).toBe(sheet.columns.frames);
  expect(columns.startMs).not.toEqual(sheet.columns.startMs);
  expect(totals.done).toBe(2);
});

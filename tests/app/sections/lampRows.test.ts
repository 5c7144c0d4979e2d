/** What the table of the lamps says. */
import { expect, test } from 'vitest';
import { lampRows, restText } from '../../../src/app/sections/lampRows.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { plainPlan, type Some } from '../../reference/plans.ts';

const lit = (lamps: Some<Plan['lamps']> = {}, exposure: Some<Plan['exposure']> = {}) =>
  plainPlan(2, 10, {
    lamps: { mainsHz: '50', depthShare: 0.5, limitShare: 0.02, ...lamps },
    exposure,
    camera: { exactStops: false },
  });
const used = (...seconds: number[]) => seconds.map((s, n) => ({ shutterS: s, openS: s, frame: n + 1 }));

test('no lamps, no rows', () => expect(lampRows(lit({ mainsHz: 'none' }), used(0.01))).toEqual([]));

test('1/200 at 50 Hz is half a swing and leaves 2/pi of the depth; whole swings cancel it', () => {
  // Mean of a half wave: 2/pi (textbook result, from memory); 1/100 and 1/50 are one swing and two.
  const [row] = lampRows(lit(), used(1 / 200));
  expect(row).toMatchObject({ left: '±\u00a032\u00a0%', change: '64\u00a0%', over: true });
  expect(row?.better).toMatch(/^1\/100\u00a0s/);
  expect(lampRows(lit(), used(1 / 50))[0]).toMatchObject({ over: false, better: 'within the limit' });
});

test('the worst comes first, each shutter time once, and a bracket counts by its worst exposure', () => {
  const rows = lampRows(lit(), used(1 / 50, 1 / 200, 1 / 50, 1 / 60));
  expect(rows.map(({ shutter }) => shutter)).toEqual(['1/200\u00a0s', '1/60\u00a0s', '1/50\u00a0s']);
  const bracket = lampRows(lit({}, { bracketCount: 3, bracketStops: 2 }), used(1 / 50));
  expect(bracket[0]?.over).toBe(true);
});

test('the rows that are left out are counted', () => {
  const rows = lampRows(lit(), used(1 / 200, 1 / 160, 1 / 125, 1 / 80, 1 / 60, 1 / 40, 1 / 50, 1 / 25));
  expect(restText(rows)).toMatch(/^2 more shutter times change by 0\u00a0% or less and keep within/);
});

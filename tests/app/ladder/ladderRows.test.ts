import { expect, test } from 'vitest';
import {
  buttonAfterKey,
  endText,
  exposureLines,
  settingText,
  shortFinding,
  signedDuration,
} from '../../../src/app/ladder/ladderRows.ts';
import { intervalLadder, type LadderRow } from '../../../src/engine/fixes/interval-ladder.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { testPlan } from '../plan.ts';

const plain = (text: string) => text.replaceAll('\u00a0', ' ').replaceAll('\u2212', '-');

const [row] = intervalLadder(testPlan(), schedule(testPlan()), { each: 0 }) as [LadderRow];

test('a row says its setting, and the interval where it is another', () => {
  expect(plain(settingText({ ...row, dialS: 9, intervalS: 9 }).dial)).toBe('9 s');
  expect(settingText({ ...row, dialS: 9, intervalS: 9 }).interval).toBe('');
  expect(plain(settingText({ ...row, dialS: 9, intervalS: 11.5 }).interval)).toBe('11.5 s');
});

test('the end is a clock, with the days since the start', () => {
  const last = '2026-06-21T13:00:00+02:00';
  expect(endText({ ...row, lastFrameAt: last }, '2026-06-21T12:00:00+02:00')).toBe('13:00:00');
  expect(plain(endText({ ...row, lastFrameAt: last }, '2026-06-19T12:00:00+02:00'))).toBe('13:00:00 +2 days');
});

test('settings of the exposure are said once where they stay', () => {
  const lines = (exposureFirst: string | null, exposureLast: string | null) =>
    exposureLines({ frames: 90, exposureFirst, exposureLast });
  expect(lines(null, null)).toEqual([{ text: '–', frame: null }]);
  expect(lines('1 s', '1 s')).toEqual([{ text: '1 s', frame: 1 }]);
  expect(lines('1 s', '2 s')).toEqual([
    { text: '1 s', frame: 1 },
    { text: 'to 2 s', frame: 90 },
  ]);
});

test('the worst finding in a few words', () => {
  expect(shortFinding({ id: 'card-full', about: null })).toBe('card full');
  expect(shortFinding({ id: 'source-short', about: 'Rig pack' })).toBe('source short: Rig pack');
  expect(shortFinding({ id: 'ramp-step-idle', about: '3' })).toBe('ramp step idle: step 3');
});

test('a missing time has a minus', () => {
  expect(plain(signedDuration(-1.5))).toBe('-1.5 s');
  expect(plain(signedDuration(90))).toBe('1 min 30 s');
});

test('arrows go from row to row, to the figures of a row, and stay in the table', () => {
  const counts = [7, 7, 9, 7, 7];
  const after = (key: string, row: number, button = 0) => buttonAfterKey(key, { row, button }, counts);
  expect(after('ArrowDown', 2)).toEqual({ row: 3, button: 0 });
  expect(after('ArrowDown', 4)).toEqual({ row: 4, button: 0 });
  expect(after('ArrowUp', 0)).toEqual({ row: 0, button: 0 });
  expect(after('End', 0, 2)).toEqual({ row: 4, button: 2 });
  expect(after('Home', 3)).toEqual({ row: 0, button: 0 });
  expect(after('ArrowRight', 1)).toEqual({ row: 1, button: 1 });
  expect(after('ArrowRight', 1, 6)).toEqual({ row: 1, button: 6 });
  expect(after('ArrowLeft', 1, 1)).toEqual({ row: 1, button: 0 });
  expect(after('ArrowLeft', 1)).toEqual({ row: 1, button: 0 });
  // A row with fewer figures ends before.
  expect(after('ArrowDown', 2, 8)).toEqual({ row: 3, button: 6 });
  expect(after('Enter', 3)).toBeNull();
});

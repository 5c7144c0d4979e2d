import { expect, test } from 'vitest';
import {
  endText,
  exposureLines,
  rowAfterKey,
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
  expect(exposureLines({ ...row, exposureFirst: null, exposureLast: null })).toEqual(['–']);
  expect(exposureLines({ ...row, exposureFirst: '1 s', exposureLast: '1 s' })).toEqual(['1 s']);
  expect(exposureLines({ ...row, exposureFirst: '1 s', exposureLast: '2 s' })).toEqual(['1 s', 'to 2 s']);
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

test('arrows go from row to row and stay in the table', () => {
  expect(rowAfterKey('ArrowDown', 2, 5)).toBe(3);
  expect(rowAfterKey('ArrowDown', 4, 5)).toBe(4);
  expect(rowAfterKey('ArrowUp', 0, 5)).toBe(0);
  expect(rowAfterKey('End', 0, 5)).toBe(4);
  expect(rowAfterKey('Home', 3, 5)).toBe(0);
  expect(rowAfterKey('Enter', 3, 5)).toBeNull();
});

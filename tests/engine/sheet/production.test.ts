import { describe, expect, test } from 'vitest';
import { defaultPlan } from '../../../src/engine/plan/parse.ts';
import { framesOfSeconds, holdsText } from '../../../src/engine/sheet/production.ts';
import { sheetOf } from '../../../src/engine/sheet/sheet.ts';
import { BARE, numbers, production, shotOf } from './plans.ts';

describe('holds', () => {
  const holdsIn = (frames: number, holds: number[]) =>
    numbers(sheetOf(production({ ...BARE, shots: [shotOf({ frames, holds })] })).columns.frames);

  test('on twos, evenly', () => expect(holdsIn(6, [2])).toEqual([2, 2, 2]));
  test('on twos, one left over: the last is shorter', () => expect(holdsIn(7, [2])).toEqual([2, 2, 2, 1]));
  test('a mix is said again from its start', () => expect(holdsIn(9, [1, 2])).toEqual([1, 2, 1, 2, 1, 2]));
  test('a mix that ends within a hold', () => expect(holdsIn(8, [1, 4])).toEqual([1, 4, 1, 2]));
  test('one exposure for all of it', () => expect(holdsIn(24, [24])).toEqual([24]));

  test('a last exposure that is shorter is said, one that is not is not', () => {
    const sheet = sheetOf(production({ ...BARE, shots: [shotOf({ frames: 7 }, { frames: 8 })] }));
    expect(sheet.actions.map(({ lastShort }) => lastShort)).toEqual([true, false]);
    expect(sheet.totals.findings.map(({ id }) => id)).toEqual(['last-short']);
    expect(sheet.totals.findings[0]).toMatchObject({ exposure: 4, severity: 'note' });
  });

  test.each([
    [[2], 24, 'on twos'],
    [[2, 1, 2], 24, 'on ones and twos'],
    [[4, 1, 2], 24, 'on ones, twos and fours'],
    [[12], 24, 'on 12s'],
    [[24], 24, 'held for 24\u00A0frames'],
    [[1], 1, 'held for 1\u00A0frame'],
  ] as const)('%j of %i frames: %s', (holds, frames, words) => expect(holdsText(holds, frames)).toBe(words));
});

describe('shots one after another', () => {
  const sheet = sheetOf(
    production({
      ...BARE,
      startTimecode: '01:00:00:00',
      shots: [
        shotOf({ text: 'Wakes', frames: 5 }, { frames: 4, holds: [4] }),
        shotOf({ text: 'Goes', frames: 3 }),
      ],
    }),
  );

  test('frames and exposures are counted on, of the shot and of the production', () => {
    expect(sheet).toMatchObject({ frames: 12, exposures: 6 });
    expect(sheet.shots).toMatchObject([
      { firstExposure: 1, exposures: 4, firstFrame: 1, frames: 9, timecode: '01:00:00:00' },
      { firstExposure: 5, exposures: 2, firstFrame: 10, frames: 3, timecode: '01:00:00:09' },
    ]);
    expect(sheet.actions).toMatchObject([
      { shot: 0, text: 'Wakes', firstExposure: 1, exposures: 3, firstFrame: 1, frames: 5 },
      { shot: 0, firstExposure: 4, exposures: 1, firstFrame: 6, frames: 4 },
      { shot: 1, text: 'Goes', firstExposure: 5, exposures: 2, firstFrame: 1, frames: 3 },
    ]);
  });

  test('columns say where each exposure belongs', () => {
    expect(numbers(sheet.columns.shot)).toEqual([0, 0, 0, 0, 1, 1]);
    expect(numbers(sheet.columns.action)).toEqual([0, 0, 0, 1, 2, 2]);
    expect(numbers(sheet.columns.firstFrame)).toEqual([1, 3, 5, 6, 1, 3]);
    expect(numbers(sheet.columns.frames)).toEqual([2, 2, 1, 4, 2, 1]);
  });

  test('a shot without actions has no exposures, and neither set-up nor clock', () => {
    const empty = sheetOf(production({ ...BARE, setUpMin: 60, shots: [{ name: 'Later' }] }));
    expect(empty).toMatchObject({ frames: 0, exposures: 0, days: [] });
    expect(empty.totals).toMatchObject({ workMin: 0, done: 0, left: 0, days: 0 });
    expect(empty.totals.findings.map(({ id }) => id)).toEqual(['no-exposures']);
  });
});

describe('a plan without shots', () => {
  const plan = production(
    {},
    { title: 'Kettle', pacing: { workedOut: 'event', clipLengthS: 2, intervalS: 60 } },
  );

  test('stands for one shot with one action, its clip', () => {
    const sheet = sheetOf(plan);
    expect(sheet.shots).toMatchObject([{ name: 'Kettle', frames: 48, exposures: 24 }]);
    expect(sheet.actions).toMatchObject([{ frames: 48, holdsText: 'on twos', lastShort: false }]);
  });

  test('of any technique, title and length', () => {
    const long = sheetOf({
      ...defaultPlan(),
      title: `${'x'.repeat(39)}🎞️🎞️`,
      pacing: { ...defaultPlan().pacing, workedOut: 'event', intervalS: 1, clipLengthS: 40_000 },
      clip: { ...defaultPlan().clip, holdFrames: 2 },
    });
    expect(long.shots[0]?.name).toBe('x'.repeat(39));
    expect(long).toMatchObject({ frames: 1_000_000, exposures: 500_000 });
    expect(sheetOf({ ...plan, title: '' }).shots[0]?.name).toBe('Shot 1');
  });
});

// By hand: 1.5 x 24000/1001 = 35.96; 0.0208 x 24 = 0.4992; 0.0209 x 24 = 0.5016; 1.1 x 25 = 27.5; 2.5 x 30000/1001 = 74.9.
test.each([
  [1.5, '24000/1001', 36],
  [0.0208, '24', 0],
  [0.0209, '24', 1],
  [1.1, '25', 28],
  [2.5, '30000/1001', 75],
  [1.001, '30000/1001', 30],
])('%f s at %s is %i frames', (lengthS, rate, frames) => expect(framesOfSeconds(lengthS, rate)).toBe(frames));

test('an action in seconds has its nearest whole number of frames', () => {
  const plan = production({ ...BARE, shots: [shotOf({ lengthIn: 'seconds', lengthS: 1.48 })] });
  // 1.48 x 24 = 35.52.
  expect(sheetOf(plan)).toMatchObject({ frames: 36, exposures: 18 });
});

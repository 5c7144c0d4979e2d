/** How the figures of the sheet came about, worked by hand. */
import { expect, test } from 'vitest';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { type Working, workingOf } from '../../../src/engine/working/working.ts';
import { BARE, production, shotOf } from '../sheet/plans.ts';
import { judgeAll } from './judge.ts';

const working = (plan: Plan, figure: string): Working => {
  const found = workingOf(plan, schedule(plan), figure);
  if (!found) throw new Error(`${figure} has no working`);
  return found;
};
const value = (plan: Plan, figure: string): number => working(plan, figure).value;

/** 100 frames on twos and 20 on ones at 24 fps, 6 min each, from 09:00 with a break from 13:00 to 13:30. */
const HOURS = {
  minutesPerExposure: 6,
  ...BARE,
  workFrom: '09:00',
  workTo: '18:00',
  breaks: [{ from: '13:00', to: '13:30' }],
};
const plan = production({
  shots: [shotOf({ frames: 100 }, { frames: 20, holds: [1] })],
  ...HOURS,
  startTimecode: '01:00:00:00',
});

// 50 + 20 exposures, 5 s on screen; 70 x 6 min are 7 h, 40 of them in the four hours before the break: 16:30.
test('frames, exposures, hours and the end', () => {
  expect(value(plan, 'sheet.frames')).toBe(120);
  expect(value(plan, 'sheet.exposures')).toBe(70);
  expect(value(plan, 'sheet.screenS')).toBe(5);
  expect(value(plan, 'sheet.eachMin')).toBeCloseTo(6, 4);
  expect(value(plan, 'sheet.workMin')).toBeCloseTo(420, 3);
  expect(value(plan, 'sheet.days')).toBe(1);
  expect(working(plan, 'sheet.finishAt').label?.slice(0, 16)).toBe('2026-03-02T16:30');
  expect(value(plan, 'sheet.day.1.from')).toBe(9 * 3600);
});

// Exposure 41 is the first after the break; exposure 51 the first on ones, frame 101: an hour and 100 frames.
test('one exposure: clock, frames, timecode', () => {
  expect(working(plan, 'sheet.exposure.41.clock').label?.slice(0, 16)).toBe('2026-03-02T13:30');
  expect(
    working(plan, 'sheet.exposure.41.clock').terms.find(({ symbol }) => symbol === 'restS')?.value,
  ).toBeCloseTo(1800, 1);
  expect(value(plan, 'sheet.exposure.51.lastFrame')).toBe(101);
  expect(value(plan, 'sheet.exposure.50.lastFrame')).toBe(100);
  expect(working(plan, 'sheet.exposure.51.timecode')).toMatchObject({
    label: '01:00:04:04',
    value: 3600 * 24 + 100,
  });
  expect(workingOf(plan, schedule(plan), 'sheet.exposure.71.clock')).toBe(null);
});

// Friday 09:00 to 18:00 with half an hour off is room for 85 exposures of 6 min; the others follow on Monday.
test('a break, a night with days off', () => {
  const longer = production(
    { ...HOURS, shots: [shotOf({ frames: 200 })], daysOff: ['saturday', 'sunday'] },
    { start: { date: '2026-03-06', time: '09:00:00' } },
  );
  expect(working(longer, 'sheet.day.1.break.1.from')).toMatchObject({ value: 13 * 3600 });
  expect(working(longer, 'sheet.day.1.break.1.to').label?.slice(0, 16)).toBe('2026-03-06T13:30');
  expect(value(longer, 'sheet.day.1.break.1.lengthS')).toBe(1800);
  const night = working(longer, 'sheet.day.1.nightS');
  // 18:00 on Friday to 09:00 on Monday: six hours, two days, nine hours.
  expect(night.value).toBeCloseTo(63 * 3600, 0);
  expect(night.remarks).toEqual(['Days without work between: 2.']);
  expect(workingOf(longer, schedule(longer), 'sheet.day.2.nightS')).toBe(null);
  expect(workingOf(longer, schedule(longer), 'sheet.day.1.break.2.from')).toBe(null);
  judgeAll(longer, schedule(longer), [1]);
});

// The clocks of Europe/Berlin go on from 02:00 to 03:00 on 29 March 2026 (IANA): the night of that day is an hour shorter.
test('a night in which the clocks change', () => {
  const berlin = production(
    { ...HOURS, shots: [shotOf({ frames: 200 })] },
    { start: { date: '2026-03-28', time: '09:00:00' }, place: { zone: 'Europe/Berlin' } },
  );
  expect(value(berlin, 'sheet.day.1.nightS')).toBeCloseTo(14 * 3600, 0);
  judgeAll(berlin, schedule(berlin), [1]);
});

// SMPTE ST 12-1: at 30000/1001 the label after 00:00:59;29 is 00:01:00;02, of frame 1800.
test('drop-frame timecode leaves labels out, not frames', () => {
  const dropped = production(
    { shots: [shotOf({ frames: 1802, holds: [1] })], minutesPerExposure: 1, ...BARE, dropFrame: true },
    { clip: { frameRate: '30000/1001' } },
  );
  expect(working(dropped, 'sheet.exposure.1801.timecode')).toMatchObject({
    value: 1800,
    label: '00:01:00;02',
  });
});

test('a pattern of holds: 1, 1, 6 over 34 frames is said four times, and once more begun', () => {
  const held = production({ shots: [shotOf({ frames: 34, holds: [1, 1, 6] })], ...BARE });
  expect(value(held, 'sheet.exposures')).toBe(14);
  expect(value(held, 'sheet.action.1.exposures')).toBe(14);
  judgeAll(held, schedule(held), [1]);
});

// 2.5 s at 24 fps are 60 frames. 0.58 s at 25 fps are 14.5, which goes up to 15, though doubles have it below.
test.each([
  [2.5, '24', 60],
  [0.58, '25', 15],
])('%f s at %s fps are %i frames', (lengthS, frameRate, frames) => {
  const timed = production(
    { shots: [shotOf({ lengthIn: 'seconds', lengthS })], ...BARE },
    { clip: { frameRate } },
  );
  expect(value(timed, 'sheet.frames')).toBe(frames);
  judgeAll(timed, schedule(timed), [1]);
});

/** Ticked at 09:00, 09:12, 09:24: twice as slow as planned. */
const START_MS = Date.parse('2026-03-02T09:00:00Z');
const slow = production({
  ...plan.sheet,
  shots: [shotOf({ frames: 40 })],
  ticks: [0, 12, 24].map((minute, n) => ({ shot: 1, exposure: n + 1, atMs: START_MS + minute * 60_000 })),
});

// Of twenty exposures 17 are left at 09:24: at 6 min each until 11:06, at 12 min until 12:48.
test('the pace so far', () => {
  expect(value(slow, 'sheet.done')).toBe(3);
  expect(value(slow, 'sheet.left')).toBe(17);
  expect(value(slow, 'sheet.pace.realMin')).toBeCloseTo(24, 9);
  expect(value(slow, 'sheet.pace.plannedMin')).toBeCloseTo(12, 3);
  expect(value(slow, 'sheet.pace.factor')).toBeCloseTo(2, 4);
  expect(value(slow, 'sheet.pace.behindMin')).toBeCloseTo(12, 3);
  expect(value(slow, 'sheet.exposure.3.atPaceMin')).toBeCloseTo(12, 3);
  expect(working(slow, 'sheet.finishAt').label?.slice(0, 16)).toBe('2026-03-02T11:06');
  const atPace = working(slow, 'sheet.finishAtPace');
  expect(atPace.label?.slice(0, 16)).toBe('2026-03-02T12:48');
  // From 09:00: 24 min as they went, 17 x 12 min.
  expect(atPace.terms.find(({ symbol }) => symbol === 'workMin')?.value).toBeCloseTo(24 + 17 * 12, 2);
  judgeAll(slow, schedule(slow), [1]);
});

// A lamp of 100 W from 09:00 to 16:30 is 750 Wh; packs of 100 Wh of which a fifth is kept: ten.
test('what a day draws, and the packs that takes', () => {
  const lit: Plan = production(plan.sheet, {
    power: {
      temperatureC: 20,
      sources: [{ name: 'P', kind: 'battery', energyWh: 100, reserveShare: 0.2, count: 20 }],
      loads: [{ name: 'Lamp', source: 'P', alwaysOnW: 100, efficiencyShare: 1 }],
    },
  });
  expect(value(lit, 'sheet.day.1.sources.P.wh')).toBeCloseTo(750, 1);
  expect(value(lit, 'sheet.energyWh')).toBeCloseTo(750, 1);
  expect(value(lit, 'sheet.day.1.sources.P.packs')).toBe(10);
  judgeAll(lit, schedule(lit), [1]);
});

test('more actions than a sum names stand as one', () => {
  const long = production({
    shots: [shotOf(...Array.from({ length: 30 }, (_, n) => ({ frames: 2 + n })))],
    ...BARE,
  });
  const { terms, value: frames } = working(long, 'sheet.frames');
  expect(terms.length).toBe(13);
  expect(frames).toBe(30 * 2 + (29 * 30) / 2);
  judgeAll(long, schedule(long), [1]);
});

// Three exposures on twos in the first shot, of which two are ticked, one on fours in the second, which is not.
test('shots: their frames, exposures, set-ups, what is done', () => {
  const two = production({
    shots: [shotOf({ frames: 2 }, { frames: 4 }), shotOf({ frames: 4, holds: [4] })],
    minutesPerExposure: 6,
    ...BARE,
    ticks: [0, 6].map((minute, n) => ({ shot: 1, exposure: n + 1, atMs: START_MS + minute * 60_000 })),
  });
  const values = (what: string) => [1, 2].map((shot) => value(two, `sheet.shot.${shot}.${what}`));
  expect(values('frames')).toEqual([6, 4]);
  expect(values('exposures')).toEqual([3, 1]);
  expect(values('setUpMin')).toEqual([0, 0]);
  expect(values('done')).toEqual([2, 0]);
  expect([1, 2, 3].map((action) => value(two, `sheet.action.${action}.done`))).toEqual([1, 1, 0]);
  expect(working(two, 'sheet.shot.2.timecode')).toMatchObject({ label: '00:00:00:06', value: 6 });
  expect([1, 4].map((exposure) => value(two, `sheet.exposure.${exposure}.holdFrames`))).toEqual([2, 4]);
  judgeAll(two, schedule(two), [1]);
});

test('a time-lapse has no figures of a sheet', () => {
  const lapse = { ...plan, technique: 'timeLapse' as const };
  for (const figure of [
    'sheet.frames',
    'sheet.exposure.1.clock',
    'sheet.day.1.from',
    'sheet.action.1.frames',
  ])
    expect(workingOf(lapse, schedule(lapse), figure), figure).toBe(null);
});

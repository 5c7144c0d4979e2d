/** The part program of single plans, line by line; positions over whole plans are in tests/reference/part-program. */
import { describe, expect, test } from 'vitest';
import type { Plan } from '../../src/engine/plan/schema.ts';
import { schedule } from '../../src/engine/schedule.ts';
import { sheetOf } from '../../src/engine/sheet/sheet.ts';
import { partProgram } from '../../src/outputs/part-program/program.ts';
import { planOf } from './plans.ts';

const slide = {
  name: 'Slide',
  // 200 x 16 / 40 = 80 microsteps a millimetre.
  maxSpeed: 10,
  maxAccel: 20,
  travelMin: -100,
  travelMax: 1000,
};
const to = (position: number) => ({
  axis: 'Slide',
  keyframes: [
    { share: 0, position: 0, ease: { kind: 'linear' } },
    { share: 1, position },
  ],
});
/** Three frames, 10 s apart: 100 mm each. Shutter 1/60 s, lag 0.1 s. */
const plan = (fields: object = {}, axis: object = {}, move: object = {}): Plan =>
  planOf({
    title: 'Reed',
    pacing: { workedOut: 'clip', eventS: 40, intervalS: 20 },
    camera: { shutterLagS: 0.1 },
    exposure: { shutterS: 0.5 },
    rig: { axes: [{ ...slide, ...axis }] },
    move: { mode: 'moveShootMove', settleS: 2, tracks: [to(200)], ...move },
    ...fields,
  });

const textOf = (of: Plan): string => {
  const sheet = of.technique === 'stopMotion' ? sheetOf(of) : null;
  return [...partProgram(of, schedule(of), sheet)].join('');
};
/** Lines that do something. */
const linesOf = (of: Plan): string[] =>
  textOf(of)
    .split('\r\n')
    .filter((line) => line !== '' && !line.startsWith('('));
const commentsOf = (of: Plan): string =>
  textOf(of)
    .split('\r\n')
    .filter((line) => line.startsWith('('))
    .map((line) => line.slice(1, -1))
    .join(' ');

const FIRES = ['M8', 'G4 P0.2', 'M9'];

test('moves, dwells and fires in the plan’s own times', () => {
  // Hold 0.1 + 0.5 = 0.6 s, of which the lines take 0.2. 100 mm at 10 mm/s and 20 mm/s²: 100/10 + 10/20 = 10.5 s (Lynch
  // & Park, 9.2.2.2). 20 - 0.6 - 10.5 = 8.9 s are left: settle (2 s) and spare.
  const frame = [...FIRES, 'G4 P0.4'];
  expect(linesOf(plan())).toEqual([
    ...['G21', 'G90', 'G94', 'G1 X0 F600', 'M0'],
    ...[...frame, 'G1 X100 F600', 'G4 P8.9'],
    ...[...frame, 'G1 X200 F600', 'G4 P8.9'],
    ...[...frame, 'M2'],
  ]);
});

test('goes at a share of the top speed, and waits less', () => {
  // 5 mm/s: 100/5 + 5/20 = 20.25 s. The settle stays whole; the interval does not.
  const slow = plan({ partProgram: { feedShare: 0.5 } });
  expect(linesOf(slow)).toEqual(expect.arrayContaining(['G1 X100 F300', 'G4 P2']));
  expect(commentsOf(slow)).toContain('TOO SLOW: frame 1 takes 2.85 s more than its interval');
  expect(commentsOf(plan())).not.toContain('TOO SLOW');
});

test('counts lengths in inches, angles in degrees', () => {
  const inches = plan({ partProgram: { inches: true } });
  // 100 mm / 25.4 = 3.93701 in; 600 mm/min / 25.4 = 23.622 in/min.
  expect(linesOf(inches)).toEqual(expect.arrayContaining(['G20', 'G1 X3.93701 F23.622']));
  const turning = plan({ partProgram: { inches: true } }, { unit: 'deg', word: 'B' });
  expect(linesOf(turning)).toEqual(expect.arrayContaining(['G20', 'G1 B100 F600']));
});

test('comes from the side that the axis asks for, past its place by backlash and overrun', () => {
  const back = plan(
    {},
    { arrive: 'upwards', backlash: 0.5, overrun: 2 },
    { tracks: [{ ...to(100), thereAndBack: true }] },
  );
  const moves = linesOf(back).filter((line) => line.startsWith('G1'));
  expect(moves).toEqual(['G1 X-2.5 F600', 'G1 X0 F600', 'G1 X100 F600', 'G1 X-2.5 F600', 'G1 X0 F600']);
});

test('says what backlash it leaves to the controller', () =>
  expect(commentsOf(plan({}, { backlash: 0.5 }))).toContain('a backlash of 0.5 mm is not taken up here'));

test('moves all the time in inverse time, and does not fire', () => {
  const lines = linesOf(plan({}, {}, { mode: 'continuous' }));
  expect(lines).toEqual([
    'G21',
    'G90',
    'G94',
    'G1 X0 F600',
    'M0',
    'G93',
    'G1 X100 F3',
    'G1 X200 F3',
    'G94',
    'M2',
  ]);
  expect(commentsOf(plan({}, {}, { mode: 'continuous' }))).toContain('does not fire the camera');
});

test('stops for the hands before each pass of stop-motion', () => {
  const lines = linesOf(
    plan({
      technique: 'stopMotion',
      sheet: {
        passes: [{ name: 'Key' }, { name: 'Glow' }],
        shots: [
          {
            name: 'One',
            actions: [{ text: 'a', lengthIn: 'frames', frames: 2, holds: [1] }],
            tracks: [to(10)],
          },
        ],
      },
    }),
  );
  const pass = ['M0', ...FIRES, 'G4 P0.4'];
  expect(lines).toEqual([
    ...['G21', 'G90', 'G94', 'G1 X0 F600', ...pass, ...pass],
    ...['G1 X10 F600', 'G4 P2', ...pass, ...pass, 'M2'],
  ]);
});

test('says what it is, and to run it first with nothing on the arm, in ASCII without nested comments', () => {
  const text = textOf(plan({ title: 'Über (Moor); 霧\nM2' }));
  expect(text).toMatch(/^\(Escapement: a part program, RS-274 text after NISTIR 6556\)\r\n/);
  expect(text).toContain('(For the plan: Uber [Moor]; ? M2)');
  expect(text).toContain('Run it first with nothing on the arm');
  expect(text).toMatch(/^[\x20-\x7E\r\n]*$/);
  for (const line of text.split('\r\n')) expect(line.length).toBeLessThanOrEqual(256);
});

test('names the shot of each exposure', () => {
  const shots = ['Gate', 'Path'].map((name) => ({
    name,
    actions: [{ text: 'a', lengthIn: 'frames', frames: 2, holds: [1] }],
  }));
  const says = textOf(plan({ technique: 'stopMotion', sheet: { shots } }))
    .split('\r\n')
    .filter((line) => line.includes('start when'))
    .map((line) => /Exposure (\d) of (\w+)/.exec(line)?.slice(1).join(' '));
  expect(says).toEqual(['1 Gate', '2 Gate', '1 Path', '2 Path']);
});

test('has no comment that begins with a word of the plan: a controller may act upon it', () => {
  // NISTIR 6556, 3.3.4: `(MSG,` is a message to the operator, whatever the case and the spaces.
  const lapse = textOf(plan({ title: `${'a'.repeat(80)} MSG, go on` }));
  expect(lapse).toContain('(.. MSG, go on)');
  const shots = [{ name: 'MSG', actions: [{ text: 'a', lengthIn: 'frames', frames: 2 }] }];
  const passes = [{ name: 'msg' }, { name: 'b' }];
  const shoot = textOf(plan({ technique: 'stopMotion', sheet: { shots, passes } }));
  expect(shoot).toContain('(Exposure 1 of MSG, msg: start');
  for (const text of [lapse, shoot]) expect(text).not.toMatch(/\(\s*msg\s*,/i);
});

test('comes in pieces', () => {
  const long = plan({ pacing: { workedOut: 'clip', eventS: 200_000, intervalS: 10 } });
  let longest = 0;
  for (const piece of partProgram(long, schedule(long), null)) longest = Math.max(longest, piece.length);
  expect(longest).toBeLessThan(100_000);
});

describe('what no part program can be written of', () => {
  const refusal =
    (of: Plan): (() => unknown) =>
    () =>
      textOf(of);
  const axes = (count: number, unit: string) =>
    plan({
      rig: { axes: Array.from({ length: count }, (_, i) => ({ ...slide, name: `N${i}`, unit })) },
      move: {},
    });

  test('a fourth length or angle', () => {
    expect(refusal(axes(4, 'mm'))).toThrow(
      /^rig\.axes\[3\]\.word: found "auto", .*N3; allowed: three lengths/,
    );
    expect(refusal(axes(4, 'deg'))).toThrow(
      /^rig\.axes\[3\]\.word: .*three angles at most, one for each of A, B, C/,
    );
    expect(refusal(axes(3, 'deg'))).not.toThrow();
  });

  test('a letter of the other kind', () =>
    expect(refusal(plan({}, { word: 'A' }))).toThrow(
      /^rig\.axes\[0\]\.word: found "A"; allowed: X, Y, Z or "auto"/,
    ));

  test.each(['G91', 'g1 x 5', 'M2', 'G93', 'M30', 'G021', 'M8 (on', '(a (b))', 'a#1', '%'])(
    'the trigger line %j',
    (line) =>
      expect(refusal(plan({ partProgram: { triggerLines: `M8\n${line}\nM9` } }))).toThrow(
        /^partProgram\.triggerLines: found .*; allowed: /,
      ),
  );

  test.each(['M8', 'G4 P0.5 (moves X5)', 'M62 P0', 'S100 M3', 'G4 P2.0', 'M20'])(
    'not the trigger line %j',
    (line) => expect(refusal(plan({ partProgram: { triggerLines: line } }))).not.toThrow(),
  );
});

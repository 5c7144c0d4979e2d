import { describe, expect, test } from 'vitest';
import { readPlan } from '../../../src/engine/plan/parse.ts';
import { sheetOf } from '../../../src/engine/sheet/sheet.ts';
import { shotOf } from './plans.ts';

const faultsOf = (sheet: object, fields: object = {}) => {
  const parsed = readPlan({
    format: 'escapement-plan',
    version: 1,
    clip: { frameRate: '24' },
    sheet,
    ...fields,
  });
  return parsed.ok ? [] : parsed.faults;
};
const oneAction = (action: object) => ({ shots: [shotOf(action)] });

describe('faults of a production, each with path, found and allowed', () => {
  test.each<[string, object, string, string, string]>([
    [
      'an action of zero length',
      oneAction({ lengthIn: 'seconds', lengthS: 0.01 }),
      'sheet.shots[0].actions[0].lengthS',
      '0.01, which makes no frame',
      'half a frame at 24 frames a second, or more',
    ],
    [
      'a hold longer than the action',
      oneAction({ frames: 3, holds: [2, 4] }),
      'sheet.shots[0].actions[0].holds[1]',
      '4',
      'at most 3, the frames of the action',
    ],
    [
      'ten million exposures',
      { shots: [shotOf(...new Array(10).fill({ frames: 1_000_000, holds: [1] }))] },
      'sheet.shots[0].actions[1].frames',
      '1000000, which makes 2000000 exposures in all',
      'what makes at most 1000000 exposures',
    ],
    [
      'a production without end',
      { shots: [shotOf(...new Array(25).fill({ frames: 1_000_000, holds: [1_000_000] }))] },
      'sheet.shots[0].actions[24].frames',
      '1000000, which makes 25000000 frames in all',
      'what makes at most 24000000 frames',
    ],
    [
      'an unknown pass',
      oneAction({ passes: ['Fog'] }),
      'sheet.shots[0].actions[0].passes[0]',
      '"Fog"',
      'one of "Main"',
    ],
    [
      'a pass twice',
      oneAction({ details: [{ passes: ['Main', 'Main'] }] }),
      'sheet.shots[0].actions[0].details[0].passes[1]',
      '"Main"',
      'each pass once in an exposure',
    ],
    [
      'no pass at all',
      oneAction({ passes: [] }),
      'sheet.shots[0].actions[0].passes',
      'a list of 0',
      'null for all passes, or a pass at least',
    ],
    [
      'a name of a pass taken',
      { passes: [{ name: 'Key' }, { name: 'Key' }] },
      'sheet.passes[1].name',
      '"Key"',
      'a name that is not taken yet',
    ],
    [
      'a day that ends before it begins',
      { workFrom: '18:00' },
      'sheet.workTo',
      '"18:00"',
      'later than workFrom, 18:00',
    ],
    [
      'a break before work',
      { breaks: [{ from: '08:00', to: '08:30' }] },
      'sheet.breaks[0].from',
      '"08:00"',
      'not before 09:00, the beginning of work',
    ],
    [
      'a break after work',
      { breaks: [{ from: '17:00', to: '18:30' }] },
      'sheet.breaks[0].to',
      '"18:30"',
      'not after 18:00, the end of work',
    ],
    [
      'breaks out of order',
      {
        breaks: [
          { from: '13:00', to: '14:00' },
          { from: '11:00', to: '11:10' },
        ],
      },
      'sheet.breaks[1].from',
      '"11:00"',
      'not before 14:00, the end of the break before',
    ],
    [
      'a break backwards',
      { breaks: [{ from: '13:00', to: '12:00' }] },
      'sheet.breaks[0].to',
      '"12:00"',
      'later than its start, 13:00',
    ],
    [
      'breaks for all of the day',
      { breaks: [{ from: '09:00', to: '18:00' }] },
      'sheet.breaks',
      'breaks for all of the day',
      'breaks that leave some work',
    ],
    [
      'a timecode that there is not',
      { startTimecode: '00:00:00:24' },
      'sheet.startTimecode',
      '"00:00:00:24"',
      'a timecode that there is at 24 frames a second',
    ],
    [
      'overlapping cues of one kind',
      {
        shots: [
          {
            ...shotOf({}),
            cues: [
              { kind: 'word', frame: 9, text: 'no' },
              { kind: 'word', frame: 4, frames: 6, text: 'oh' },
              { kind: 'light', frame: 9 },
            ],
          },
        ],
      },
      'sheet.shots[0].cues[0].frame',
      '9',
      'after frame 9: the word cue “oh” lasts until then',
    ],
    [
      'a cue beyond the shot',
      { shots: [{ ...shotOf({ frames: 10 }), cues: [{ frame: 10, frames: 2 }] }] },
      'sheet.shots[0].cues[0].frames',
      '2, which ends at frame 11',
      'an end within the shot’s 10 frames',
    ],
    [
      'a track of an axis that there is not',
      { shots: [{ ...shotOf({}), tracks: [{ axis: 'Slide', keyframes: [{ position: 1 }] }] }] },
      'sheet.shots[0].tracks[0].axis',
      '"Slide"',
      'no name, since there is none',
    ],
  ])('%s', (_, sheet, path, found, allowed) => expect(faultsOf(sheet)).toEqual([{ path, found, allowed }]));

  // SMPTE ST 12-1 at 30000/1001: no label ends in ;00 or ;01 at a minute that is no tenth.
  test('a drop-frame label that is left out', () => {
    const sheet = { startTimecode: '00:01:00:00' };
    const clip = { clip: { frameRate: '30000/1001' } };
    expect(faultsOf(sheet, clip)).toMatchObject([{ path: 'sheet.startTimecode' }]);
    expect(faultsOf({ ...sheet, dropFrame: false }, clip)).toEqual([]);
    expect(faultsOf({ startTimecode: '00:10:00;00' }, clip)).toEqual([]);
  });

  test('the first timecode as it stands by itself exists at every rate', () => {
    for (const frameRate of ['1', '24000/1001', '25', '30000/1001', '100', '120', '120000/1001', '999'])
      expect(faultsOf({}, { clip: { frameRate } }), frameRate).toEqual([]);
  });

  test('steps of a shot’s keyframes have to fit into 32 bits', () => {
    const far = { shots: [{ ...shotOf({}), tracks: [{ axis: 'A', keyframes: [{ position: 1_000_000 }] }] }] };
    expect(faultsOf(far, { rig: { axes: [{ name: 'A', microsteps: 64 }] } })).toMatchObject([
      { path: 'rig.axes[0].microsteps' },
    ]);
  });
});

test('ticks of exposures that are not there, and cues that touch, are no faults', () => {
  const cues = [
    { frame: 1, frames: 3 },
    { frame: 4, frames: 2 },
  ];
  expect(faultsOf({ shots: [{ ...shotOf({}), cues }], ticks: [{ shot: 9, exposure: 9 }] })).toEqual([]);
});

test('a million exposures of twelve axes are worked out', { timeout: 60_000 }, () => {
  const parsed = readPlan({
    format: 'escapement-plan',
    version: 1,
    technique: 'stopMotion',
    move: { mode: 'moveShootMove' },
    rig: { axes: Array.from({ length: 12 }, (_, a) => ({ name: `A${a}` })) },
    sheet: {
      minutesPerExposure: 1,
      shots: [
        {
          ...shotOf({ frames: 1_000_000, holds: [1] }),
          tracks: [
            {
              axis: 'A3',
              keyframes: [
                { share: 0, position: 0 },
                { share: 1, position: 900 },
              ],
            },
          ],
        },
      ],
    },
  });
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  const sheet = sheetOf(parsed.plan);
  expect(sheet.exposures).toBe(1_000_000);
  expect(sheet.columns.axes[3]?.steps.at(-1)).toBe(900 * 80);
});

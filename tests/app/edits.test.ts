import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { SUMMARIES, worstOf } from '../../src/app/sections/summary.ts';
import { addKeyframe, removeKeyframe, spanOf } from '../../src/app/store/keyframes.ts';
import {
  addAxis,
  addCard,
  addCurvePoint,
  addLoad,
  addSource,
  addTrack,
  freeName,
  removeAxis,
  removeCard,
  removeSource,
  renameAxis,
  renameSource,
} from '../../src/app/store/members.ts';
import { clipLengthFor, paceFigures, typeFigure, workOut } from '../../src/app/store/pacing.ts';
import { SECTIONS } from '../../src/app/store/view.ts';
import {
  clipNote,
  dialNote,
  eventNote,
  framesNote,
  holdText,
  intervalNote,
} from '../../src/app/strip/notes.ts';
import { paceOf } from '../../src/engine/pacing/pacing.ts';
import { crossFaults } from '../../src/engine/plan/check.ts';
import { AXIS_KINDS, type Plan } from '../../src/engine/plan/schema.ts';
import { schedule } from '../../src/engine/schedule.ts';
import { testPlan } from './plan.ts';

const withPacing = (pacing: Partial<Plan['pacing']>, clip: Partial<Plan['clip']> = {}): Plan => {
  const plan = testPlan();
  return { ...plan, pacing: { ...plan.pacing, ...pacing }, clip: { ...plan.clip, ...clip } };
};

const spaced = (text: string) => text.replaceAll('\u00a0', ' ');

describe('pacing strip', () => {
  test('a clip length made for a number of frames gives that number, at any rate', () => {
    const rates = fc.constantFrom('24', '25', '24000/1001', '30000/1001', '60000/1001', '12', '17/3');
    fc.assert(
      fc.property(
        rates,
        fc.integer({ min: 1, max: 90_000 }),
        fc.integer({ min: 1, max: 4 }),
        (frameRate, n, holdFrames) => {
          const plan = withPacing({ workedOut: 'event', intervalS: 1 }, { frameRate, holdFrames });
          const clipLengthS = clipLengthFor(plan, n);
          expect(paceOf({ ...plan, pacing: { ...plan.pacing, clipLengthS } }).frames).toBe(n);
        },
      ),
    );
  });

  test('handles are left out of the clip length', () => {
    const plan = withPacing({ workedOut: 'event' }, { handlesFrames: 12 });
    expect(clipLengthFor(plan, 324)).toBe(12);
  });

  test('the old worked-out figure keeps what it showed', () => {
    const plan = withPacing({ workedOut: 'clip', eventS: 5400, intervalS: 14, clipLengthS: 1 });
    const next = workOut(plan, 'interval');
    expect(next.pacing).toEqual({ workedOut: 'interval', eventS: 5400, intervalS: 14, clipLengthS: 15.44 });
    expect(paceOf(next).frames).toBe(paceOf(plan).frames);
    expect(workOut(plan, 'clip')).toBe(plan);
  });

  test('typing into the worked-out figure moves the mark to the one before it', () => {
    const plan = withPacing({ workedOut: 'clip', eventS: 5400, intervalS: 14 });
    expect(typeFigure(plan, 'clip', 12, 'event').pacing).toMatchObject({
      workedOut: 'event',
      clipLengthS: 12,
    });
    expect(typeFigure(plan, 'clip', 12, null).pacing.workedOut).toBe('interval');
    expect(typeFigure(plan, 'clip', 12, 'clip').pacing.workedOut).toBe('interval');
    expect(typeFigure(plan, 'interval', 10, 'event').pacing).toMatchObject({
      workedOut: 'clip',
      intervalS: 10,
    });
    const interval = withPacing({ workedOut: 'interval' });
    expect(typeFigure(interval, 'interval', 10, null).pacing.workedOut).toBe('clip');
  });

  test('the three figures are what is typed, or what follows', () => {
    const plan = withPacing({ workedOut: 'event', intervalS: 10, clipLengthS: 4 });
    expect(paceFigures(plan)).toEqual({ event: 990, interval: 10, clip: 4 });
  });
});

describe('notes under the figures', () => {
  test('fence posts: the event from the first frame to the last', () => {
    const plan = withPacing({ workedOut: 'clip', eventS: 5400, intervalS: 14 });
    expect(eventNote(plan, schedule(plan))).toBe('1:29:50 first to last');
    expect(clipNote(plan, schedule(plan)).text).toBe('350 times faster');
  });

  test('raw and dialled interval', () => {
    const plan = withPacing({ workedOut: 'interval', eventS: 2400, clipLengthS: 12 });
    expect(spaced(dialNote(plan, schedule(plan)))).toBe('raw 8.027 s');
    expect(spaced(clipNote(plan, schedule(plan)).text)).toBe('12.04 s with 301 frames');
    const endToStart = {
      ...withPacing({ workedOut: 'clip', intervalS: 20 }),
      trigger: { ...plan.trigger, counts: 'endToStart' as const },
      exposure: { ...plan.exposure, shutterS: 4 },
    };
    expect(spaced(dialNote(endToStart, schedule(endToStart)))).toBe('dial 16 s');
  });

  test('an interval that is too short says by how much, one that is not settable what there is', () => {
    const short = withPacing({ intervalS: 1 });
    expect(intervalNote(short, schedule(short))).toMatchObject({ bad: true });
    expect(intervalNote(short, schedule(short)).text).toMatch(/too short$/);
    const odd = withPacing({ intervalS: 60.5 });
    expect(spaced(intervalNote(odd, schedule(odd)).text)).toBe('trigger has 60 or 61 s');
    const fine = withPacing({ intervalS: 60 });
    expect(intervalNote(fine, schedule(fine)).text).toMatch(/^at least/);
  });

  test('what the note calls enough is enough', () => {
    const plan = withPacing({ intervalS: 60 });
    const least = Number(/at least ([\d.]+)/.exec(intervalNote(plan, schedule(plan)).text)?.[1]);
    expect(least).toBeGreaterThanOrEqual(schedule(plan).totals.shortestIntervalS - 1e-9);
  });

  test('holds and handles', () => {
    expect(framesNote(withPacing({}, { holdFrames: 2, handlesFrames: 12 }))).toBe(
      'each held for 2, handles 2 × 12',
    );
    expect([1, 2, 4, 6].map(holdText)).toEqual(['on ones', 'on twos', 'on fours', 'on 6s']);
  });
});

describe('lists', () => {
  const holdsTogether = (plan: Plan) => expect(crossFaults(plan)).toEqual([]);

  test('names are free', () => {
    expect(freeName('Pack', [{ name: 'Pack' }, { name: 'Pack 2' }])).toBe('Pack 3');
  });

  test('an axis keeps its track through a new name, and takes it along when it goes', () => {
    const renamed = renameAxis(testPlan(), 0, 'Dolly');
    expect(renamed.move.tracks[0]?.axis).toBe('Dolly');
    holdsTogether(renamed);
    const gone = removeAxis(renamed, 0);
    expect(gone.move.tracks).toEqual([]);
    holdsTogether(gone);
  });

  test('what a source fed follows its name, and is fed by none when it goes', () => {
    const renamed = renameSource(testPlan(), 0, 'Big pack');
    expect(renamed.rig.axes[0]?.source).toBe('Big pack');
    holdsTogether(renamed);
    const gone = removeSource(renamed, 0);
    expect(gone.rig.axes[0]?.source).toBeNull();
    expect(gone.power.loads[0]?.source).toBe('Camera pack');
    holdsTogether(gone);
  });

  test.each(AXIS_KINDS)('a new %s can be moved', (kind) => {
    const plan = addAxis({ ...testPlan(), move: { ...testPlan().move, tracks: [] } }, kind);
    const axis = plan.rig.axes.at(-1);
    if (!axis) throw new Error('no axis');
    const moving = addTrack(plan, axis);
    holdsTogether(moving);
    expect(schedule(moving).findings.filter(({ id }) => id === 'travel')).toEqual([]);
  });

  test('keyframes go in between, or where there is room', () => {
    const plan = testPlan();
    const span = spanOf(schedule(plan).columns.elapsedS, false);
    const shares = (of: Plan | undefined) => of?.move.tracks[0]?.keyframes.map(({ share }) => share);
    const added = addKeyframe(plan, 0, span)?.plan;
    expect(shares(added)).toEqual([0, 0.5, 1]);
    holdsTogether(added ?? plan);
    const one = removeKeyframe(plan, 0, 0);
    expect(shares(one)).toEqual([1]);
    const again = addKeyframe(one, 0, span)?.plan;
    expect(shares(again)).toEqual([0, 1]);
    holdsTogether(again ?? plan);
  });

  test('one more of everything holds together', () => {
    holdsTogether(addCurvePoint(addLoad(addSource(addCard(removeCard(testPlan(), 0)))), 0));
  });
});

describe('summaries', () => {
  test('every section has one line', () => {
    for (const plan of [
      testPlan(),
      { ...testPlan(), rig: { ...testPlan().rig, axes: [] }, move: { ...testPlan().move, tracks: [] } },
    ]) {
      const worked = schedule(plan);
      for (const section of SECTIONS) {
        const line = SUMMARIES[section](plan, worked);
        expect(line).not.toBe('');
        expect(line).not.toMatch(/undefined|NaN|\n/);
      }
    }
  });

  test('a section carries its worst findings; those of the trigger stand with the camera', () => {
    const finding = {
      id: 'interval-not-settable',
      message: '',
      frame: null,
      about: null,
      elapsedS: null,
      at: null,
      values: {},
    } as const;
    const findings = [
      { ...finding, severity: 'stop', subject: 'trigger' },
      { ...finding, severity: 'note', subject: 'camera' },
    ] as const;
    expect(worstOf('camera', findings)).toEqual({ severity: 'stop', count: 1 });
    expect(worstOf('power', findings)).toBeNull();
  });
});

import { describe, expect, test } from 'vitest';
import { readCues, readHolds, readPasses, rowsText } from '../../../src/app/sheet/cells.ts';
import { findFrame } from '../../../src/app/sheet/frameColumns.ts';
import { find } from '../../../src/app/sheet/jump.ts';
import { removePass, renamePass } from '../../../src/app/sheet/passEdits.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { pasteRows } from '../../../src/engine/sheet/edits.ts';
import { sheetOf } from '../../../src/engine/sheet/sheet.ts';
import { exposureText, passesOf } from '../../../src/engine/sheet/texts.ts';
import { testPlan } from '../plan.ts';
import { production } from './production.ts';

const sheeted = (sheet: object = {}) => {
  const plan = production(sheet);
  return { plan, sheet: sheetOf(plan) };
};

describe('what is typed into cells', () => {
  test('cues by kind; without one it is a sound', () => {
    expect(readCues('knock; light: key off ;; Word: hello')).toEqual([
      { kind: 'sound', text: 'knock' },
      { kind: 'light', text: 'key off' },
      { kind: 'word', text: 'hello' },
    ]);
  });

  test('holds as a pattern', () => {
    expect(readHolds('1, 2')).toEqual([1, 2]);
    expect(readHolds('2')).toEqual([2]);
    for (const text of ['', '0', '1.5', 'twos']) expect(() => readHolds(text)).toThrow('Whole numbers');
  });

  test('passes by name, in any case; an unknown one names those that there are', () => {
    expect(readPasses(production(), 'rim, KEY, rim')).toEqual(['Rim', 'Key']);
    expect(() => readPasses(production(), 'back')).toThrow('Key, Rim');
  });
});

describe('copied rows', () => {
  test('can be pasted again: texts, holds, passes and cues come back', () => {
    const of = sheeted();
    const text = rowsText(of, 1, 4);
    expect(text.split('\r\n')).toHaveLength(5);
    const pasted = pasteRows(of.plan, { shot: 2, exposure: 2 }, text);
    if (!pasted.ok) throw new Error(JSON.stringify(pasted.faults));
    const then = sheetOf(pasted.plan);
    expect(then.exposures).toBe(of.sheet.exposures + 4);
    for (let i = 0; i < 4; i += 1) {
      const copy = of.sheet.exposures + i;
      expect(exposureText(pasted.plan, then, copy)).toBe(exposureText(of.plan, of.sheet, i));
      expect(then.columns.frames[copy]).toBe(of.sheet.columns.frames[i]);
      expect(passesOf(pasted.plan, then, copy)).toEqual(passesOf(of.plan, of.sheet, i));
    }
    expect(pasted.plan.sheet.shots[1]?.cues.map(({ text }) => text)).toEqual(['knock']);
  });

  test('a text that a spreadsheet would run is not one, and a tab breaks no row', () => {
    const of = sheeted({ shots: [{ name: 'One', actions: [{ text: '=1+1\tx', frames: 2, holds: [2] }] }] });
    const [, row = ''] = rowsText(of, 1, 1).split('\r\n');
    expect(row).toContain('"\'=1+1\tx"');
  });
});

describe('going to a place', () => {
  test('a frame of the shot that one is in', () => {
    // Shot One: 8 frames on twos, then holds 1 2 1 2: frame 10 is the second of the sixth exposure.
    expect(find(sheeted(), '10', 0)).toMatchObject({ index: 5 });
    expect(find(sheeted(), 'Frame 10', 0)).toMatchObject({ index: 5 });
    expect(find(sheeted(), '15', 0)).toEqual({ error: expect.stringContaining('1 to 14') });
    // In shot Two, which begins with exposure 9.
    expect(find(sheeted(), '4', 8)).toMatchObject({ index: 9 });
  });

  test('a timecode, from the first one on', () => {
    const of = sheeted({ startTimecode: '01:00:00:00' });
    expect(find(of, '01:00:00:14', 0)).toMatchObject({ index: 8 });
    expect(find(of, '00:59:59:24', 0)).toHaveProperty('error');
    expect(find(of, '01:00:00:25', 0)).toHaveProperty('error');
  });

  test('an exposure, or words from the next one on', () => {
    expect(find(sheeted(), '#9', 0)).toMatchObject({ index: 8 });
    expect(find(sheeted(), 'blink', 0)).toMatchObject({ index: 1 });
    expect(find(sheeted(), 'blink', 1)).toMatchObject({ index: 1 });
    expect(find(sheeted(), 'flies', 0)).toEqual({ error: 'No action has “flies” in it.' });
  });

  test('a frame or a clock time of a time-lapse', () => {
    const run = schedule(testPlan());
    const clock = new Date(run.startMs + 60_000 + (run.offsets[0]?.offsetMin ?? 0) * 60_000)
      .toISOString()
      .slice(11, 19);
    // 12 s apart: a minute later is frame 6.
    expect(findFrame(run, clock, 0)).toMatchObject({ index: 5 });
    expect(findFrame(run, '1', 9)).toMatchObject({ index: 0 });
    expect(findFrame(run, '0', 0)).toHaveProperty('error');
    expect(findFrame(run, 'noon', 0)).toHaveProperty('error');
  });
});

describe('passes', () => {
  const own = {
    shots: [
      {
        name: 'One',
        actions: [{ frames: 4, passes: ['Rim'], details: [{ exposure: 1, passes: ['Key', 'Rim'] }] }],
      },
    ],
  };

  test('a new name goes with all that say it', () => {
    const plan = renamePass(production(own), 1, 'Back');
    expect(plan.sheet.shots[0]?.actions[0]?.passes).toEqual(['Back']);
    expect(plan.sheet.shots[0]?.actions[0]?.details[0]?.passes).toEqual(['Key', 'Back']);
  });

  test('one that is taken out is gone from every exposure', () => {
    const plan = removePass(production(own), 1);
    expect(plan.sheet.passes.map(({ name }) => name)).toEqual(['Key']);
    expect(plan.sheet.shots[0]?.actions[0]?.passes).toEqual([]);
    expect(plan.sheet.shots[0]?.actions[0]?.details[0]?.passes).toEqual(['Key']);
  });
});

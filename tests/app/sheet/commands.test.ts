import { beforeEach, describe, expect, test } from 'vitest';
import { columnsOf } from '../../../src/app/sheet/columns.ts';
import {
  clampSpot,
  goToExposure,
  markNext,
  newAction,
  nextOf,
  removeRows,
  splitHere,
  toggleDone,
  writeOut,
} from '../../../src/app/sheet/commands.ts';
import { enterCell, pasteAt } from '../../../src/app/sheet/edits.ts';
import { gridNow, resetGrid, setGrid } from '../../../src/app/sheet/gridStore.ts';
import { press, type Table } from '../../../src/app/sheet/keys.ts';
import { pausesOf } from '../../../src/app/sheet/pauses.ts';
import { followUndo } from '../../../src/app/sheet/places.ts';
import { rowsOf } from '../../../src/app/sheet/rows.ts';
import { sheetedNow } from '../../../src/app/sheet/sheeted.ts';
import { currentPlan, redo, startWith, undo } from '../../../src/app/store/plan.ts';
import { exposureText, passesOf } from '../../../src/engine/sheet/texts.ts';
import { production } from './production.ts';

const HEIGHTS = { shot: 40, action: 44, exposure: 28, next: 36, pause: 32 };

function table(editable = false): Table & { edited: (string | null)[]; explained: number } {
  const { plan, sheet } = sheetedNow();
  const edited: (string | null)[] = [];
  const of = {
    rows: rowsOf(sheet, pausesOf(plan, sheet), (action) => gridNow().open.get(action) ?? true, -1, HEIGHTS),
    columns: columnsOf(plan, sheet, 1000),
    column: gridNow().column,
    pageRows: 3,
    edit: (text: string | null) => void edited.push(text),
    editable,
    edited,
    explained: 0,
    explain: (name: string) => {
      const does = name === '?';
      if (does) of.explained += 1;
      return does;
    },
  };
  return of;
}

const key = (
  name: string,
  with_: Partial<Record<'shiftKey' | 'mod' | 'altKey', boolean>> = {},
  of = table(),
) => press(of, { key: name, shiftKey: false, mod: false, altKey: false, ...with_ });

const column = (id: string) => {
  const { plan, sheet } = sheetedNow();
  const found = columnsOf(plan, sheet, 1000).find((one) => one.id === id);
  if (!found) throw new Error(id);
  return found;
};

const at = (index: number, anchor: number | null = null) =>
  setGrid({ at: { kind: 'exposure', index }, anchor });

beforeEach(() => {
  startWith(production());
  resetGrid();
});

describe('keys', () => {
  test('the question mark asks for a working and types nothing; a digit is typed', () => {
    at(0);
    const editable = table(true);
    expect(key('?', { shiftKey: true }, editable)).toBe(true);
    expect(editable).toMatchObject({ explained: 1, edited: [] });
    key('4', {}, editable);
    expect(editable).toMatchObject({ explained: 1, edited: ['4'] });
  });

  test('arrows go from row to row, over pauses, and from cell to cell', () => {
    at(0);
    const seen: string[] = [];
    for (let n = 0; n < 12; n += 1) {
      key('ArrowDown');
      const { kind, index } = gridNow().at;
      seen.push(`${kind} ${index}`);
    }
    expect(seen).not.toContain('pause 0');
    expect(seen.slice(0, 4)).toEqual(['exposure 1', 'exposure 2', 'exposure 3', 'action 1']);
    setGrid({ column: 'text' });
    key('ArrowRight');
    expect(gridNow().column).toBe('hold');
    key('Home');
    expect(gridNow().column).toBe('exposure');
  });

  test('Alt with Page Down goes to the next break or end of a day, an arrow on to the exposures', () => {
    at(0, 0);
    const seen: string[] = [];
    for (const name of ['PageDown', 'PageDown', 'PageUp', 'ArrowDown', 'PageUp', 'ArrowUp', 'PageUp']) {
      key(name, { altKey: name.startsWith('Page') });
      const { kind, index } = gridNow().at;
      seen.push(`${kind} ${index}`);
    }
    // Two exposures before the break, five after it, then the first day ends.
    expect(seen).toEqual([
      'pause 0',
      'pause 1',
      'pause 0',
      'exposure 2',
      'pause 0',
      'exposure 1',
      'exposure 1',
    ]);
  });

  test('at a pause nothing is done to exposures; a new action comes after its own', () => {
    const before = currentPlan();
    setGrid({ at: { kind: 'pause', index: 0 }, anchor: null });
    for (const name of ['Delete', 'Insert', ' ', 'Enter', 'Backspace']) key(name);
    key('d', { mod: true });
    expect(currentPlan()).toBe(before);
    key('a', { mod: true });
    expect(gridNow()).toMatchObject({ at: { kind: 'exposure', index: 3 }, anchor: 0 });
    setGrid({ at: { kind: 'pause', index: 0 }, anchor: null });
    newAction();
    expect(sheetedNow().sheet.actions.map(({ text }) => text)).toEqual(['Wakes', '', 'Turns', 'Leaves']);
  });

  test('a pause that is gone leaves one at what there is', () => {
    setGrid({ at: { kind: 'pause', index: 99 }, anchor: null });
    clampSpot();
    const { plan, sheet } = sheetedNow();
    expect(gridNow().at).toEqual({ kind: 'pause', index: pausesOf(plan, sheet).length - 1 });
    setGrid({ at: { kind: 'pause', index: 0 } });
    startWith(production({ minutesPerExposure: 1 }));
    clampSpot();
    expect(gridNow().at).toEqual({ kind: 'exposure', index: 0 });
  });

  test('with Shift rows are selected, headings stepped over; Ctrl or Cmd A takes the group, then all', () => {
    at(3);
    key('ArrowDown', { shiftKey: true });
    expect(gridNow()).toMatchObject({ at: { kind: 'exposure', index: 4 }, anchor: 3 });
    key('a', { mod: true });
    expect(gridNow()).toMatchObject({ at: { index: 7 }, anchor: 4 });
    key('a', { mod: true });
    expect(gridNow()).toMatchObject({ at: { index: 9 }, anchor: 0 });
  });

  test('Ctrl or Cmd with the arrows goes from group to group', () => {
    at(1);
    key('ArrowDown', { mod: true });
    expect(gridNow().at).toEqual({ kind: 'action', index: 1 });
    key('ArrowUp', { mod: true });
    expect(gridNow().at).toEqual({ kind: 'action', index: 0 });
  });

  test('typing and Enter edit the cell where it can be; elsewhere keys go by', () => {
    const open = table(true);
    expect(key('x', {}, open)).toBe(true);
    expect(key('F2', {}, open)).toBe(true);
    expect(open.edited).toEqual(['x', null]);
    expect(key('3')).toBe(false);
    expect(key('s', { mod: true })).toBe(false);
  });

  test('insert, duplicate and delete are each undone at once', () => {
    const before = currentPlan();
    at(2, 1);
    for (const [name, with_, change] of [
      ['Insert', {}, 2],
      ['d', { mod: true }, 2],
      ['Delete', {}, -2],
    ] as const) {
      at(2, 1);
      key(name, with_);
      expect(sheetedNow().sheet.exposures).toBe(10 + change);
      undo();
      expect(currentPlan()).toBe(before);
    }
  });

  test('after the last rows are gone the cell is on the sheet still', () => {
    at(9, 8);
    key('Delete');
    expect(sheetedNow().sheet.exposures).toBe(8);
    const { kind, index } = gridNow().at;
    expect(kind === 'exposure' ? index : -1).toBeLessThan(8);
  });
});

describe('cells', () => {
  test('where an action begins no other can, and it says what to do instead', () => {
    at(0);
    const before = currentPlan();
    splitHere();
    expect(currentPlan()).toBe(before);
    expect(gridNow().said).toMatchObject({ bad: true, text: expect.stringContaining('New action adds one') });
    at(1);
    const { length } = sheetedNow().sheet.actions;
    splitHere();
    expect(sheetedNow().sheet.actions).toHaveLength(length + 1);
  });

  test('whatever makes the work longer or shorter on screen says so', () => {
    at(2);
    const { frames } = sheetedNow().sheet;
    const was = sheetedNow().sheet.columns.frames[2] ?? 0;
    expect(enterCell({ kind: 'exposure', index: 2 }, column('hold'), String(was + 4))).toBeNull();
    expect(sheetedNow().sheet.frames).toBe(frames + 4);
    expect(gridNow().said?.text).toMatch(/^Changed\. 4\sframes longer on screen\.$/);
    removeRows();
    expect(gridNow().said?.text).toMatch(new RegExp(`${was + 4}\\sframes shorter on screen\\.$`));
    expect(sheetedNow().sheet.frames).toBe(frames - was);
  });

  test('a hold goes to all that is selected', () => {
    at(2, 0);
    expect(enterCell({ kind: 'exposure', index: 2 }, column('hold'), '3')).toBeNull();
    expect(Array.from(sheetedNow().sheet.columns.frames.slice(0, 4))).toEqual([3, 3, 3, 2]);
    undo();
    expect(Array.from(sheetedNow().sheet.columns.frames.slice(0, 4))).toEqual([2, 2, 2, 2]);
  });

  test('so do text, passes, cue and position, as one step', () => {
    const before = currentPlan();
    at(3, 1);
    const spot = { kind: 'exposure', index: 3 } as const;
    for (const [id, text] of [
      ['text', 'Waits'],
      ['passes', 'rim'],
      ['cues', 'light: low'],
      ['axis:Slide', '40'],
    ] as const) {
      expect(enterCell(spot, column(id), text)).toBeNull();
      expect(gridNow().said?.text).toContain('2 to 4');
    }
    const { plan, sheet } = sheetedNow();
    const slide = sheet.columns.axes[0];
    for (const i of [1, 2, 3]) {
      expect(exposureText(plan, sheet, i)).toBe('Waits');
      expect(passesOf(plan, sheet, i)).toEqual(['Rim']);
      expect((slide?.steps[i] ?? 0) / (slide?.stepsPerUnit ?? 1)).toBeCloseTo(40, 1);
    }
    expect(exposureText(plan, sheet, 4)).not.toBe('Waits');
    expect(plan.sheet.shots[0]?.cues.filter(({ kind }) => kind === 'light')).toHaveLength(3);
    for (let n = 0; n < 4; n += 1) undo();
    expect(currentPlan()).toBe(before);
  });

  test('text, passes, cue and position', () => {
    at(4);
    const spot = { kind: 'exposure', index: 4 } as const;
    expect(enterCell(spot, column('text'), 'Sneezes')).toBeNull();
    expect(enterCell(spot, column('passes'), 'rim')).toBeNull();
    expect(enterCell(spot, column('cues'), 'word: atchoo')).toBeNull();
    expect(enterCell(spot, column('axis:Slide'), '55 mm')).toBeNull();
    const { plan, sheet } = sheetedNow();
    expect(exposureText(plan, sheet, 4)).toBe('Sneezes');
    expect(passesOf(plan, sheet, 4)).toEqual(['Rim']);
    expect(plan.sheet.shots[0]?.cues.at(-1)).toMatchObject({ kind: 'word', text: 'atchoo', frame: 9 });
    const slide = sheet.columns.axes[0];
    expect((slide?.steps[4] ?? 0) / (slide?.stepsPerUnit ?? 1)).toBeCloseTo(55, 1);
  });

  test.each([
    ['hold', 'many', 'whole number'],
    ['hold', '0', 'allowed'],
    ['passes', 'Back', 'Key, Rim'],
    ['axis:Slide', 'far', 'number'],
    ['cues', 'sound: knock; bell', 'another sound'],
  ])('%s: %s is refused, nothing changes', (id, text, why) => {
    const before = currentPlan();
    at(0);
    expect(enterCell({ kind: 'exposure', index: 0 }, column(id), text)).toContain(why);
    expect(currentPlan()).toBe(before);
  });

  test('an action: its words, its length in frames or seconds, its pattern of holds', () => {
    const spot = { kind: 'action', index: 1 } as const;
    expect(enterCell(spot, column('text'), 'Turns round')).toBeNull();
    expect(enterCell(spot, column('frames'), '2 s')).toBeNull();
    expect(enterCell(spot, column('hold'), '2, 3')).toBeNull();
    expect(currentPlan().sheet.shots[0]?.actions[1]).toMatchObject({
      text: 'Turns round',
      lengthIn: 'seconds',
      lengthS: 2,
      holds: [2, 3],
    });
    expect(enterCell(spot, column('frames'), 'long')).toContain('24 frames');
    expect(enterCell(spot, column('hold'), '2, 60')).toContain(
      'hold of 60 is longer than the action, which has 50\u00A0frames',
    );
  });
});

describe('while shooting', () => {
  test('marking goes on to the next; ticks are taken back', () => {
    expect(nextOf(sheetedNow())).toBe(0);
    markNext();
    markNext();
    expect(nextOf(sheetedNow())).toBe(2);
    expect(gridNow().at).toEqual({ kind: 'exposure', index: 2 });
    toggleDone({ first: 1, last: 2 });
    expect(nextOf(sheetedNow())).toBe(0);
    toggleDone({ first: 1, last: 10 });
    expect(nextOf(sheetedNow())).toBe(-1);
    markNext();
    expect(sheetedNow().sheet.totals.left).toBe(0);
  });

  test('the action of what is ticked stays open', () => {
    toggleDone({ first: 4, last: 4 });
    expect(gridNow().open.get(0)).toBe(true);
  });

  test('going to an exposure opens its action', () => {
    setGrid({ openAll: false });
    goToExposure(8);
    expect(gridNow().open.get(2)).toBe(true);
  });
});

describe('rows of a spreadsheet', () => {
  test('wrong cells are named, nothing is changed', () => {
    const before = currentPlan();
    pasteAt(0, 'Runs\t2\tKey\nFalls\tx\tBlue');
    expect(currentPlan()).toBe(before);
    const faults = gridNow().said?.faults.map(({ path }) => path);
    expect(faults).toEqual(['row 2, column 2', 'row 2, column 3']);
  });

  test('headings may be in capitals, and the table’s own words', () => {
    pasteAt(1, 'Hold\tAction\tPasses\n3\tRuns\tRim');
    const { plan, sheet } = sheetedNow();
    expect(exposureText(plan, sheet, 2)).toBe('Runs');
    expect([sheet.columns.frames[2], passesOf(plan, sheet, 2)]).toEqual([3, ['Rim']]);
  });

  test('two cues of one kind at an exposure are named, none is lost', () => {
    const before = currentPlan();
    pasteAt(0, 'Runs\t2\tKey\tsound: knock; sound: bell');
    expect(currentPlan()).toBe(before);
    expect(gridNow().said?.faults[0]).toMatchObject({ path: 'row 1, column 4' });
  });

  test('right ones come behind the cell and are selected', () => {
    pasteAt(1, 'Runs\t2\nFalls\t4');
    const { plan, sheet } = sheetedNow();
    expect(sheet.exposures).toBe(12);
    expect([2, 3].map((i) => exposureText(plan, sheet, i))).toEqual(['Runs', 'Falls']);
    expect(gridNow()).toMatchObject({ at: { index: 3 }, anchor: 2 });
  });
});

test('a plan without shots stands as one action until it is written out', () => {
  startWith(production({ shots: [] }));
  const { exposures } = sheetedNow().sheet;
  writeOut();
  expect(currentPlan().sheet.shots).toHaveLength(1);
  expect(sheetedNow().sheet.exposures).toBe(exposures);
});

test('undo leads back to where the change was made, redo to after it', () => {
  const stop = followUndo();
  at(3, 2);
  key('d', { mod: true });
  const after = gridNow();
  expect(after).toMatchObject({ at: { index: 5 }, anchor: 4 });
  setGrid({ at: { kind: 'exposure', index: 8 }, anchor: null });
  undo();
  expect(gridNow()).toMatchObject({ at: { index: 3 }, anchor: 2, said: null });
  setGrid({ at: { kind: 'exposure', index: 0 }, anchor: null });
  redo();
  expect(gridNow()).toMatchObject({ at: { index: 8 }, anchor: null });
  stop();
});

import { describe, expect, test } from 'vitest';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { tabCells } from '../../../src/engine/sheet/edits/paste.ts';
import { type Pasted, pasteRows } from '../../../src/engine/sheet/edits.ts';
import { sheetOf } from '../../../src/engine/sheet/sheet.ts';
import { cuesAt, exposureText, passesOf } from '../../../src/engine/sheet/texts.ts';
import { BARE, production, shotOf } from './plans.ts';

const plan = production(
  {
    ...BARE,
    passes: [{ name: 'Key' }, { name: 'Rim' }],
    shots: [shotOf({ text: 'A', frames: 4 })],
  },
  { rig: { axes: [{ name: 'Slide' }] }, move: { mode: 'moveShootMove' } },
);
const after = { shot: 1, exposure: 1 };

function pasted(text: string, into: Plan = plan, place = after): Plan {
  const result = pasteRows(into, place, text);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.plan;
}

const faults = (text: string) => {
  const result: Pasted = pasteRows(plan, after, text);
  return result.ok ? [] : result.faults;
};

function rows(then: Plan): string[] {
  const sheet = sheetOf(then);
  return Array.from({ length: sheet.exposures }, (_, i) =>
    [
      sheet.columns.frames[i],
      exposureText(then, sheet, i),
      passesOf(then, sheet, i).join('+'),
      ...cuesAt(then, sheet, i).map(({ kind, text }) => `${kind}:${text}`),
    ].join(' '),
  );
}

test('rows without headings: what happens, frames, passes, cues', () => {
  expect(rows(pasted('blink\t3\tRim\tsound: knock; off\r\n\t\t\t\r\nlook'))).toEqual([
    '2 A Key+Rim',
    '3 blink Rim sound:knock other:off',
    '2 A Key+Rim',
    '2 look Key+Rim',
    '2 A Key+Rim',
  ]);
});

test('rows with headings, in any order, what follows passed over', () => {
  const then = pasted('frames\ttimecode\tSlide.steps\taction\tSlide.mm\n4\t00:00:00:00\t7\tblink\t12,5\n');
  expect(rows(then)[1]).toBe('4 blink Key+Rim');
  const sheet = sheetOf(then);
  const slide = sheet.columns.axes[0];
  expect((slide?.steps[1] ?? 0) / (slide?.stepsPerUnit ?? 1)).toBe(12.5);
});

test('rows of one exposure, a pass each, are one exposure', () => {
  const text =
    'shot\texposure\tframes\taction\tpass\nOne\t1\t2\tgo\tKey\nOne\t1\t2\tgo\tRim\nOne\t2\t2\tgo\tKey\n';
  expect(rows(pasted(text)).slice(1, 3)).toEqual(['2 go Key+Rim', '2 go Key']);
});

test('into a shot without exposures', () => {
  const empty = production({ ...BARE, shots: [{ name: 'Later' }] });
  expect(rows(pasted('one\t1\ntwo\t2', empty, { shot: 1, exposure: 0 }))).toEqual([
    '1 one Main',
    '2 two Main',
  ]);
});

describe('cells', () => {
  test.each([
    ['a\tb\r\nc', [['a', 'b'], ['c']]],
    ['"a\tb"\tc', [['a\tb', 'c']]],
    ['"say ""go"""\t"two\nlines"', [['say "go"', 'two\nlines']]],
    ['5" nail\t"half', [['5" nail', '"half']]],
    ['a\t', [['a', '']]],
    ['', [['']]],
    ['a\n\nb\n', [['a'], [''], ['b']]],
  ])('%j', (text, cells) => expect(tabCells(text)).toEqual(cells));

  test('of a long text that is never closed', () => {
    expect(tabCells(`"${'x'.repeat(500_000)}`)).toHaveLength(1);
  });
});

describe('faults have row and column, and nothing is changed', () => {
  test.each([
    ['blink\ttwo', 'row 1, column 2', '"two"', 'a whole number of frames from 1 to 1000000'],
    ['a\t2\n\nb\t2\tFog', 'row 3, column 3', '"Fog"', 'passes of the production: Key, Rim'],
    ['a\t2\tKey\t\tx', 'row 1, column 5', '"x"', 'at most 4 columns'],
    ['a\t0', 'row 1, column 2', '"0"', 'a whole number of frames from 1 to 1000000'],
    ['action\tmood\nx\ty', 'row 1, column 2', '"mood"', 'one of action, frames, pass, cues, Slide.mm'],
    ['frames\tSlide.mm\n2\tfar', 'row 2, column 2', '"far"', 'a number'],
    ['x'.repeat(300), 'row 1, column 1', `"${'x'.repeat(39)}…"`, 'text of at most 200 characters'],
    ['', 'rows', 'nothing', 'rows with tabs between their cells'],
    ['action\tframes', 'rows', 'headings only', 'rows under the headings'],
    ['x\n'.repeat(5001), 'rows', '5001 rows', 'at most 5000 rows'],
    ['frames\tSlide.mm\n2\t1e9', 'position', '1000000000', 'a number from -1000000 to 1000000'],
  ])('%#', (text, path, found, allowed) => expect(faults(text)).toEqual([{ path, found, allowed }]));

  test('all of them at once', () => expect(faults('a\tb\tc\nd\te')).toHaveLength(3));
});

test('what a spreadsheet would have worked out comes back as it was', () => {
  expect(rows(pasted("'=1+1"))[1]).toBe('2 =1+1 Key+Rim');
});

/** Columns onto paper. */
import { describe, expect, test } from 'vitest';
import type { PrintColumn } from '../../../src/app/print/document.ts';
import { emsOf } from '../../../src/app/print/ems.ts';
import { BOX_MM, fitTables, PAPER_MM } from '../../../src/app/print/fit.ts';

const text = () => '';
const column = (id: string, em: number, more: Partial<PrintColumn> = {}): PrintColumn => ({
  id,
  heading: id,
  em,
  text,
  ...more,
});
const number = column('No.', 2, { leads: true });
const what = column('What', 0, { grows: 1 });
const axes = (count: number, em = 4.5) =>
  Array.from({ length: count }, (_, n) => column(`Axis ${n + 1}`, em, { movable: true, arrives: () => 0 }));

describe('the paper', () => {
  // ISO 216: A4 is 210 x 297 mm. ANSI/ASME Y14.1: size A (Letter) is 8.5 x 11 in.
  test('is no wider and higher than both formats within margins of 10, 15 and 14 mm', () => {
    expect(PAPER_MM.width).toBeLessThanOrEqual(Math.min(210, 8.5 * 25.4) - 20);
    expect(PAPER_MM.height).toBeLessThanOrEqual(Math.min(297, 11 * 25.4) - 29);
  });
});

describe('columns', () => {
  test('stay in one table while there is room for words', () => {
    const [table, ...more] = fitTables([number, what, ...axes(3)]);
    expect(more).toEqual([]);
    expect(table?.typePt).toBe(8.5);
    expect(table?.columns.map(({ column: { id } }) => id)).toEqual([
      'No.',
      'What',
      'Axis 1',
      'Axis 2',
      'Axis 3',
    ]);
  });

  test('are set smaller before they are moved', () => {
    const [table, ...more] = fitTables([number, what, ...axes(9, 4.2)]);
    expect(more).toEqual([]);
    expect(table?.typePt).toBe(7);
  });

  test.each([12, 24, 40])(
    'of %i axes go into further tables, each axis once, none wider than paper',
    (count) => {
      const tables = fitTables([number, what, ...axes(count)]);
      const names = tables.flatMap(({ columns }) => columns.map(({ column: { id } }) => id));
      expect(names.filter((id) => id.startsWith('Axis'))).toEqual(axes(count).map(({ id }) => id));
      expect(names.filter((id) => id === 'No.')).toHaveLength(tables.length);
      for (const { columns } of tables) {
        const mm = columns.reduce((sum, { widthMm }) => sum + (widthMm ?? 0), BOX_MM);
        expect(mm).toBeLessThanOrEqual(PAPER_MM.width);
      }
    },
  );

  test('are not narrower than their widest cell', () => {
    const wide = emsOf('\u22121234.56');
    for (const { columns, typePt } of fitTables([number, what, ...axes(12, wide)]))
      for (const { column: of, widthMm } of columns)
        if (of.movable) expect(widthMm).toBeGreaterThanOrEqual((wide * typePt * 25.4) / 72);
  });
});

// Advances of the face in a browser, parts of its size: a line must not be taken for narrower than it is.
test.each([
  ['00:00:00:00', 0.625 * 8 + 0.21 * 3],
  ['101\u2013102', 0.625 * 6 + 0.504],
  ['Right stalk crosses the leaf and waits', 38 * 0.428],
  ['Key, Rim', 8 * 0.469],
])('%s is reckoned as wide as it is, or a little wider', (words, em) => {
  expect(emsOf(words)).toBeGreaterThanOrEqual(em);
  expect(emsOf(words)).toBeLessThan(em * 1.25);
});

/** The exposure sheet for paper. */
import { describe, expect, test } from 'vitest';
import type { PrintDocument, PrintRow } from '../../../src/app/print/document.ts';
import {
  exposureDocument,
  nextDayRange,
  nextShotRange,
  wholeSheet,
} from '../../../src/app/print/exposureDocument.ts';
import { pagesOf } from '../../../src/app/print/fit.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { sheetOf } from '../../../src/engine/sheet/sheet.ts';
import { planOf } from '../../outputs/plans.ts';

const rowsOf = ({ rows }: PrintDocument): PrintRow[] =>
  Array.from({ length: rows.count }, (_, row) => rows.at(row));
const lines = (document: PrintDocument): number[] =>
  rowsOf(document).flatMap((row) => (row.kind === 'line' ? [row.index] : []));
const textsOf = (document: PrintDocument, kind: 'shot' | 'action' | 'break' | 'day'): string[] =>
  rowsOf(document).flatMap((row) => (row.kind === kind && 'text' in row ? [row.text] : []));
const cells = (document: PrintDocument, id: string, indices: number[]): string[] =>
  indices.map((index) => document.columns.find((column) => column.id === id)?.text(index) ?? 'no column');

const SHEET = {
  minutesPerExposure: 10,
  setUpMin: 0,
  testFrames: 0,
  workFrom: '09:00',
  workTo: '12:00',
  breaks: [{ from: '10:00', to: '10:15' }],
  daysOff: [],
  shots: [
    {
      name: 'Door',
      actions: [
        { text: 'Opens', frames: 12, holds: [2] },
        { text: 'Waits', frames: 9, holds: [4] },
      ],
    },
    {
      name: 'Hall',
      actions: [{ text: 'Walks', frames: 24, holds: [1], details: [{ exposure: 2, text: 'Left foot' }] }],
      cues: [{ kind: 'sound', frame: 3, frames: 2, text: 'step' }],
    },
  ],
};

function sheeted(sheet: object = {}, fields: object = {}) {
  const plan = planOf({
    technique: 'stopMotion',
    title: 'Corridor',
    start: { date: '2026-08-10', time: '09:00:00' },
    place: { zone: 'Europe/Paris' },
    sheet: { ...SHEET, ...sheet },
    ...fields,
  });
  return { plan, sheet: sheetOf(plan) };
}
type Of = ReturnType<typeof sheeted>;
const documentOf = (of: Of, range = wholeSheet(of)) => exposureDocument(of, schedule(of.plan), range);

describe('all of it', () => {
  test('has every exposure once, in order, under its shot and action', () => {
    const document = documentOf(sheeted());
    // 12 frames on twos, 9 on fours (4 + 4 + 1), 24 on ones: 6 + 3 + 24.
    expect(lines(document)).toEqual(Array.from({ length: 33 }, (_, i) => i));
    expect(textsOf(document, 'shot')).toEqual(['Shot 1: Door', 'Shot 2: Hall']);
    expect(textsOf(document, 'action')).toEqual(['Opens', 'Waits', 'Walks']);
  });

  test('says what happens, frames, hold, timecode and cues', () => {
    const document = documentOf(sheeted());
    expect(cells(document, 'frames', [0, 8, 9])).toEqual(['1\u20132', '21', '1']);
    expect(cells(document, 'hold', [6, 8, 9])).toEqual(['4', '1', '1']);
    expect(cells(document, 'text', [9, 10])).toEqual(['Walks', 'Left foot']);
    expect(cells(document, 'cues', [10, 11, 12, 13])).toEqual([
      '',
      'sound: step, 2\u00A0frames',
      'sound \u2026',
      '',
    ]);
    expect(cells(document, 'timecode', [1])).toEqual(['00:00:00:02']);
  });

  test('says openly that a last exposure is shorter', () => {
    const asides = rowsOf(documentOf(sheeted())).map((row) => ('aside' in row ? row.aside : ''));
    expect(asides.filter((aside) => aside.includes('shorter'))).toEqual([
      expect.stringMatching(/^exposures 7\u20139, frames 13\u201321, .*, the last one shorter$/),
    ]);
  });

  test('has breaks and ends of days between the exposures', () => {
    const document = documentOf(sheeted());
    expect(textsOf(document, 'break')[0]).toBe('Break 10:00 to 10:15');
    const days = textsOf(document, 'day');
    expect(days).toHaveLength(2);
    expect(days[0]).toMatch(/^End of Mon\s10\sAug, 11:5\d, after .* of work\. Next: Tue\s11\sAug, 09:00\.$/);
  });

  test('is one heading for a plan without shots', () => {
    const document = documentOf(sheeted({ shots: [] }));
    expect(textsOf(document, 'shot')).toEqual(['Corridor']);
    expect(lines(document)).toHaveLength(sheeted({ shots: [] }).sheet.exposures);
  });

  test('shows what is done with its retakes', () => {
    const tick = { shot: 1, exposure: 2, atMs: Date.UTC(2026, 7, 10, 7, 30), retakes: 2, note: 'thumb' };
    const document = documentOf(sheeted({ ticks: [tick] }));
    const done = rowsOf(document).flatMap((row) => (row.kind === 'line' && row.done ? [row.index] : []));
    expect(done).toEqual([1]);
    expect(cells(document, 'text', [1])).toEqual(['Opens (2\u00A0retakes: thumb)']);
    expect(cells(document, 'clock', [1])).toEqual(['09:30']);
  });

  test('has no column for what there is not', () => {
    const bare = documentOf(sheeted({ shots: [{ name: 'Door', actions: [{ text: 'Opens' }] }] }));
    const ids = bare.columns.map(({ id }) => id);
    expect(ids).not.toContain('passes');
    expect(ids).not.toContain('cues');
  });

  test('tells many passes by their numbers', () => {
    const passes = Array.from({ length: 6 }, (_, p) => ({ name: `Light number ${p + 1}` }));
    const document = documentOf(sheeted({ passes }));
    expect(cells(document, 'passes', [0])).toEqual(['1 2 3 4 5 6']);
    expect(document.remarks.join(' ')).toContain('6 Light number 6');
  });

  test('ends with cautions', () => {
    expect(documentOf(sheeted()).lists.at(-1)?.title).toBe('Cautions');
  });
});

describe('a part', () => {
  test('begins with its shot and action, has its exposures only, and says so', () => {
    const document = documentOf(sheeted(), { first: 7, last: 10 });
    expect(lines(document)).toEqual([7, 8, 9, 10]);
    expect(textsOf(document, 'shot')).toEqual(['Shot 1: Door', 'Shot 2: Hall']);
    expect(textsOf(document, 'action')).toEqual(['Waits', 'Walks']);
    expect(document.remarks[0]).toBe('Exposures 8 to 11 of 33 only.');
  });

  test('is the day that is next, up to its end', () => {
    const of = sheeted();
    const last = (of.sheet.days[0]?.lastExposure ?? 0) - 1;
    expect(nextDayRange(of)).toEqual({ first: 0, last });
    expect(textsOf(documentOf(of, { first: 0, last }), 'day')).toHaveLength(1);
  });

  test('is the shot that is next', () => {
    const ticks = Array.from({ length: 9 }, (_, e) => ({
      shot: 1,
      exposure: e + 1,
      atMs: Date.UTC(2026, 7, 10, 7, 10 + e * 10),
    }));
    expect(nextShotRange(sheeted())).toEqual({ first: 0, last: 8 });
    expect(nextShotRange(sheeted({ ticks }))).toEqual({ first: 9, last: 32 });
  });
});

test('pages grow with the rows', () => {
  const pages = (frames: number) =>
    pagesOf(
      documentOf(sheeted({ shots: [{ name: 'Long', actions: [{ text: 'Goes on', frames, holds: [1] }] }] })),
    );
  expect(pages(10)).toBe(1);
  expect(pages(4000) / pages(400)).toBeGreaterThan(8);
  // A line of 8.5 points with its leading and padding takes about 5.5 mm of about 240: some 44 on a page.
  expect(4000 / pages(4000)).toBeGreaterThan(36);
  expect(4000 / pages(4000)).toBeLessThan(50);
});

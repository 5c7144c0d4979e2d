/** What a run sheet leaves out, and in which order. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { schedule } from '../../src/engine/schedule.ts';
import { sheetOf } from '../../src/engine/sheet/sheet.ts';
import { fitRunSheet } from '../../src/outputs/run-sheet/fit.ts';
import { leftText } from '../../src/outputs/run-sheet/left.ts';
import { runSheet } from '../../src/outputs/run-sheet/run-sheet.ts';
import { runSheetText } from '../../src/outputs/run-sheet/text.ts';
import type { RunSheet } from '../../src/outputs/run-sheet/types.ts';
import { planOf } from './plans.ts';
import { WILD } from './wild.ts';

const PLAN = planOf(WILD);
const SHEET = runSheet(PLAN, schedule(PLAN), null);

const ofKind = ({ clock }: RunSheet, ...kinds: string[]) => clock.filter(({ kind }) => kinds.includes(kind));

/** Lines of everything that there is; notes by hundreds of letters. */
const linesOf = (sheet: RunSheet): number =>
  sheet.clock.length +
  sheet.changes.length +
  (sheet.rig?.rows.length ?? 0) +
  sheet.sun.length +
  sheet.findings.length +
  sheet.work.length +
  sheet.shots.length +
  Math.ceil(sheet.notes.length / 100);

const within = (most: number): RunSheet => fitRunSheet(SHEET, (sheet) => linesOf(sheet) <= most);

test('the wild plan is one: hundreds of changes, twelve axes of sixty keyframes, twenty moments besides', () => {
  expect(SHEET.changes.reduce((sum, { count }) => sum + count, 0)).toBeGreaterThan(400);
  expect(SHEET.rig?.axes).toHaveLength(12);
  expect((SHEET.rig?.rows.length ?? 0) + SHEET.left.keyframes).toBe(60);
  expect(ofKind(SHEET, 'moment').length).toBeGreaterThanOrEqual(20);
});

test('a sheet that fits is left alone', () => expect(within(10_000)).toEqual(SHEET));

test('what is cut is counted, and what is dear is cut only when the tables are gone', () =>
  fc.assert(
    fc.property(fc.integer({ min: 0, max: linesOf(SHEET) }), (most) => {
      const sheet = within(most);
      const all = (of: RunSheet) => ({
        changes: of.changes.reduce((sum, { count }) => sum + count, 0) + of.left.changes,
        keyframes: (of.rig?.rows.length ?? 0) + of.left.keyframes,
        moments: ofKind(of, 'moment', 'settings').length + of.left.moments,
        sky: ofKind(of, 'sky').length + of.left.sky,
        findings: of.findings.length + of.left.findings,
        sun: of.sun.length + of.left.sun,
      });
      expect(all(sheet)).toEqual(all(SHEET));
      // Never cut.
      expect([sheet.cautions, sheet.bring, sheet.dials]).toEqual([SHEET.cautions, SHEET.bring, SHEET.dials]);
      expect(ofKind(sheet, 'step')).toEqual(ofKind(SHEET, 'step'));
      const stops = (of: RunSheet) => of.findings.filter(({ severity }) => severity === 'stop');
      expect(stops(sheet)).toEqual(stops(SHEET));
      // Settings before what needs a hand; of that, what does not stand in the list of changes stays longest.
      const tables = sheet.changes.length + (sheet.rig?.rows.length ?? 0);
      if (ofKind(sheet, 'settings').length < ofKind(SHEET, 'settings').length) expect(tables).toBe(0);
      if (ofKind(sheet, 'moment').length < ofKind(SHEET, 'moment').length)
        expect(tables + ofKind(sheet, 'settings').length).toBe(0);
      // The nearest in time stay; of the keyframes the last one too.
      expect(sheet.changes).toEqual(SHEET.changes.slice(0, sheet.changes.length));
      const frames = sheet.rig?.rows.map(({ frame }) => frame) ?? [];
      if (frames.length > 1) expect(frames.at(-1)).toBe(SHEET.rig?.rows.at(-1)?.frame);
      expect(frames.slice(0, -1)).toEqual(
        SHEET.rig?.rows.slice(0, Math.max(0, frames.length - 1)).map(({ frame }) => frame),
      );
      // As much as fits: one more line of the changes would be too much.
      if (linesOf(sheet) <= most && sheet.left.changes > 0) expect(linesOf(sheet)).toBe(most);
    }),
    { numRuns: 60 },
  ));

test('notes are cut between words', () => {
  const long = { ...SHEET, notes: 'tide '.repeat(2000).trim() };
  const { notes, left } = fitRunSheet(long, (sheet) => sheet.notes.length <= 500);
  expect(notes).toMatch(/^(tide )+tide\u2026$/);
  expect(notes.length).toBeLessThanOrEqual(500);
  expect(notes.length).toBeGreaterThan(490);
  expect(left.notes).toBe(long.notes.length - (notes.length - 1));
});

test('a shoot of very many days and shots is cut too', () => {
  const shots = Array.from({ length: 60 }, (_, n) => ({
    name: `Shot ${n + 1}`,
    actions: [{ text: 'Walks', frames: 300 }],
  }));
  const plan = planOf({ technique: 'stopMotion', sheet: { shots } });
  const sheet = runSheet(plan, schedule(plan), sheetOf(plan));
  const fitting = fitRunSheet(sheet, (one) => linesOf(one) <= 30);
  expect(linesOf(fitting)).toBeLessThanOrEqual(30);
  expect(fitting.shots.length + fitting.left.shots).toBe(60);
  expect(fitting.work.length).toBeGreaterThanOrEqual(10);
});

describe('what is said of it', () => {
  const said = (sheet: RunSheet, part: keyof RunSheet['left']) => leftText(sheet, part);
  test('tells how many, and where they stand', () => {
    const cut = { ...SHEET, left: { ...SHEET.left, changes: 212, keyframes: 0, notes: 3 } };
    expect(said(cut, 'changes')).toBe('and 212 more changes: in the sheet of frames');
    expect(said({ ...cut, changes: [] }, 'changes')).toBe('212 changes: in the sheet of frames');
    expect(said(cut, 'keyframes')).toBeNull();
    expect(said(cut, 'notes')).toBe('The rest of the notes is in the plan.');
    expect(said({ ...cut, left: { ...cut.left, sun: 1 } }, 'sun')).toBe(
      'and 1 more day of sun and moon: in the view of days',
    );
  });

  test('stands in the text, which has 130 lines at most', () => {
    const text = runSheetText(SHEET);
    expect(text.trimEnd().split('\n').length).toBeLessThanOrEqual(130);
    expect(text).toMatch(/\d+ changes: in the sheet of frames/);
    expect(text).toMatch(/keyframes: in the table of positions/);
    for (const { text: moment } of ofKind(SHEET, 'moment')) expect(text).toContain(moment.split(';')[0]);
    for (const caution of SHEET.cautions) expect(text).toContain(caution.slice(0, 40));
  });
});

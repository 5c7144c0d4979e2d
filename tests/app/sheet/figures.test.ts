/** The figures of the sheet's cells, and of the frames of a time-lapse: every one has a working. */
import { readFileSync } from 'node:fs';
import { beforeEach, describe, expect, test } from 'vitest';
import { columnsOf } from '../../../src/app/sheet/columns.ts';
import { figuresAt } from '../../../src/app/sheet/figures.ts';
import { columnBeside, figuresOfFrame, frameColumns } from '../../../src/app/sheet/frameColumns.ts';
import { sheetedNow } from '../../../src/app/sheet/sheeted.ts';
import { startWith } from '../../../src/app/store/plan.ts';
import { parsePlan } from '../../../src/engine/plan/parse.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { workingOf } from '../../../src/engine/working/working.ts';
import { production } from './production.ts';

function demo(name: string): Plan {
  const read = parsePlan(readFileSync(new URL(`../../../public/examples/${name}`, import.meta.url), 'utf8'));
  if (!read.ok) throw new Error(`${name} is at fault`);
  return read.plan;
}

const plain = (text: string): string => text.replaceAll('\u00A0', ' ');

describe('of the exposure sheet', () => {
  beforeEach(() => startWith(production()));

  test.each(['shot', 'action', 'exposure'] as const)(
    'every figure of a row of a %s has a working',
    (kind) => {
      const of = sheetedNow();
      const made = schedule(of.plan);
      const { figures, ofCell } = figuresAt(of, { kind, index: 0 }, undefined);
      expect(ofCell).toBe(false);
      expect(figures.length).toBeGreaterThan(4);
      for (const figure of figures) expect(workingOf(of.plan, made, figure.of), figure.of).not.toBe(null);
    },
  );

  // From 10:30 five exposures of 29 min; eight frames of the first action, then 1, 2, 1 of the second.
  test.each([
    ['break', 0, 'Break on Mon 2 Mar', ['30 min', '10:00', '10:30'], '10:00'],
    ['end of a day', 1, 'End of Mon 2 Mar', ['20 h 5 min', '12:55', '12', 'Tue 3 Mar, 09:00'], '12:55'],
  ] as const)('a %s has its figures at its words, its clock at the clock', (_, index, row, texts, clock) => {
    const of = sheetedNow();
    const made = schedule(of.plan);
    const at = (kind: 'text' | 'hold' | 'clock') => figuresAt(of, { kind: 'pause', index }, { kind });
    for (const kind of ['text', 'hold'] as const) {
      const chosen = at(kind);
      expect(chosen.ofCell).toBe(true);
      expect([chosen.row, ...chosen.figures.map(({ text }) => text)].map(plain)).toEqual([row, ...texts]);
    }
    expect(at('clock').figures.map(({ text }) => text)).toEqual([clock]);
    for (const figure of at('text').figures) {
      const working = workingOf(of.plan, made, figure.of);
      expect(working, figure.of).not.toBe(null);
      const [said] = /\d\d:\d\d/.exec(figure.text) ?? [];
      if (said) expect(working?.label, figure.of).toContain(`T${said}`);
    }
  });

  test('a cell has its own; one without figures has all of its row', () => {
    const of = sheetedNow();
    const at = (id: string) =>
      figuresAt(
        of,
        { kind: 'exposure', index: 1 },
        columnsOf(of.plan, of.sheet, 1000).find((one) => one.id === id),
      );
    expect(at('clock')).toMatchObject({
      row: 'Exposure 2',
      ofCell: true,
      figures: [{ name: 'Clock', of: 'sheet.exposure.2.clock' }],
    });
    expect(at('text').ofCell).toBe(false);
    expect(at('text').figures.map(({ name }) => name)).toEqual(
      expect.arrayContaining(['Frames', 'Timecode', 'Hold', 'Clock']),
    );
  });
});

describe('of the frames of a time-lapse', () => {
  const plan = demo('harbour-at-dusk.json');
  const made = schedule(plan);
  const columns = frameColumns(plan, made);

  test('every figure of a row has a working', () => {
    const { row, figures } = figuresOfFrame(columns, 2, null);
    expect(row).toBe('Frame 3');
    expect(figures.map(({ of }) => of)).toEqual([
      'frame.3.clock',
      'frame.3.evSettings',
      'frame.3.axes.Boom.position',
      'frame.3.axes.Pan.position',
      'frame.3.sunAltitudeDeg',
      'frame.3.sources.Camera pack.leftWh',
      'frame.3.sources.Rig pack.leftWh',
      'frame.3.cardBytes',
      'frame.3.spareS',
    ]);
    for (const { of } of figures) expect(workingOf(plan, made, of), of).not.toBe(null);
  });

  test('the clock of its working is the one that stands there', () => {
    const { figures } = figuresOfFrame(columns, 200, 'clock');
    expect(figures).toHaveLength(1);
    const [clock] = figures;
    expect(workingOf(plan, made, clock?.of ?? '')?.label).toContain(`T${clock?.text}+`);
  });

  test('arrows go from all of the row to its cells and back', () => {
    expect(columnBeside(columns, null, 'ArrowRight')).toBe('frame');
    expect(columnBeside(columns, 'frame', 'ArrowRight')).toBe('clock');
    expect(columnBeside(columns, 'frame', 'ArrowLeft')).toBe(null);
    expect(columnBeside(columns, null, 'ArrowLeft')).toBe(null);
    expect(columnBeside(columns, 'event', 'ArrowRight')).toBe('event');
    expect(columnBeside(columns, 'event', 'ArrowDown')).toBe(undefined);
  });
});

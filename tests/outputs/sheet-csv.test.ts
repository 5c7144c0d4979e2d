import { csvParseRows } from 'd3-dsv';
import { describe, expect, test } from 'vitest';
import type { Plan } from '../../src/engine/plan/schema.ts';
import { pasteRows } from '../../src/engine/sheet/edits.ts';
import { sheetOf } from '../../src/engine/sheet/sheet.ts';
import { sheetCsv } from '../../src/outputs/sheet-csv.ts';
import { planOf } from './plans.ts';

/** Read back by d3-dsv, which knows nothing of the writer. */
const tableOf = (plan: Plan): string[][] => csvParseRows([...sheetCsv(plan, sheetOf(plan))].join(''));

const axis = { fullStepsPerTurn: 200, microsteps: 16, unitsPerTurn: 40, travelMin: -100 };
const plan = planOf({
  technique: 'stopMotion',
  clip: { frameRate: '30000/1001' },
  start: { date: '2026-03-02', time: '09:00' },
  place: { zone: 'Europe/Lisbon' },
  exposure: { shutterS: 0.5, apertureF: 11, iso: 200 },
  camera: { shutterLagS: 0, writeS: 0.5 },
  rig: {
    axes: [
      { ...axis, name: 'Slide' },
      { ...axis, name: 'Pan', kind: 'pan', unit: 'deg', unitsPerTurn: 360 },
    ],
  },
  move: { mode: 'moveShootMove', settleS: 1, moveS: 1 },
  sheet: {
    startTimecode: '00:00:59:27',
    minutesPerExposure: 3,
    setUpMin: 0,
    testFrames: 0,
    passes: [{ name: 'Key' }, { name: 'Rim, low', shutterS: 2, apertureF: 8, iso: 100 }],
    shots: [
      {
        name: 'Wall',
        actions: [
          {
            text: 'Reach "out"',
            frames: 5,
            holds: [2],
            details: [{ exposure: 2, passes: ['Key'], text: '=SUM(A1)' }],
          },
        ],
        cues: [
          { kind: 'sound', frame: 2, frames: 2, text: 'knock' },
          { kind: 'light', frame: 3, text: 'dim' },
        ],
        tracks: [
          {
            axis: 'Slide',
            keyframes: [
              { at: 'frame', frame: 1, position: 10, ease: { kind: 'linear' } },
              { at: 'frame', frame: 5, position: 2, ease: { kind: 'linear' } },
            ],
          },
        ],
      },
    ],
    ticks: [{ shot: 1, exposure: 1, atMs: Date.UTC(2026, 2, 2, 9, 4, 5), note: '-bumped\nagain' }],
  },
});

describe('the table of the exposure sheet', () => {
  const [headings = [], ...rows] = tableOf(plan);
  const column = (name: string): string[] => rows.map((row) => row[headings.indexOf(name)] ?? 'missing');

  test('begins as it should, then has the rest', () => {
    expect(headings).toEqual([
      ...['shot', 'exposure', 'firstFrame', 'frames', 'timecode', 'action', 'pass'],
      ...['Slide.steps', 'Slide.mm', 'Pan.steps', 'Pan.deg', 'Slide.arrives', 'Pan.arrives'],
      ...['shutterS', 'apertureF', 'iso', 'cues', 'clock', 'done', 'note'],
    ]);
    for (const row of rows) expect(row).toHaveLength(headings.length);
  });

  test('has one line an exposure and pass', () => {
    expect(column('shot')).toEqual(new Array(5).fill('Wall'));
    expect(column('exposure')).toEqual(['1', '1', '2', '3', '3']);
    expect(column('firstFrame')).toEqual(['1', '1', '3', '5', '5']);
    expect(column('frames')).toEqual(['2', '2', '2', '1', '1']);
    expect(column('pass')).toEqual(['Key', 'Rim, low', 'Key', 'Key', 'Rim, low']);
    expect(column('shutterS')).toEqual(['0.5', '2', '0.5', '0.5', '2']);
    expect(column('apertureF')).toEqual(['11', '8', '11', '11', '8']);
    expect(column('iso')).toEqual(['200', '100', '200', '200', '100']);
  });

  // SMPTE ST 12-1: after 00:00:59;29 comes 00:01:00;02.
  test('has drop-frame timecode', () => {
    expect(column('timecode')).toEqual([
      '00:00:59;27',
      '00:00:59;27',
      '00:00:59;29',
      '00:01:00;03',
      '00:01:00;03',
    ]);
  });

  test('has texts that are no formulas, whatever is in them', () => {
    expect(column('action')).toEqual([
      'Reach "out"',
      'Reach "out"',
      "'=SUM(A1)",
      'Reach "out"',
      'Reach "out"',
    ]);
    expect(column('note')[0]).toBe("'-bumped\nagain");
    expect(column('cues').slice(1, 4)).toEqual(['sound: knock', 'sound: knock; light: dim', '']);
  });

  // 10 to 2 mm over 4 frames; 80 steps a millimetre.
  test('has positions in whole steps and in the unit of the axis, and from which side', () => {
    expect(column('Slide.mm')).toEqual(['10', '10', '6', '2', '2']);
    expect(column('Slide.steps')).toEqual(['800', '800', '480', '160', '160']);
    expect(column('Slide.arrives')).toEqual(['', '', 'down', 'down', 'down']);
    expect(column('Pan.arrives').join('')).toBe('');
  });

  // Exposure 2: 3 min and 1 s of moving, 1 s of settling, 1/2 + 1/2 s of its one pass.
  test('has the clock, estimated and real', () => {
    expect(column('done')[0]).toBe('2026-03-02T09:04:05+00:00');
    expect(column('done')[2]).toBe('');
    expect(column('clock')).toEqual([
      '2026-03-02T09:04:05+00:00',
      '2026-03-02T09:04:05+00:00',
      '2026-03-02T09:04:05+00:00',
      '2026-03-02T09:07:08+00:00',
      '2026-03-02T09:07:08+00:00',
    ]);
  });
});

test('its rows can be pasted back in', () => {
  const [headings = [], ...rows] = tableOf(plan);
  const wanted = ['shot', 'exposure', 'frames', 'action', 'pass', 'Slide.mm'];
  const quoted = (cell: string) => (/["\t\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);
  const text = [wanted, ...rows.map((row) => wanted.map((name) => row[headings.indexOf(name)] ?? ''))]
    .map((row) => row.map(quoted).join('\t'))
    .join('\n');
  const result = pasteRows(plan, { shot: 1, exposure: 3 }, text);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  const [, ...then] = tableOf(result.plan);
  const shown = (table: string[][]) => table.map((row) => [3, 5, 6, 8].map((c) => row[c]));
  expect(result.exposures).toBe(3);
  expect(shown(then.slice(5))).toEqual(shown(rows));
});

test('names that a spreadsheet would work out are made safe', () => {
  const risky = planOf({
    technique: 'stopMotion',
    rig: { axes: [{ name: '+A' }] },
    sheet: {
      passes: [{ name: '@pass' }],
      shots: [{ name: '=cmd|"A"', actions: [{ text: '\tgo', frames: 2 }] }],
    },
  });
  const [headings = [], first = []] = tableOf(risky);
  expect(headings).toContain("'+A.steps");
  expect(first[0]).toBe('\'=cmd|"A"');
  expect(first[headings.indexOf('action')]).toBe("'\tgo");
  expect(first[headings.indexOf('pass')]).toBe("'@pass");
});

test('a long sheet comes in pieces, none of them long', () => {
  const long = planOf({
    technique: 'stopMotion',
    sheet: { shots: [{ name: 'Long', actions: [{ frames: 100_000, holds: [2] }] }] },
  });
  let records = 0;
  for (const piece of sheetCsv(long, sheetOf(long))) {
    expect(piece.length).toBeLessThan(1_000_000);
    records += piece.split('\r\n').length - 1;
  }
  expect(records).toBe(50_001);
});

test('a production without exposures has headings only', () => {
  expect(tableOf(planOf({ sheet: { shots: [{ name: 'Later' }] } }))).toHaveLength(1);
});

/** A run sheet as plain text, for the prompt and a text file. */
import { withUnit } from '../../engine/findings/words.ts';
import { cleanText } from '../clean.ts';
import { hanging, plainText, TEXT_WIDTH, wrapped } from '../paragraphs.ts';
import { fitRunSheet } from './fit.ts';
import { leftTexts } from './left.ts';
import type { ChangeLine, Left, RigTable, RunSheet, SheetLine } from './types.ts';
import { newDates } from './when.ts';

type Row = readonly [label: string, text: string];

const labelled = (lines: readonly SheetLine[]): Row[] => lines.map(({ label, text }) => [label, text]);

const leftRows = (sheet: RunSheet, ...parts: (keyof Left)[]): Row[] =>
  leftTexts(sheet, ...parts).map((text): Row => ['', text]);

const BOX = '[ ]';

const clockRows = (sheet: RunSheet): Row[] => [
  ...dated(sheet.clock, ({ clock, frame, text, hand }): Row[] => [
    [`${hand ? BOX : '   '} ${clock}`, frame === null ? text : `${text} (frame ${frame})`],
  ]),
  ...leftRows(sheet, 'moments', 'sky'),
];

/** Rows of lines, with a row for each date where there are several or `always`. */
function dated<Line extends { date: string }>(
  lines: readonly Line[],
  rows: (line: Line) => Row[],
  always = true,
): Row[] {
  const dates = newDates(lines, always);
  return lines.flatMap((line, i) => [...(dates[i] ? [[dates[i], ''] as const] : []), ...rows(line)]);
}

/** `by hand`, `by the camera, 14 changes`. */
export const byWords = ({ by, count }: ChangeLine): string =>
  by === 'hand' ? 'by hand' : count > 1 ? `by the camera, ${count} changes` : 'by the camera';

const changeRow = (change: ChangeLine): Row => [
  `${change.clock}  ${change.count > 1 ? `frames ${change.frame} to ${change.lastFrame}` : `frame ${change.frame}`}`,
  `${change.from} to ${change.to}, ${byWords(change)}`,
];

const changeRows = (sheet: RunSheet): Row[] => [
  ...dated(sheet.changes, (change) => [changeRow(change)], false),
  ...leftRows(sheet, 'changes'),
];

const rigRow = (axes: RigTable['axes'], { frame, clock, steps, units }: RigTable['rows'][number]): Row => [
  `${clock}  frame ${frame}`,
  axes.map(({ name, unit }, i) => `${name} ${withUnit(units[i] ?? 0, unit)} (${steps[i]} steps)`).join(', '),
];

const rigRows = (sheet: RunSheet): Row[] => {
  const { axes, rows } = sheet.rig ?? { axes: [], rows: [] };
  return [...dated(rows, (row) => [rigRow(axes, row)], false), ...leftRows(sheet, 'keyframes')];
};

const workRows = (sheet: RunSheet): Row[] => [
  ...sheet.work.map(
    ({ date, from, to, exposures, ends, packs }): Row => [
      date,
      [`${from} to ${to}`, /\d/.test(exposures) ? `exposures ${exposures}` : exposures, ends, packs]
        .filter((part) => part !== '')
        .join(', '),
    ],
  ),
  ...leftRows(sheet, 'days'),
];

const findingRows = (sheet: RunSheet): Row[] => [
  ...sheet.findings.map(({ severity, text }): Row => [severity, text]),
  ...leftRows(sheet, 'findings'),
];

const SECTIONS: readonly [heading: string, rows: (sheet: RunSheet) => Row[]][] = [
  ['Bring', ({ bring }) => labelled(bring)],
  ['Days', workRows],
  ['Shots', (sheet) => [...labelled(sheet.shots), ...leftRows(sheet, 'shots')]],
  ['Clock', clockRows],
  ['Set', ({ dials }) => labelled(dials)],
  ['Changes of the exposure', changeRows],
  ['Rig', rigRows],
  ['Sun and moon', (sheet) => [...labelled(sheet.sun), ...leftRows(sheet, 'sun')]],
  ['To know', findingRows],
  ['Cautions', ({ cautions }) => cautions.map((caution): Row => ['-', caution])],
];

function section(heading: string, rows: readonly Row[]): string[] {
  if (rows.length === 0) return [];
  const longest = Math.max(...rows.map(([label]) => label.length));
  const column = Math.min(longest, 30) + 4;
  const lines = rows.flatMap(([label, text]) =>
    text === '' ? [`  ${plainText(label)}`] : hanging(plainText(label), plainText(text), column),
  );
  return ['', heading, ...lines];
}

function linesOf(sheet: RunSheet): string[] {
  const { title, facts, sentence, verdict, notes } = sheet;
  const head = [title, facts.join(', '), sentence, verdict, notes, ...leftTexts(sheet, 'notes')]
    .filter((text) => text !== '')
    .flatMap((text) => wrapped(plainText(text), TEXT_WIDTH));
  return [...head, ...SECTIONS.flatMap(([heading, rows]) => section(heading, rows(sheet)))];
}

/**
 * Two pages: 100 letters of a fixed face, each 0.6 of its size wide, take 190 mm at 9 pt; Letter has room for 65 lines of
 * that within its margins, each 1.2 times as high.
 */
const MOST_LINES = 2 * 65;

/** The sheet in lines of at most 100 characters, with boxes to tick, cut to what two pages hold. */
export function runSheetText(sheet: RunSheet): string {
  const fitting = fitRunSheet(sheet, (shorter) => linesOf(shorter).length <= MOST_LINES);
  return `${cleanText(linesOf(fitting).join('\n'))}\n`;
}

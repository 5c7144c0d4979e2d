/** A run sheet as plain text, for the prompt and a text file. */
import { figure, withUnit } from '../../engine/findings/words.ts';
import { cleanText } from '../clean.ts';
import { hanging, plainText, TEXT_WIDTH, wrapped } from '../paragraphs.ts';
import type { ChangeLine, ClockLine, RigTable, RunSheet, SheetLine } from './types.ts';

type Row = readonly [label: string, text: string];

const labelled = (lines: readonly SheetLine[]): Row[] => lines.map(({ label, text }) => [label, text]);

const BOX = '[ ]';

const clockRows = ({ clock, clockLeft }: RunSheet): Row[] => [
  ...clock.flatMap(({ date, clock: at, frame, text, hand }: ClockLine): Row[] => [
    ...(date === null ? [] : ([[date, '']] as Row[])),
    [`${hand ? BOX : '   '} ${at}`, frame === null ? text : `${text} (frame ${frame})`],
  ]),
  ...(clockLeft > 0 ? ([['', `and ${clockLeft} more moments that need a hand`]] as Row[]) : []),
];

/** `by hand`, `by the camera, 14 changes`. */
export const byWords = ({ by, count }: ChangeLine): string =>
  by === 'hand' ? 'by hand' : count > 1 ? `by the camera, ${count} changes` : 'by the camera';

const changeRow = (change: ChangeLine): Row => [
  `${change.clock}  ${change.count > 1 ? `frames ${change.frame} to ${change.lastFrame}` : `frame ${change.frame}`}`,
  `${change.from} to ${change.to}, ${byWords(change)}`,
];

const rigRows = ({ axes, rows, left }: RigTable): Row[] => [
  ...rows.map(
    ({ frame, clock, steps, units }): Row => [
      `${clock}  frame ${frame}`,
      axes
        .map(({ name, unit }, i) => `${name} ${withUnit(units[i] ?? 0, unit)} (${steps[i]} steps)`)
        .join(', '),
    ],
  ),
  ...(left > 0 ? ([['', `and ${figure(left)} more keyframes: see the table of positions`]] as Row[]) : []),
];

const workRows = ({ work, workLeft }: RunSheet): Row[] => [
  ...work.map(
    ({ date, from, to, exposures, ends, packs }): Row => [
      date,
      [`${from} to ${to}`, /\d/.test(exposures) ? `exposures ${exposures}` : exposures, ends, packs]
        .filter((part) => part !== '')
        .join(', '),
    ],
  ),
  ...(workLeft > 0 ? ([['', `and ${workLeft} more days`]] as Row[]) : []),
];

const SECTIONS: readonly [heading: string, rows: (sheet: RunSheet) => Row[]][] = [
  ['Bring', ({ bring }) => labelled(bring)],
  ['Days', workRows],
  ['Shots', ({ shots }) => labelled(shots)],
  ['Clock', clockRows],
  ['Set', ({ dials }) => labelled(dials)],
  ['Changes of the exposure', ({ changes }) => changes.map(changeRow)],
  ['Rig', ({ rig }) => (rig ? rigRows(rig) : [])],
  ['Sun and moon', ({ sun }) => labelled(sun)],
  ['To know', ({ findings }) => findings.map(({ severity, text }): Row => [severity, text])],
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

/** The sheet in lines of at most 100 characters, with boxes to tick. */
export function runSheetText(sheet: RunSheet): string {
  const head = [sheet.title, sheet.facts.join(', '), sheet.sentence, sheet.verdict, sheet.notes]
    .filter((text) => text !== '')
    .flatMap((text) => wrapped(plainText(text), TEXT_WIDTH));
  const lines = [...head, ...SECTIONS.flatMap(([heading, rows]) => section(heading, rows(sheet)))];
  return `${cleanText(lines.join('\n'))}\n`;
}

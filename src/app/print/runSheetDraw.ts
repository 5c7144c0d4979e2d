/** Draws a run sheet for paper. */
import { figure } from '../../engine/findings/words.ts';
import { byWords } from '../../outputs/run-sheet/text.ts';
import type {
  ChangeLine,
  ClockLine,
  RigTable,
  RunSheet,
  SheetLine,
  WorkLine,
} from '../../outputs/run-sheet/types.ts';
import { make } from './make.ts';

/** Name of the paper, and of a file that it is printed to. */
export const runSheetName = ({ title }: Pick<RunSheet, 'title'>): string => `${title}: run sheet`;

type Cells = readonly (Node | string)[];

const row = (cells: Cells, figures: readonly number[] = []): HTMLTableRowElement =>
  make('tr', null, ...cells.map((cell, i) => make('td', figures.includes(i) ? 'p-figure' : null, cell)));

const heads = (names: readonly string[], figures: readonly number[] = []): HTMLTableSectionElement =>
  make(
    'thead',
    null,
    make('tr', null, ...names.map((name, i) => make('th', figures.includes(i) ? 'p-figure' : null, name))),
  );

/** A part with its heading; nothing if it has no content. */
function part(heading: string, className: string, ...content: (Node | null)[]): HTMLElement[] {
  const there = content.filter((node) => node !== null);
  return there.length === 0 ? [] : [make('section', className, make('h2', null, heading), ...there)];
}

const box = (): HTMLElement => make('i', 'p-box');

function labelled(lines: readonly SheetLine[]): HTMLTableElement | null {
  if (lines.length === 0) return null;
  const rows = lines.map(({ label, text }) => row([make('b', null, label), text]));
  return make('table', 'p-labelled', make('tbody', null, ...rows));
}

/** What to bring, each with a box. */
function bring(lines: readonly SheetLine[]): HTMLTableElement {
  const rows = lines.map(({ label, text }) => row([box(), make('b', null, label), text]));
  return make('table', 'p-bring', make('tbody', null, ...rows));
}

function clockRows({ date, clock, frame, text, hand }: ClockLine): HTMLTableRowElement[] {
  const own = row([hand ? box() : '', clock, frame === null ? '' : String(frame), text], [2]);
  if (hand) own.className = 'p-hand';
  if (date === null) return [own];
  const day = make('td', null, make('b', null, date));
  day.colSpan = 4;
  return [make('tr', 'p-date', day), own];
}

function clock({ clock: lines, clockLeft }: RunSheet): HTMLTableElement | null {
  if (lines.length === 0) return null;
  const left = `and ${clockLeft} more moments that need a hand: see the sheet of frames`;
  return make(
    'table',
    'p-clock',
    heads(['', 'Clock', 'Frame', ''], [2]),
    make('tbody', null, ...lines.flatMap(clockRows), ...(clockLeft > 0 ? [row(['', '', '', left])] : [])),
  );
}

const changeRow = (change: ChangeLine): HTMLTableRowElement =>
  row(
    [
      change.by === 'hand' ? box() : '',
      change.clock,
      change.count > 1 ? `${change.frame} to ${change.lastFrame}` : String(change.frame),
      change.from,
      change.to,
      byWords(change),
    ],
    [2],
  );

function changes({ changes: lines }: RunSheet): HTMLTableElement | null {
  if (lines.length === 0) return null;
  return make(
    'table',
    'p-changes',
    heads(['', 'Clock', 'Frame', 'From', 'To', 'Changed'], [2]),
    make('tbody', null, ...lines.map(changeRow)),
  );
}

/** With a true minus sign. */
const stepsText = (steps: number): string => String(steps).replace('-', '\u2212');

/** So many axes fit side by side, each in steps and in its unit. */
const AXES_A_TABLE = 4;

function rigTables({ axes, rows, left }: RigTable): HTMLElement[] {
  const tables: HTMLElement[] = [];
  for (let from = 0; from < axes.length; from += AXES_A_TABLE) {
    const some = axes.slice(from, from + AXES_A_TABLE);
    const names = [
      'Clock',
      'Frame',
      ...some.flatMap(({ name, unit }) => [`${name}, steps`, unit === 'deg' ? '\u00B0' : unit]),
    ];
    const figures = names.map((_, i) => i).slice(1);
    const body = rows.map(({ frame, clock: at, steps, units }) =>
      row(
        [
          at,
          String(frame),
          ...some.flatMap((_, i) => [stepsText(steps[from + i] ?? 0), figure(units[from + i] ?? 0)]),
        ],
        figures,
      ),
    );
    tables.push(make('table', 'p-rig', heads(names, figures), make('tbody', null, ...body)));
  }
  if (left > 0) tables.push(make('p', 'p-remark', `And ${left} more keyframes: see the table of positions.`));
  return tables;
}

function work({ work: lines, workLeft }: RunSheet): HTMLTableElement | null {
  if (lines.length === 0) return null;
  const cells = ({ date, from, to, exposures, ends, packs }: WorkLine): Cells => [
    date,
    `${from} to ${to}`,
    exposures,
    ends,
    packs,
  ];
  const more = workLeft > 0 ? [row([`and ${workLeft} more days`, '', '', '', ''])] : [];
  return make(
    'table',
    null,
    heads(['Day', 'Work, breaks within', 'Exposures', 'Ends with', 'Packs']),
    make('tbody', null, ...lines.map((line) => row(cells(line))), ...more),
  );
}

const list = (className: string | null, items: readonly (Node | string)[]): HTMLElement | null =>
  items.length === 0 ? null : make('ul', className, ...items.map((item) => make('li', null, item)));

const SEVERITY: Readonly<Record<string, string>> = { stop: 'STOP', warning: 'Warning', note: 'Note' };

function findings({ findings: lines }: RunSheet): HTMLElement | null {
  const items = lines.map(({ severity, text }) =>
    make('span', null, make('b', null, `${SEVERITY[severity] ?? severity}: `), text),
  );
  return list(null, items);
}

function opening({ title, facts, sentence, verdict, notes }: RunSheet): HTMLElement {
  const line = make('p', 'p-facts');
  for (const [f, fact] of facts.entries()) line.append(f > 0 ? ' \u00B7 ' : '', make('span', null, fact));
  const said = [sentence, verdict, notes].filter((text) => text !== '');
  return make(
    'header',
    null,
    make('h1', null, title, make('small', null, 'Run sheet')),
    line,
    ...said.map((text, i) => make('p', i === 0 ? 'p-remark p-sentence' : 'p-remark', text)),
  );
}

/** The clock beside what to bring and to set; without a clock these two side by side. */
function columns(sheet: RunSheet): HTMLElement {
  const toBring = part('Bring', 'p-part', bring(sheet.bring));
  const toSet = part('Set before the start', 'p-part', labelled(sheet.dials));
  const toDo = part('Clock', 'p-part', clock(sheet));
  const sides = toDo.length > 0 ? [toDo, [...toBring, ...toSet]] : [toBring, toSet];
  return make('div', 'p-cols', ...sides.map((side) => make('div', null, ...side)));
}

/** The whole sheet. */
export function drawRunSheet(sheet: RunSheet, chart: SVGSVGElement | null): HTMLElement {
  const grouped = sheet.changesGrouped ? ' (those by the camera in stretches)' : '';
  const article = make(
    'article',
    'print-sheet run-sheet',
    opening(sheet),
    ...part('The run', 'p-part p-drawn', chart),
    ...part('Days', 'p-part', work(sheet)),
    ...part('Shots', 'p-part', labelled(sheet.shots)),
    columns(sheet),
    ...part(`Changes of the exposure${grouped}`, 'p-part', changes(sheet)),
    ...part('Rig at the keyframes', 'p-part', ...(sheet.rig ? rigTables(sheet.rig) : [])),
    ...part('Sun and moon', 'p-part', labelled(sheet.sun)),
    ...part('To know', 'p-part', findings(sheet)),
    ...part('Cautions', 'p-part', list('p-cautions', sheet.cautions)),
  );
  article.setAttribute('aria-label', runSheetName(sheet));
  return article;
}

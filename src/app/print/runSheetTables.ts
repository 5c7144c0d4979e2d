/** The tables of a run sheet on paper. */
import { figure } from '../../engine/findings/words.ts';
import { leftTexts } from '../../outputs/run-sheet/left.ts';
import { byWords } from '../../outputs/run-sheet/text.ts';
import type {
  ChangeLine,
  ClockLine,
  Left,
  RigTable,
  RunSheet,
  SheetLine,
  WorkLine,
} from '../../outputs/run-sheet/types.ts';
import { newDates } from '../../outputs/run-sheet/when.ts';
import { make } from './make.ts';

type Cells = readonly (Node | string)[];

const row = (cells: Cells, figures: readonly number[] = []): HTMLTableRowElement =>
  make('tr', null, ...cells.map((cell, i) => make('td', figures.includes(i) ? 'p-figure' : null, cell)));

const heads = (names: readonly string[], figures: readonly number[] = []): HTMLTableSectionElement =>
  make(
    'thead',
    null,
    make('tr', null, ...names.map((name, i) => make('th', figures.includes(i) ? 'p-figure' : null, name))),
  );

const box = (): HTMLElement => make('i', 'p-box');

/** What was left out of some parts, each in a line. */
export const left = (sheet: RunSheet, ...parts: (keyof Left)[]): HTMLElement[] =>
  leftTexts(sheet, ...parts).map((text) => make('p', 'p-left', text));

/** Rows, and before the first one of each date the date. */
function dated<Line extends { date: string }>(
  lines: readonly Line[],
  columns: number,
  always: boolean,
  draw: (line: Line) => HTMLTableRowElement,
): HTMLTableRowElement[] {
  const dates = newDates(lines, always);
  return lines.flatMap((line, i) => {
    if (!dates[i]) return [draw(line)];
    const day = make('td', null, make('b', null, dates[i]));
    day.colSpan = columns;
    return [make('tr', 'p-date', day), draw(line)];
  });
}

export function labelled(lines: readonly SheetLine[]): HTMLTableElement | null {
  if (lines.length === 0) return null;
  const rows = lines.map(({ label, text }) => row([make('b', null, label), text]));
  return make('table', 'p-labelled', make('tbody', null, ...rows));
}

/** What to bring, each with a box. */
export function bring(lines: readonly SheetLine[]): HTMLTableElement {
  const rows = lines.map(({ label, text }) => row([box(), make('b', null, label), text]));
  return make('table', 'p-bring', make('tbody', null, ...rows));
}

function clockRow({ clock: at, frame, text, hand }: ClockLine): HTMLTableRowElement {
  const own = row([hand ? box() : '', at, frame === null ? '' : String(frame), text], [2]);
  if (hand) own.className = 'p-hand';
  return own;
}

export function clock({ clock: lines }: RunSheet): HTMLTableElement | null {
  if (lines.length === 0) return null;
  return make(
    'table',
    'p-clock',
    heads(['', 'Clock', 'Frame', ''], [2]),
    make('tbody', null, ...dated(lines, 4, true, clockRow)),
  );
}

const CHANGE_HEADS = ['', 'Clock', 'Frame', 'From', 'To', 'Changed'];
const FROM = CHANGE_HEADS.indexOf('From');

function changeCells(change: ChangeLine): Cells {
  const { by, clock: at, count, frame, lastFrame, from, to } = change;
  return [
    by === 'hand' ? box() : '',
    at,
    count > 1 ? `${frame} to ${lastFrame}` : String(frame),
    from,
    to,
    byWords(change),
  ];
}

/** @param dense - without what the settings were: they stand in the row before */
export function changes({ changes: lines }: RunSheet, dense: boolean): HTMLTableElement | null {
  if (lines.length === 0) return null;
  const kept = (cells: Cells) => cells.filter((_, i) => !dense || i !== FROM);
  const names = kept(CHANGE_HEADS) as string[];
  const rows = dated(lines, names.length, false, (change) => row(kept(changeCells(change)), [2]));
  return make('table', 'p-changes', heads(names, [2]), make('tbody', null, ...rows));
}

/** With a true minus sign. */
const stepsText = (steps: number): string => String(steps).replace('-', '\u2212');

/** So many axes fit side by side, each in steps and in its unit. */
const AXES_A_TABLE = { normal: 4, dense: 6 };

type RigRow = RigTable['rows'][number];

function rigTablePart({ axes, rows }: RigTable, from: number, end: number): HTMLElement {
  const some = axes.slice(from, end);
  const names = [
    'Clock',
    'Frame',
    ...some.flatMap(({ name, unit }) => [`${name}, steps`, unit === 'deg' ? '\u00B0' : unit]),
  ];
  const figures = names.map((_, i) => i).slice(1);
  const drawn = ({ frame, clock: at, steps, units }: RigRow) => {
    const places = some.flatMap((_, i) => [stepsText(steps[from + i] ?? 0), figure(units[from + i] ?? 0)]);
    return row([at, String(frame), ...places], figures);
  };
  const body = make('tbody', null, ...dated(rows, names.length, false, drawn));
  return make('table', 'p-rig', heads(names, figures), body);
}

export function rigTables({ rig }: RunSheet, dense: boolean): HTMLElement[] {
  if (!rig || rig.rows.length === 0) return [];
  const each = dense ? AXES_A_TABLE.dense : AXES_A_TABLE.normal;
  const count = Math.ceil(rig.axes.length / each);
  return Array.from({ length: count }, (_, n) => rigTablePart(rig, n * each, (n + 1) * each));
}

export function work({ work: lines }: RunSheet): HTMLTableElement | null {
  if (lines.length === 0) return null;
  const cells = ({ date, from, to, exposures, ends, packs }: WorkLine): Cells => [
    date,
    `${from} to ${to}`,
    exposures,
    ends,
    packs,
  ];
  return make(
    'table',
    null,
    heads(['Day', 'Work, breaks within', 'Exposures', 'Ends with', 'Packs']),
    make('tbody', null, ...lines.map((line) => row(cells(line)))),
  );
}

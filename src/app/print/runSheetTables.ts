/** The tables of a run sheet on paper. */
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

function clockRows({ date, clock, frame, text, hand }: ClockLine): HTMLTableRowElement[] {
  const own = row([hand ? box() : '', clock, frame === null ? '' : String(frame), text], [2]);
  if (hand) own.className = 'p-hand';
  if (date === null) return [own];
  const day = make('td', null, make('b', null, date));
  day.colSpan = 4;
  return [make('tr', 'p-date', day), own];
}

export function clock({ clock: lines, clockLeft }: RunSheet): HTMLTableElement | null {
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

export function changes({ changes: lines }: RunSheet): HTMLTableElement | null {
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

export function rigTables({ axes, rows, left }: RigTable): HTMLElement[] {
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

export function work({ work: lines, workLeft }: RunSheet): HTMLTableElement | null {
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

/** The table's keys: where they take the cell, and what they do. */
import { plural } from '../format/numbers.ts';
import { redo, undo } from '../store/plan.ts';
import type { ColumnKind } from './columns.ts';
import {
  actionAt,
  duplicateRows,
  insertRows,
  joinNext,
  removeRows,
  splitHere,
  toggleDone,
} from './commands.ts';
import { gridNow, selected, setActionOpen, setGrid } from './gridStore.ts';
import type { SheetRows, Spot } from './rows.ts';
import { sheetedNow } from './sheeted.ts';

export interface Pressed {
  key: string;
  shiftKey: boolean;
  /** Ctrl or Cmd. */
  mod: boolean;
  altKey: boolean;
}

/** What the table knows. */
export interface Table {
  rows: SheetRows;
  /** Those that have a cell in the row that one is at. */
  columns: readonly { id: string; kind: ColumnKind }[];
  /** That of the cell. */
  column: string | undefined;
  /** Rows of a page. */
  pageRows: number;
  /** Begins to edit the cell; with a text in place of what stands there. */
  edit: (text: string | null) => void;
  /** Whether the cell can be edited. */
  editable: boolean;
  /** Opens how the cell's figure was worked out, if that is what the key does and it has one. */
  explain: (key: string) => boolean;
}

const isStop = (rows: SheetRows, row: number): boolean => rows.spotAt(row).kind !== 'pause';

/** The row that many rows on, pauses left out. */
export function rowAfter(rows: SheetRows, row: number, step: number): number {
  const way = Math.sign(step);
  let at = Math.max(0, Math.min(rows.count - 1, row + step));
  while (at > 0 && at < rows.count - 1 && !isStop(rows, at)) at += way;
  return isStop(rows, at) ? at : row;
}

/** The next row of a shot or an action. */
function groupAfter(rows: SheetRows, row: number, way: 1 | -1): number {
  for (let at = row + way; at >= 0 && at < rows.count; at += way) {
    const { kind } = rows.spotAt(at);
    if (kind === 'action' || kind === 'shot') return at;
  }
  return row;
}

/** The next row where work stops. */
function pauseAfter(rows: SheetRows, row: number, way: 1 | -1): number {
  for (let at = row + way; at >= 0 && at < rows.count; at += way) if (!isStop(rows, at)) return at;
  return row;
}

/** Row that a key leads to; null for any other key. */
export function rowForKey(
  { rows, pageRows }: Table,
  row: number,
  { key, mod, altKey }: Pressed,
): number | null {
  if (altKey && key === 'PageDown') return pauseAfter(rows, row, 1);
  if (altKey && key === 'PageUp') return pauseAfter(rows, row, -1);
  if (key === 'ArrowDown') return mod ? groupAfter(rows, row, 1) : rowAfter(rows, row, 1);
  if (key === 'ArrowUp') return mod ? groupAfter(rows, row, -1) : rowAfter(rows, row, -1);
  if (key === 'PageDown') return rowAfter(rows, row, pageRows);
  if (key === 'PageUp') return rowAfter(rows, row, -pageRows);
  if (key === 'Home' && mod) return 0;
  if (key === 'End' && mod) return rowAfter(rows, rows.count - 1, 0);
  return null;
}

/** Goes to a row; with Shift what lies between is selected. */
function go(rows: SheetRows, row: number, extend: boolean): void {
  const { at, anchor } = gridNow();
  const spot = rows.spotAt(row);
  const keep = extend && at.kind === 'exposure' && spot.kind === 'exposure';
  // Headings are stepped over while one selects.
  setGrid({ at: spot, anchor: keep ? (anchor ?? at.index) : null, said: null });
}

function moveRow(table: Table, pressed: Pressed): boolean {
  const { rows } = table;
  const { at } = gridNow();
  const row = rows.rowOf(at);
  let to = rowForKey(table, row, pressed);
  if (to === null) return false;
  if (pressed.shiftKey && at.kind === 'exposure') {
    const way = to >= row ? 1 : -1;
    while (to > 0 && to < rows.count - 1 && rows.spotAt(to).kind !== 'exposure') to += way;
    if (rows.spotAt(to).kind !== 'exposure') return true;
  }
  go(rows, to, pressed.shiftKey);
  return true;
}

function moveColumn({ columns, column }: Table, { key, mod }: Pressed): boolean {
  const { at } = gridNow();
  const c = Math.max(
    0,
    columns.findIndex(({ id }) => id === column),
  );
  const last = columns.length - 1;
  const to = { ArrowLeft: c - 1, ArrowRight: c + 1, Home: 0, End: last }[key];
  if (to === undefined || (mod && (key === 'Home' || key === 'End'))) return false;
  if (at.kind === 'action' && c === 0 && key === 'ArrowLeft') setActionOpen(at.index, false);
  setGrid({ column: columns[Math.max(0, Math.min(last, to))]?.id ?? gridNow().column });
  return true;
}

/** Everything of the group that the cell is in; pressed again, everything. */
function selectAll(): boolean {
  const { at, anchor } = gridNow();
  const of = sheetedNow();
  const { sheet } = of;
  if (sheet.exposures === 0) return true;
  const group = sheet.actions[actionAt(of, at) ?? -1];
  if (!group) return true;
  const own = { first: group.firstExposure, last: group.firstExposure + group.exposures - 1 };
  const range = anchor === null ? null : selected({ at, anchor });
  const whole = range?.first === own.first && range.last === own.last;
  const to = whole ? { first: 1, last: sheet.exposures } : own;
  setGrid({ at: { kind: 'exposure', index: to.last - 1 }, anchor: to.first - 1 });
  return true;
}

function withMod({ key, shiftKey }: Pressed): boolean {
  const lower = key.toLowerCase();
  if (lower === 'a') return selectAll();
  if (lower === 'd') duplicateRows();
  else if (lower === 'z') (shiftKey ? redo : undo)();
  else if (lower === 'y') redo();
  else return false;
  return true;
}

function toggle(at: Spot, rows: SheetRows): boolean {
  if (at.kind === 'action') setActionOpen(at.index, !rows.isOpen(at.index));
  return at.kind === 'action';
}

function plainKey(table: Table, { key, altKey }: Pressed): boolean {
  const { at } = gridNow();
  const range = selected(gridNow());
  if (key === 'Enter' && altKey) insertRows(1);
  else if (key === 'Enter' || key === 'F2') {
    if (table.editable) table.edit(null);
    else toggle(at, table.rows);
  } else if (key === 'Insert') insertRows(range ? range.last - range.first + 1 : 1);
  else if (key === 'Delete') removeRows();
  else if (key === ' ') {
    if (range) toggleDone(range);
    else toggle(at, table.rows);
  } else if (key === 'Escape') setGrid({ anchor: null, said: null });
  else if (key === 'Backspace' && table.editable) table.edit('');
  else if (!altKey && table.explain(key)) return true;
  else if (key.length === 1 && !altKey && table.editable) table.edit(key);
  else return false;
  return true;
}

function withAlt({ key }: Pressed): boolean {
  if (key === 'ArrowDown') joinNext();
  else if (key === 'ArrowUp') splitHere();
  else return false;
  return true;
}

/** Does what a key asks for. @returns whether the table has taken it */
export function press(table: Table, pressed: Pressed): boolean {
  if (table.rows.count === 0) return pressed.mod && withMod(pressed);
  if (pressed.altKey && withAlt(pressed)) return true;
  if (moveRow(table, pressed) || moveColumn(table, pressed)) return true;
  return pressed.mod ? withMod(pressed) : plainKey(table, pressed);
}

/** What is selected, in words; null if it is one cell. */
export function selectionText(range: { first: number; last: number } | null): string | null {
  if (!range || range.first === range.last) return null;
  return `${plural(range.last - range.first + 1, 'exposure')} selected, ${range.first} to ${range.last}`;
}

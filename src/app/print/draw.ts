/**
 * Draws a document for paper. Without React: fifty thousand rows are made once, never changed, and must be there when
 * the browser begins to print.
 */
import { documentName, type PrintDocument, type PrintList, type PrintRow } from './document.ts';
import { BOX_MM, type FittedColumn, type FittedTable, fitTables } from './fit.ts';
import { make } from './make.ts';

const SIDES: Readonly<Record<number, string>> = { 1: 'p-up', [-1]: 'p-down' };

function cell({ column }: FittedColumn, index: number): HTMLTableCellElement {
  const td = document.createElement('td');
  td.textContent = column.text(index);
  if (column.figure) td.className = 'p-figure';
  const side = SIDES[column.arrives?.(index) ?? 0];
  if (column.arrives) td.append(make('i', side ? `p-side ${side}` : 'p-side'));
  return td;
}

const box = (done: boolean | null): HTMLTableCellElement =>
  done === null ? make('td', null) : make('td', null, make('i', done ? 'p-box p-done' : 'p-box'));

function across(columns: number, row: Exclude<PrintRow, { kind: 'line' }>): HTMLTableCellElement {
  const td = make('td', null, make('b', null, row.text));
  if ('aside' in row) td.append(make('span', null, row.aside));
  td.colSpan = columns + 1;
  return td;
}

function drawRow(row: PrintRow, columns: readonly FittedColumn[]): HTMLTableRowElement {
  if (row.kind !== 'line') return make('tr', `p-${row.kind}`, across(columns.length, row));
  const tr = make('tr', null, box(row.done));
  for (const column of columns) tr.append(cell(column, row.index));
  return tr;
}

function head(columns: readonly FittedColumn[]): HTMLTableSectionElement {
  const cells = columns.map(({ column: { heading, figure } }) =>
    make('th', figure ? 'p-figure' : null, heading.replace(', ', '\n')),
  );
  return make('thead', null, make('tr', null, make('th', null), ...cells));
}

function widths(columns: readonly FittedColumn[]): HTMLTableColElement[] {
  return [BOX_MM, ...columns.map(({ widthMm }) => widthMm)].map((mm) => {
    const col = document.createElement('col');
    if (mm !== null) col.style.width = `${mm.toFixed(2)}mm`;
    return col;
  });
}

function emptyTable({ columns, typePt }: FittedTable): HTMLTableElement {
  const table = make('table', null, make('colgroup', null, ...widths(columns)), head(columns));
  table.style.fontSize = `${typePt}pt`;
  return table;
}

// A browser lays a table out anew for each of its pages: a long one is cut, at a heading if there is one in time.
const MOST_ROWS = 300;
const MOST_ROWS_OF_ONE = 500;

const mayBegin = (row: PrintRow, before: PrintRow | null, rows: number): boolean =>
  rows >= MOST_ROWS && (row.kind === 'shot' || (row.kind === 'action' && before?.kind !== 'shot'));

/** Puts the rows into as many tables as it takes, each beginning a page. */
function* drawRows(into: HTMLElement, { rows }: PrintDocument, fitted: FittedTable): Generator<void> {
  let table = emptyTable(fitted);
  let body = table.createTBody();
  let before: PrintRow | null = null;
  into.append(table);
  for (let row = 0, drawn = 0; row < rows.count; row += 1, drawn += 1) {
    const found = rows.at(row);
    if (mayBegin(found, before, drawn) || (drawn >= MOST_ROWS_OF_ONE && found.kind === 'line')) {
      table = emptyTable(fitted);
      table.className = 'p-page';
      body = table.createTBody();
      into.append(table);
      drawn = 0;
    }
    body.append(drawRow(found, fitted.columns));
    before = found;
    if (row % 100 === 99) yield;
  }
}

const list = ({ title, items }: PrintList): HTMLElement =>
  make(
    'section',
    null,
    make('h2', null, title),
    make('ul', null, ...items.map((item) => make('li', null, item))),
  );

/** In one line, broken between facts only. */
function factLine(facts: readonly string[]): HTMLElement {
  const line = make('p', 'p-facts');
  for (const [f, fact] of facts.entries()) line.append(f > 0 ? ' \u00B7 ' : '', make('span', null, fact));
  return line;
}

function opening({ title, kind, facts, remarks }: PrintDocument, further: FittedTable[]): HTMLElement {
  const moved = further.map(furtherTitle).join(', ');
  const paragraphs = [...remarks, ...(moved ? [`In tables of their own, further on: ${moved}.`] : [])].map(
    (text) => make('p', 'p-remark', text),
  );
  const heading = make('h1', null, title, make('small', null, kind));
  return make('header', null, heading, factLine(facts), ...paragraphs);
}

/** Draws a document, giving way between rows. */
export function* drawDocument(of: PrintDocument): Generator<void, HTMLElement> {
  const tables = fitTables(of.columns);
  const sheet = make('article', 'print-sheet', opening(of, tables.slice(1)));
  sheet.setAttribute('aria-label', documentName(of));
  for (const [t, fitted] of tables.entries()) {
    if (t > 0) sheet.append(make('h2', null, furtherTitle(fitted)));
    yield* drawRows(sheet, of, fitted);
  }
  sheet.append(...of.lists.map(list));
  return sheet;
}

const furtherTitle = ({ columns }: FittedTable): string =>
  columns
    .filter(({ column }) => column.movable)
    .map(({ column }) => column.heading.replace(/,[^,]*$/, ''))
    .join(', ');

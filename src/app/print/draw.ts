/**
 * Draws a document for paper. Without React: fifty thousand rows are made once, never changed, and must be there when
 * the browser begins to print.
 */
import { documentName, type PrintDocument, type PrintList, type PrintRow } from './document.ts';
import { BOX_MM, type FittedColumn, type FittedTable, fitTables } from './fit.ts';

function make<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  className: string | null,
  ...parts: (Node | string)[]
): HTMLElementTagNameMap[Tag] {
  const element = document.createElement(tag);
  if (className) element.className = className;
  element.append(...parts);
  return element;
}

const SIDES: Readonly<Record<number, string>> = { 1: 'up', [-1]: 'down' };

function cell({ column }: FittedColumn, index: number): HTMLTableCellElement {
  const td = document.createElement('td');
  td.textContent = column.text(index);
  if (column.figure) td.className = 'figure';
  const side = SIDES[column.arrives?.(index) ?? 0];
  if (column.arrives) td.append(make('i', side ? `side ${side}` : 'side'));
  return td;
}

const box = (done: boolean | null): HTMLTableCellElement =>
  done === null ? make('td', null) : make('td', null, make('i', done ? 'print-box done' : 'print-box'));

function across(columns: number, row: Exclude<PrintRow, { kind: 'line' }>): HTMLTableCellElement {
  const td = make('td', null, make('b', null, row.text));
  if ('aside' in row) td.append(make('span', null, row.aside));
  td.colSpan = columns + 1;
  return td;
}

function drawRow(row: PrintRow, columns: readonly FittedColumn[]): HTMLTableRowElement {
  if (row.kind !== 'line') return make('tr', row.kind, across(columns.length, row));
  const tr = make('tr', null, box(row.done));
  for (const column of columns) tr.append(cell(column, row.index));
  return tr;
}

function head(columns: readonly FittedColumn[]): HTMLTableSectionElement {
  const cells = columns.map(({ column: { heading, figure } }) =>
    make('th', figure ? 'figure' : null, heading.replace(', ', '\n')),
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

/** A new part of the table: what belongs together stays together at its beginning. */
const begins = ({ kind }: PrintRow): boolean => kind === 'shot' || kind === 'action';

function* drawTable(
  { rows }: PrintDocument,
  { columns, typePt }: FittedTable,
): Generator<void, HTMLTableElement> {
  const table = make('table', null, make('colgroup', null, ...widths(columns)), head(columns));
  table.style.fontSize = `${typePt}pt`;
  let body = make('tbody', null);
  let before: PrintRow | null = null;
  for (let row = 0; row < rows.count; row += 1) {
    const found = rows.at(row);
    if (begins(found) && body.rows.length > 0 && !(before && begins(before))) {
      table.append(body);
      body = make('tbody', null);
    }
    body.append(drawRow(found, columns));
    before = found;
    if (row % 100 === 99) yield;
  }
  table.append(body);
  return table;
}

const list = ({ title, items }: PrintList): HTMLElement =>
  make(
    'section',
    null,
    make('h2', null, title),
    make('ul', null, ...items.map((item) => make('li', null, item))),
  );

function opening({ title, kind, facts, remarks }: PrintDocument): HTMLElement {
  const paragraphs = remarks.map((text) => make('p', 'remark', text));
  const heading = make('h1', null, title, make('small', null, kind));
  return make('header', null, heading, make('p', 'facts', facts.join(' \u00B7 ')), ...paragraphs);
}

/** Draws a document, giving way between rows. */
export function* drawDocument(of: PrintDocument): Generator<void, HTMLElement> {
  const sheet = make('article', 'print-sheet', opening(of));
  sheet.setAttribute('aria-label', documentName(of));
  const tables = fitTables(of.columns);
  for (const [t, fitted] of tables.entries()) {
    if (t > 0) sheet.append(make('h2', 'further', furtherTitle(fitted)));
    sheet.append(yield* drawTable(of, fitted));
  }
  sheet.append(...of.lists.map(list));
  return sheet;
}

const furtherTitle = ({ columns }: FittedTable): string =>
  columns
    .filter(({ column }) => column.movable)
    .map(({ column }) => column.heading.replace(/,[^,]*$/, ''))
    .join(', ');

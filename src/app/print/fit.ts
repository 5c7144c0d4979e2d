/** Columns onto paper: one table if it is wide enough, else the rig and the sources in tables of their own. */
import type { PrintColumn, PrintDocument, PrintRow, PrintRows } from './document.ts';
import { emsOf } from './ems.ts';

/** Both A4 (210 x 297 mm, ISO 216) and Letter (215.9 x 279.4 mm, ANSI/ASME Y14.1) leave this within the margins. */
export const PAPER_MM = { width: 190, height: 249 } as const;

/** Type that a table may be set in, largest first, points. */
const TYPE_PT = [8.5, 7] as const;

const MM_A_POINT = 25.4 / 72;
const PADDING_MM = 2.4;
/** Room for the box that is ticked. */
export const BOX_MM = 5.5;
const LEAST_MM = 8;
/** What grows needs as much, each share. */
const LEAST_SHARE_MM = 26;

/** A column with its width; null takes what is left. */
export interface FittedColumn {
  column: PrintColumn;
  widthMm: number | null;
}

/** One table as it is printed. */
export interface FittedTable {
  typePt: number;
  columns: FittedColumn[];
}

/** Beside a position stands from which side it is arrived at. */
const SIDE_MM = 2.5;
/** A longer word of a heading is broken. */
const LONGEST_WORD_EM = 6.5;

/** Width of a column that does not grow: that of its widest cell, or of the longest word of its heading. */
function widthMm({ em, heading, arrives }: PrintColumn, typePt: number): number {
  const word = Math.max(...heading.split(' ').map(emsOf));
  const cellMm = em * typePt * MM_A_POINT + (arrives ? SIDE_MM : 0);
  return Math.max(
    LEAST_MM,
    Math.max(cellMm, Math.min(word, LONGEST_WORD_EM) * typePt * MM_A_POINT) + PADDING_MM,
  );
}

/** Width that columns ask for at least. */
const askedMm = (columns: readonly PrintColumn[], typePt: number): number =>
  columns.reduce(
    (sum, column) => sum + (column.grows ? column.grows * LEAST_SHARE_MM : widthMm(column, typePt)),
    BOX_MM,
  );

const fits = (columns: readonly PrintColumn[], typePt: number): boolean =>
  askedMm(columns, typePt) <= PAPER_MM.width;

/** Gives each column its width. The first that grows takes the rest on wider paper. */
function fitted(columns: readonly PrintColumn[], typePt: number): FittedTable {
  const fixedMm = columns.reduce((sum, column) => sum + (column.grows ? 0 : widthMm(column, typePt)), BOX_MM);
  const shares = columns.reduce((sum, { grows = 0 }) => sum + grows, 0);
  const shareMm = (PAPER_MM.width - fixedMm) / Math.max(1, shares);
  const first = columns.find(({ grows }) => grows);
  return {
    typePt,
    columns: columns.map((column) => ({
      column,
      widthMm: column === first ? null : column.grows ? column.grows * shareMm : widthMm(column, typePt),
    })),
  };
}

/** Movable columns in as few tables as hold them, evenly. */
function further(
  leads: readonly PrintColumn[],
  movable: readonly PrintColumn[],
  typePt: number,
): FittedTable[] {
  for (let tables = 1; ; tables += 1) {
    const each = Math.ceil(movable.length / tables);
    const parts = Array.from({ length: tables }, (_, t) => movable.slice(t * each, (t + 1) * each));
    const sets = parts.filter(({ length }) => length > 0).map((part) => [...leads, ...part]);
    if (each === 1 || sets.every((set) => fits(set, typePt))) return sets.map((set) => fitted(set, typePt));
  }
}

/** Tables that hold all columns, none wider than the paper. */
export function fitTables(columns: readonly PrintColumn[]): FittedTable[] {
  const [normal, small] = TYPE_PT;
  for (const typePt of TYPE_PT) if (fits(columns, typePt)) return [fitted(columns, typePt)];
  const staying = columns.filter(({ movable }) => !movable);
  const leads = columns.filter(({ leads }) => leads);
  const movable = columns.filter((column) => column.movable);
  return [fitted(staying, fits(staying, normal) ? normal : small), ...further(leads, movable, normal)];
}

/** Rows that are looked at to tell how many pages there will be. */
const SAMPLE = 400;
const LINE_HEIGHT = 1.3;
/** Above, below, and the line under it. */
const ROW_PADDING_MM = 1.4;
const HEAD_MM = 9;

/** Lines of type that a row takes in a table. */
function linesOf(row: PrintRow, { columns, typePt }: FittedTable): number {
  if (row.kind !== 'line') return 1.6;
  const fixed = columns.reduce((sum, { widthMm: mm }) => sum + (mm ?? 0), BOX_MM);
  return columns.reduce((most, { column, widthMm: mm }) => {
    const roomMm = (mm ?? PAPER_MM.width - fixed) - PADDING_MM;
    return Math.max(most, Math.ceil((emsOf(column.text(row.index)) * typePt * MM_A_POINT) / roomMm));
  }, 1);
}

function tableMm(rows: PrintRows, table: FittedTable): number {
  const stride = Math.max(1, Math.ceil(rows.count / SAMPLE));
  let [lines, seen] = [0, 0];
  for (let row = 0; row < rows.count; row += stride) {
    lines += linesOf(rows.at(row), table);
    seen += 1;
  }
  const rowMm = (lines / Math.max(1, seen)) * table.typePt * MM_A_POINT * LINE_HEIGHT + ROW_PADDING_MM;
  return rows.count * rowMm;
}

/** About how many pages a document has. */
export function pagesOf({ columns, rows }: PrintDocument): number {
  const mm = fitTables(columns).reduce((sum, table) => sum + tableMm(rows, table), 60);
  return Math.max(1, Math.round(mm / (PAPER_MM.height - HEAD_MM)));
}

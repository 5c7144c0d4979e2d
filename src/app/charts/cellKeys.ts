/** Where the keys take the chosen cell of a table. */

/** A cell by its row and column, counted from 0. */
export interface CellAt {
  row: number;
  column: number;
}

/** Rows of a page. */
const PAGE = 10;

/**
 * Cell that a key leads to; the first one while none is chosen.
 * @returns null for any other key
 */
export function cellAfterKey(
  key: string,
  at: CellAt | null,
  { rows, columns }: { rows: number; columns: number },
): CellAt | null {
  const { row, column } = at ?? { row: 0, column: 0 };
  const to = {
    ArrowDown: { row: row + 1, column },
    ArrowUp: { row: row - 1, column },
    ArrowRight: { row, column: column + 1 },
    ArrowLeft: { row, column: column - 1 },
    PageDown: { row: row + PAGE, column },
    PageUp: { row: row - PAGE, column },
    Home: { row: 0, column },
    End: { row: rows - 1, column },
  }[key];
  if (to === undefined || rows === 0 || columns === 0) return null;
  if (at === null) return { row: 0, column: 0 };
  return {
    row: Math.max(0, Math.min(rows - 1, to.row)),
    column: Math.max(0, Math.min(columns - 1, to.column)),
  };
}

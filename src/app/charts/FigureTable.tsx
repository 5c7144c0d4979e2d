// biome-ignore-all lint/a11y/noNoninteractiveElementToInteractiveRole: the table has the focus, and names the cell that the keys have chosen
/** A table of figures: one cell of it is chosen, by keys or by pressing it, and opens the working of what stands there. */
import { type KeyboardEvent, type MouseEvent, memo, useEffect, useId, useState } from 'react';
import { CellFoot } from '../working/CellFoot.tsx';
import { type CellFigure, type Chosen, chosenFigures, openByKey } from '../working/cellFigures.ts';
import { type CellAt, cellAfterKey } from './cellKeys.ts';
import type { TableColumn } from './chart.ts';

export interface TableProps {
  caption: string;
  columns: readonly TableColumn[];
  /** Indices of the rows, as the columns take them. */
  rows: readonly number[];
}

/** The figures of one cell. */
export function figuresOfCell(column: TableColumn | undefined, index: number): readonly CellFigure[] {
  if (!column) return [];
  const of = column.of?.(index);
  if (of) return [{ name: column.heading, text: column.cell(index), of }];
  return column.figures?.(index) ?? [];
}

/** The chosen cell's figures, or those of all of its row if it has none. */
function chosenOf({ columns, rows }: TableProps, at: CellAt | null): Chosen {
  const index = at && rows[at.row];
  if (at === null || index === null || index === undefined) return { row: '', figures: [], ofCell: false };
  const [first] = columns;
  const name = first?.cell(index) ?? '';
  const row = /^\d+$/.test(name) ? `${first?.heading} ${name}` : name;
  const all = columns.flatMap((column) => figuresOfCell(column, index));
  return chosenFigures(row, figuresOfCell(columns[at.column], index), all);
}

/** Cells are numbered in their own ids. */
const cellId = (id: string, row: number, column: number): string => `${id}-${row}-${column}`;

interface RowProps {
  id: string;
  row: number;
  index: number;
  columns: readonly TableColumn[];
  /** Column of the chosen cell; null on other rows. */
  chosen: number | null;
}

const Row = memo(function Row({ id, row, index, columns, chosen }: RowProps) {
  return (
    <tr data-row={row}>
      {columns.map((column, c) => (
        <td
          key={column.heading}
          id={chosen === c ? cellId(id, row, c) : undefined}
          className={chosen === c ? 'at' : undefined}
        >
          {column.cell(index)}
        </td>
      ))}
    </tr>
  );
});

/** The cell that was pressed. */
function pressedAt(target: EventTarget): CellAt | null {
  const cell = (target as Element).closest('td');
  const row = cell?.closest('tr')?.getAttribute('data-row');
  return cell && row ? { row: Number(row), column: cell.cellIndex } : null;
}

export function FigureTable(props: TableProps) {
  const { caption, columns, rows } = props;
  const id = useId();
  const [at, setAt] = useState<CellAt | null>(null);
  const chosen = chosenOf(props, at);
  const active = at === null ? undefined : cellId(id, at.row, at.column);
  useEffect(() => {
    if (active !== undefined)
      document.getElementById(active)?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }, [active]);
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const to = cellAfterKey(event.key, at, { rows: rows.length, columns: columns.length });
    if (to === null && !(chosen.ofCell && openByKey(event.key, chosen.figures))) return;
    event.preventDefault();
    event.stopPropagation();
    if (to !== null) setAt(to);
  };
  const onClick = ({ target }: MouseEvent) => {
    const pressed = pressedAt(target);
    if (pressed) setAt(pressed);
  };
  return (
    <div className="figure-table">
      <div className="chart-table">
        <table
          role="grid"
          aria-label={`${caption}, table`}
          aria-activedescendant={active}
          tabIndex={0}
          onKeyDown={onKeyDown}
          onClick={onClick}
        >
          <caption>{caption}</caption>
          <thead>
            <tr>
              {columns.map((column) => (
                <th key={column.heading} scope="col">
                  {column.heading}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((index, row) => (
              <Row key={index} {...{ id, row, index, columns }} chosen={at?.row === row ? at.column : null} />
            ))}
          </tbody>
        </table>
      </div>
      <CellFoot {...chosen} />
    </div>
  );
}

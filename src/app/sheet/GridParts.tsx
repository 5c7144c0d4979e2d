// biome-ignore-all lint/a11y/useSemanticElements: rows and cells of a virtual table are laid out as grids, which a table's own elements are not
// biome-ignore-all lint/a11y/useFocusableInteractive: the grid has the focus and names the row or cell that is at hand
/** A grid of which only the rows in sight are drawn: its box, heading, rows and cells. */
import type { ComponentProps, ReactNode } from 'react';

/** What the layout needs to know of a column. */
export interface GridColumn {
  id: string;
  heading: string;
  widthPx: number;
  grows?: boolean;
}

const track = ({ widthPx, grows }: GridColumn): string =>
  grows ? `minmax(${widthPx}px, 1fr)` : `${widthPx}px`;

interface GridProps extends ComponentProps<'div'> {
  label: string;
  columns: readonly GridColumn[];
  /** Rows, the heading left out. */
  rows: number;
  /** Id of the row or cell that is at hand; undefined while it is not drawn. */
  active: string | undefined;
  multiple?: boolean;
}

export function Grid({ label, columns, rows, active, multiple, children, className, ...rest }: GridProps) {
  const least = columns.reduce((sum, { widthPx }) => sum + widthPx, 0);
  return (
    <div
      {...rest}
      className={`sheet-grid${className ? ` ${className}` : ''}`}
      role="grid"
      aria-label={label}
      aria-rowcount={rows + 1}
      aria-colcount={columns.length}
      aria-multiselectable={multiple}
      aria-activedescendant={active}
      tabIndex={0}
      style={{ '--cols': columns.map(track).join(' '), '--least': `${least}px` } as object}
    >
      {children}
    </div>
  );
}

/** The heading: it stays on top. */
export const GridHead = <Column extends GridColumn>({
  columns,
  classOf,
}: {
  columns: readonly Column[];
  classOf: (column: Column) => string;
}) => (
  <div className="head" role="rowgroup">
    <div className="r" role="row" aria-rowindex={1}>
      {columns.map((column, c) => (
        <div
          key={column.id}
          role="columnheader"
          data-head={column.id}
          aria-colindex={c + 1}
          className={`cell ${classOf(column)}`}
        >
          {column.heading}
        </div>
      ))}
    </div>
  </div>
);

/** As tall as all rows; those that are drawn are moved to their place. */
export const GridBody = ({
  heightPx,
  shiftPx,
  children,
}: {
  heightPx: number;
  shiftPx: number;
  children: ReactNode;
}) => (
  <div className="rows" role="rowgroup" style={{ height: heightPx }}>
    <div className="layer" role="presentation" style={{ transform: `translateY(${shiftPx}px)` }}>
      {children}
    </div>
  </div>
);

export const GridRow = (props: ComponentProps<'div'>) => <div {...props} role="row" />;
export const GridCell = (props: ComponentProps<'div'>) => <div {...props} role="gridcell" />;

/** A check box that the grid's own keys tick: it takes no focus of its own. */
export const GridCheck = ({ checked, ...rest }: ComponentProps<'button'> & { checked: boolean }) => (
  <button {...rest} type="button" role="checkbox" aria-checked={checked} tabIndex={-1} />
);

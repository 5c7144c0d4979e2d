import type { TableColumn } from './chart.ts';

/** As many rows as one still reads through. */
const MOST_ROWS = 200;

/** The same figures as the drawing, as a table that scrolls by itself. */
export function ChartTable({
  caption,
  columns,
  rows,
}: {
  caption: string;
  columns: TableColumn[];
  rows: number[];
}) {
  return (
    // Reachable by keyboard because it scrolls.
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region has to take the focus to be scrolled
    <section className="chart-table" aria-label={`${caption}, table`} tabIndex={0}>
      <table>
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
          {rows.map((index) => (
            <tr key={index}>
              {columns.map((column) => (
                <td key={column.heading}>{column.cell(index)}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** Indices of the rows: all of them, or evenly spread ones with the first and the last. */
export function tableRows(count: number): number[] {
  if (count <= MOST_ROWS) return Array.from({ length: count }, (_, index) => index);
  return Array.from({ length: MOST_ROWS }, (_, n) => Math.round((n * (count - 1)) / (MOST_ROWS - 1)));
}

/** Turns a drawing into its table and back. */
export function TableSwitch({
  of,
  on,
  onChange,
}: {
  of: string;
  on: boolean;
  onChange: (on: boolean) => void;
}) {
  const words = on ? 'Show as drawing' : 'Show as table';
  return (
    <button type="button" className="chart-link" aria-label={`${words}: ${of}`} onClick={() => onChange(!on)}>
      {words}
    </button>
  );
}

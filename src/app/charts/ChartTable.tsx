import { Suspense } from 'react';
import { fetched } from '../fetched.tsx';
import type { TableProps } from './FigureTable.tsx';

const FigureTable = fetched('The table', () => import('./FigureTable.tsx').then((part) => part.FigureTable));

/** As many rows as one still reads through. */
const MOST_ROWS = 200;

/** The same figures as the drawing, as a table that scrolls by itself. */
export const ChartTable = (props: TableProps) => (
  <Suspense fallback={<div className="figure-table" />}>
    <FigureTable {...props} />
  </Suspense>
);

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

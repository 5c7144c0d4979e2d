/** Comma-separated text (RFC 4180) that is safe to open in a spreadsheet. */
import type { AxisColumns } from '../engine/schedule-types.ts';
import { cleanText } from './clean.ts';

/** Ends every record, the last one too: RFC 4180, section 2. */
export const CSV_LINE_END = '\r\n';

/** A cell that begins like this, in either width, would be worked out as a formula; what is not seen before it is skipped. */
const FORMULA = /^[\s\p{Cf}]*[=+\-@\uFF1D\uFF0B\uFF0D\uFF20]|^[\t\r\n]/u;
const NEEDS_QUOTES = /[",\r\n]/;

/** A text cell: never a formula, nothing that acts on a terminal, and quoted where it has to be. */
export function textCell(text: string): string {
  const clean = cleanText(text);
  const safe = FORMULA.test(clean) ? `'${clean}` : clean;
  return NEEDS_QUOTES.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/**
 * A number cell with a point as decimal mark, rounded to a billionth (a millionth from a million on), which
 * hides binary noise and nothing else. Empty where there is no number, such as the energy left in the mains.
 */
export function numberCell(value: number): string {
  if (Number.isInteger(value)) return String(value);
  if (!Number.isFinite(value)) return '';
  const places = Math.abs(value) < 1e6 ? 1e9 : 1e6;
  return String(Math.round(value * places) / places);
}

/** One column: its heading, and the cell of the record with that index. */
export interface Column {
  heading: string;
  cell: (index: number) => string;
}

/** A column of numbers. */
export const numbers = (heading: string, values: ArrayLike<number>): Column => ({
  heading,
  cell: (index) => numberCell(values[index] ?? Number.NaN),
});

/** An axis's positions: `NAME.steps`, and `NAME.mm` or `NAME.deg`. */
export const axisColumns = ({ name, unit, steps, stepsPerUnit }: AxisPositions): Column[] => [
  numbers(`${name}.steps`, steps),
  { heading: `${name}.${unit}`, cell: (index) => numberCell((steps[index] ?? Number.NaN) / stepsPerUnit) },
];

type AxisPositions = Pick<AxisColumns, 'name' | 'unit' | 'steps' | 'stepsPerUnit'>;

const ROWS_A_CHUNK = 2000;

/** A table of so many records, its headings first, in chunks of whole records: a million need no long string. */
export function* csvTable(columns: readonly Column[], records: number): Generator<string, void, undefined> {
  const cells = columns.map(({ cell }) => cell);
  yield columns.map(({ heading }) => textCell(heading)).join(',') + CSV_LINE_END;
  for (let from = 0; from < records; from += ROWS_A_CHUNK) {
    let chunk = '';
    for (let index = from; index < Math.min(from + ROWS_A_CHUNK, records); index += 1) {
      let record = '';
      for (const cell of cells) record += record === '' ? cell(index) : `,${cell(index)}`;
      chunk += record + CSV_LINE_END;
    }
    yield chunk;
  }
}

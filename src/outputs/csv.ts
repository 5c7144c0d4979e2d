/** Comma-separated text (RFC 4180) that is safe to open in a spreadsheet. */
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

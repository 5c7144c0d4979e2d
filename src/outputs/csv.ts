/** Comma-separated text (RFC 4180) that is safe to open in a spreadsheet. */

/** Ends every record, the last one too: RFC 4180, section 2. */
export const CSV_LINE_END = '\r\n';

/** A cell that begins like this would be worked out as a formula. */
const FORMULA = /^[=+\-@\t\r]/;
const NEEDS_QUOTES = /[",\r\n]/;

/** A text cell: never a formula, and quoted where it has to be. */
export function textCell(text: string): string {
  const safe = FORMULA.test(text) ? `'${text}` : text;
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

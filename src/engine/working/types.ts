/** How a figure came about: its formula, and the numbers put in. */

/** One number of a formula. */
export interface Term {
  /** As it stands in the expression; camelCase with its unit: `clipLengthS`. */
  symbol: string;
  /** As the trade says it: `clip length`. */
  words: string;
  value: number;
  unit: string;
  /** The figure that it is itself, whose working can be asked for in turn; null for what was typed in, or known. */
  figure: string | null;
}

/** The working of one figure. */
export interface Working {
  /** Name of the figure: `totals.intervalS`, `margins.interval.left`. */
  figure: string;
  /** As it is called on the page: `Interval`. */
  title: string;
  value: number;
  unit: string;
  /** What people write in its place: of a moment ISO 8601 with its offset, a date, or a timecode; null for a plain number. */
  label: string | null;
  /**
   * The formula in plain arithmetic over the terms' symbols: + - * / ^ ( ) and the functions ceil, floor, round, min,
   * max, sqrt, log2, log, exp, sin, cos, tan, asin, acos, atan, atan2, abs (angles in radians), and the constant pi.
   * Evaluated with the terms it gives the value.
   */
  expression: string;
  terms: Term[];
  /** Frame that the numbers are of, counted from 1; null if of the whole run. */
  frame: number | null;
  /** What the formula does not show, a sentence each: what was rounded to what, and why. */
  remarks: string[];
  /** Where the formula comes from: a standard, a handbook, or 'common practice, no source'. */
  source: string;
}

/** Figures of a bench run, each against its budget. */

/** One figure. */
export interface Figure {
  what: string;
  value: number;
  unit: string;
  /** The most it may be; a figure without is only told. */
  budget?: number;
}

/** Sorts a copy, smallest first. */
const sorted = (values: readonly number[]): number[] => [...values].sort((a, b) => a - b);

/** The value that a share of all values does not exceed. */
export function quantile(values: readonly number[], share: number): number {
  if (values.length === 0) throw new RangeError('quantile: found no values, allowed: at least one');
  return sorted(values)[Math.min(values.length - 1, Math.ceil(share * values.length) - 1)] ?? Number.NaN;
}

/** The middle value. */
export const median = (values: readonly number[]): number => quantile(values, 0.5);

/** Whether a figure is over its budget; what is not a number is. */
export const isOver = ({ value, budget }: Figure): boolean => budget !== undefined && !(value <= budget);

const digits = (value: number): string => (value >= 1000 ? value.toFixed(0) : value.toPrecision(3));

/** A figure in one line. */
export function figureLine(figure: Figure): string {
  const { what, value, unit, budget } = figure;
  const figures = `${digits(value)} ${unit}`.trimEnd();
  const limit = budget === undefined ? '' : `  (budget ${budget} ${unit})`.replace(/ \)$/, ')');
  return `  ${what.padEnd(64)} ${figures.padStart(12)}${limit}${isOver(figure) ? '  OVER BUDGET' : ''}`;
}

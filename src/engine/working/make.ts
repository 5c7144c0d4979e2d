/** What the workings of all subjects are made with. */
import type { Plan } from '../plan/schema.ts';
import type { Schedule } from '../schedule-types.ts';
import { evaluate, parseFormula } from './expression.ts';
import type { Term, Working } from './types.ts';

export { ofFrame } from './names.ts';

/** A plan and what follows from it; its columns are those of the plan. */
export interface Worked {
  plan: Plan;
  made: Schedule;
}

/** The working of a figure, before it has its name. */
export interface Draft
  extends Pick<Working, 'title' | 'unit' | 'expression' | 'source'>,
    Partial<Pick<Working, 'frame' | 'label'>> {
  /** As the schedule has it; left out where that keeps seven digits only, or nothing: then the formula gives it. */
  value?: number;
  terms: readonly Term[];
  remarks?: readonly string[];
}

/** The workings of a subject by the names of their figures. Each is made when it is asked for. */
export type Workings = Readonly<Record<string, () => Draft>>;

/** What a working's figure is. */
export const worth = ({ value, expression, terms }: Draft): number =>
  value ??
  evaluate(parseFormula(expression), (symbol) => terms.find((each) => each.symbol === symbol)?.value);

/** One number of a formula. @param figure - the figure that it is itself */
export const term = (
  symbol: string,
  words: string,
  value: number,
  unit: string,
  figure: string | null = null,
): Term => ({ symbol, words, value, unit, figure });

/** Words at the beginning of a sentence. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

export const DEFINITION = 'Definition.';
export const PRACTICE = 'Common practice, no source.';
export const APEX =
  'EV = log₂(N²/t) (APEX; Ray, The Manual of Photography, 2000, p. 318); at ISO 100 as in ISO 2720.';

/** A figure that is another one: where it is worst, or longest. */
export const sameAs = (
  title: string,
  words: string,
  value: number,
  unit: string,
  figure: string | null,
  rest: Partial<Draft> = {},
): Draft => ({
  title,
  unit,
  expression: 'found',
  terms: [term('found', words, value, unit, figure)],
  source: DEFINITION,
  ...rest,
});

/** Frames from one on until another. @param k - counted from 0 @param next - counted from 1 */
export const framesUntil = (
  title: string,
  symbol: string,
  words: string,
  k: number,
  next: number,
): Draft => ({
  title,
  unit: 'frames',
  expression: `${symbol} - frame`,
  terms: [term(symbol, words, next, ''), term('frame', 'this frame', k + 1, '')],
  source: DEFINITION,
});

/** A figure that is nothing. */
export const none = (title: string, unit: string, why: string): Draft => ({
  title,
  unit,
  value: 0,
  expression: '0',
  terms: [],
  remarks: [why],
  source: DEFINITION,
});

/**
 * A quotient whose whole part has been counted exactly: where its double says otherwise, the nearest that does not.
 * @param whole - what rounding it down gives
 */
export function withFloor(value: number, whole: number): number {
  const found = Math.floor(value);
  if (found === whole) return value;
  return found > whole ? (whole + 1) * (1 - Number.EPSILON / 2) : whole;
}

/** The same for rounding up. */
export const withCeil = (value: number, whole: number): number =>
  Math.ceil(value) === whole ? value : Math.ceil(value) < whole ? (whole - 1) * (1 + Number.EPSILON) : whole;

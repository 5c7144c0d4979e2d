/** Workings as text: the formula in words, with its numbers, and all of it for the prompt. */
import { parseFormula, written } from './expression.ts';
import type { Term, Working } from './types.ts';

const MINUS = '\u2212';
const NO_BREAK = '\u00A0';

/** Digits of a double that mean something when it has come from a sum. */
const DIGITS = 15;

/** A number to all digits that mean something. */
export const exactNumber = (value: number): string => String(Number(value.toPrecision(DIGITS)));

/** Things that are counted, one by one. */
const COUNTED = /^(frame|exposure|action|keyframe|tick|pack|swap|interval|step|stop|day|period|byte|bit)s$/;

/** Units as people write them: of one thing without their s. */
export const unitText = (unit: string, value: number): string =>
  value === 1 && COUNTED.test(unit)
    ? unit.slice(0, -1)
    : unit.replace(/^deg/, '°').replaceAll('^2', '²').replaceAll('^3', '³');

/** A number with its unit, for reading. @param digits - how many count; whole numbers keep theirs */
export function readable(value: number, unit: string, digits = 6): string {
  const rounded = Number.isInteger(value) ? value : Number(value.toPrecision(digits));
  const number = String(rounded).replace('-', MINUS).replace('e+', 'e');
  const shown = unitText(unit, value);
  return shown === '' || shown.startsWith('°') ? `${number}${shown}` : `${number}${NO_BREAK}${shown}`;
}

const showing = (terms: readonly Term[], show: (term: Term) => string) => (symbol: string) => {
  const found = terms.find((each) => each.symbol === symbol);
  return found ? show(found) : symbol;
};

/** A formula and its numbers. */
type Formula = Pick<Working, 'expression'> & { terms: readonly Term[] };

/** The formula in words: `⌊event ÷ interval⌋ + 1`. */
export const formulaText = ({ expression, terms }: Formula): string =>
  written(
    parseFormula(expression),
    showing(terms, ({ words }) => words),
  );

/** The formula with its numbers put in, rounded for reading: `⌊5400 s ÷ 14 s⌋ + 1`. */
export const numbersText = ({ expression, terms }: Formula): string =>
  written(
    parseFormula(expression),
    showing(terms, ({ value, unit }) => readable(value, unit)),
  );

/** A number to all digits, with its unit as it is in the names. */
const withUnit = (value: number, unit: string): string =>
  unit === '' ? exactNumber(value) : `${exactNumber(value)} ${value === 1 ? unitText(unit, value) : unit}`;

const termLine = ({ symbol, value, unit, words, figure }: Term): string => {
  const from = figure === null ? '' : ` [${figure}]`;
  return `    ${symbol} = ${withUnit(value, unit)}: ${words}${from}`;
};

const paragraph = (label: string, text: string): string => `  ${label}: ${text}`;

/** Signs that every terminal can search for. */
const plain = (text: string): string => text.replaceAll(NO_BREAK, ' ').replaceAll(MINUS, '-');

/**
 * All of a working as lines of text. Numbers of the terms are to 15 digits: put into the expression they give the
 * value.
 */
export function workingText(working: Working): string {
  const { figure, title, value, unit, expression, terms, frame, remarks, source } = working;
  const where = frame === null ? '' : `, frame ${frame}`;
  return plain(
    [
      `${figure}: ${title}${where}`,
      `  = ${formulaText(working)}`,
      `  = ${numbersText(working)}`,
      `  = ${withUnit(value, unit)}`,
      ...(terms.length > 0
        ? [paragraph('in plain arithmetic', expression), '  with', ...terms.map(termLine)]
        : []),
      ...remarks.map((remark) => `  ${remark}`),
      paragraph('source', source),
      '',
    ].join('\n'),
  );
}

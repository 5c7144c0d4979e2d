/** Workings judged by an independent evaluator: their formulas, worked out by mathjs from their terms. */
import { compile, type EvalFunction } from 'mathjs';
import type { OnSet } from '../../../src/engine/onset/working.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import type { Schedule } from '../../../src/engine/schedule-types.ts';
import { figuresOf, type Working, workingOf } from '../../../src/engine/working/working.ts';
import { close, must, near } from '../../property/close.ts';
import {
  findingFigures,
  frameFigures,
  offsetFigures,
  sheetFigures,
  skyFigures,
  speedFigures,
  yearFigures,
} from './besides.ts';
import { rigFigures } from './rig-figures.ts';
import { type Scheduled, scheduled, scheduledAt } from './scheduled.ts';

const compiled = new Map<string, EvalFunction>();

/** What a formula comes to by mathjs. */
export function byMathjs(expression: string, terms: readonly { symbol: string; value: number }[]): number {
  const code = compiled.get(expression) ?? (compile(expression) as EvalFunction);
  compiled.set(expression, code);
  return Number(code.evaluate(Object.fromEntries(terms.map(({ symbol, value }) => [symbol, value]))));
}

/** Units that count whole things. */
const COUNTED = ['frames', 'packs', 'bytes', 'exposures'];

/** Size of what a formula adds and takes away: a difference keeps the rounding of its parts. */
function sizeOf({ expression, terms, unit }: Pick<Working, 'expression' | 'terms' | 'unit'>): number {
  const sizes = terms.map((term) => ({ ...term, value: Math.abs(term.value) }));
  if (!/[a-z]\w*\s*\(/i.test(expression)) return Math.abs(byMathjs(expression.replaceAll('-', '+'), sizes));
  return Math.max(0, ...sizes.filter((term) => term.unit === unit).map(({ value }) => value));
}

const known = new WeakMap<Schedule, Map<string, Working>>();

/** The working of a figure, which has to be there. */
export function mustHave(plan: Plan, made: Schedule, figure: string, run?: OnSet): Working {
  if (run) return found(workingOf(plan, made, figure, run), figure);
  const all = known.get(made) ?? new Map<string, Working>();
  const working = all.get(figure) ?? workingOf(plan, made, figure);
  known.set(made, all.set(figure, found(working, figure)));
  return found(working, figure);
}

function found(working: Working | null, figure: string): Working {
  if (working === null) throw new Error(`${figure} has no working`);
  return working;
}

/** Throws unless a working says all that it has to, and its formula gives its value. */
export function judgeWorking(plan: Plan, made: Schedule, figure: string, run?: OnSet): Working {
  const working = mustHave(plan, made, figure, run);
  const { expression, terms, value, title, unit, source } = working;
  must(title !== '' && source !== '', `${figure}: title and source`);
  must(Number.isFinite(value), `${figure}: ${value}`);
  for (const { symbol, words, value: number } of terms) {
    must(/^[a-z][A-Za-z0-9]*$/.test(symbol) && words !== '', `${figure}: ${symbol}, ${words}`);
    must(
      expression.match(/[A-Za-z]\w*/g)?.includes(symbol) ?? false,
      `${figure}: ${symbol} is not in ${expression}`,
    );
    must(Number.isFinite(number), `${figure}: ${symbol} is ${number}`);
  }
  must(new Set(terms.map(({ symbol }) => symbol)).size === terms.length, `${figure}: a symbol twice`);
  const got = byMathjs(expression, terms);
  const what = `${figure} = ${expression} with ${JSON.stringify(terms)}`;
  const whole = /ceil|floor|round/.test(expression) || terms.every((each) => Number.isInteger(each.value));
  if (COUNTED.includes(unit) && whole) must(got === value, `${what}: ${got}, not ${value}`);
  else close(got, value, what, sizeOf(working));
  for (const term of terms) if (term.figure !== null) judgeTerm(plan, made, working, term, run);
  return working;
}

function judgeTerm(
  plan: Plan,
  made: Schedule,
  { figure }: Working,
  term: Working['terms'][number],
  run?: OnSet,
): void {
  const itself = mustHave(plan, made, term.figure ?? '', run);
  close(term.value, itself.value, `${figure}: ${term.symbol} against ${term.figure}`, sizeOf(itself));
  must(
    term.unit === itself.unit,
    `${figure}: ${term.symbol} in ${term.unit}, ${term.figure} in ${itself.unit}`,
  );
}

// What crosses the frame in so long does not move but for roundings, and those are nobody's figure.
const NEVER_S = 1e9;

/** Throws unless a working comes to the figure of the schedule. */
function judgeFigure(plan: Plan, made: Schedule, figure: string, { value, single }: Scheduled): void {
  const working = judgeWorking(plan, made, figure);
  if (single && working.unit === 's' && value > NEVER_S) return;
  // Where the schedule has seven digits, a difference of theirs has fewer.
  if (single) near(working.value, value, figure, 1e-6 * Math.max(Math.abs(value), sizeOf(working)) + 1e-6);
  else close(working.value, value, figure);
}

/** Judges every figure that a plan has, and every figure of the schedule. Gives their names. */
export function judgeAll(plan: Plan, made: Schedule, frames: readonly number[]): string[] {
  const figures = figuresOf(plan, made);
  for (const figure of figures) judgeWorking(plan, made, figure);
  for (const [figure, value] of scheduled(made)) judgeFigure(plan, made, figure, value);
  const besides = [
    ...sheetFigures(plan),
    ...skyFigures(plan, made, plan.start.date),
    ...yearFigures(plan, made),
    ...rigFigures(plan, made),
    ...offsetFigures(plan, made),
  ];
  for (const [figure, value] of besides) judgeFigure(plan, made, figure, { value, single: false });
  const own = findingFigures(made).filter(([figure]) => figures.includes(figure));
  // Some of them come from columns in single precision.
  for (const [figure, value] of own) judgeFigure(plan, made, figure, { value, single: true });
  for (const frame of frames) {
    for (const [figure, value] of scheduledAt(made, frame)) judgeFigure(plan, made, figure, value);
    for (const [figure, value] of frameFigures(plan, made, frame))
      judgeFigure(plan, made, figure, { value, single: false });
    for (const [figure, value] of speedFigures(plan, made, frame))
      judgeFigure(plan, made, figure, { value, single: true });
  }
  return figures;
}

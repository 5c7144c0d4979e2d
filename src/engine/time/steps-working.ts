/** How the time came about that a shoot takes before its first frame and after its last. */
import type { Plan } from '../plan/schema.ts';
import { DEFINITION, type Draft, term, type Worked, type Workings } from '../working/make.ts';

/** A step of the day, and what it is called. */
type Step = readonly [name: keyof Plan['day'] & `${string}Min`, words: string];

const BEFORE: readonly Step[] = [
  ['travelMin', 'way there'],
  ['setUpMin', 'set-up'],
  ['balanceMin', 'balance and home'],
  ['rehearsalMin', 'rehearsal'],
  ['testFramesMin', 'test frames'],
  ['inHandMin', 'time in hand'],
];
const AFTER: readonly Step[] = [
  ['packUpMin', 'pack up'],
  ['travelMin', 'way back'],
];

const sumOf = ({ day }: Plan, title: string, steps: readonly Step[]): Draft => ({
  title,
  unit: 'min',
  expression: steps.map(([name]) => name).join(' + '),
  terms: steps.map(([name, words]) => term(name, words, day[name], 'min')),
  source: DEFINITION,
});

/** Workings of the day around a run; the hours of stop-motion are on the sheet. */
export const stepsWorkings = ({ plan }: Worked): Workings =>
  plan.technique === 'stopMotion'
    ? {}
    : {
        'day.beforeMin': () => sumOf(plan, 'Before the first frame', BEFORE),
        'day.afterMin': () => sumOf(plan, 'After the last frame', AFTER),
      };

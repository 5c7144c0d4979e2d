/** How the sums of a sheet came about: its frames and exposures over the actions, its energy over the days. */
import { DEFINITION, type Draft, sameAs, term } from '../working/make.ts';
import { ofAction } from '../working/names.ts';
import { doneIn } from './ticks.ts';
import type { Sheet } from './types.ts';

/** Parts of a sum that are named; what more there is stands as one. */
const MOST_PARTS = 12;

/** One part of a sum. */
interface Summand {
  words: string;
  value: number;
  figure: string | null;
}

/** A sum of parts, the first ones by name. @param symbol - with its unit: `frames`, `wh` */
function sum(title: string, unit: string, symbol: string, parts: readonly Summand[]): Draft {
  const named = parts.slice(0, parts.length > MOST_PARTS + 1 ? MOST_PARTS : parts.length);
  const others = parts.slice(named.length);
  const terms = named.map(({ words, value, figure }, n) =>
    term(`${symbol}${n + 1}`, words, value, unit, figure),
  );
  const rest = others.reduce((all, { value }) => all + value, 0);
  if (others.length > 0) terms.push(term(`${symbol}Others`, `the other ${others.length}`, rest, unit));
  return {
    title,
    value: parts.reduce((all, { value }) => all + value, 0),
    unit,
    expression: terms.length === 0 ? '0' : terms.map(({ symbol: each }) => each).join(' + '),
    terms,
    source: DEFINITION,
  };
}

/** Of some exposures those that are ticked. @param of - a shot or an action */
export const doneDraft = ({ columns }: Sheet, of: Parameters<typeof doneIn>[1], title: string): Draft =>
  sameAs(title, 'ticked on the sheet', doneIn(columns, of), 'exposures', null, {
    remarks: [`Of ${of.exposures}.`],
  });

/** Frames, or exposures, of one shot. @param shot - counted from 0 */
export const shotDraft = ({ shots, actions }: Sheet, shot: number, what: 'frames' | 'exposures'): Draft =>
  sum(
    `${shots[shot]?.name ?? ''}: ${what}`,
    what,
    what,
    actions.flatMap((action, a) =>
      action.shot === shot
        ? [{ words: actionWords(action.text, a), value: action[what], figure: ofAction(a, what) }]
        : [],
    ),
  );

const actionWords = (text: string, a: number): string => (text === '' ? `action ${a + 1}` : text);

export const framesDraft = ({ actions }: Sheet): Draft =>
  sum(
    'Frames of the sheet',
    'frames',
    'frames',
    actions.map(({ text, frames: value }, a) => ({
      words: actionWords(text, a),
      value,
      figure: ofAction(a, 'frames'),
    })),
  );

export const exposuresDraft = ({ actions }: Sheet): Draft =>
  sum(
    'Exposures',
    'exposures',
    'exposures',
    actions.map(({ text, exposures: value }, a) => ({
      words: actionWords(text, a),
      value,
      figure: ofAction(a, 'exposures'),
    })),
  );

export const energyDraft = ({ days, totals }: Sheet): Draft => ({
  ...sum(
    'Energy of the sheet',
    'Wh',
    'wh',
    days.map(({ date, energyWh }) => ({
      words: date,
      value: energyWh.reduce((all, { wh }) => all + wh, 0),
      figure: null,
    })),
  ),
  value: totals.energyWh,
  remarks: ['From all sources; the working of each day and source is in the days of work.'],
});

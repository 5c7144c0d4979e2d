/** How the figures of what a fix costs came about: the plan's with it, less the plan's without. */
import { DEFINITION, type Draft, term, type Worked, type Workings } from '../working/make.ts';
import { outcomeOf } from './trial.ts';
import { COST_FIGURES, type CostFigure } from './types.ts';

const DAY_MS = 86_400_000;

interface Compared {
  title: string;
  unit: string;
  /** What is compared, and the figure that it is; null if it is none by itself. */
  words: string;
  figure: string | null;
  /** @param now - the plan as it is */
  valueIn: (worked: Worked, now: Worked) => number;
}

const ofTotals = (
  title: string,
  words: string,
  unit: string,
  of: 'frames' | 'clipLengthS' | 'eventDurationS' | 'energyWh' | 'storageBytes',
): Compared => ({ title, unit, words, figure: `totals.${of}`, valueIn: ({ made }) => made.totals[of] });

const COMPARED: Readonly<Record<CostFigure, Compared>> = {
  frames: ofTotals('Frames more', 'frames', 'frames', 'frames'),
  clipS: ofTotals('Clip longer by', 'clip length', 's', 'clipLengthS'),
  startS: {
    title: 'Starts later by',
    unit: 's',
    words: 'first frame, counted from 00:00 UTC of the day as it is,',
    figure: null,
    valueIn: ({ made }, now) => (made.startMs - Math.floor(now.made.startMs / DAY_MS) * DAY_MS) / 1000,
  },
  eventS: ofTotals('Lasts longer by', 'first to last frame', 's', 'eventDurationS'),
  lightStops: {
    title: 'Light farther off by',
    unit: 'stops',
    words: 'farthest that a frame’s light is off',
    figure: null,
    valueIn: ({ made }) => outcomeOf(made).lightStops,
  },
  energyWh: ofTotals('Energy more', 'energy', 'Wh', 'energyWh'),
  storageBytes: ofTotals('Storage more', 'storage', 'bytes', 'storageBytes'),
};

type Named = (figure: string) => string;

function draftOf(
  { title, unit, words, figure, valueIn }: Compared,
  now: Worked,
  withIt: Worked,
  named: Named,
): Draft {
  return {
    title,
    unit,
    expression: 'withIt - now',
    terms: [
      term('withIt', `${words} with this way out`, valueIn(withIt, now), unit, figure && named(figure)),
      term('now', `${words} as it is`, valueIn(now, now), unit, figure),
    ],
    source: DEFINITION,
  };
}

/**
 * What a fix costs.
 * @param withIt - the plan with it
 * @param named - what a figure of that plan is called in this one
 */
export const costWorkings = (now: Worked, withIt: Worked, named: Named): Workings =>
  Object.fromEntries(
    COST_FIGURES.map((of) => [`cost.${of}`, () => draftOf(COMPARED[of], now, withIt, named)]),
  );

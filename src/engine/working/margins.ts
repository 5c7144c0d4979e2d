/** What is left of a margin, whatever it is of. */
import type { Margin } from '../findings/types.ts';
import { DEFINITION, type Draft, term, type Worked, type Workings, worth } from './make.ts';

/** Name of a margin's figure. */
export const ofMargin = (margin: Pick<Margin, 'id'>, what: string): string => `margins.${margin.id}.${what}`;

/** Used and available of a margin, to all digits. */
type Digits = Readonly<Record<'used' | 'available', () => number>>;

const partTerm = (margin: Margin, which: 'used' | 'available', digits: Digits) =>
  term(which, which, digits[which](), margin.unit, ofMargin(margin, which));

const left = (margin: Margin, digits: Digits): Draft => ({
  title: `${margin.label}: left`,
  unit: margin.unit,
  expression: 'available - used',
  terms: [partTerm(margin, 'available', digits), partTerm(margin, 'used', digits)],
  frame: margin.frame,
  remarks: [`${margin.when.charAt(0).toUpperCase()}${margin.when.slice(1)}.`],
  source: DEFINITION,
});

const headroomDraft = (margin: Margin, digits: Digits): Draft => ({
  title: `${margin.label}: headroom, share of the available above the reserve`,
  unit: '',
  expression: '(left - reserve) / available',
  terms: [
    term('left', 'left', worth(left(margin, digits)), margin.unit, ofMargin(margin, 'left')),
    term('reserve', 'reserve that you asked to keep', margin.reserve, margin.unit),
    partTerm(margin, 'available', digits),
  ],
  frame: margin.frame,
  source: DEFINITION,
});

const spare = (margin: Margin, digits: Digits): Draft => ({
  title: `${margin.label}: left above the reserve`,
  unit: margin.unit,
  expression: 'left - reserve',
  terms: [
    term('left', 'left', worth(left(margin, digits)), margin.unit, ofMargin(margin, 'left')),
    term('reserve', 'reserve that you asked to keep', margin.reserve, margin.unit),
  ],
  frame: margin.frame,
  source: DEFINITION,
});

const asItIs = (margin: Margin, which: 'used' | 'available'): Draft => ({
  title: `${margin.label}: ${which}`,
  value: margin[which],
  unit: margin.unit,
  expression: which,
  terms: [term(which, which, margin[which], margin.unit)],
  frame: margin.frame,
  source: DEFINITION,
});

function ofOne(margin: Margin, known: Workings): Workings {
  const part = (which: 'used' | 'available') =>
    known[ofMargin(margin, which)] ?? (() => asItIs(margin, which));
  const [used, available] = [part('used'), part('available')];
  const digits: Digits = { used: () => worth(used()), available: () => worth(available()) };
  return {
    [ofMargin(margin, 'used')]: used,
    [ofMargin(margin, 'available')]: available,
    [ofMargin(margin, 'left')]: () => left(margin, digits),
    ...(margin.reserve !== 0 && { [ofMargin(margin, 'spare')]: () => spare(margin, digits) }),
    ...(margin.available !== 0 && { [ofMargin(margin, 'headroom')]: () => headroomDraft(margin, digits) }),
  };
}

/**
 * All four figures of every margin.
 * @param known - what the subjects say themselves of where used and available come from
 */
export const marginWorkings = ({ made }: Worked, known: Workings): Workings =>
  Object.assign({}, ...made.margins.map((margin) => ofOne(margin, known)));

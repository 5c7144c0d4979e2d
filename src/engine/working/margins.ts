/** What is left of a margin, whatever it is of. */
import type { Margin } from '../findings/types.ts';
import { DEFINITION, type Draft, sameAs, term, type Worked, type Workings, worth } from './make.ts';

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

const share = (margin: Margin, digits: Digits): Draft => ({
  title: `${margin.label}: share of the available that is used`,
  unit: 'share',
  expression: 'used / available',
  terms: [partTerm(margin, 'used', digits), partTerm(margin, 'available', digits)],
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

/** Up to which frame the packs last at the mean of all frames. */
const lastFrame = (margin: Margin, digits: Digits, { made }: Worked): Draft => ({
  title: `${margin.label}: frame at which the reserve is come to, about`,
  unit: '',
  expression: 'floor((available - reserve) / (used / frames))',
  terms: [
    partTerm(margin, 'available', digits),
    term('reserve', 'reserve that you asked to keep', margin.reserve, margin.unit),
    partTerm(margin, 'used', digits),
    term('frames', 'frames', made.totals.frames, 'frames', 'totals.frames'),
  ],
  remarks: ['As if every frame drew the mean.'],
  source: DEFINITION,
});

const room = (margin: Margin, { made }: Worked): Draft => ({
  title: `${margin.label}: room for`,
  unit: 'frames',
  expression: made.cards.map((_, i) => `floor(card${i + 1} / frameBytes)`).join(' + '),
  terms: [
    ...made.cards.map(({ name, usableBytes }, i) =>
      term(`card${i + 1}`, `usable on ${name}`, usableBytes, 'bytes', `cards.${name}.usableBytes`),
    ),
    term('frameBytes', 'size of a frame', made.totals.frameBytes, 'bytes', 'totals.frameBytes'),
  ],
  source: DEFINITION,
});

/** An end of where an axis goes. */
function endOf(margin: Margin, { made }: Worked, which: 'lowest' | 'highest'): Draft {
  const axis = made.columns.axes.find(({ name }) => margin.id === `travel:${name}`);
  const steps = (which === 'lowest' ? axis?.lowestSteps : axis?.highestSteps) ?? 0;
  return {
    title: `${margin.label}: ${which} place`,
    unit: margin.unit,
    expression: 'microsteps / stepsPerUnit',
    terms: [
      term('microsteps', `${which} of all frames, microsteps from its zero`, steps, 'microsteps'),
      term(
        'stepsPerUnit',
        `microsteps a ${margin.unit}`,
        axis?.stepsPerUnit ?? 1,
        `microsteps/${margin.unit}`,
      ),
    ],
    source: DEFINITION,
  };
}

/** When a margin is tightest, or what it has room for. */
function whenOf(margin: Margin, digits: Digits, of: Worked): Workings {
  const named = (what: string, draft: () => Draft): Workings => ({ [ofMargin(margin, what)]: draft });
  if (margin.id.startsWith('source:')) return named('lastFrame', () => lastFrame(margin, digits, of));
  if (margin.id === 'cards') return named('room', () => room(margin, of));
  if (margin.id.startsWith('travel:'))
    return {
      ...named('from', () => endOf(margin, of, 'lowest')),
      ...named('to', () => endOf(margin, of, 'highest')),
    };
  const title = `${margin.label}: frame where it is tightest`;
  const remarks = ['The first, where there are several.'];
  return named('frame', () => sameAs(title, 'frame, found among all', margin.frame, '', null, { remarks }));
}

function ofOne(margin: Margin, known: Workings, of: Worked): Workings {
  const part = (which: 'used' | 'available') =>
    known[ofMargin(margin, which)] ?? (() => asItIs(margin, which));
  const [used, available] = [part('used'), part('available')];
  const digits: Digits = { used: () => worth(used()), available: () => worth(available()) };
  return {
    ...whenOf(margin, digits, of),
    [ofMargin(margin, 'used')]: used,
    [ofMargin(margin, 'available')]: available,
    [ofMargin(margin, 'left')]: () => left(margin, digits),
    ...(margin.reserve !== 0 && { [ofMargin(margin, 'spare')]: () => spare(margin, digits) }),
    ...(margin.available !== 0 && {
      [ofMargin(margin, 'share')]: () => share(margin, digits),
      [ofMargin(margin, 'headroom')]: () => headroomDraft(margin, digits),
    }),
  };
}

/**
 * All figures of every margin.
 * @param known - what the subjects say themselves of where used and available come from
 */
export const marginWorkings = (of: Worked, known: Workings): Workings =>
  Object.assign({}, ...of.made.margins.map((margin) => ofOne(margin, known, of)));

/** How moments came about, by the local clock, and what lies between two of them. */
import type { Plan } from '../plan/schema.ts';
import { type Draft, term } from '../working/make.ts';
import type { Term } from '../working/types.ts';
import { isoAt, offsetSpans, offsetText } from './clock.ts';

const DAY_S = 86_400;

export const CLOCK_SOURCE =
  'Local time is UTC and the offset of the zone (ISO 8601; IANA zone data of this machine).';

type Place = Pick<Plan['place'], 'zone' | 'utcOffsetMin'>;

/** An instant, and the figure that it is. */
export interface Moment {
  /** Milliseconds of the epoch. */
  ms: number;
  figure: string | null;
  /** As it stands in a formula: `sunset`. */
  words: string;
}

/** Offset from UTC of a place at an instant, whole minutes. */
export const offsetMinAt = ({ zone, utcOffsetMin }: Place, ms: number): number =>
  Math.round(offsetSpans(zone, ms, ms, utcOffsetMin)[0]?.offsetMin ?? 0);

/** Seconds since the local midnight before an instant. */
export function clockSeconds(place: Place, ms: number): number {
  const local = ms / 1000 + offsetMinAt(place, ms) * 60;
  return local - DAY_S * Math.floor(local / DAY_S);
}

const isoOf = (place: Place, ms: number): string =>
  isoAt(ms, [{ fromMs: ms, offsetMin: offsetMinAt(place, ms) }]);

/** What every moment says: its number, and what people write. */
export function momentBase(
  place: Place,
  ms: number,
): Pick<Draft, 'value' | 'unit' | 'label' | 'source'> & { remarks: string[] } {
  const label = isoOf(place, ms);
  const utc = isoAt(ms, [{ fromMs: ms, offsetMin: 0 }]).replace('+00:00', '');
  return {
    value: clockSeconds(place, ms),
    unit: 's',
    label,
    remarks: [`${label}, by UTC ${utc}. Seconds since local midnight.`],
    source: CLOCK_SOURCE,
  };
}

/** UTC and the offset of the zone make the clock. @param utcFigure - name of the working of its UTC */
export function momentDraft(
  title: string,
  place: Place,
  ms: number,
  {
    utcFigure = null,
    remarks = [],
    source,
  }: { utcFigure?: string | null; remarks?: string[]; source?: string } = {},
): Draft {
  const base = momentBase(place, ms);
  const offsetMin = offsetMinAt(place, ms);
  return {
    ...base,
    title,
    expression: 'utcS + 60 * offsetMin',
    terms: [
      term('utcS', 'by UTC', (base.value ?? 0) - 60 * offsetMin, 's', utcFigure),
      term('offsetMin', `offset of the zone, ${offsetText(offsetMin)}`, offsetMin, 'min'),
    ],
    remarks: [...base.remarks, ...remarks],
    source: source ?? CLOCK_SOURCE,
  };
}

/** A part of a sum of seconds: its formula, and what stands in it. */
export interface Part {
  text: string;
  term: Term;
}

/** Less than this is the rounding of a sum. */
const HAIR_S = 1e-6;

/** Parts that are not nothing. */
export const some = (parts: readonly Part[]): Part[] =>
  parts.filter(({ term: { value } }) => Math.abs(value) > HAIR_S);
export const textOf = (parts: readonly Part[]): string => parts.map(({ text }) => text).join('');
export const termsOf = (parts: readonly Part[]): Term[] => parts.map((part) => part.term);

export const daysPart = (sign: '+' | '-', days: number): Part => ({
  text: ` ${sign} 86400 * days`,
  term: term('days', 'midnights between', days, 'days'),
});

export const changePart = (sign: '+' | '-', changeS: number): Part => ({
  text: ` ${sign} changeS`,
  term: term('changeS', 'change of the clock', changeS, 's'),
});

/** What the clock does between two instants: its change in seconds, and the midnights that it passes. */
function clockBetween(place: Place, fromMs: number, toMs: number): { changeS: number; days: number } {
  const changeS = (offsetMinAt(place, toMs) - offsetMinAt(place, fromMs)) * 60;
  const clockS = clockSeconds(place, toMs) - clockSeconds(place, fromMs);
  return { changeS, days: Math.round(((toMs - fromMs) / 1000 + changeS - clockS) / DAY_S) };
}

const momentTerm = (symbol: string, place: Place, { ms, figure, words }: Moment): Term =>
  term(symbol, words, clockSeconds(place, ms), 's', figure);

/**
 * The seconds from one moment to another.
 * @param less - taken away from them
 */
export function betweenDraft(
  title: string,
  place: Place,
  from: Moment,
  to: Moment,
  less: readonly Part[] = [],
): Draft {
  const { changeS, days } = clockBetween(place, from.ms, to.ms);
  const parts = [...some([daysPart('+', days), changePart('-', changeS)]), ...less];
  return {
    title,
    unit: 's',
    expression: `toS - fromS${textOf(parts)}`,
    terms: [momentTerm('toS', place, to), momentTerm('fromS', place, from), ...termsOf(parts)],
    source: CLOCK_SOURCE,
  };
}

/**
 * A moment that comes after another.
 * @param parts - what lies between; what they leave open is `rest`
 * @param rest - words for that
 */
export function laterDraft(
  title: string,
  place: Place,
  from: Moment,
  toMs: number,
  parts: readonly Part[],
  rest: string | null = null,
): Draft {
  const { changeS, days } = clockBetween(place, from.ms, toMs);
  const base = momentBase(place, toMs);
  const known = parts.reduce((sum, { text, term: { value } }) => sum + factorOf(text) * value, 0);
  const restPart = {
    text: ' + restS',
    term: term('restS', rest ?? '', (toMs - from.ms) / 1000 - known, 's'),
  };
  const all = [
    ...parts,
    ...some([...(rest === null ? [] : [restPart]), changePart('+', changeS), daysPart('-', days)]),
  ];
  return {
    ...base,
    title,
    expression: `fromS${textOf(all)}`,
    terms: [momentTerm('fromS', place, from), ...termsOf(all)],
  };
}

/** What a part is taken times: ` + 60 * workMin`, ` - 60 * laterMin`, ` + elapsedS`. */
function factorOf(text: string): number {
  const [, sign = '+', times = '1'] = /^ ([+-]) (?:(\d+) \* )?\w+$/.exec(text) ?? [];
  return (sign === '-' ? -1 : 1) * Number(times);
}

/** A part of so many minutes, seconds. */
export const minutesPart = (
  symbol: string,
  words: string,
  minutes: number,
  figure: string | null = null,
): Part => ({
  text: ` + 60 * ${symbol}`,
  term: term(symbol, words, minutes, 'min', figure),
});
export const secondsPart = (
  symbol: string,
  words: string,
  seconds: number,
  figure: string | null = null,
): Part => ({
  text: ` + ${symbol}`,
  term: term(symbol, words, seconds, 's', figure),
});

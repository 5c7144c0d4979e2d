/** Days, lengths and verdicts in words. */
import type { OffsetSpan } from '../../engine/schedule-types.ts';
import type { Span } from '../../engine/sky/spans.ts';
import type { DayOfYear } from '../../engine/sky/year.ts';
import { clockAt } from '../../engine/time/clock.ts';
import { ofDate, ofWindow, ofYear, VERDICT_FIGURES } from '../../engine/working/names.ts';
import { durationText } from '../format/durations.ts';
import { NBSP, numberText, plural, withUnit } from '../format/numbers.ts';
import type { Standing } from '../icons.tsx';
import { type Piece, plainText } from '../working/sentence.ts';
import { isSkipped } from './calendar.ts';

const dateFormat = (options: Intl.DateTimeFormatOptions) => {
  const format = new Intl.DateTimeFormat('en-GB', { ...options, timeZone: 'UTC' });
  return (date: string): string => format.format(Date.parse(`${date}T00:00Z`)).replace(',', '');
};

/** `Saturday 8 August 2026`. */
export const longDate = dateFormat({ weekday: 'long', day: 'numeric', month: 'long', year: 'numeric' });
/** `Sat 8 Aug`. */
export const shortDate = dateFormat({ weekday: 'short', day: 'numeric', month: 'short' });
const plainDate = dateFormat({ day: 'numeric', month: 'long' });
/** `8 August`, on one line. */
export const dayMonth = (date: string): string => plainDate(date).replaceAll(' ', NBSP);

const monthFormat = new Intl.DateTimeFormat('en-GB', { month: 'long', timeZone: 'UTC' });
/** `March` of 2. */
export const monthName = (index: number): string => monthFormat.format(Date.UTC(2001, index));
/** `Mar` of 2. */
export const shortMonth = (index: number): string => monthName(index).slice(0, 3);

/** `20:31`, the minute below. */
export const minuteAt = (ms: number, offsets: readonly OffsetSpan[]): string =>
  clockAt(ms, offsets).slice(0, 5);

/** What there is, rounded down: minutes, below that seconds. */
export const haveText = (seconds: number): string =>
  durationText(seconds < 60 ? Math.floor(seconds) : Math.floor(seconds / 60) * 60, 0);

/** What is needed, rounded up in the same way. */
export const needText = (seconds: number): string =>
  durationText(seconds < 60 ? Math.ceil(seconds) : Math.ceil(seconds / 60) * 60, 0);

/** The parts of its windows on a day: `19:11 to 24:00`. */
export const windowsText = ({ windows, startMs, endMs }: DayOfYear, offsets: readonly OffsetSpan[]): string =>
  windows
    .filter(({ fromMs, toMs }) => toMs > startMs && fromMs < endMs)
    .map(({ fromMs, toMs }) => {
      const end = toMs >= endMs ? '24:00' : minuteAt(toMs, offsets);
      return `${minuteAt(fromMs, offsets)} to ${end}`;
    })
    .join(', ');

/** Length in seconds. */
export const lengthS = ({ fromMs, toMs }: Span): number => (toMs - fromMs) / 1000;

/** `+1 h`, `−30 min`. */
export const jumpText = (minutes: number): string =>
  `${minutes > 0 ? '+' : '\u2212'}${durationText(Math.abs(minutes) * 60, 0)}`;

const windowOf = (day: DayOfYear, { fromMs }: Span, what: string): string =>
  ofWindow(
    day.date,
    day.windows.findIndex((one) => one.fromMs === fromMs),
    what,
  );

/** What there is to spare, or why the run does not fit. */
export function verdictPieces(day: DayOfYear, runS: number): Piece[] {
  const { best, longest } = day;
  if (isSkipped(day)) return ['No such day here'];
  if (best) {
    const text = haveText((best.latestMs - best.earliestMs) / 1000);
    return ['Fits, ', { text, of: windowOf(day, best.span, 'spareS') }, ' to spare'];
  }
  if (day.verdict === 'moon')
    return ['Moon is up, ', { text: litText(day), of: ofDate(day.date, 'moonLitShare') }];
  if (!longest) return ['No window'];
  return ['Too short by ', { text: needText(runS - lengthS(longest)), of: windowOf(day, longest, 'spareS') }];
}

/** The same as it is read. */
export const verdictText = (day: DayOfYear, runS: number): string => plainText(verdictPieces(day, runS));

/** `28 % lit`. */
export const litText = ({ moonLitShare }: DayOfYear): string =>
  `${withUnit(numberText(moonLitShare * 100, 0), '%')} lit`;

/** How serious that is. */
export const standingOf = ({ verdict }: DayOfYear): Standing =>
  verdict === 'fits' ? 'fine' : verdict === 'too short' ? 'warning' : 'note';

/** How many days there are of each verdict. */
export type Counts = Record<DayOfYear['verdict'], number>;

export function countsOf(days: readonly DayOfYear[]): Counts {
  const counts: Counts = { fits: 0, 'too short': 0, moon: 0, 'no window': 0 };
  for (const day of days) if (!isSkipped(day)) counts[day.verdict] += 1;
  return counts;
}

/** Each verdict with how many days of a year it has, those that there are. */
export const countPieces = (counts: Counts, year: number): { text: string; of: string }[] =>
  (
    [
      ['fits', 'fit'],
      ['too short', 'too short'],
      ['moon', 'bright moon'],
      ['no window', 'no window'],
    ] as const
  ).flatMap(([verdict, words]) =>
    counts[verdict] > 0
      ? [{ text: `${counts[verdict]}${NBSP}${words}`, of: ofYear(year, VERDICT_FIGURES[verdict]) }]
      : [],
  );

const fits = (day: DayOfYear): boolean => day.verdict === 'fits' && !isSkipped(day);

/** How many days of a year fit. */
function fitPieces(days: readonly DayOfYear[], year: number): Piece[] {
  const fit = countsOf(days).fits;
  if (fit === 0) return ['No day fits.'];
  const text = fit === 1 ? 'One day' : plural(fit, 'day');
  return [{ text, of: ofYear(year, VERDICT_FIGURES.fits) }, fit === 1 ? ' fits.' : ' fit.'];
}

/** A sentence that goes on where another one has begun. */
const lowered = (pieces: readonly Piece[]): Piece[] =>
  pieces.map((piece, n) =>
    n === 0 && typeof piece === 'string' ? `${piece.charAt(0).toLowerCase()}${piece.slice(1)}` : piece,
  );

/**
 * What came of the year, and of one day of it.
 * @param miss - how the planned start misses that day's window, if it does
 */
export function yearPieces(
  days: readonly DayOfYear[],
  day: DayOfYear,
  runS: number,
  miss: Piece | null = null,
): Piece[] {
  const next = days.find((one) => one.date > day.date && fits(one));
  return [
    ...fitPieces(days, Number(day.date.slice(0, 4))),
    ` ${dayMonth(day.date)}: `,
    ...lowered(verdictPieces(day, runS)),
    ...(miss ? [', but the planned start is ', miss] : []),
    next ? `; the next that fits is ${dayMonth(next.date)}.` : '.',
  ];
}

/** Stretches of days on end that fit, as a reader hears them. */
function fitStretches(days: readonly DayOfYear[]): string[] {
  const found: [string, string][] = [];
  let before = false;
  for (const day of days) {
    const last = found.at(-1);
    if (fits(day) && before && last) last[1] = day.date;
    else if (fits(day)) found.push([day.date, day.date]);
    before = fits(day);
  }
  return found.map(([from, to]) =>
    from === to ? plainDate(from) : `${plainDate(from)} to ${plainDate(to)}`,
  );
}

const MOST_STRETCHES = 8;

/** The carpet in words. */
export function carpetSummary(year: number, days: readonly DayOfYear[], asksWindow: boolean): string {
  const light = `The light of ${year}, one line a day, midnight to midnight.`;
  if (!asksWindow) return `${light} No window is asked for.`;
  const stretches = fitStretches(days);
  if (stretches.length === 0) return `${light} The run fits on no day.`;
  const named = stretches.slice(0, MOST_STRETCHES).join(', ');
  const more = stretches.length - MOST_STRETCHES;
  const rest = more > 0 ? `, and ${plural(more, 'stretch', 'stretches')} more` : '';
  return `${light} The run fits on ${plural(countsOf(days).fits, 'day')}: ${named}${rest}.`;
}

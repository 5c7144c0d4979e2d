/** One day of the year: when the run would start on it, and how the plan goes there. */

import type { Edit } from '../../engine/plan/paths.ts';
import type { OffsetSpan } from '../../engine/schedule-types.ts';
import { isWithin, missMs } from '../../engine/sky/aim.ts';
import type { Span } from '../../engine/sky/spans.ts';
import type { BestStart } from '../../engine/sky/windows.ts';
import type { DayOfYear } from '../../engine/sky/year.ts';
import { clockAt, isoAt, offsetInSpans } from '../../engine/time/clock.ts';
import { instantOf } from '../../engine/time/day.ts';
import { ofDate, ofWindow } from '../../engine/working/names.ts';
import type { Piece } from '../working/sentence.ts';
import { haveText, lengthS, needText } from './words.ts';

export { aimOf, isWithin, startOn } from '../../engine/sky/aim.ts';

const MINUTE_MS = 60_000;

/** Starts that are easy to say come first: whole five minutes, minutes, seconds. */
const HANDY_MS = [5 * MINUTE_MS, MINUTE_MS, 1000] as const;

/** A start near the best that is easy to say, still early and late enough. */
export function handyStart(
  { startMs, earliestMs, latestMs }: BestStart,
  offsets: readonly OffsetSpan[],
): number {
  const shiftMs = offsetInSpans(startMs, offsets) * MINUTE_MS;
  const rounded = HANDY_MS.map((step) => Math.round((startMs + shiftMs) / step) * step - shiftMs);
  return rounded.find((ms) => ms >= earliestMs && ms <= latestMs) ?? Math.floor(startMs / 1000) * 1000;
}

/**
 * Minutes from its event that a start tied to the sky would have to keep to fit on a day.
 * @param startMs - the start as planned
 * @returns whole minutes, those that change least; null if none fits
 */
export function betterOffsetMin(
  offsetMin: number,
  startMs: number,
  { earliestMs, latestMs }: BestStart,
): number | null {
  const least = offsetMin + (earliestMs - startMs) / MINUTE_MS;
  const most = offsetMin + (latestMs - startMs) / MINUTE_MS;
  const nearest = startMs < earliestMs ? Math.ceil(least) : Math.floor(most);
  return nearest >= least && nearest <= most && Math.abs(nearest) <= 1440 ? nearest : null;
}

/** The edits that put the plan on a day; the start stays tied to what it is tied to. */
export const dayEdits = (date: string): Edit[] => [['start.date', date]];

/** The edits that let the run start at an instant. */
export function startEdits(ms: number, offsets: readonly OffsetSpan[]): Edit[] {
  const iso = isoAt(ms, offsets);
  const localMs = Date.parse(`${iso.slice(0, 19)}Z`);
  const whenRepeated = instantOf(localMs, offsets, 'first') === ms ? 'first' : 'second';
  return [
    ['start.date', iso.slice(0, 10)],
    ['start.time', iso.slice(11, 19)],
    ['start.whenRepeated', whenRepeated],
  ];
}

/**
 * What a window comes to for the run.
 * @param whole - the window with what lies on the days before and after
 * @param w - which of the day's windows it is, counted from 0
 * @param aim - the starts in it that fit; null if it does not hold the run
 */
export function lightPieces(
  whole: Span,
  day: DayOfYear,
  w: number,
  aim: BestStart | null,
  runS: number,
  offsets: readonly OffsetSpan[],
): Piece[] {
  const of = (what: string) => ofWindow(day.date, w, what);
  const light: Piece[] = [
    { text: haveText(lengthS(whole)), of: of('lengthS') },
    ' of light, ',
    { text: needText(runS), of: 'run.neededS' },
    ' needed.',
  ];
  if (!aim) return light;
  const earliest = clockAt(Math.ceil(aim.earliestMs / 1000) * 1000, offsets);
  const latest = aim.latestMs >= day.endMs ? 'midnight' : clockAt(aim.latestMs, offsets);
  return [
    ...light,
    ' Start between ',
    { text: earliest, of: of('earliest') },
    ' and ',
    { text: latest, of: of('latest') },
    '.',
  ];
}

/** `starts at 20:31:10, 26 s before the latest`, `would start at 20:40:00, 9 min too late`. */
export function plannedPieces(
  startMs: number,
  { date }: Pick<DayOfYear, 'date'>,
  aim: BestStart,
  offsets: readonly OffsetSpan[],
): Piece[] {
  const at = { text: clockAt(startMs, offsets), of: ofDate(date, 'start') };
  if (!isWithin(startMs, aim)) return ['would start at ', at, ', ', missPiece(startMs, date, aim)];
  const leftS = (aim.latestMs - startMs) / 1000;
  const of = ofDate(date, 'start.leftS');
  return leftS < 1
    ? ['starts at ', at, ', ', { text: 'at the latest', of }]
    : ['starts at ', at, ', ', { text: haveText(leftS), of }, ' before the latest'];
}

/** How far a start on a date is from those that fit. */
export const missPiece = (startMs: number, date: string, aim: BestStart): Piece => ({
  text: missText(startMs, aim),
  of: ofDate(date, 'start.missS'),
});

/** `9 min too late`. */
const missText = (startMs: number, aim: BestStart): string =>
  `${needText(missMs(startMs, aim) / 1000)} too ${startMs < aim.earliestMs ? 'early' : 'late'}`;

/** Which part of the day a window belongs to, by solar noon. */
export function windowName({ fromMs, toMs }: Span, day: DayOfYear): string {
  const noonMs = day.events.find(({ name }) => name === 'solarNoon')?.ms;
  if (noonMs === null || noonMs === undefined) return 'Window';
  if (toMs <= noonMs) return 'Morning window';
  return fromMs >= noonMs ? 'Evening window' : 'Midday window';
}

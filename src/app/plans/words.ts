/** The lines of the list in words. */
import { wordText } from '../fields/words.ts';
import { dateOf } from '../format/clock.ts';
import { durationText } from '../format/durations.ts';
import { plural } from '../format/numbers.ts';
import type { Facts, Listed } from '../store/facts.ts';

/** `Time-lapse, 386 frames, 15.4 s, Sat 8 Aug 2026, Harbour mole`; what is not known is left out. */
export const factsText = ({ technique, frames, clipLengthS, date, place }: Facts): string =>
  [
    technique && wordText(technique),
    frames !== null && plural(frames, 'frame'),
    clipLengthS !== null && durationText(clipLengthS),
    date && dateOf(date),
    place,
  ]
    .filter(Boolean)
    .join(', ');

/** When something was changed, by the clock of this machine: the time today, else the day. */
export function changedText(changedMs: number, nowMs: number): string {
  const [then, now] = [new Date(changedMs), new Date(nowMs)];
  const parts: Intl.DateTimeFormatOptions =
    then.toDateString() === now.toDateString()
      ? { hour: '2-digit', minute: '2-digit' }
      : { day: 'numeric', month: 'short', year: 'numeric' };
  return new Intl.DateTimeFormat('en-GB', parts).format(then);
}

/** Whether its title or its facts have all the words that are looked for. */
export function isFound(listed: Listed, query: string): boolean {
  const text = `${listed.title} ${factsText(listed)}`.toLowerCase().replaceAll('\u00a0', ' ');
  return query
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word));
}

/** A title that none of these has: the title itself, or with the next number. */
export function freeTitle(titles: readonly string[], title: string, longest = 120): string {
  if (!titles.includes(title)) return title;
  const stem = title.replace(/ \d+$/, '');
  for (let count = 2; ; count += 1) {
    const next = `${stem.slice(0, longest - 5)} ${count}`;
    if (!titles.includes(next)) return next;
  }
}

/** How the planned start came about on a date, and how it lies in the window that it aims at. */
import { betweenDraft, laterDraft, type Moment, minutesPart, momentDraft } from '../time/moment-working.ts';
import type { Draft, Worked, Workings } from '../working/make.ts';
import { ofDate, ofWindow } from '../working/names.ts';
import type { SkyEvent } from './day.ts';
import { EVENT_WORDS } from './names.ts';
import type { BestStart } from './windows.ts';
import type { DayOfYear } from './year.ts';

/** A day with the moon's events among its own. */
type WholeDay = Omit<DayOfYear, 'events'> & { events: readonly SkyEvent[] };

/** The event that the start is tied to, on a day; null if it goes by the clock, or there is none. */
function tiedTo({ plan }: Worked, { date, events }: WholeDay): Moment | null {
  const { tiedTo: tied, event, whenRepeated } = plan.start;
  if (tied === 'clock') return null;
  const found = events.filter(({ name, ms }) => name === event && ms !== null);
  const chosen = whenRepeated === 'second' ? found.at(-1) : found[0];
  if (!chosen || chosen.ms === null) return null;
  const what = found.length > 1 && chosen === found[1] ? `${event}.second` : event;
  return { ms: chosen.ms, figure: ofDate(date, what), words: EVENT_WORDS[event] };
}

function planned(of: Worked, day: WholeDay, plannedMs: number): Draft {
  const { place, start } = of.plan;
  const event = tiedTo(of, day);
  const title = 'Planned start';
  if (!event) return momentDraft(title, place, plannedMs, { remarks: ['By the clock, as typed.'] });
  const offset = minutesPart('offsetMin', 'minutes after it', start.offsetMin);
  return {
    ...laterDraft(
      title,
      place,
      event,
      plannedMs,
      start.offsetMin === 0 ? [] : [offset],
      'rounding to whole seconds',
    ),
  };
}

/** How a start lies in its window: before the latest, or too early, or too late. */
function against(of: Worked, day: WholeDay, plannedMs: number, aim: BestStart): Workings {
  const { place } = of.plan;
  const w = day.windows.findIndex(({ fromMs }) => fromMs === aim.span.fromMs);
  const start: Moment = { ms: plannedMs, figure: ofDate(day.date, 'start'), words: 'planned start' };
  const edge = (what: 'earliest' | 'latest', ms: number): Moment => ({
    ms,
    // The earliest is shown up to a whole second.
    figure: w < 0 || what === 'earliest' ? null : ofWindow(day.date, w, what),
    words: `${what} start`,
  });
  const early = plannedMs < aim.earliestMs;
  const late = plannedMs > aim.latestMs;
  return {
    'start.leftS': () =>
      betweenDraft('Planned start: before the latest', place, start, edge('latest', aim.latestMs)),
    ...(early && {
      'start.missS': () =>
        betweenDraft('Planned start: too early', place, start, edge('earliest', aim.earliestMs)),
    }),
    ...(late && {
      'start.missS': () =>
        betweenDraft('Planned start: too late', place, edge('latest', aim.latestMs), start),
    }),
  };
}

/** Workings of the planned start on a day; names without the `days.DATE.` before them. */
export const plannedWorkings = (
  of: Worked,
  day: WholeDay,
  plannedMs: number,
  aim: BestStart | null,
): Workings => ({
  start: () => planned(of, day, plannedMs),
  ...(aim && against(of, day, plannedMs, aim)),
});

/** How the breaks of a day of work came about, and what lies between it and the next. */
import type { Plan } from '../plan/schema.ts';
import { offsetSpans } from '../time/clock.ts';
import { instantOf } from '../time/day.ts';
import { betweenDraft, type Moment, momentDraft } from '../time/moment-working.ts';
import { type Draft, PRACTICE, type Workings } from '../working/make.ts';
import { ofBreak, ofWorkDay } from '../working/names.ts';
import type { Sheet, SheetDay } from './types.ts';

const DAY_MS = 86_400_000;

/** A break of one day, and its workings by name. */
function breakWorkings(place: Plan['place'], date: string, d: number, b: number, given: Break): Workings {
  const middayMs = Date.parse(`${date}T12:00:00Z`);
  const spans = offsetSpans(place.zone, middayMs - 2 * DAY_MS, middayMs + 2 * DAY_MS, place.utcOffsetMin);
  const edge = (which: 'from' | 'to', words: string): Moment => ({
    ms: instantOf(Date.parse(`${date}T${given[which]}:00Z`), spans, 'first'),
    figure: ofWorkDay(d, ofBreak(b, which)),
    words,
  });
  const [from, to] = [edge('from', 'the break begins'), edge('to', 'the break ends')];
  const moment = (title: string, ms: number) => (): Draft =>
    momentDraft(`${date}: ${title}`, place, ms, {
      remarks: ['As typed: by the clock of the place, on every day of work.'],
      source: PRACTICE,
    });
  return {
    [ofBreak(b, 'from')]: moment('break begins', from.ms),
    [ofBreak(b, 'to')]: moment('break ends', to.ms),
    [ofBreak(b, 'lengthS')]: () => ({
      ...betweenDraft(`${date}: break`, place, from, to),
      remarks: ['Time before it that is too short for an exposure is not in it.'],
    }),
  };
}

type Break = Plan['sheet']['breaks'][number];

/** From the end of one day of work to the beginning of the next. */
function night({ place }: Plan, day: SheetDay, next: SheetDay, d: number): Draft {
  const daysOff = Math.round((Date.parse(next.date) - Date.parse(day.date)) / DAY_MS) - 1;
  return {
    ...betweenDraft(
      `${day.date}: until work goes on`,
      place,
      { ms: day.toMs, figure: ofWorkDay(d, 'to'), words: 'work ends' },
      { ms: next.fromMs, figure: ofWorkDay(d + 1, 'from'), words: `work of ${next.date} begins` },
    ),
    remarks: daysOff > 0 ? [`Days without work between: ${daysOff}.`] : [],
  };
}

/** Workings of where work stops on a day, counted from 0; names without the `sheet.day.N.` before them. */
export function pauseWorkings(plan: Plan, { days }: Sheet, d: number): Workings {
  const [day, next] = [days[d], days[d + 1]];
  if (!day) return {};
  const breaks = plan.sheet.breaks.map((each, b) => breakWorkings(plan.place, day.date, d, b, each));
  return Object.assign({}, ...breaks, next && { nightS: () => night(plan, day, next, d) });
}

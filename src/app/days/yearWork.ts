/** A year, worked out month by month, so that it can be shown as it comes and given up for a newer one. */
import type { Plan } from '../../engine/plan/schema.ts';
import { type DayOfYear, yearOfDays } from '../../engine/sky/year.ts';

/** What is to be worked out. */
export interface YearAsk {
  /** Tells one ask from another. */
  id: number;
  plan: Plan;
  year: number;
  /** First shutter opening to the last closing, seconds. */
  runS: number;
}

/** One month of it. */
export interface MonthDone {
  id: number;
  /** 0 to 11. */
  month: number;
  days: DayOfYear[];
}

const monthOf = ({ date }: DayOfYear): number => Number(date.slice(5, 7)) - 1;

/** The days of a year in months. */
export function* monthsOf({ plan, year, runS }: YearAsk): Generator<DayOfYear[]> {
  let month: DayOfYear[] = [];
  for (const day of yearOfDays(plan, year, runS)) {
    const [first] = month;
    if (first && monthOf(first) !== monthOf(day)) {
      yield month;
      month = [];
    }
    month.push(day);
  }
  if (month.length > 0) yield month;
}

/**
 * Answers asks, one at a time: a new one ends the one under way.
 * @param post - takes each month as it is done
 * @param pause - lets the next ask come in
 */
export function answering(post: (done: MonthDone) => void, pause: () => Promise<void>) {
  let latest = Number.NaN;
  return async (ask: YearAsk): Promise<void> => {
    latest = ask.id;
    let month = 0;
    for (const days of monthsOf(ask)) {
      post({ id: ask.id, month, days });
      month += 1;
      await pause();
      if (latest !== ask.id) return;
    }
  };
}

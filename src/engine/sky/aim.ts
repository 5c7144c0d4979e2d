/** Which window of a day the plan's start aims at. */
import type { Plan } from '../plan/schema.ts';
import { startFor } from '../schedule.ts';
import { type BestStart, bestStart } from './windows.ts';
import type { DayOfYear } from './year.ts';

/** The first shutter opening if the plan's date were another, milliseconds of the epoch. */
export const startOn = (plan: Plan, date: string): number =>
  startFor({ ...plan, start: { ...plan.start, date } }).startMs;

/** A day that the calendar of the place leaves out. */
export const isSkipped = ({ startMs, endMs }: Pick<DayOfYear, 'startMs' | 'endMs'>): boolean =>
  endMs <= startMs;

/** Whether a start is one that fits. */
export const isWithin = (startMs: number, { earliestMs, latestMs }: BestStart): boolean =>
  startMs >= earliestMs && startMs <= latestMs;

/** How far a start is from those that fit, milliseconds; 0 if it fits. */
export const missMs = (startMs: number, { earliestMs, latestMs }: BestStart): number =>
  Math.max(0, earliestMs - startMs, startMs - latestMs);

/**
 * The window that the plan's start aims at: one that is tied to the sky keeps to its part of the day, one by the
 * clock goes to where there is most to spare.
 * @param startMs - the start as planned on that day
 * @returns null if no window of the day holds the run
 */
export function aimOf(plan: Plan, day: DayOfYear, runS: number, startMs: number): BestStart | null {
  if (isSkipped(day)) return null;
  if (plan.start.tiedTo === 'clock' || day.best === null) return day.best;
  const [first, ...others] = day.windows.flatMap((span) => bestStart([span], runS, startMs) ?? []);
  if (!first) return day.best;
  return others.reduce((near, one) => (missMs(startMs, one) < missMs(startMs, near) ? one : near), first);
}

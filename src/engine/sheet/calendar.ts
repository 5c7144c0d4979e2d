/**
 * The working calendar of a place: local days one after another, and the stretches of work in them.
 *
 * Working hours and breaks are local clock times, so that a stretch is an hour longer or shorter on the day that the
 * clocks change within it. A time that comes twice counts the first time, one that is skipped as if it were not.
 * Days are worked out as they are asked for.
 */

import { WEEKDAYS } from '../plan/constants.ts';
import type { Plan } from '../plan/schema.ts';
import { lastWhere } from '../search.ts';
import { offsetSpans } from '../time/clock.ts';
import { clockMinutes, dayAt, instantOf, type LocalDay, localDays, nextDate } from '../time/day.ts';

const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;
const DAYS_A_CHUNK = 28;

/** Days from its first one that a calendar is followed for: twenty years of 365 days. */
const LONGEST_CALENDAR_DAYS = 2 * 3650;

/** Stretches of work of a plain day, minutes since midnight. */
export function workMinutes({ workFrom, workTo, breaks }: Plan['sheet']): (readonly [number, number])[] {
  const froms = [workFrom, ...breaks.map(({ to }) => to)].map(clockMinutes);
  const tos = [...breaks.map(({ from }) => from), workTo].map(clockMinutes);
  return froms.map((from, i) => [from, tos[i] as number] as const).filter(([from, to]) => to > from);
}

/** Fields of the sheet that say when there is work. */
export const HOURS = ['workFrom', 'workTo', 'breaks', 'daysOff', 'closedDates'] as const;

const weekdayOf = (date: string) =>
  WEEKDAYS[(new Date(`${date}T00:00:00Z`).getUTCDay() + 6) % 7] as (typeof WEEKDAYS)[number];

/** Stretches of work and the days that they lie in. */
export class WorkCalendar {
  readonly days: LocalDay[] = [];
  /** First stretch of each day; that of the next day if it has none. */
  readonly firstSpan: number[] = [];
  /** Of each stretch: its instants, its day, and all work before it. */
  readonly fromMs: number[] = [];
  readonly toMs: number[] = [];
  readonly dayOf: number[] = [];
  readonly workBeforeMs: number[] = [];
  /** Longest stretch of a plain day. */
  readonly longestMs: number;
  readonly #plan: Plan;
  readonly #stretches: (readonly [number, number])[];
  readonly #closed: ReadonlySet<string>;
  #workMs = 0;
  /** Asked for last: as a rule what is asked for next is near. */
  #day = 0;
  #span = 0;

  /** @param firstMs - an instant of its first day */
  constructor(plan: Plan, firstMs: number) {
    this.#plan = plan;
    this.#stretches = workMinutes(plan.sheet);
    this.#closed = new Set(plan.sheet.closedDates);
    this.longestMs = Math.max(0, ...this.#stretches.map(([from, to]) => to - from)) * MINUTE_MS;
    const { zone, utcOffsetMin } = plan.place;
    this.#extend(dayAt(firstMs, zone, utcOffsetMin).date);
  }

  /** End of the last day known. */
  get endMs(): number {
    return (this.days.at(-1) as LocalDay).endMs;
  }

  /** Makes sure that a stretch is known. @returns false if it lies beyond the calendar */
  hasSpan(span: number): boolean {
    while (span >= this.fromMs.length) if (!this.#further()) return false;
    return true;
  }

  /** First stretch that ends after an instant, from one on that is known not to be after it; it may not be there. */
  spanAfter(ms: number, from = 0): number {
    let span = from;
    while (this.hasSpan(span) && (this.toMs[span] as number) <= ms) span += 1;
    return span;
  }

  /** Whether it is the one that a plan asks for, from the day of an instant on. */
  isOf(plan: Plan, firstMs: number): boolean {
    const [first] = this.days as [LocalDay];
    const { place, sheet } = this.#plan;
    const sameHours = plan.place === place && HOURS.every((field) => plan.sheet[field] === sheet[field]);
    return sameHours && firstMs >= first.startMs && firstMs < first.endMs;
  }

  /** Day that an instant falls on, none before the first. */
  dayAt(ms: number): number {
    const { startMs, endMs } = this.days[this.#day] as LocalDay;
    if (ms >= startMs && ms < endMs) return this.#day;
    while (ms >= this.endMs && this.#further());
    this.#day = lastWhere(0, this.days.length, (i) => (this.days[i] as LocalDay).startMs <= ms);
    return this.#day;
  }

  /** All work from the beginning of the calendar to an instant, milliseconds. */
  workUntilMs(ms: number): number {
    while (ms >= this.endMs && this.#further());
    if (this.fromMs.length === 0) return 0;
    const { fromMs } = this;
    const isNear = (fromMs[this.#span] as number) <= ms && ms < (fromMs[this.#span + 1] ?? 0);
    if (!isNear) this.#span = lastWhere(0, fromMs.length, (i) => (fromMs[i] as number) <= ms);
    const span = this.#span;
    const worked = Math.min(ms, this.toMs[span] as number) - (fromMs[span] as number);
    return (this.workBeforeMs[span] as number) + Math.max(0, worked);
  }

  #further(): boolean {
    if (this.days.length >= LONGEST_CALENDAR_DAYS) return false;
    this.#extend(nextDate((this.days.at(-1) as LocalDay).date));
    return true;
  }

  #extend(date: string): void {
    const { zone, utcOffsetMin } = this.#plan.place;
    const firstMs = Date.parse(`${date}T00:00:00Z`);
    const lastMs = firstMs + DAYS_A_CHUNK * DAY_MS;
    const offsets = offsetSpans(zone, firstMs - 2 * DAY_MS, lastMs + 2 * DAY_MS, utcOffsetMin);
    const instant = (localMs: number) => instantOf(localMs, offsets, 'first');
    for (const day of localDays(date, DAYS_A_CHUNK, zone, utcOffsetMin)) {
      this.days.push(day);
      this.firstSpan.push(this.fromMs.length);
      if (!this.#closed.has(day.date) && !this.#plan.sheet.daysOff.includes(weekdayOf(day.date)))
        this.#addDay(day, instant);
    }
  }

  #addDay(day: LocalDay, instant: (localMs: number) => number): void {
    const midnightMs = Date.parse(`${day.date}T00:00:00Z`);
    for (const [from, to] of this.#stretches) {
      const fromMs = instant(midnightMs + from * MINUTE_MS);
      // What the calendar skips is no time to work in.
      const toMs = Math.min(day.endMs, instant(midnightMs + to * MINUTE_MS));
      if (toMs <= fromMs) continue;
      this.fromMs.push(fromMs);
      this.toMs.push(toMs);
      this.dayOf.push(this.days.length - 1);
      this.workBeforeMs.push(this.#workMs);
      this.#workMs += toMs - fromMs;
    }
  }
}

/** Ways out that many findings share: the same run, begun earlier or later, or on another day. */
import type { Edit } from '../plan/paths.ts';
import type { Plan } from '../plan/schema.ts';
import { startFor } from '../schedule.ts';
import { nextDate } from '../time/day.ts';
import { planWith, way } from './build.ts';
import type { Way } from './types.ts';

const MINUTE_MS = 60_000;
/** Farther than half a day it is another day that is meant. */
export const MOST_MINUTES = 720;
/** A year round, so that every date has been. */
const MOST_DAYS = 366;

/** The start so many minutes later: after its event, or by the clock, which may be on another date. */
function shifted({ start }: Plan, minutes: number): Edit[] {
  if (start.tiedTo === 'sky') return [['start.offsetMin', start.offsetMin + minutes]];
  const time = start.time.length === 5 ? `${start.time}:00` : start.time;
  const local = new Date(Date.parse(`${start.date}T${time}Z`) + minutes * MINUTE_MS).toISOString();
  return [
    ['start.date', local.slice(0, 10)],
    ['start.time', local.slice(11, start.time.length === 5 ? 16 : 19)],
  ];
}

/** The plan with a start so many minutes later, negative for earlier; null if it cannot be. */
export const startMoved = (plan: Plan, minutes: number): Plan | null =>
  planWith(plan, shifted(plan, minutes));

/** `25 min`, `1 h`, `1 h 25 min`. */
function span(minutes: number): string {
  const hours = Math.floor(minutes / 60);
  const rest = minutes % 60;
  return [
    ...(hours > 0 ? [`${hours}\u00A0h`] : []),
    ...(rest > 0 || hours === 0 ? [`${rest}\u00A0min`] : []),
  ].join(' ');
}

/** `Start 25 min earlier`, and at which time where it goes by the clock: the clock itself may skip or repeat an hour. */
function startWords(before: Plan, changed: Plan): string {
  const minutes = Math.round((startFor(changed).startMs - startFor(before).startMs) / MINUTE_MS);
  const moved = `Start ${span(Math.abs(minutes))} ${minutes < 0 ? 'earlier' : 'later'}`;
  return changed.start.tiedTo === 'clock'
    ? `${moved}, at ${changed.start.time.replace(/^(\d\d:\d\d):00$/, '$1')}`
    : moved;
}

/**
 * The run begins later by whole minutes.
 * @param wantedMin - minutes that should just suffice
 */
export const startLater = (plan: Plan, wantedMin = 1): Way[] =>
  way({
    kind: 'start-later',
    steps: MOST_MINUTES,
    first: Math.ceil(wantedMin - 1e-9),
    at: (step) => startMoved(plan, step),
    label: (changed) => startWords(plan, changed),
  });

/** The run begins earlier by whole minutes. See {@link startLater}. */
export const startEarlier = (plan: Plan, wantedMin = 1): Way[] =>
  way({
    kind: 'start-earlier',
    steps: MOST_MINUTES,
    first: Math.ceil(wantedMin - 1e-9),
    at: (step) => startMoved(plan, -step),
    label: (changed) => startWords(plan, changed),
  });

/** The same run on a later day, everything else as it is. @param wantedDays - days that should just suffice */
export const dayLater = (plan: Plan, wantedDays = 1): Way[] =>
  way({
    kind: 'day-later',
    steps: MOST_DAYS,
    first: wantedDays,
    at: (step) => planWith(plan, [['start.date', nextDate(plan.start.date, step)]]),
    label: (changed) => `On ${changed.start.date}`,
  });

/** The same run on an earlier day. See {@link dayLater}. */
export const dayEarlier = (plan: Plan, wantedDays = 1): Way[] =>
  way({
    kind: 'day-earlier',
    steps: MOST_DAYS,
    first: wantedDays,
    at: (step) => planWith(plan, [['start.date', nextDate(plan.start.date, -step)]]),
    label: (changed) => `On ${changed.start.date}`,
  });

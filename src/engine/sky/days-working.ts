/** How the figures of a date came about: events, light, windows, the start in them; and how many days of a year fit. */
import type { Plan } from '../plan/schema.ts';
import { offsetText } from '../time/clock.ts';
import { offsetMinAt } from '../time/moment-working.ts';
import { DEFINITION, type Draft, sameAs, term, type Worked, type Workings } from '../working/make.ts';
import { ofDate, VERDICT_FIGURES } from '../working/names.ts';
import { aimOf, isSkipped, startOn } from './aim.ts';
import { moonEvents, type SkyEvent } from './day.ts';
import { eventWorkings } from './day-working.ts';
import { plannedWorkings } from './planned-working.ts';
import type { Span } from './spans.ts';
import { sunMomentWorkings } from './sun-moment-working.ts';
import { windowWorkings } from './window-working.ts';
import { type Site, setHitSpans, siteOf } from './windows.ts';
import { litShare } from './working.ts';
import { type DayOfYear, type DayVerdict, dayOfYear, yearOfDays } from './year.ts';

/** From the first shutter opening to the last closing, seconds: what a window has to hold. */
export const neededS = ({ totals, columns }: Worked['made']): number =>
  totals.eventDurationS + (columns.exposureS.at(-1) ?? 0);

function needed({ made }: Worked): Draft {
  const last = made.totals.frames - 1;
  return {
    title: 'Light needed',
    value: neededS(made),
    unit: 's',
    expression: 'eventS + lastS',
    terms: [
      term('eventS', 'event', made.totals.eventDurationS, 's', 'totals.eventDurationS'),
      term(
        'lastS',
        'exposure of the last frame',
        made.columns.exposureS[last] ?? 0,
        's',
        `frame.${last + 1}.exposureS`,
      ),
    ],
    remarks: ['First shutter opening to the last closing.'],
    source: DEFINITION,
  };
}

/** The events of a day, the moon's too, those that happen in order of time. */
export function eventsOn(plan: Plan, day: DayOfYear): SkyEvent[] {
  const site = siteOf(plan);
  const moon = site ? moonEvents(day, site.latitudeDeg, site.longitudeDeg) : [];
  const inTime = ({ ms }: SkyEvent) => ms ?? Number.POSITIVE_INFINITY;
  return [...day.events, ...moon].sort((a, b) => inTime(a) - inTime(b));
}

function offset({ place }: Plan, { date, startMs }: DayOfYear): Draft {
  const offsetMin = offsetMinAt(place, startMs);
  const words = place.utcOffsetMin === null ? `offset of ${place.zone}` : 'offset as typed';
  return sameAs('Offset from UTC', words, offsetMin, 'min', null, {
    remarks: [`${offsetText(offsetMin)} at the beginning of ${date}.`],
    source: place.utcOffsetMin === null ? 'IANA zone data of this machine.' : DEFINITION,
  });
}

/** A date that there is. */
const isDate = (date: string): boolean => {
  const ms = Date.parse(`${date}T00:00:00Z`);
  return !Number.isNaN(ms) && new Date(ms).toISOString().startsWith(date);
};

function madeFor(of: Worked, date: string): Workings {
  const { plan, made } = of;
  const site = siteOf(plan);
  const day = site && isDate(date) ? dayOfYear(plan, date, neededS(made)) : null;
  if (!site || !day || isSkipped(day)) return {};
  const plannedMs = startOn(plan, date);
  const aim = plan.window.used ? aimOf(plan, day, neededS(made), plannedMs) : null;
  const events = eventsOn(plan, day);
  return {
    ...eventWorkings(of, day, site, events),
    moonLitShare: () => litShare((day.startMs + day.endMs) / 2, 'in the middle of the day'),
    offsetMin: () => offset(plan, day),
    ...(plan.window.used && windowWorkings(of, day, neededS(made))),
    ...paneWorkings(plan, site, date, setHitSpans(plan, day.startMs, day.endMs)),
    ...plannedWorkings(of, { ...day, events }, plannedMs, aim),
  };
}

/** When the sun comes through the pane onto the set, and when it leaves. */
function paneWorkings({ place }: Plan, site: Site, date: string, hits: readonly Span[]): Workings {
  const edge = (h: number, what: 'from' | 'to', ms: number): Workings =>
    sunMomentWorkings(
      `pane.${h + 1}.${what}`,
      { place, site, title: `Sun ${what === 'from' ? 'reaches' : 'leaves'} the set`, ms },
      (key) => ofDate(date, key),
    );
  return Object.assign(
    {},
    ...hits.flatMap(({ fromMs, toMs }, h) => [edge(h, 'from', fromMs), edge(h, 'to', toMs)]),
  );
}

const known = new WeakMap<Worked['made'], Map<string, Workings>>();

/**
 * Workings of the sky on a date.
 * @param date - `yyyy-mm-dd`
 * @returns names without the `days.DATE.` before them; none without a place, or on a day that the calendar skips
 */
export function dateWorkings(of: Worked, date: string): Workings {
  const dates = known.get(of.made) ?? new Map<string, Workings>();
  const workings = dates.get(date) ?? madeFor(of, date);
  known.set(of.made, dates.set(date, workings));
  return workings;
}

const MONTHS = [
  'january',
  'february',
  'march',
  'april',
  'may',
  'june',
  'july',
  'august',
  'september',
  'october',
  'november',
  'december',
] as const;

const years = new WeakMap<Worked['made'], Map<number, Pick<DayOfYear, 'date' | 'verdict'>[]>>();

/** Verdicts of a year's days, those that the calendar skips left out; worked out once. */
function yearOf({ plan, made }: Worked, year: number): Pick<DayOfYear, 'date' | 'verdict'>[] {
  const known = years.get(made) ?? new Map<number, Pick<DayOfYear, 'date' | 'verdict'>[]>();
  const found = known.get(year) ?? [];
  if (!known.has(year))
    for (const day of yearOfDays(plan, year, neededS(made)))
      if (!isSkipped(day)) found.push({ date: day.date, verdict: day.verdict });
  years.set(made, known.set(year, found));
  return found;
}

const YEAR_TITLES: Readonly<Record<DayVerdict, string>> = {
  fits: 'Days that fit',
  'too short': 'Days that are too short',
  moon: 'Days with a bright moon',
  'no window': 'Days without a window',
};

const YEAR_REMARKS: Readonly<Record<DayVerdict, string>> = {
  fits: 'A day fits if one of its windows is as long as the light that the run needs.',
  'too short': 'A day is too short if it has windows, none of them as long as the light that the run needs.',
  moon: 'Windows that would hold the run are cut by a bright moon.',
  'no window': 'At no time of the day all that the window asks for holds.',
};

function countOf(of: Worked, year: number, verdict: DayVerdict): Draft {
  const counts = MONTHS.map((_, m) => {
    const month = `${year}-${String(m + 1).padStart(2, '0')}`;
    return yearOf(of, year).filter((day) => day.date.startsWith(month) && day.verdict === verdict).length;
  });
  return {
    title: `${YEAR_TITLES[verdict]}, ${year}`,
    value: counts.reduce((sum, count) => sum + count, 0),
    unit: 'days',
    expression: MONTHS.join(' + '),
    terms: MONTHS.map((month, m) =>
      term(month, month.charAt(0).toUpperCase() + month.slice(1), counts[m] ?? 0, 'days'),
    ),
    remarks: [YEAR_REMARKS[verdict]],
    source: DEFINITION,
  };
}

/** Workings of how many days of a year fit; names without the `days.YEAR.` before them. */
export const yearWorkings = (of: Worked, year: number): Workings =>
  of.plan.window.used && siteOf(of.plan)
    ? Object.fromEntries(
        Object.entries(VERDICT_FIGURES).map(([verdict, what]) => [
          what,
          () => countOf(of, year, verdict as DayVerdict),
        ]),
      )
    : {};

/** Workings of the sky over the run: on the plan's own date, by shorter names. */
export const skyWorkings = (of: Worked): Workings => ({
  'run.neededS': () => needed(of),
  ...Object.fromEntries(
    Object.entries(dateWorkings(of, of.plan.start.date)).map(([what, draft]) => [`sky.${what}`, draft]),
  ),
});

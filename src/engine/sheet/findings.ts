/** What the sheet says: what does not fit into the working day, what is open, what to black out and to bring. */
import { SEVERITIES } from '../findings/types.ts';
import { bytes, counted, seconds } from '../findings/words.ts';
import type { Plan } from '../plan/schema.ts';
import { isoIn } from '../time/clock.ts';
import type { WorkCalendar } from './calendar.ts';
import type { Planned } from './ticks.ts';
import type { Sheet, SheetFinding, SheetTotals } from './types.ts';
import { HAIR_MS } from './walk.ts';

/** What is judged. */
export interface Judged {
  plan: Plan;
  sheet: Omit<Sheet, 'totals'>;
  totals: Omit<SheetTotals, 'findings'>;
  planned: Planned;
  calendar: WorkCalendar;
  startMs: number;
  /** Exposure, counted from 1, from which on the calendar is not followed; null if it is to the end. */
  beyondFrom: number | null;
  ticksIgnored: number;
}

/** Date and clock to the minute. */
export const clockOf = ({ place }: Plan, ms: number): string =>
  isoIn(Math.floor(ms / 60_000) * 60_000, place)
    .slice(0, 16)
    .replace('T', ' ');

function empty({ sheet }: Judged): SheetFinding[] {
  if (sheet.exposures > 0) return [];
  const message = 'There are no exposures yet: a shot needs an action.';
  return [{ id: 'no-exposures', severity: 'note', message, exposure: null, values: {} }];
}

function start({ plan, sheet, totals, calendar, startMs }: Judged): SheetFinding[] {
  if (sheet.exposures === 0 || totals.done > 0) return [];
  const workFromMs = calendar.fromMs[calendar.spanAfter(startMs)];
  if (workFromMs === undefined || workFromMs <= startMs) return [];
  const [planned, begins] = [clockOf(plan, startMs), clockOf(plan, workFromMs)];
  return [
    {
      id: 'start-outside-hours',
      severity: 'note',
      message: `The start, ${planned}, lies outside the working hours: work begins at ${begins}.`,
      exposure: 1,
      values: { startMs, workFromMs },
    },
  ];
}

function tooLong({ sheet, planned, calendar }: Judged): SheetFinding[] {
  const { doneMs } = sheet.columns;
  const { longestMs } = calendar;
  const index = planned.exposureMs.findIndex((ms, i) => ms > longestMs + HAIR_MS && Number.isNaN(doneMs[i]));
  if (index === -1) return [];
  const takesS = (planned.exposureMs[index] as number) / 1000;
  return [
    {
      id: 'exposure-too-long',
      severity: 'warning',
      message: `Exposure ${index + 1} takes ${seconds(takesS)}, the longest stretch of work is ${seconds(longestMs / 1000)}: it begins with a day and runs on through breaks and the day’s end.`,
      exposure: index + 1,
      values: { takesS, longestS: longestMs / 1000 },
    },
  ];
}

function beyond({ plan, calendar, beyondFrom }: Judged): SheetFinding[] {
  if (beyondFrom === null) return [];
  const ends = clockOf(plan, calendar.endMs).slice(0, 10);
  return [
    {
      id: 'calendar-too-long',
      severity: 'stop',
      message: `The work takes longer than the calendar is followed for, to ${ends}: from exposure ${beyondFrom} on there is no clock.`,
      exposure: beyondFrom,
      values: { endMs: calendar.endMs },
    },
  ];
}

function lastShort({ sheet }: Judged): SheetFinding[] {
  const short = sheet.actions.filter((action) => action.lastShort);
  const [first] = short;
  if (!first) return [];
  const more = short.length > 1 ? `, and ${counted(short.length - 1, 'action')} more` : '';
  const name = first.text === '' ? `The action at exposure ${first.firstExposure}` : `“${first.text}”`;
  return [
    {
      id: 'last-short',
      severity: 'note',
      message: `${name} has ${counted(first.frames, 'frame')}, which does not divide evenly ${first.holdsText}: its last exposure is held for less${more}.`,
      exposure: first.firstExposure + first.exposures - 1,
      values: { actions: short.length, frames: first.frames },
    },
  ];
}

function ignored({ ticksIgnored }: Judged): SheetFinding[] {
  if (ticksIgnored === 0) return [];
  const are = ticksIgnored === 1 ? 'tick is of an exposure that is' : 'ticks are of exposures that are';
  return [
    {
      id: 'ticks-ignored',
      severity: 'note',
      message: `${ticksIgnored}\u00A0${are} not on the sheet, and ${ticksIgnored === 1 ? 'does' : 'do'} not count.`,
      exposure: null,
      values: { ticks: ticksIgnored },
    },
  ];
}

function sunOnSet({ plan, sheet, planned }: Judged): SheetFinding[] {
  const sunny = sheet.days.filter((day) => day.sunSpans.length > 0);
  const span = sunny[0]?.sunSpans[0];
  if (!span) return [];
  const { startMs } = sheet.columns;
  const index = startMs.findIndex((ms, i) => ms + (planned.exposureMs[i] as number) > span.fromMs);
  const exposure = index === -1 ? null : index + 1;
  const at = exposure === null ? '' : `, exposure ${exposure}`;
  const days = sunny.length > 1 ? `, on ${counted(sunny.length, 'day')} in all` : '';
  return [
    {
      id: 'sun-on-set',
      severity: 'warning',
      message: `Daylight reaches the set from ${clockOf(plan, span.fromMs)}${at}, if the sky is clear${days}. Black out the pane before then.`,
      exposure,
      values: { fromMs: Math.round(span.fromMs), toMs: Math.round(span.toMs), days: sunny.length },
    },
  ];
}

function lampsStayOn({ plan, sheet }: Judged): SheetFinding[] {
  const names = plan.power.sources.map(({ name }) => name);
  const loads = plan.power.loads.filter(
    ({ source, alwaysOnW }) => source !== null && names.includes(source) && alwaysOnW > 0,
  );
  const watts = loads.reduce((sum, { alwaysOnW }) => sum + alwaysOnW, 0);
  if (watts === 0 || sheet.days.length === 0 || plan.sheet.breaks.length === 0) return [];
  return [
    {
      id: 'lamps-stay-on',
      severity: 'note',
      message: `${loads.map(({ name }) => name).join(', ')}: reckoned as on from the beginning of work to the end of each day, breaks included.`,
      exposure: null,
      values: { watts },
    },
  ];
}

function sourceShort({ plan, sheet }: Judged): SheetFinding[] {
  return plan.power.sources.flatMap((source, s): SheetFinding[] => {
    const short = sheet.days.filter((day) => (day.energyWh[s]?.packs ?? 0) > source.count);
    const [first] = short;
    if (!first) return [];
    const needed = Math.max(...short.map((day) => day.energyWh[s]?.packs ?? 0));
    const days = short.length > 1 ? `, and on ${counted(short.length - 1, 'day')} more` : '';
    return [
      {
        id: 'source-short',
        severity: 'warning',
        message: `${source.name}: the work of ${first.date} takes ${counted(first.energyWh[s]?.packs ?? 0, 'pack')}, ${source.count} brought${days}. Charge in between, or bring more.`,
        exposure: first.firstExposure,
        values: { source: source.name, needed, brought: source.count, days: short.length },
      },
    ];
  });
}

function cardFull({ plan, totals: { storageBytes } }: Judged): SheetFinding[] {
  const usable = plan.storage.cards.reduce(
    (sum, { cardBytes, reserveShare }) => sum + Math.round(cardBytes * (1 - reserveShare)),
    0,
  );
  if (storageBytes <= usable) return [];
  return [
    {
      id: 'card-full',
      severity: 'warning',
      message: `All passes come to ${bytes(storageBytes)}, the cards hold ${bytes(usable)}: copy and empty them on the way.`,
      exposure: null,
      values: { neededBytes: storageBytes, usableBytes: usable },
    },
  ];
}

/** All that the sheet says, worst first. */
export function judgeSheet(judged: Judged): SheetFinding[] {
  const judges = [
    empty,
    beyond,
    tooLong,
    sourceShort,
    cardFull,
    sunOnSet,
    start,
    lastShort,
    ignored,
    lampsStayOn,
  ];
  return judges
    .flatMap((judge) => judge(judged))
    .sort((a, b) => SEVERITIES.indexOf(a.severity) - SEVERITIES.indexOf(b.severity));
}

/** Calendars read back by an independent reader. */
import ICAL from 'ical.js';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import type { Schedule } from '../../../src/engine/schedule-types.ts';
import { sheetOf } from '../../../src/engine/sheet/sheet.ts';
import { calendarText } from '../../../src/outputs/calendar.ts';
import { type NumberCase, numberRow, type Row, type TextCase, textRow } from '../rows.ts';
import { CALENDAR_PLANS, STOP_MOTION } from './plans.ts';

export const STAMP_MS = Date.UTC(2026, 4, 3, 2, 1, 0);

/** The text of a plan's calendar. */
export const calendarOf = (plan: Plan): string => {
  const sheet = plan.technique === 'stopMotion' ? sheetOf(plan) : null;
  return calendarText({ plan, made: schedule(plan), sheet, stampMs: STAMP_MS });
};

/** One event as the reader has it. Instants are seconds of the epoch. */
export interface ReadEvent {
  uid: string;
  summary: string;
  fromS: number;
  toS: number;
  alarmsS: number[];
}

/** Events of a text. */
export function eventsIn(text: string): ReadEvent[] {
  const calendar = new ICAL.Component(ICAL.parse(text));
  return calendar.getAllSubcomponents('vevent').map((component) => {
    const event = new ICAL.Event(component);
    const fromS = event.startDate.toUnixTime();
    const alarms = component
      .getAllSubcomponents('valarm')
      .map((alarm) => alarm.getFirstPropertyValue('trigger'));
    return {
      uid: event.uid,
      summary: event.summary,
      fromS,
      toS: event.endDate.toUnixTime(),
      alarmsS: alarms.map((trigger) => fromS + (trigger as InstanceType<typeof ICAL.Duration>).toSeconds()),
    };
  });
}

type Wanted = readonly [what: string, fromMs: number];

/** Minutes before the first frame at which each step begins, by hand: the fields are 42, 20, 10, 10, 5 and 7. */
const BEFORE = { travel: 94, setUp: 52, balance: 32, rehearsal: 22, testFrames: 12, run: 0 };

/** What the calendar of a time-lapse must have, from the schedule's own columns. */
function wantedOf({ startMs, columns, events, exposure }: Schedule): Wanted[] {
  const byHand = exposure?.changes.filter(({ by }) => by === 'hand').map(({ frame }) => frame) ?? [];
  const at = (frame: number) => startMs + (columns.elapsedS[frame - 1] as number) * 1000;
  const endMs = at(columns.elapsedS.length) + (columns.cameraS.at(-1) as number) * 1000;
  const hands = events.filter(
    ({ kind, frame }) =>
      kind === 'swap' || kind === 'cardChange' || (kind === 'exposureChange' && byHand.includes(frame)),
  );
  return [
    ...Object.entries(BEFORE).map(([kind, minutes]): Wanted => [kind, startMs - minutes * 60_000]),
    ['packUp', endMs],
    ['home', endMs + 20 * 60_000],
    ...hands.map(({ kind, frame }): Wanted => [kind, at(frame)]),
  ];
}

const kindOf = (uid: string): string => /-([a-zA-Z]+)(?:-\d+)?@/.exec(uid)?.[1] ?? '';

const inOrder = <T>(list: readonly T[], key: (one: T) => string | number): T[] =>
  [...list].sort((a, b) => (key(a) < key(b) ? -1 : 1));

function* instants(): Generator<NumberCase> {
  for (const [name, plan] of Object.entries(CALENDAR_PLANS)) {
    const wanted = inOrder(wantedOf(schedule(plan)), ([kind, ms]) => `${kind} ${ms}`);
    const got = inOrder(eventsIn(calendarOf(plan)), ({ uid, fromS }) => `${kindOf(uid)} ${fromS * 1000}`);
    if (got.length !== wanted.length) throw new Error(`${name}: ${got.length} events for ${wanted.length}`);
    for (const [i, [kind, ms]] of wanted.entries()) {
      const event = got[i] as ReadEvent;
      if (kindOf(event.uid) !== kind) throw new Error(`${name}: ${event.uid} for ${kind}`);
      yield { at: `${name}, ${event.uid}`, got: event.fromS, want: Math.floor(ms / 1000) };
    }
  }
}

function* sheetInstants(): Generator<NumberCase> {
  const sheet = sheetOf(STOP_MOTION);
  const work = eventsIn(calendarOf(STOP_MOTION)).filter(({ uid }) => uid.includes('-work-'));
  yield { at: 'days', got: work.length, want: sheet.days.length };
  for (const [i, { fromMs, toMs, date }] of sheet.days.entries()) {
    yield { at: `${date} begins`, got: work[i]?.fromS ?? Number.NaN, want: Math.floor(fromMs / 1000) };
    yield { at: `${date} ends`, got: work[i]?.toS ?? Number.NaN, want: Math.floor(toMs / 1000) };
  }
}

/** Five minutes before each moment that needs a hand, the start, and the first block of the day. */
function* alarms(): Generator<TextCase> {
  for (const [name, plan] of Object.entries(CALENDAR_PLANS))
    for (const { uid, fromS, alarmsS } of eventsIn(calendarOf(plan))) {
      const rings = /travel|run|swap|cardChange|exposureChange/.test(kindOf(uid));
      yield { at: `${name}, ${uid}`, got: alarmsS.join(), want: rings ? String(fromS - 300) : '' };
    }
}

const octets = (text: string): number => new TextEncoder().encode(text).length;

function* lines(): Generator<TextCase> {
  for (const plan of [...Object.values(CALENDAR_PLANS), STOP_MOTION]) {
    const text = calendarOf(plan);
    yield { at: 'last line end', got: text.slice(-15), want: 'END:VCALENDAR\r\n' };
    for (const line of text.slice(0, -2).split('\r\n')) {
      const size = octets(line);
      const fine = size > 0 && size <= 75 && !/[\p{Cc}]/u.test(line);
      yield { at: line, got: fine ? 'fine' : `${size} octets`, want: 'fine' };
    }
  }
}

const reference = 'ical.js 2.2.1 (RFC 5545)';
const regime = 'clocks change, UTC+14, polar, four days, offset by hand';

/** Rows on the calendar. */
export const measureCalendar = (): Row[] => [
  numberRow(
    { quantity: 'beginning of blocks and moments', reference, regime, bound: 0, unit: 's' },
    instants(),
  ),
  numberRow(
    {
      quantity: 'beginning and end of working days',
      reference,
      regime: 'stop-motion over a change of the clocks',
      bound: 0,
      unit: 's',
    },
    sheetInstants(),
  ),
  textRow({ quantity: 'alarms', reference, regime }, alarms()),
  textRow(
    {
      quantity: 'lines of 75 octets, ended by CRLF',
      reference: 'RFC 5545, section 3.1',
      regime: 'all calendars',
    },
    lines(),
  ),
];

/**
 * The day of a shoot as a calendar (RFC 5545): its blocks, and the moments that need a hand, with alarms.
 *
 * Every time is an instant in UTC, so that no zone data travels with the file and a calendar shows it in its own zone;
 * the description names the local clock of the place. A moment is an event of its own: calendars differ in what they
 * make of several alarms on one event. Lines are folded, escaped and ended by the library.
 */
import ical, { ICalAlarmType, type ICalCalendar, ICalEventTransparency } from 'ical-generator';
import { counted } from '../engine/findings/words.ts';
import type { Plan } from '../engine/plan/schema.ts';
import type { Schedule } from '../engine/schedule-types.ts';
import type { Sheet, SheetDay } from '../engine/sheet/types.ts';
import { isoIn } from '../engine/time/clock.ts';
import { cleanText } from './clean.ts';
import { BLOCK_WORDS, type DayBlock, dayBlocks, workBlocks } from './day-blocks.ts';
import { fileStem } from './file-name.ts';
import { type HandMoment, handMoments, sheetMoments } from './hand-moments.ts';
import { plainText } from './paragraphs.ts';
import { planSentence } from './run-sheet/sentence.ts';

/** An alarm rings so long before: common practice, no source. Whoever takes the file can change it. */
export const ALARM_LEAD_S = 300;
/** A moment takes as long in the calendar, to be seen at all. */
const MOMENT_MS = 60_000;
/** More moments than this drown a calendar: the run's description then says how many there are. */
const MOST_MOMENTS = 500;

/** What a calendar is made of. */
export interface CalendarGiven {
  plan: Plan;
  made: Schedule;
  /** Exposure sheet of a stop-motion plan; then its working days are the blocks. */
  sheet: Sheet | null;
  /** When it is written, milliseconds of the epoch (DTSTAMP): outputs have no clock. */
  stampMs: number;
}

interface Entry {
  /** Tells it from others of the plan, and stays when the plan is worked out anew. */
  id: string;
  summary: string;
  description: string;
  fromMs: number;
  toMs: number;
  rings: boolean;
}

// iCalendar has no fractions of a second.
const whole = (ms: number): Date => new Date(Math.floor(ms / 1000) * 1000);

/** What acts, and control characters but line ends, have no place in a calendar's text. */
const clean = (text: string): string => cleanText(plainText(text)).replace(/[^\P{Cc}\n]/gu, ' ');

const localClock = ({ place }: Plan, ms: number): string =>
  isoIn(Math.floor(ms / 1000) * 1000, place).replace('T', ' ');

const span = (plan: Plan, { fromMs, toMs }: Pick<Entry, 'fromMs' | 'toMs'>): string =>
  `${localClock(plan, fromMs)} to ${localClock(plan, toMs)}, local clock.`;

/** Blocks that ring: the first of the day, so that one leaves in time, and the run. */
const rings = (block: DayBlock, i: number): boolean =>
  i === 0 || block.kind === 'run' || block.kind === 'work';

function runText({ plan, made }: CalendarGiven, left: number): string {
  const more = left > 0 ? `\nAnd ${counted(left, 'moment')} more that need a hand: see the run sheet.` : '';
  return `\n${planSentence(plan, made)}\n${made.verdict}${more}`;
}

function blockEntries(given: CalendarGiven, left: number): Entry[] {
  const { plan, made } = given;
  return dayBlocks(plan, made)
    .filter(({ kind }) => kind !== 'inHand')
    .map((block, i) => ({
      id: block.kind,
      summary: `${plan.title}: ${BLOCK_WORDS[block.kind].toLowerCase()}`,
      description: span(plan, block) + (block.kind === 'run' ? runText(given, left) : ''),
      fromMs: block.fromMs,
      toMs: block.toMs,
      rings: rings(block, i),
    }));
}

function workText({ firstExposure, lastExposure }: SheetDay): string {
  if (firstExposure === null || lastExposure === null) return 'setting up';
  return `exposures ${firstExposure} to ${lastExposure}`;
}

const workEntries = ({ plan }: CalendarGiven, sheet: Sheet): Entry[] =>
  workBlocks(sheet).map((block) => {
    const day = sheet.days.find(({ fromMs }) => fromMs === block.fromMs);
    return {
      id: `work-${day?.date}`,
      summary: `${plan.title}: ${day ? workText(day) : BLOCK_WORDS.work.toLowerCase()}`,
      description: `${span(plan, block)} Breaks lie within.`,
      fromMs: block.fromMs,
      toMs: block.toMs,
      rings: true,
    };
  });

function momentEntries({ plan }: CalendarGiven, moments: readonly HandMoment[]): Entry[] {
  const counts = new Map<string, number>();
  return moments.map(({ kind, ms, frame, text, lostFrames }) => {
    const number = (counts.get(kind) ?? 0) + 1;
    counts.set(kind, number);
    const lost = lostFrames > 0 ? ` ${counted(lostFrames, 'frame')} lost.` : '';
    const before = plan.technique === 'stopMotion' ? '' : ` Before frame ${frame} opens.`;
    return {
      id: `${kind}-${number}`,
      summary: `${plan.title}: ${text}`,
      description: `${localClock(plan, ms)}, local clock.${before}${lost}`,
      fromMs: ms,
      toMs: ms + MOMENT_MS,
      rings: true,
    };
  });
}

/** Event ids: the plan's title and date, so that the same plan taken again replaces its own events. */
const idsOf = (plan: Plan) => (id: string) =>
  `${plan.start.date}-${fileStem(plan.title)}-${id}@escapement.invalid`;

function add(calendar: ICalCalendar, { plan, stampMs }: CalendarGiven, entries: readonly Entry[]): void {
  const { name, latitudeDeg: lat, longitudeDeg: lon } = plan.place;
  const uid = idsOf(plan);
  for (const { id, summary, description, fromMs, toMs, rings: alarm } of entries) {
    const event = calendar.createEvent({
      id: uid(id),
      stamp: whole(stampMs),
      start: whole(fromMs),
      end: whole(Math.max(toMs, fromMs + 1000)),
      summary: clean(summary),
      description: clean(description),
      transparency: ICalEventTransparency.OPAQUE,
    });
    if (name.trim() !== '')
      event.location({ title: clean(name), ...(lat !== null && lon !== null && { geo: { lat, lon } }) });
    if (alarm)
      event.createAlarm({ type: ICalAlarmType.display, trigger: ALARM_LEAD_S, description: clean(summary) });
  }
}

/**
 * The calendar's text, lines folded at 75 octets and ended by CRLF.
 *
 * Blocks of a time-lapse: way there, set-up, balance and home, rehearsal, test frames, run, pack up, way back, as far as
 * they take time; of stop-motion the working days. Moments: swaps, card changes, exposure changes by hand, blacking out
 * the pane. The first block, the run and all moments ring {@link ALARM_LEAD_S} before.
 */
export function calendarText(given: CalendarGiven): string {
  const { plan, made, sheet } = given;
  const all = sheet ? sheetMoments(plan, sheet) : handMoments(plan, made);
  const moments = all.slice(0, MOST_MOMENTS);
  const calendar = ical({ prodId: { company: 'Escapement', product: 'Plan', language: 'EN' } });
  const blocks = sheet ? workEntries(given, sheet) : blockEntries(given, all.length - moments.length);
  add(calendar, given, [...blocks, ...momentEntries(given, moments)]);
  return `${calendar.toString()}\r\n`.replace(/(\r\n)+$/, '\r\n');
}

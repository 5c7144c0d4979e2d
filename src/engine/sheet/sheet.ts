/**
 * The exposure sheet of a stop-motion production: a plan in, its exposures, working days and figures out.
 *
 * The clock begins at the plan's start, or when work next begins after it. Before the first exposure of a shot come its
 * set-up and its test frames, which take what an exposure does without animating and moving. What is ticked shows when it
 * was; what is left goes on from the last tick, or from the present if that is said and later.
 */
import type { Plan } from '../plan/schema.ts';
import { startFor } from '../schedule.ts';
import { frameBytesOf } from '../storage/storage.ts';
import { WorkCalendar } from './calendar.ts';
import { DayBook } from './days.ts';
import { type Exposures, exposuresOf } from './exposures.ts';
import { judgeSheet } from './findings.ts';
import { originOf, withOrigin } from './reuse.ts';
import { type Done, doneOf, type Planned, paceSoFar } from './ticks.ts';
import type { Sheet, SheetDay, SheetTotals } from './types.ts';
import { Walk } from './walk.ts';

const MINUTE_MS = 60_000;

/** What a sheet may be given besides its plan. */
export interface SheetGiven {
  /** The present, milliseconds of the epoch: what is left is not begun before it. The engine itself has no clock. */
  nowMs?: number;
  /**
   * A sheet of the plan as it was before an edit: what the edit leaves as it was is taken from it, columns and all. The
   * outcome is the same as without it.
   */
  before?: Sheet | null;
}

/** What is planned for each exposure and each shot's beginning. */
function plannedOf(plan: Plan, { columns, parts, setOf }: Exposures): Planned {
  const { minutes, rigS, shot } = columns;
  const exposureMs = new Float64Array(minutes.length);
  for (let i = 0; i < minutes.length; i += 1)
    exposureMs[i] = (minutes[i] as number) * MINUTE_MS + (rigS[i] as number) * 1000;
  const setUpMs = Float64Array.from(parts, ({ placed }) => {
    if (placed.exposures === 0) return 0;
    const { changeMin, cameraS } = setOf(columns.passes[placed.firstExposure - 1] as number);
    return placed.setUpMin * MINUTE_MS + plan.sheet.testFrames * (changeMin * MINUTE_MS + cameraS * 1000);
  });
  return { exposureMs, setUpMs, shot };
}

/** What the clock of the sheet goes by. */
interface Work {
  plan: Plan;
  exposures: Exposures;
  planned: Planned;
  done: Done;
  calendar: WorkCalendar;
  /** Plan's start. */
  startMs: number;
  /** From when on what is left is done. */
  fromMs: number;
}

/** How the work that is left goes. */
interface Course {
  finishMs: number;
  /** Exposure, counted from 1, from which on the calendar is not followed; null if it is to the end. */
  beyondFrom: number | null;
}

/**
 * Goes through what is left.
 * @param factor - times the planned durations
 * @param startMs - filled with the beginning of each exposure that is left; null if nobody wants it
 */
function goThrough(work: Work, factor: number, startMs: Float64Array | null, book: DayBook | null): Course {
  const { plan, exposures, planned, done, calendar, fromMs } = work;
  const walk = new Walk(calendar, fromMs);
  const last = done.inTime.at(-1);
  const course: Course = {
    finishMs: last === undefined ? fromMs : (done.doneMs[last] as number),
    beyondFrom: null,
  };
  for (const [index, { placed }] of exposures.parts.entries()) {
    const first = placed.firstExposure - 1;
    const end = first + placed.exposures;
    let begun = anyDone(done.doneMs, first, end);
    for (let i = first; i < end; i += 1) {
      if (!Number.isNaN(done.doneMs[i])) continue;
      if (!begun) {
        begun = true;
        let testDay: number | null = null;
        walk.spread((planned.setUpMs[index] as number) * factor, (day, from, to) => {
          testDay = day;
          book?.add(day, from, to, to - from);
        });
        if (testDay !== null) book?.addTests(testDay, i, plan.sheet.testFrames);
      }
      const durationMs = (planned.exposureMs[i] as number) * factor;
      const beginMs = walk.whole(durationMs);
      if (startMs) startMs[i] = beginMs;
      if (walk.beyond) course.beyondFrom ??= i + 1;
      else book?.addExposure(book.add(walk.day, beginMs, walk.atMs, durationMs), i, 1);
      course.finishMs = walk.atMs;
    }
  }
  return course;
}

function anyDone(doneMs: Float64Array, first: number, end: number): boolean {
  for (let i = first; i < end; i += 1) if (!Number.isNaN(doneMs[i])) return true;
  return false;
}

/** Puts what is done into the days on which it was. */
function bookDone(work: Work, book: DayBook): void {
  const { done, calendar } = work;
  let dayBefore = -1;
  let [beforeMs, workedBeforeMs] = [0, 0];
  for (const i of done.inTime) {
    const ms = done.doneMs[i] as number;
    const day = calendar.dayAt(ms);
    if (day !== dayBefore) {
      beforeMs = begunMs(work, day, ms);
      workedBeforeMs = calendar.workUntilMs(beforeMs);
    }
    const workedMs = calendar.workUntilMs(ms);
    const entry = book.add(day, beforeMs, ms, workedMs - workedBeforeMs);
    book.addExposure(entry, i, 1 + (done.retakes[i] as number));
    [dayBefore, beforeMs, workedBeforeMs] = [day, ms, workedMs];
  }
}

/** When a day began on which something was ticked: with its working hours, the first day with the plan's start. */
function begunMs({ calendar, startMs }: Work, day: number, firstTickMs: number): number {
  const hoursMs = calendar.fromMs[calendar.firstSpan[day] as number] ?? firstTickMs;
  const sameDay = calendar.dayAt(startMs) === day;
  return Math.min(firstTickMs, sameDay ? Math.max(hoursMs, startMs) : hoursMs);
}

function workOf(plan: Plan, exposures: Exposures, nowMs: number | null, known?: WorkCalendar): Work {
  const { startMs } = startFor(plan);
  const done = doneOf(plan, exposures.parts, exposures.count, startMs);
  const [first, last] = [done.inTime[0], done.inTime.at(-1)];
  const firstMs = first === undefined ? startMs : Math.min(startMs, done.doneMs[first] as number);
  const reachedMs = last === undefined ? startMs : (done.doneMs[last] as number);
  return {
    plan,
    exposures,
    planned: plannedOf(plan, exposures),
    done,
    calendar: known?.isOf(plan, firstMs) ? known : new WorkCalendar(plan, firstMs),
    startMs,
    fromMs: Math.max(reachedMs, nowMs ?? reachedMs),
  };
}

/** All work that is planned, retakes so far included, minutes. */
function plannedMin({ planned, done: { retakes } }: Work): number {
  const { exposureMs } = planned;
  let ms = planned.setUpMs.reduce((sum, setUp) => sum + setUp, 0);
  for (let i = 0; i < exposureMs.length; i += 1)
    ms += (exposureMs[i] as number) * (1 + (retakes[i] as number));
  return ms / MINUTE_MS;
}

/** Bytes of all passes of all exposures, and of their retakes so far. */
function bytesOf({ plan, exposures: { columns, setOf }, done: { retakes } }: Work): number {
  const { passes } = columns;
  let shots = 0;
  for (let i = 0; i < passes.length; i += 1)
    shots += setOf(passes[i] as number).count * (1 + (retakes[i] as number));
  return shots * frameBytesOf(plan);
}

/** The last day of the work, were what is left done at the pace so far; null if there is none. */
export function lastDayAtPace(plan: Plan, factor: number): SheetDay | null {
  const exposures = exposuresOf(plan);
  const work = workOf(plan, exposures, null);
  const book = new DayBook(exposures);
  bookDone(work, book);
  goThrough(work, factor, null, book);
  return book.close(plan, work.calendar).at(-1) ?? null;
}

/**
 * Works out the exposure sheet of a plan.
 * @param plan - a plan as `parsePlan` gives it; one without shots stands for one shot with one action, its clip
 * @returns columns with one entry an exposure, the days of work and the single figures. The same plan gives the same
 *   sheet; the plan is not changed.
 */
export function sheetOf(plan: Plan, { nowMs, before = null }: SheetGiven = {}): Sheet {
  const origin = originOf(before);
  const exposures = exposuresOf(plan, origin);
  const work = workOf(plan, exposures, nowMs ?? null, origin?.calendar);
  const { done, planned, calendar } = work;
  const startMs = done.doneMs.slice();
  const book = new DayBook(exposures);
  bookDone(work, book);
  const course = goThrough(work, 1, startMs, book);
  const pace = paceSoFar(done, planned, calendar);
  const days = book.close(plan, calendar);
  const storageBytes = bytesOf(work);
  const left = exposures.count - done.count;
  const totals: Omit<SheetTotals, 'findings'> = {
    workMin: plannedMin(work),
    finishMs: course.finishMs,
    days: days.length,
    storageBytes,
    copiesBytes: storageBytes * plan.storage.copies,
    energyWh: days.reduce((sum, day) => sum + day.energyWh.reduce((wh, source) => wh + source.wh, 0), 0),
    done: done.count,
    left,
    pace,
    finishAtPaceMs:
      pace.factor === 1 || left === 0 ? course.finishMs : goThrough(work, pace.factor, null, null).finishMs,
  };
  const sheet = {
    frames: exposures.frames,
    exposures: exposures.count,
    shots: exposures.parts.map(({ placed }) => placed),
    actions: exposures.actions,
    columns: { ...exposures.columns, startMs, doneMs: done.doneMs, tick: done.tick },
    days,
  };
  const findings = judgeSheet({ ...work, ...course, sheet, totals, ticksIgnored: done.ignored });
  return withOrigin({ ...sheet, totals: { ...totals, findings } }, { plan, exposures, calendar });
}

/** Round local times under the run, from the offsets that the schedule gives: no zone data is asked again. */
import type { OffsetSpan } from '../../engine/schedule-types.ts';
import { offsetInSpans } from '../../engine/time/clock.ts';

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const DAY_S = 86_400;
const STEPS_S = [1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 10_800, 21_600, 43_200];
const STEPS_DAYS = [1, 2, 7, 14];
const STEPS_MONTHS = [1, 2, 3, 6, 12, 24, 60];

/** One mark of the clock axis. */
export interface ClockTick {
  /** Milliseconds of the epoch. */
  ms: number;
  label: string;
}

/** A moment whose UTC fields read as the local ones. */
const localDate = (ms: number, offsets: readonly OffsetSpan[]): Date =>
  new Date(ms + offsetInSpans(ms, offsets) * 60_000);

const dayAndMonth = (local: Date): string => `${local.getUTCDate()} ${MONTHS[local.getUTCMonth()]}`;

/** Local '8 Aug'. */
export const dateText = (ms: number, offsets: readonly OffsetSpan[]): string =>
  dayAndMonth(localDate(ms, offsets));

/** Whether two moments fall on the same local day. */
export function sameDay(a: number, b: number, offsets: readonly OffsetSpan[]): boolean {
  const day = (ms: number) => Math.floor(localDate(ms, offsets).getTime() / 1000 / DAY_S);
  return day(a) === day(b);
}

/**
 * Round local times between two moments, in order of time.
 *
 * Over a clock change each stretch has its own marks: an hour that comes twice is marked twice, and one that is
 * skipped is not marked.
 * @param most how many there is room for; no two are nearer than half a share of that
 */
export function clockTicks(
  fromMs: number,
  toMs: number,
  offsets: readonly OffsetSpan[],
  most: number,
): ClockTick[] {
  const leastS = (toMs - fromMs) / 1000 / Math.max(1, most);
  const marks = localMarks(leastS);
  const ticks: ClockTick[] = [];
  for (const { from, to, shift } of stretches(fromMs, toMs, offsets)) {
    for (const local of marks.between(from + shift, to + shift)) {
      const before = ticks.at(-1);
      if (before && local - shift - before.ms < leastS * 500) continue;
      ticks.push({ ms: local - shift, label: marks.label(new Date(local)) });
    }
  }
  return ticks;
}

function stretches(fromMs: number, toMs: number, offsets: readonly OffsetSpan[]) {
  return offsets
    .map((span, i) => ({
      from: i === 0 ? fromMs : Math.max(fromMs, span.fromMs),
      to: Math.min(toMs, (offsets[i + 1]?.fromMs ?? Number.POSITIVE_INFINITY) - 1),
      shift: span.offsetMin * 60_000,
    }))
    .filter((span) => span.from <= span.to);
}

/** Marks in local time, milliseconds whose UTC fields read as the local ones. */
interface Marks {
  between(from: number, to: number): number[];
  label(local: Date): string;
}

function localMarks(leastS: number): Marks {
  const seconds = STEPS_S.find((step) => step >= leastS);
  if (seconds !== undefined)
    return { between: multiplesOf(seconds), label: (local) => timeLabel(local, seconds) };
  const days = STEPS_DAYS.find((step) => step * DAY_S >= leastS);
  if (days !== undefined) return { between: multiplesOf(days * DAY_S), label: dayAndMonth };
  const months = STEPS_MONTHS.find((step) => step * 31 * DAY_S >= leastS) ?? 120;
  return { between: (from, to) => monthStarts(from, to, months), label: monthLabel };
}

function multiplesOf(stepS: number): Marks['between'] {
  const step = stepS * 1000;
  return (from, to) => {
    const found: number[] = [];
    for (let at = Math.ceil(from / step) * step; at <= to; at += step) found.push(at);
    return found;
  };
}

function monthStarts(from: number, to: number, step: number): number[] {
  const start = new Date(from);
  const found: number[] = [];
  const first = Math.floor((start.getUTCFullYear() * 12 + start.getUTCMonth()) / step) * step;
  for (let month = first; ; month += step) {
    const at = Date.UTC(Math.floor(month / 12), month % 12, 1);
    if (at > to) return found;
    if (at >= from) found.push(at);
  }
}

const two = (value: number) => String(value).padStart(2, '0');

/** The date at midnight, else the time. */
function timeLabel(local: Date, stepS: number): string {
  const [hour, minute, second] = [local.getUTCHours(), local.getUTCMinutes(), local.getUTCSeconds()];
  if (hour + minute + second === 0) return dayAndMonth(local);
  return stepS < 60 ? `${two(hour)}:${two(minute)}:${two(second)}` : `${two(hour)}:${two(minute)}`;
}

function monthLabel(local: Date): string {
  return local.getUTCMonth() === 0 ? String(local.getUTCFullYear()) : String(MONTHS[local.getUTCMonth()]);
}

/** What the shared cursor of the run says and where the keys take it. */
import type { Plan } from '../../engine/plan/schema.ts';
import type { Schedule } from '../../engine/schedule-types.ts';
import { clockAt, isoAt, offsetInSpans } from '../../engine/time/clock.ts';
import { ofFrame } from '../../engine/working/names.ts';
import { offsetText } from '../format/clock.ts';
import { durationText } from '../format/durations.ts';
import type { Reading } from './chart.ts';
import { dateText, sameDay } from './clockTicks.ts';
import { fixed } from './format.ts';
import { neighbouringEvent } from './runView.ts';

/** The frame under the cursor, counted from 0: the one chosen, else the tightest. */
export function cursorIndex(schedule: Schedule, cursor: number | null): number {
  const last = schedule.columns.elapsedS.length - 1;
  return Math.max(0, Math.min(last, cursor ?? schedule.totals.tightestFrame - 1));
}

/** Milliseconds of the epoch at which a frame's shutter opens. */
export const momentOf = ({ startMs, columns }: Schedule, index: number): number =>
  startMs + Number(columns.elapsedS[index]) * 1000;

/** Local clock of a frame; with tenths if frames come faster than seconds. */
export function frameClock(schedule: Schedule, index: number): string {
  const ms = momentOf(schedule, index);
  if (schedule.totals.intervalS >= 1) return clockAt(ms, schedule.offsets);
  return isoAt(Math.floor(ms / 100) * 100 + 0.5, schedule.offsets).slice(11, 21);
}

/** Local clock of a frame, with the date if the run goes on into another day, with the offset if that changes. */
export function frameMoment(schedule: Schedule, index: number): string {
  const { offsets, columns } = schedule;
  const ms = momentOf(schedule, index);
  const offset = offsets.length > 1 ? ` ${offsetText(offsetInSpans(ms, offsets))}` : '';
  const clock = frameClock(schedule, index) + offset;
  const last = momentOf(schedule, columns.elapsedS.length - 1);
  if (sameDay(schedule.startMs, last, offsets)) return clock;
  return `${dateText(ms, offsets)} ${clock}`;
}

/** A change of the clocks during the run. */
export interface ClockChange {
  elapsedS: number;
  words: string;
}

/** The changes of the clocks during the run, in order of time. */
export function clockChanges({ startMs, offsets }: Schedule): ClockChange[] {
  return offsets.slice(1).map((span, i) => {
    const byMin = span.offsetMin - Number(offsets[i]?.offsetMin);
    const size = durationText(Math.abs(byMin) * 60);
    return {
      elapsedS: (span.fromMs - startMs) / 1000,
      words: `Clocks go ${byMin < 0 ? 'back' : 'forward'} ${size}`,
    };
  });
}

/** Where the frame stands in the clip, seconds from its head without the handles: before it below zero. */
export function clipReading({ totals }: Schedule, plan: Plan, index: number): Reading {
  const { holdFrames, handlesFrames } = plan.clip;
  const seconds = (index * holdFrames - handlesFrames) / totals.frameRate;
  const past = handlesFrames > 0 && seconds >= totals.clipLengthS;
  const name = seconds < 0 ? 'Head handle' : past ? 'Tail handle' : 'In the clip';
  return { style: null, name, value: fixed(seconds, 2), unit: 's', of: ofFrame(index, 'clipS') };
}

/** A key press on the cursor. */
export interface CursorKey {
  key: string;
  shiftKey: boolean;
  altKey: boolean;
}

/**
 * Frame that a key takes the cursor to, counted from 0: arrows one frame, with Shift ten, with Alt to the next
 * event; Home and End. null for any other key.
 */
export function afterKey(
  schedule: Schedule,
  index: number,
  { key, shiftKey, altKey }: CursorKey,
): number | null {
  const last = schedule.columns.elapsedS.length - 1;
  if (key === 'Home') return 0;
  if (key === 'End') return last;
  const direction = key === 'ArrowLeft' ? -1 : key === 'ArrowRight' ? 1 : null;
  if (direction === null) return null;
  if (altKey) return neighbouringEvent(schedule.events, index, direction);
  return Math.max(0, Math.min(last, index + direction * (shiftKey ? 10 : 1)));
}

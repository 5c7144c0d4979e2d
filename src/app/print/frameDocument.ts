/** The frames of a time-lapse for paper: all of them, or as many as a person can carry. */
import type { Plan } from '../../engine/plan/schema.ts';
import type { AxisColumns, Schedule } from '../../engine/schedule-types.ts';
import { cautionsOf } from '../../outputs/cautions.ts';
import { clockOf, dateOf } from '../format/clock.ts';
import { durationText } from '../format/durations.ts';
import { numberText, plural } from '../format/numbers.ts';
import { rateText } from '../format/rate.ts';
import { positionAt, positionText } from '../sheet/cells.ts';
import { type FrameColumn, frameColumns } from '../sheet/frameColumns.ts';
import type { PrintColumn, PrintDocument } from './document.ts';
import { emsOf } from './ems.ts';

/** More frames than this are thinned. */
const MOST_ROWS = 2000;

/** What is printed of the frames. */
export interface PrintedFrames {
  /** Index of each, in order. */
  indices: number[];
  /** Every n-th frame, besides the first, the last and those with an event. */
  every: number;
}

/** Frames to print. */
export function printedFrames({ totals: { frames }, events }: Schedule): PrintedFrames {
  const every = Math.ceil(frames / MOST_ROWS);
  const chosen = new Set<number>([frames - 1]);
  for (let index = 0; index < frames; index += every) chosen.add(index);
  for (const { frame } of events) if (frame >= 1 && frame <= frames) chosen.add(frame - 1);
  return { indices: [...chosen].sort((a, b) => a - b), every };
}

const LEADS = ['frame', 'clock'];

const widestOf = (text: (index: number) => string, indices: readonly number[]): number =>
  indices.reduce((most, index) => Math.max(most, emsOf(text(index))), 0);

function arrivesOf({ steps }: AxisColumns): (index: number) => number {
  return (index) => (index === 0 ? 0 : Math.sign((steps[index] ?? 0) - (steps[index - 1] ?? 0)));
}

function printed({ id, heading, figure, grows, text, axis }: FrameColumn, indices: number[]): PrintColumn {
  const cell = axis ? (index: number) => positionText(axis.columns, positionAt(axis.columns, index)) : text;
  const column: PrintColumn = {
    id,
    heading,
    em: grows ? 0 : widestOf(cell, indices),
    figure: figure || axis !== undefined,
    leads: LEADS.includes(id),
    movable: axis !== undefined || id.startsWith('energy:'),
    text: cell,
  };
  return { ...column, ...(grows && { grows: 1.5 }), ...(axis && { arrives: arrivesOf(axis.columns) }) };
}

function remarksOf(plan: Plan, { totals }: Schedule, { every, indices }: PrintedFrames): string[] {
  const thinned =
    every > 1
      ? [
          `Every ${every}th of ${plural(totals.frames, 'frame')}, and each with an event: ${plural(indices.length, 'row')}. All frames are in the CSV.`,
        ]
      : [];
  return [...thinned, ...(plan.notes.trim() ? [plan.notes] : [])];
}

const momentText = (iso: string): string => `${dateOf(iso)}, ${clockOf(iso)}`;

const factsOf = (plan: Plan, { totals }: Schedule): string[] => [
  plural(totals.frames, 'frame'),
  `every ${durationText(totals.intervalS, 3)}`,
  `${numberText(totals.clipLengthS, 2)} s at ${rateText(plan.clip.frameRate)} fps`,
  `${momentText(totals.firstFrameAt)}, to ${momentText(totals.lastFrameAt)}`,
  ...(plan.place.name ? [plan.place.name] : []),
];

/** The per-frame table of a time-lapse for paper; frames with an event have a box to tick. */
export function frameDocument(plan: Plan, schedule: Schedule): PrintDocument {
  const frames = printedFrames(schedule);
  const { indices } = frames;
  const withEvent = new Set(schedule.events.map(({ frame }) => frame - 1));
  const findings = schedule.findings.map(({ message }) => message);
  return {
    title: plan.title,
    kind: 'Frames',
    facts: factsOf(plan, schedule),
    remarks: remarksOf(plan, schedule, frames),
    columns: frameColumns(plan, schedule).map((column) => printed(column, indices)),
    rows: {
      count: indices.length,
      at: (row) => {
        const index = indices[row] as number;
        return { kind: 'line', index, done: withEvent.has(index) ? false : null };
      },
    },
    lists: [
      ...(findings.length > 0 ? [{ title: 'To know', items: findings }] : []),
      { title: 'Cautions', items: cautionsOf(plan, schedule) },
    ],
  };
}

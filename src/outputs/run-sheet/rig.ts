/** Where the axes stand at the keyframes. */
import { placeKeyframes, runClock } from '../../engine/motion/keyframes.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import type { Schedule } from '../../engine/schedule-types.ts';
import type { RigTable } from './types.ts';
import { dateWords, opensMs, type When } from './when.ts';

/** More keyframes than this are counted at once: all positions are in their own table. */
const MOST_ROWS = 16;

/** Frames, counted from 1, that the keyframes of all tracks fall on; the first and the last are among them. */
function keyframes(plan: Plan, { columns, totals }: Schedule): number[] {
  const clock = runClock(columns.intervalS);
  const indices = plan.move.tracks.flatMap((track) => {
    const { lastIndex, keyframes: placed } = placeKeyframes(track, clock);
    const there = placed.filter(({ share }) => share <= 1).map(({ share }) => share * lastIndex);
    return track.thereAndBack ? [...there, ...there.map((index) => totals.frames - 1 - index)] : there;
  });
  const frames = indices.map((index) => Math.round(index) + 1).filter((frame) => frame >= 1);
  return [...new Set([1, ...frames, totals.frames])].sort((a, b) => a - b);
}

/** The first ones, and the last of all; none if there is no room for both. */
export function firstAndLast<T>(rows: readonly T[], most: number): T[] {
  if (rows.length <= most) return [...rows];
  return most < 2 ? [] : [...rows.slice(0, most - 1), ...rows.slice(-1)];
}

/** The table, null without axes, and how many keyframes it leaves out. A rig that stands still has one row. */
export function rigTable(plan: Plan, made: Schedule, when: When): { table: RigTable | null; left: number } {
  const { axes } = made.columns;
  if (axes.length === 0) return { table: null, left: 0 };
  const all = plan.move.mode === 'still' ? [1] : keyframes(plan, made);
  const frames = firstAndLast(all, MOST_ROWS);
  const table = {
    axes: axes.map(({ name, unit }) => ({ name, unit })),
    rows: frames.map((frame) => {
      const steps = axes.map((axis) => axis.steps[frame - 1] ?? 0);
      return {
        frame,
        date: dateWords(when.date(opensMs(made, frame))),
        clock: when.second(opensMs(made, frame)),
        steps,
        units: axes.map(({ stepsPerUnit }, i) => (steps[i] ?? 0) / stepsPerUnit),
      };
    }),
  };
  return { table, left: all.length - frames.length };
}

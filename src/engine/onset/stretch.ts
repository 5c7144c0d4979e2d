/** A run as it is really shot: stretches, each by a plan of its own. */
import type { Plan } from '../plan/schema.ts';
import { schedule, startFor } from '../schedule.ts';
import type { Schedule } from '../schedule-types.ts';

/** Frames shot one after another by one plan: the plan as it was, or what was left of it, planned again. */
export interface Stretch {
  plan: Plan;
  /** Opening of its first frame, milliseconds of the epoch. */
  startMs: number;
  /** Frames of the run before it. */
  framesBefore: number;
  /** What the packs in use had given by then, watt-hours, by the name of their source. */
  usedWh: Readonly<Record<string, number>>;
}

/** The first stretch of a run. */
export const firstStretch = (plan: Plan, startMs: number): Stretch => ({
  plan,
  startMs,
  framesBefore: 0,
  usedWh: {},
});

const known = new WeakMap<Stretch, Schedule>();

/** Everything that follows from a stretch; worked out once. Frames are counted from its own first. */
export function madeOf(stretch: Stretch): Schedule {
  const found = known.get(stretch);
  if (found) return found;
  const { plan, startMs, usedWh } = stretch;
  const delayS = (startMs - startFor(plan).startMs) / 1000;
  const made = schedule(plan, { delayS, usedWh: new Map(Object.entries(usedWh)) });
  known.set(stretch, made);
  return made;
}

/** Opening of a frame of a schedule, by its index, milliseconds of the epoch; of the one after the last its end. */
export function opensMs({ startMs, columns: { elapsedS, intervalS } }: Schedule, index: number): number {
  const last = elapsedS.length - 1;
  const beyondS = index > last ? (index - last) * (intervalS[last] ?? 0) : 0;
  return startMs + ((elapsedS[Math.min(index, last)] ?? 0) + beyondS) * 1000;
}

/** Opening of the last frame of a stretch, milliseconds of the epoch. */
export const lastOpensMs = (stretch: Stretch): number => {
  const made = madeOf(stretch);
  return opensMs(made, made.totals.frames - 1);
};

/** Frames of the run up to the end of a stretch. */
export const framesUpTo = (stretch: Stretch): number => stretch.framesBefore + madeOf(stretch).totals.frames;

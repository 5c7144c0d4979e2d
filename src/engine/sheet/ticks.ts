/** What is in the camera: ticks by exposure, and the pace that they show. */
import type { Plan, Tick } from '../plan/schema.ts';
import type { WorkCalendar } from './calendar.ts';
import type { ShotPart } from './rig.ts';
import type { Pace } from './types.ts';

const DAY_MS = 86_400_000;

/** Ticks farther than this from the plan's start are counted as done, but no clock goes by them: ten years. */
const FARTHEST_MS = 3650 * DAY_MS;

/** The ticks of a production. */
export interface Done {
  /** When each exposure was done; NaN if it is not. */
  doneMs: Float64Array;
  /** Index of its tick in the plan; -1 if it is not done. */
  tick: Int32Array;
  /** Retakes of each exposure. */
  retakes: Uint16Array;
  /** Indices of the ticked exposures in order of time, as far as the clock goes by them. */
  inTime: Uint32Array;
  count: number;
  /** Ticks of exposures that there are not. */
  ignored: number;
}

/** Index of the exposure that a tick is of; -1 if there is none. The last of several ticks counts. */
export function indexOfTick(parts: readonly ShotPart[], { shot, exposure }: Tick): number {
  const placed = parts[shot - 1]?.placed;
  return placed && exposure <= placed.exposures ? placed.firstExposure + exposure - 2 : -1;
}

/** How many of some exposures are done. @param of - a shot or an action; its first exposure counted from 1 */
export function doneIn(
  { doneMs }: Pick<Done, 'doneMs'>,
  { firstExposure, exposures }: { firstExposure: number; exposures: number },
): number {
  let done = 0;
  for (let i = firstExposure - 1; i < firstExposure - 1 + exposures; i += 1)
    if (!Number.isNaN(doneMs[i])) done += 1;
  return done;
}

/** Reads the ticks. @param startMs - the plan's start */
export function doneOf(plan: Plan, parts: readonly ShotPart[], exposures: number, startMs: number): Done {
  const doneMs = new Float64Array(exposures).fill(Number.NaN);
  const tickOf = new Int32Array(exposures).fill(-1);
  const retakes = new Uint16Array(exposures);
  let ignored = 0;
  plan.sheet.ticks.forEach((tick, t) => {
    const index = indexOfTick(parts, tick);
    if (index === -1) ignored += 1;
    else {
      doneMs[index] = tick.atMs;
      tickOf[index] = t;
      retakes[index] = tick.retakes;
    }
  });
  return { doneMs, tick: tickOf, retakes, ...inTimeOf(doneMs, startMs), ignored };
}

function inTimeOf(doneMs: Float64Array, startMs: number): Pick<Done, 'inTime' | 'count'> {
  let count = 0;
  const near: number[] = [];
  for (let i = 0; i < doneMs.length; i += 1) {
    const ms = doneMs[i] as number;
    if (Number.isNaN(ms)) continue;
    count += 1;
    if (Math.abs(ms - startMs) <= FARTHEST_MS) near.push(i);
  }
  const before = (a: number, b: number) => (doneMs[a] as number) - (doneMs[b] as number) || a - b;
  // As a rule they were ticked in the order of the sheet.
  const sorted = near.every((i, k) => k === 0 || before(near[k - 1] as number, i) < 0);
  return { inTime: Uint32Array.from(sorted ? near : near.sort(before)), count };
}

/** What is planned for an exposure, and before the first of a shot; milliseconds. */
export interface Planned {
  exposureMs: Float64Array;
  setUpMs: Float64Array;
  /** Index of each exposure's shot. */
  shot: Uint16Array;
}

/**
 * The pace from the first tick to the last.
 *
 * The first tick only says when to begin to count: what lies between is all that was ticked later, with its retakes, and
 * the set-up of each shot that was begun later. Working time only: what was done in breaks and at night took no time.
 */
export function paceSoFar({ doneMs, retakes, inTime }: Done, planned: Planned, calendar: WorkCalendar): Pace {
  const begun = new Uint8Array(planned.setUpMs.length);
  let plannedMs = 0;
  inTime.forEach((i, k) => {
    const shot = planned.shot[i] as number;
    if (k > 0) {
      plannedMs += (planned.exposureMs[i] as number) * (1 + (retakes[i] as number));
      if (begun[shot] === 0) plannedMs += planned.setUpMs[shot] as number;
    }
    begun[shot] = 1;
  });
  const [first, last] = [inTime[0], inTime.at(-1)];
  if (first === undefined || last === undefined) return { plannedMin: 0, realMin: 0, factor: 1 };
  const realMs = calendar.workUntilMs(doneMs[last] as number) - calendar.workUntilMs(doneMs[first] as number);
  const factor = plannedMs > 0 && realMs > 0 ? realMs / plannedMs : 1;
  return { plannedMin: plannedMs / 60_000, realMin: realMs / 60_000, factor };
}

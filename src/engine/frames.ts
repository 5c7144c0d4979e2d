/**
 * When each frame is shot, and with which settings.
 *
 * As a rule all intervals are alike and the settings follow the clock. A trigger that counts from closing to opening
 * turns that round: as the shutter stays open longer the interval grows, so that the frames and the end of the run
 * follow from the light, and are counted here one by one.
 */
import { cameraLane } from './cycle/cycle.ts';
import { openSpanS } from './exposure/ceiling.ts';
import type { RampColumns } from './exposure/ramp.ts';
import { type RampLadder, type RampLight, type RampRun, rampLadder, rampOf } from './exposure/ramp-run.ts';
import { openAtMarkS } from './exposure/shutter.ts';
import { skyNodes } from './light/nodes.ts';
import { lightTrack } from './light/scene.ts';
import { clipOf, framesForClip, type Pace, settingsUpTo } from './pacing/pacing.ts';
import type { Plan } from './plan/schema.ts';
import type { RigMotion } from './rig.ts';
import type { Room } from './room.ts';
import type { SkyTrack } from './sky/track.ts';
import type { Spell } from './spell.ts';

/** Times, moves and settings of all frames. */
export interface Frames {
  pace: Pace;
  elapsedS: Float64Array;
  intervalS: Float64Array;
  /** What of the frames have the same settings, in order. */
  spells: readonly Spell[];
  motion: RigMotion;
  /** null if the light is not planned. */
  ramp: RampRun | null;
}

/** Whether the interval follows the exposure. */
export const growsWithLight = ({ trigger, exposure, light }: Plan): boolean =>
  trigger.counts === 'endToStart' && exposure.ramp.used && light.kind !== 'none';

/** Longest that the run can last, seconds: for so long the sky has to be known. */
export function longestRunS(plan: Plan, pace: Pace): number {
  if (!growsWithLight(plan) || plan.pacing.workedOut !== 'event') return pace.eventDurationS;
  const spans = plan.exposure.ramp.steps
    .filter(({ setting }) => setting === 'shutter')
    .map(({ to }) => openSpanS(plan, cameraLane(plan, openAtMarkS(plan, to))));
  return pace.eventDurationS + pace.frames * Math.max(0, ...spans);
}

/**
 * Times, moves and settings of all frames.
 * @param pace - as `paceOf` gives it: what holds while the settings stay
 * @param sky - sun and moon over {@link longestRunS}; null without a place
 * @param memory - room for the columns
 */
export function framesOf(
  plan: Plan,
  pace: Pace,
  startMs: number,
  sky: SkyTrack | null,
  memory: Memory,
): Frames {
  const light = lightOf(plan, startMs, longestRunS(plan, pace), sky);
  if (light === null) return evenFrames(pace, memory);
  return growsWithLight(plan) ? grownFrames(plan, pace, light, memory) : litFrames(plan, pace, light, memory);
}

/** Where columns go, and how the moves over so many intervals come about. */
export interface Memory {
  room: Room;
  motion: (intervalS: Float64Array) => RigMotion;
}

function lightOf(plan: Plan, startMs: number, runS: number, sky: SkyTrack | null): RampLight | null {
  const nodes = sky && plan.light.kind === 'sky' ? skyNodes(sky, startMs, startMs + runS * 1000) : null;
  const track = lightTrack(plan, nodes);
  if (track === null || nodes === null) return track && { track, nodeStepS: 60, firstNode: 0 };
  const { stepMs } = nodes;
  return { track, nodeStepS: stepMs / 1000, firstNode: (startMs - nodes.startMs) / stepMs };
}

function evenFrames(pace: Pace, { room, motion }: Memory): Frames {
  const intervalS = room.f64(pace.frames).fill(pace.intervalS);
  const elapsedS = room.f64(pace.frames);
  fillEven(elapsedS, pace.intervalS);
  const spells = [{ begin: 0, end: pace.frames, rung: 0, intervalS: pace.intervalS }];
  return { pace, elapsedS, intervalS, spells, motion: motion(intervalS), ramp: null };
}

function fillEven(elapsedS: Float64Array, intervalS: number): void {
  for (let k = 0; k < elapsedS.length; k += 1) elapsedS[k] = k * intervalS;
}

/** Columns of so many frames whose intervals are still all alike. */
const rampColumns = (frames: number, intervalS: number, room: Room): RampColumns => ({
  rung: room.u16(frames),
  evScene: room.f32(frames),
  evError: room.f32(frames),
  elapsedS: room.f64(frames),
  intervalS: room.f64(frames).fill(intervalS),
});

const ladderFor = (plan: Plan, pace: Pace, { longestBusyS }: RigMotion): RampLadder =>
  rampLadder(plan, pace, longestBusyS);

function litFrames(plan: Plan, pace: Pace, light: RampLight, memory: Memory): Frames {
  const columns = rampColumns(pace.frames, pace.intervalS, memory.room);
  const { elapsedS, intervalS } = columns;
  const motion = memory.motion(intervalS);
  const ramp = rampOf(plan, pace, ladderFor(plan, pace, motion), light, columns);
  return { pace, elapsedS, intervalS, spells: ramp.spells, motion, ramp };
}

/** Frames whose intervals grow with the exposure. */
function grownFrames(plan: Plan, pace: Pace, light: RampLight, { room, motion }: Memory): Frames {
  const first = rampColumns(pace.frames, pace.intervalS, room);
  const ladder = ladderFor(plan, pace, motion(first.intervalS));
  const shoot = (dialS: number, columns: RampColumns) =>
    rampOf(plan, { ...pace, dialS }, ladder, light, columns);
  const dialS = plan.pacing.workedOut === 'interval' ? longestDial(plan, pace, shoot, room) : pace.dialS;
  const columns = grownColumns(plan, pace, dialS, shoot, room);
  const ramp = shoot(dialS, columns);
  const { elapsedS, intervalS } = columns;
  const frames = elapsedS.length;
  const eventDurationS = elapsedS[frames - 1] as number;
  const grown = {
    ...pace,
    ...clipOf(plan, frames),
    dialS,
    intervalS: intervalS[0] as number,
    eventDurationS,
    speedUp: (pace.speedUp * (intervalS[0] as number)) / pace.intervalS,
  };
  return { pace: grown, elapsedS, intervalS, spells: ramp.spells, motion: motion(intervalS), ramp };
}

type Shoot = (dialS: number, columns: RampColumns) => RampRun;

/** The longest dial setting with which the clip's frames still fit into the event; the shortest if none does. */
function longestDial(plan: Plan, pace: Pace, shoot: Shoot, room: Room): number {
  const { count, at } = settingsUpTo(plan, pace.dialS);
  if (count === 0) return pace.dialS;
  const wanted = Math.max(2, framesForClip(plan));
  const columns = rampColumns(wanted, pace.intervalS, room);
  const fits = (n: number) => {
    shoot(at(n), columns);
    return (columns.elapsedS[wanted - 1] as number) <= plan.pacing.eventS * WHOLE;
  };
  let low = 0;
  let high = count;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return at(low);
}

/** Columns of as many frames as the run has: those of the clip, or those that open within the event. */
function grownColumns(plan: Plan, pace: Pace, dialS: number, shoot: Shoot, room: Room): RampColumns {
  const { workedOut, eventS } = plan.pacing;
  if (workedOut === 'event') return rampColumns(pace.frames, pace.intervalS, room);
  // No exposure is shorter than the plan's own.
  const shortestS = pace.intervalS - pace.dialS + dialS;
  const most = rampColumns(Math.floor((eventS * WHOLE) / shortestS) + 1, pace.intervalS, room);
  shoot(dialS, most);
  return firstOf(most, framesWithin(most.elapsedS, eventS));
}

// A sum of many intervals carries a rounding: one that ends with the event to its last digits ends with it.
const WHOLE = 1 + 1e-12;

/** Frames that open within an event, at least one. */
function framesWithin(elapsedS: Float64Array, eventS: number): number {
  const after = elapsedS.findIndex((elapsed) => elapsed > eventS * WHOLE);
  return after === -1 ? elapsedS.length : Math.max(1, after);
}

const firstOf = (columns: RampColumns, frames: number): RampColumns => ({
  rung: columns.rung.subarray(0, frames),
  evScene: columns.evScene.subarray(0, frames),
  evError: columns.evError.subarray(0, frames),
  elapsedS: columns.elapsedS.subarray(0, frames),
  intervalS: columns.intervalS.subarray(0, frames),
});

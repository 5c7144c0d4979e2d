/**
 * The rig over the sheet: where each axis stands at each exposure, and how long it takes to get there.
 *
 * Over each shot its tracks run as over a clip of as many frames, the last one at share 1; an exposure has the position
 * of its first frame. A time of a keyframe is one on screen, from the shot's first frame. Whatever the plan says of
 * moving, the rig moves between exposures or not at all.
 */
import type { RunClock } from '../motion/keyframes.ts';
import { motionOf } from '../motion/motion.ts';
import { takeUpOf } from '../motion/take-up.ts';
import { fillSteps, stepsPerUnit } from '../motion/tracks.ts';
import { aimer } from '../path/aim.ts';
import type { Plan, Shot } from '../plan/schema.ts';
import { Room } from '../room.ts';
import { parseRate, toNumber } from '../time/ratio.ts';
import type { Exposures } from './exposures.ts';
import { sameRig } from './reuse.ts';
import { copyShot, inPlace, lenderOf } from './rig-lent.ts';
import { tracksOf } from './shots.ts';
import type { SheetAxis, SheetShot } from './types.ts';

/** The frames of a shot, as its keyframes see them. */
export function shotClock(frames: number, rate: string): RunClock {
  const perS = toNumber(parseRate(rate));
  const indexAt = (timeS: number): number => {
    const index = timeS * perS;
    const whole = Math.round(index);
    // A product of decimals carries a rounding: a time this near to a frame is that frame.
    return Math.abs(index - whole) < 1e-6 ? whole : index;
  };
  return { frames, indexAt };
}

/** What the rig does before each exposure; seconds. Nothing before the first of a shot: that is set-up. */
export interface RigWork {
  axes: SheetAxis[];
  /** The whole rig, and each axis by itself. */
  moveS: Float64Array;
  axisMoveS: Float64Array[];
  settleS: Float64Array;
  means: Means;
}

/** A shot of the sheet with what the plan says of it. */
export interface ShotPart {
  shot: Shot;
  placed: SheetShot;
}

/**
 * Works out the rig's part of the sheet.
 * @param firstFrame - of each exposure, within its shot, from 1
 * @param before - the exposures before an edit: a shot that still goes the same way is taken from them
 */
export function rigOf(
  plan: Plan,
  parts: readonly ShotPart[],
  firstFrame: Int32Array,
  before: { plan: Plan; exposures: Exposures } | null = null,
): RigWork {
  const earlier = before && sameRig(plan, before.plan) ? before : null;
  const lenders = parts.map((part, s) => earlier && lenderOf(plan, part, s, firstFrame, earlier));
  if (earlier?.exposures.count === firstFrame.length && parts.every((part, s) => inPlace(part, lenders[s])))
    return earlier.exposures.rig;
  const work = emptyWork(plan, firstFrame.length, before?.exposures.rig.means);
  if (work.axes.length === 0) return work;
  parts.forEach((part, s) => {
    const lender = lenders[s];
    if (part.placed.exposures === 0) return;
    if (earlier && lender) copyShot(part, lender, earlier.exposures.rig, work);
    else fillShot(plan, part, firstFrame, work);
  });
  work.axes.forEach(({ steps, from }, a) => {
    const axis = plan.rig.axes[a];
    if (axis) fillSides(from, steps, takeUpOf(axis).side);
  });
  return work;
}

function emptyWork(plan: Plan, count: number, means: Means | undefined): RigWork {
  const column = () => new Float64Array(count);
  return {
    axes: plan.rig.axes.map((axis) => ({
      name: axis.name,
      unit: axis.unit,
      stepsPerUnit: stepsPerUnit(axis),
      steps: new Int32Array(count),
      from: new Int8Array(count),
    })),
    moveS: column(),
    axisMoveS: plan.rig.axes.map(column),
    settleS: column(),
    means: means ?? { room: new Room(), frames: new Int32Array() },
  };
}

/** Memory that shots use one after another, and later sheets again: for columns, and for the frames of a shot. */
interface Means {
  room: Room;
  frames: Int32Array;
}

/**
 * Fills the exposures of a shot: as a run that has a frame for each of them, its axes put where the tracks of the shot
 * have them.
 */
function fillShot(plan: Plan, part: ShotPart, firstFrame: Int32Array, work: RigWork): void {
  const { firstExposure, exposures } = part.placed;
  const [from, to] = [firstExposure - 1, firstExposure - 1 + exposures];
  const run: Plan = { ...plan, move: { ...plan.move, mode: 'moveShootMove', tracks: [] } };
  const { means } = work;
  const { room } = means;
  room.clear();
  const motion = motionOf(run, room.f64(exposures).fill(1), room, (axes) => {
    placeAxes(plan, part, firstFrame.subarray(from, to), axes, means);
  });
  motion.axes.forEach(({ steps, moveS }, a) => {
    work.axes[a]?.steps.set(steps, from);
    putBefore(work.axisMoveS[a] as Float64Array, from, moveS);
  });
  putBefore(work.moveS, from, motion.moveS);
  putBefore(work.settleS, from, motion.settleS);
}

/** What comes after each frame of a run belongs to the exposure that it leads to. */
function putBefore(column: Float64Array, from: number, after: Float64Array): void {
  column.set(after.subarray(0, -1), from + 1);
}

/** Puts the axes where the tracks of a shot have them, and aims the head if the plan asks for that. */
function placeAxes(
  plan: Plan,
  { shot, placed }: ShotPart,
  firstFrame: Int32Array,
  axes: readonly { steps: Int32Array; stepsPerUnit: number }[],
  means: Means,
): void {
  if (means.frames.length < placed.frames) means.frames = new Int32Array(placed.frames);
  const frames = means.frames.subarray(0, placed.frames);
  const clock = shotClock(placed.frames, plan.clip.frameRate);
  const tracks = tracksOf(plan, shot);
  const still = plan.move.mode === 'still';
  axes.forEach(({ steps }, a) => {
    const axis = plan.rig.axes[a];
    if (!axis) return;
    const track = tracks.find((candidate) => candidate.axis === axis.name);
    fillSteps(frames, axis, track, clock);
    for (let k = 0; k < steps.length; k += 1)
      steps[k] = frames[still ? 0 : (firstFrame[k] as number) - 1] as number;
  });
  aimer(plan, axes, means.room);
}

/** From which side each position is arrived at. The first of all is where the rig is put by hand. */
function fillSides(from: Int8Array, steps: Int32Array, side: -1 | 0 | 1): void {
  for (let i = 1; i < steps.length; i += 1) {
    const move = (steps[i] as number) - (steps[i - 1] as number);
    if (move !== 0) from[i] = side === 0 ? Math.sign(move) : side;
  }
}

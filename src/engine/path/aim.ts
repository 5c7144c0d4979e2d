/**
 * Aim: where pan and tilt have to stand at every frame so that the lens looks at the subject.
 *
 * Seen from the lens the subject lies at a bearing and an elevation, as the head counts them: pan and tilt follow
 * these to the nearest whole step. Both go on without a jump: a bearing that passes 180 degrees goes on to 181.
 * Where the travel does not reach, an axis stops at its end, unless it reaches the same direction a full turn away.
 */
import type { Plan } from '../plan/schema.ts';
import type { Room } from '../room.ts';
import { Follower } from './follower.ts';
import { focalPx, NEAREST_MM, poseAxis, RAD, type StepColumns } from './pose.ts';
import { Scene } from './scene.ts';
import { BLOCK, placeOf, type Turn, Turning } from './turning.ts';

/** Axes that aim. */
export type AimKind = 'pan' | 'tilt';

/** How well the aim holds. Frames count from 1. */
export interface AimSummary {
  /** Frames whose image centre misses the subject, and the first of them. */
  missFrames: number;
  firstMissFrame: number | null;
  /** The largest miss: in the image, and as an angle. null if none misses. */
  worstPx: number;
  worstDeg: number;
  worstFrame: number | null;
  /** Lowest and highest position of the axes over the run; null for an axis that the rig does not have. */
  panFromDeg: number | null;
  panToDeg: number | null;
  tiltFromDeg: number | null;
  tiltToDeg: number | null;
  /** Axes that stop at an end of their travel. */
  limits: AimKind[];
  /** Axes that the rig does not have. */
  lacks: AimKind[];
}

/** The aim of a run. */
export interface Aim {
  summary: AimSummary;
  /** Pixels from the image centre to the subject, at every frame; 0 where it is there but for whole steps. */
  missPx: Float32Array;
}

/** Whether the plan keeps its subject framed. */
export const aims = ({ subject }: Plan): boolean => subject.used && subject.aimed;

/**
 * Aims the lens at the subject: overwrites the steps of the pan and the tilt axis.
 *
 * With one of the two only, the other direction is as the plan has it, and this one gets as near as it can; it does
 * not look over the top. Straight above the head any bearing will do: then the pan stays.
 * @param axes - columns in the order of the plan's axes; all but pan and tilt are read
 * @param room - memory for the miss
 * @param known - scene of the plan and the axes, if it is known
 * @returns null if the plan does not ask for it, or if the rig has no axis at all
 */
export function aimer(plan: Plan, axes: readonly StepColumns[], room: Room, known?: Scene): Aim | null {
  const frames = axes[0]?.steps.length ?? 0;
  if (!aims(plan) || frames === 0) return null;
  const scene = known ?? new Scene(plan, axes);
  const head = headOf(plan, axes, scene);
  const limits = aimHead(scene, head, scene.moves ? frames : 1);
  const lacks = AIM_KINDS.filter((kind) => head[kind] === null);
  if (!scene.moves) for (const kind of AIM_KINDS) head[kind]?.steps.fill(head[kind].steps[0] as number);
  const missPx = room.f32(frames).fill(0);
  const held = limits.length + lacks.length === 0;
  const miss = held ? NO_MISS : fillMiss(plan, axes, scene, missPx);
  return { summary: { ...miss, ...rangesOf(head), limits, lacks }, missPx };
}

const AIM_KINDS: readonly AimKind[] = ['pan', 'tilt'];

type Head = Readonly<Record<AimKind, Follower | null>>;

function headOf(plan: Plan, axes: readonly StepColumns[], { geometry }: Scene): Head {
  const follower = (kind: AimKind, zeroRad: number): Follower | null => {
    const index = poseAxis(plan, kind);
    const [axis, columns] = [plan.rig.axes[index], axes[index]];
    return axis && columns ? new Follower(axis, columns, zeroRad) : null;
  };
  return {
    pan: follower('pan', geometry.lensBearingRad),
    tilt: follower('tilt', geometry.lensTiltRad),
  };
}

/** Fills the steps of a head, and says which of its axes had to stop at the ends of their travel. */
function aimHead(scene: Scene, { pan, tilt }: Head, frames: number): AimKind[] {
  const limits: AimKind[] = [];
  const facing = pan ? null : new Turning(undefined, scene.geometry.lensBearingRad, 0);
  const followAll = () => follow(scene, frames, { pan, tilt }, facing);
  followAll();
  const shifted = [pan?.shift(), tilt?.shift()];
  if (shifted.includes(true)) followAll();
  if (pan?.keepWithin(frames)) {
    limits.push('pan');
    const stopped = new Turning(pan, scene.geometry.lensBearingRad, RAD);
    if (tilt) follow(scene, frames, { pan: null, tilt }, stopped);
  }
  if (tilt?.keepWithin(frames)) limits.push('tilt');
  return limits;
}

/**
 * Follows the subject with pan and tilt, wherever that leads.
 * @param facing - bearing of the lens, where that is not the subject's: no pan, or one at the end of its travel
 */
function follow(scene: Scene, frames: number, { pan, tilt }: Head, facing: Turning | null): void {
  pan?.begin();
  tilt?.begin();
  for (let from = 0; from < frames; from += BLOCK) {
    const count = Math.min(BLOCK, frames - from);
    scene.fill(from, from + count);
    pan?.follow(scene.x, scene.y, from, count);
    if (facing) {
      facing.fill(from, from + count);
      turnAside(scene.x, scene.y, scene.level, facing.turn, from, count);
    }
    tilt?.follow(scene.z, scene.level, from, count);
  }
}

// A lens that looks past the subject by 60 degrees has lost it: then the tilt need not go on to straight up.
const LEAST_SHARE = 0.5;

/** Leaves of the level distance to the subject what lies ahead of a lens that faces elsewhere. */
function turnAside(
  x: Float64Array,
  y: Float64Array,
  level: Float64Array,
  [of, whole, table]: Turn,
  from: number,
  count: number,
): void {
  const every = whole[0] as number;
  const low = whole[1] as number;
  for (let i = 0; i < count; i += 1) {
    const at = ((of[(from + i) & every] as number) - low) << 1;
    const ahead = (x[i] as number) * (table[at] as number) + (y[i] as number) * (table[at + 1] as number);
    level[i] = Math.max(ahead, LEAST_SHARE * (level[i] as number));
  }
}

type Miss = Pick<AimSummary, 'missFrames' | 'firstMissFrame' | 'worstPx' | 'worstDeg' | 'worstFrame'>;

const NO_MISS: Miss = { missFrames: 0, firstMissFrame: null, worstPx: 0, worstDeg: 0, worstFrame: null };

// Farther off than this a distance in the image says no more: the subject may be beside the camera, or behind it.
const FARTHEST = Math.tan(89 * RAD);

/** Pixels up to which a miss is none: what whole steps explain, or one. */
export function smallestMissPx(plan: Plan, axes: readonly StepColumns[]): number {
  const stepsRad = AIM_KINDS.map((kind) => RAD / (axes[poseAxis(plan, kind)]?.stepsPerUnit ?? Infinity));
  return Math.max(1, focalPx(plan.camera) * Math.tan(Math.min(1, Math.hypot(...stepsRad))));
}

/** Fills the distance from the image centre to the subject. */
function fillMiss(plan: Plan, axes: readonly StepColumns[], scene: Scene, missPx: Float32Array): Miss {
  const { lensBearingRad, lensTiltRad } = scene.geometry;
  const pan = new Turning(axes[poseAxis(plan, 'pan')], lensBearingRad, RAD);
  const tilt = new Turning(axes[poseAxis(plan, 'tilt')], lensTiltRad, RAD);
  const [panTable, tiltTable] = [pan.turn[2], tilt.turn[2]];
  const focal = focalPx(plan.camera);
  const smallest = smallestMissPx(plan, axes);
  const nearest2 = NEAREST_MM * NEAREST_MM;
  const { x, y, z } = scene;
  let missFrames = 0;
  let firstMissFrame: number | null = null;
  let worstFrame: number | null = null;
  // Of the worst frame: cosine of the angle between lens and subject.
  let worstCosine = 1;
  for (let from = 0; from < missPx.length; from += BLOCK) {
    const to = Math.min(from + BLOCK, missPx.length);
    scene.fill(from, to);
    pan.fill(from, to);
    tilt.fill(from, to);
    for (let k = from; k < to; k += 1) {
      const i = k - from;
      const right = x[i] as number;
      const forward = y[i] as number;
      const above = z[i] as number;
      const p = placeOf(pan.turn, k);
      const t = placeOf(tilt.turn, k);
      const level = right * (panTable[p] as number) + forward * (panTable[p + 1] as number);
      const ahead = level * (tiltTable[t + 1] as number) + above * (tiltTable[t] as number);
      const distance2 = right * right + forward * forward + above * above;
      const off = Math.sqrt(Math.max(0, distance2 - ahead * ahead));
      const px = focal * (off < ahead * FARTHEST ? off / ahead : FARTHEST);
      if (px <= smallest || distance2 < nearest2) continue;
      missPx[k] = px;
      missFrames += 1;
      firstMissFrame ??= k + 1;
      const cosine = ahead / Math.sqrt(distance2);
      if (cosine >= worstCosine) continue;
      worstCosine = cosine;
      worstFrame = k + 1;
    }
  }
  const worstDeg = Math.acos(Math.max(-1, worstCosine)) / RAD;
  const worstPx = worstFrame === null ? 0 : (missPx[worstFrame - 1] as number);
  return { missFrames, firstMissFrame, worstPx, worstDeg, worstFrame };
}

type Ranges = Pick<AimSummary, 'panFromDeg' | 'panToDeg' | 'tiltFromDeg' | 'tiltToDeg'>;

function rangesOf({ pan, tilt }: Head): Ranges {
  return {
    panFromDeg: pan && pan.low / pan.stepsPerUnit,
    panToDeg: pan && pan.high / pan.stepsPerUnit,
    tiltFromDeg: tilt && tilt.low / tilt.stepsPerUnit,
    tiltToDeg: tilt && tilt.high / tilt.stepsPerUnit,
  };
}

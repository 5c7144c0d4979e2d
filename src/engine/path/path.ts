/** The way of the lens through the room over a run. */
import { firstAt } from '../leap.ts';
import type { Plan } from '../plan/schema.ts';
import type { AxisColumns } from '../schedule-types.ts';
import {
  armRad,
  type Geometry,
  geometryOf,
  hasPose,
  lensAt,
  poseAxis,
  RAD,
  type Stance,
  stancesOf,
  type Vector,
} from './pose.ts';

/** Where the lens is at a frame, counted from 1; mm right and forward of the rig's pivot, and above the floor. */
export interface PathPoint {
  frame: number;
  rightMm: number;
  forwardMm: number;
  heightMm: number;
}

/** The path of the lens. */
export interface PathSummary {
  first: PathPoint;
  last: PathPoint;
  highest: PathPoint;
  lowest: PathPoint;
  /** From the lowest to the highest, mm. */
  riseMm: number;
  /** Farthest from the upright through the pivot, mm. */
  reachMm: number;
  /** Along the path, mm. */
  lengthMm: number;
  /** Between the lowest and the highest angle of the arm, degrees; 0 without one. */
  swingDeg: number;
  /** How far the arc of that swing bulges from its chord, mm: R (1 - cos(half the swing)). */
  sagittaMm: number;
  /** Farthest from the straight line between its ends, mm. Of a path that comes back, to where it is farthest off. */
  deviationMm: number;
  /** Of the lens above the floor, where that is least, mm. */
  clearanceMm: number;
}

// Between two of so many frames an arc of half a turn leaves its chord by a two hundred thousandth of its radius.
const SAMPLES = 500;

/**
 * The way of the lens over a run, from the first frame, the last, those where arm or slide are at their extremes, and
 * some hundred between.
 * @param axes - as the schedule has them, in the order of the plan's
 * @returns null for a rig that neither moves nor turns anything
 */
export function pathOf(plan: Plan, axes: readonly AxisColumns[]): PathSummary | null {
  if (!hasPose(plan) || axes.length === 0) return null;
  const geometry = geometryOf(plan);
  const stanceAt = stancesOf(plan, axes);
  const boom = extremesOf(axes[poseAxis(plan, 'boom')]);
  const slide = extremesOf(axes[poseAxis(plan, 'slide')]);
  const frames = sampledFrames(axes[0]?.steps.length ?? 1, [boom, slide].flat());
  const points = frames.map((index): PathPoint => {
    const { x, y, z } = lensAt(geometry, stanceAt(index));
    return { frame: index + 1, rightMm: x, forwardMm: y, heightMm: z };
  });
  const highest = points.reduce((a, b) => (b.heightMm > a.heightMm ? b : a));
  const lowest = points.reduce((a, b) => (b.heightMm < a.heightMm ? b : a));
  return {
    first: points[0] as PathPoint,
    last: points.at(-1) as PathPoint,
    highest,
    lowest,
    riseMm: highest.heightMm - lowest.heightMm,
    reachMm: Math.max(...points.map(({ rightMm: x, forwardMm: y }) => length({ x, y, z: 0 }))),
    lengthMm: points.slice(1).reduce((sum, point, i) => sum + apart(point, points[i] as PathPoint), 0),
    ...swingOf(geometry, boom.map(stanceAt)),
    deviationMm: deviation(points),
    clearanceMm: lowest.heightMm,
  };
}

/** Indices of the frames to look at, in order: some even over the run, and those that have to be among them. */
function sampledFrames(frames: number, extremes: readonly number[]): number[] {
  const last = frames - 1;
  const count = Math.min(last, SAMPLES);
  const even = Array.from({ length: count + 1 }, (_, i) => Math.round((i * last) / Math.max(1, count)));
  return [...new Set([...even, ...extremes])].sort((a, b) => a - b);
}

/** Indices of the first lowest and the first highest position; 0 for an axis that the rig does not have. */
export const extremesOf = (columns: AxisColumns | undefined): [low: number, high: number] =>
  columns ? [firstAt(columns, columns.lowestSteps), firstAt(columns, columns.highestSteps)] : [0, 0];

/** @param ends - where the arm is lowest and highest on its scale */
function swingOf(geometry: Geometry, ends: readonly Stance[]): Pick<PathSummary, 'swingDeg' | 'sagittaMm'> {
  const [from = 0, to = 0] = ends.map((stance) => armRad(geometry, stance));
  // Beyond a whole turn nothing bulges farther.
  const half = Math.min((to - from) / 2, Math.PI);
  return { swingDeg: (to - from) / RAD, sagittaMm: (geometry.boom?.lengthMm ?? 0) * (1 - Math.cos(half)) };
}

const between = (a: PathPoint, b: PathPoint): Vector => ({
  x: b.rightMm - a.rightMm,
  y: b.forwardMm - a.forwardMm,
  z: b.heightMm - a.heightMm,
});

// Math.hypot guards against squares out of range, which nothing on the floor is, and takes several times as long.
const length = ({ x, y, z }: Vector): number => Math.sqrt(x * x + y * y + z * z);

/** Distance of two points, mm. */
const apart = (a: PathPoint, b: PathPoint): number => length(between(a, b));

// Whole steps bring a path back to within a rounding.
const BACK_MM = 1e-6;

/** Farthest that a path goes from the straight line between its ends, mm. */
function deviation(points: readonly PathPoint[]): number {
  const first = points[0] as PathPoint;
  const last = points.at(-1) as PathPoint;
  const farthest = points.reduce((a, b) => (apart(first, b) > apart(first, a) ? b : a));
  const chord = between(first, apart(first, last) > BACK_MM ? last : farthest);
  const chordMm = length(chord);
  if (chordMm === 0) return 0;
  return Math.max(...points.map((point) => length(cross(between(first, point), chord)) / chordMm));
}

const cross = (a: Vector, b: Vector): Vector => ({
  x: a.y * b.z - a.z * b.y,
  y: a.z * b.x - a.x * b.z,
  z: a.x * b.y - a.y * b.x,
});

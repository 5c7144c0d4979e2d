/** The rig as it is drawn: where it stands at single frames, and the way of its lens; millimetres in its room. */
import { type Pose, poseAt } from '../../engine/path/camera-pose.ts';
import {
  type Geometry,
  geometryOf,
  lensAt,
  poseAxis,
  stanceAt,
  subjectAt,
  type Vector,
} from '../../engine/path/pose.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import type { AxisColumns } from '../../engine/schedule-types.ts';

/** The rig at one frame. */
export interface Standing {
  /** Counted from 0. */
  index: number;
  pose: Pose;
  /** Where the arm is borne, or the lens if there is none. */
  base: Vector;
  /** Where the counterweight hangs; null without one. */
  rear: Vector | null;
  /** What it looks at; null without one, and where that is too far off to be drawn. */
  subject: Vector | null;
  /** From the lens to the subject, mm, drawn or not; null without one. */
  subjectMm: number | null;
  /** Left and right, upper and lower edge of what it sees, as far off as the drawing shows it. */
  across: readonly [Vector, Vector];
  upright: readonly [Vector, Vector];
  /** What it looks at. */
  ahead: Vector;
}

/** All that is drawn whatever the frame. */
export interface DrawnRig {
  /** Height of the pivot. */
  pivotMm: number;
  hasArm: boolean;
  /** Thinned, first and last included. */
  path: readonly Vector[];
  first: Standing;
  last: Standing;
  /** Radius of the circle of the feet, mm; null if nobody has asked for the support. */
  feetMm: number | null;
  /** Ends of the slide's travel; null without a slide. */
  rail: readonly [Vector, Vector] | null;
  /** Middle of the turntable, and how far from it the subject stands; null without one, or too far off. */
  table: { middle: Vector; radiusMm: number } | null;
  /** How the rig stands at any frame. */
  at: (index: number) => Standing;
}

export const plus = (a: Vector, b: Vector, times = 1): Vector => ({
  x: a.x + times * b.x,
  y: a.y + times * b.y,
  z: a.z + times * b.z,
});

export const distance = (a: Vector, b: Vector): number => Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z);

/** Points of the path at most: on a line of so many pixels nobody sees more. */
const MOST_POINTS = 240;

/** How many times the size of the rig something may be away from it and still be drawn in its place. */
const NEAR = 3;

/** How far the drawn field of view reaches, in sizes of the rig. */
const SIGHT = 0.22;

function framesDrawn(frames: number): number[] {
  const count = Math.min(frames, MOST_POINTS);
  return Array.from({ length: count }, (_, n) => Math.round((n * (frames - 1)) / Math.max(1, count - 1)));
}

/** Size of the rig itself: from the floor to its highest, and as far as its lens gets. */
function sizeOf(path: readonly Vector[]): number {
  const away = path.map(({ x, y, z }) => Math.hypot(x, y, z));
  return Math.max(300, ...away);
}

/** Middles of the edges of the image at a distance from the lens. */
function edgesAt(
  { position, direction, right, up }: Pose,
  { focalLengthMm, sensorWidthMm, sensorHeightMm }: Plan['camera'],
  mm: number,
): Pick<Standing, 'across' | 'upright'> {
  const middle = plus(position, direction, mm);
  const ends = (side: Vector, sensorMm: number) => {
    const half = (mm * sensorMm) / focalLengthMm / 2;
    return [plus(middle, side, -half), plus(middle, side, half)] as const;
  };
  return { across: ends(right, sensorWidthMm), upright: ends(up, sensorHeightMm) };
}

function railOf(plan: Plan, geometry: Geometry): DrawnRig['rail'] {
  const axis = plan.rig.axes[poseAxis(plan, 'slide')];
  if (!axis) return null;
  const pivot = { x: 0, y: 0, z: geometry.pivotMm };
  return [plus(pivot, geometry.slide, axis.travelMin), plus(pivot, geometry.slide, axis.travelMax)];
}

function tableOf(plan: Plan, { table, subject, onTurntable }: Geometry): DrawnRig['table'] {
  if (poseAxis(plan, 'turntable') === -1) return null;
  const turns = plan.subject.used && onTurntable;
  return {
    middle: { ...table, z: 0 },
    radiusMm: turns ? Math.hypot(subject.x - table.x, subject.y - table.y) : 0,
  };
}

/**
 * The rig of a plan, ready to be drawn.
 * @param axes - as the schedule has them; of a run with at least one frame
 * @param rearMm - how far behind the pivot the counterweight hangs; null without one
 */
export function drawnRig(plan: Plan, axes: readonly AxisColumns[], rearMm: number | null): DrawnRig {
  const geometry = geometryOf(plan);
  const { balance, rig, subject, camera } = plan;
  const hasArm = geometry.boom !== null;
  const frames = axes[0]?.steps.length ?? 1;
  const stance = (index: number) => stanceAt(plan, axes, index);
  const path = framesDrawn(frames).map((index) => lensAt(geometry, stance(index)));
  const size = sizeOf(path);
  const isNear = ({ x, y, z }: Vector) => Math.hypot(x, y, z) <= NEAR * size;
  const at = (index: number): Standing => {
    const present = stance(index);
    const pose = poseAt(geometry, present);
    const base = lensAt({ ...geometry, boom: null }, present);
    const target = subject.used ? subjectAt(geometry, present) : null;
    const shown = target && isNear(target) ? target : null;
    const subjectMm = target && distance(target, pose.position);
    const sightMm = Math.min(SIGHT * size, shown && subjectMm ? subjectMm : SIGHT * size);
    return {
      index,
      pose,
      base,
      rear: rearMm === null ? null : plus(base, plus(base, pose.position, -1), rearMm / rig.arm.lengthMm),
      subject: shown,
      subjectMm,
      ...edgesAt(pose, camera, sightMm),
      ahead: plus(pose.position, pose.direction, shown && subjectMm ? subjectMm : sightMm),
    };
  };
  const table = tableOf(plan, geometry);
  return {
    pivotMm: geometry.pivotMm,
    hasArm,
    path,
    first: at(0),
    last: at(frames - 1),
    feetMm: balance.used ? balance.feetRadiusMm : null,
    rail: railOf(plan, geometry),
    table: table && isNear(table.middle) ? table : null,
    at,
  };
}

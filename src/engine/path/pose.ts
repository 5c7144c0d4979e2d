/**
 * Where the lens is, from the positions of the axes.
 *
 * Millimetres from the floor right under the rig's pivot: x to the right, y forward, z up. Bearings count from
 * forward, clockwise seen from above; elevations upwards; roll clockwise seen from behind the camera.
 */
import type { Axis, Plan } from '../plan/schema.ts';
import type { AxisColumns } from '../schedule-types.ts';

export const RAD = Math.PI / 180;

/** A place (mm) or a direction (of length 1): to the right, forward, up. */
export interface Vector {
  x: number;
  y: number;
  z: number;
}

/** Kinds of axis that move or turn the lens, or what it looks at. */
export const POSE_KINDS = ['boom', 'slide', 'pan', 'tilt', 'roll', 'turntable'] as const;
export type PoseKind = (typeof POSE_KINDS)[number];

/** Position of each axis, in its unit; 0 for one that the rig does not have. */
export type Stance = Readonly<Record<PoseKind, number>>;

/** A boom goes along its arc by the millimetre or turns by the degree; all else goes or turns. */
const fits = ({ kind, unit }: Axis): boolean => kind === 'boom' || unit === (kind === 'slide' ? 'mm' : 'deg');

/**
 * Index of the axis that does something to the pose: the first of its kind.
 * @returns -1 if there is none, or if it moves in a unit that makes no sense for its kind
 */
export function poseAxis({ rig }: Plan, kind: PoseKind): number {
  const index = rig.axes.findIndex((axis) => axis.kind === kind);
  const axis = rig.axes[index];
  return axis && fits(axis) ? index : -1;
}

/** Whether the rig has an axis that moves or turns the lens or the subject. */
export const hasPose = (plan: Plan): boolean => POSE_KINDS.some((kind) => poseAxis(plan, kind) !== -1);

/** The columns that a stance is read from. */
export type StepColumns = Pick<AxisColumns, 'steps' | 'stepsPerUnit'>;

/**
 * Positions of the axes over a run.
 * @param axes - as the schedule has them, in the order of the plan's
 * @returns those at a frame, counted from 0
 */
export function stancesOf(plan: Plan, axes: readonly StepColumns[]): (index: number) => Stance {
  const positionOf = (kind: PoseKind): ((index: number) => number) => {
    const columns = axes[poseAxis(plan, kind)];
    if (!columns) return () => 0;
    const { steps, stepsPerUnit } = columns;
    return (index) => (steps[index] ?? 0) / stepsPerUnit;
  };
  const [boom, slide, pan] = [positionOf('boom'), positionOf('slide'), positionOf('pan')];
  const [tilt, roll, turntable] = [positionOf('tilt'), positionOf('roll'), positionOf('turntable')];
  return (index) => ({
    boom: boom(index),
    slide: slide(index),
    pan: pan(index),
    tilt: tilt(index),
    roll: roll(index),
    turntable: turntable(index),
  });
}

/** Positions of the axes at a frame, counted from 0. For many frames {@link stancesOf} is faster. */
export const stanceAt = (plan: Plan, axes: readonly StepColumns[], index: number): Stance =>
  stancesOf(plan, axes)(index);

/** The constants of a rig; lengths in mm, angles in radians. */
export interface Geometry {
  pivotMm: number;
  /** Where the slide goes, for each mm. */
  slide: Vector;
  /** null without a boom axis: then the lens is on the slide or the pivot. */
  boom: {
    lengthMm: number;
    zeroRad: number;
    radPerUnit: number;
    /** Uppermost direction within the plane of the arc; its forward direction is forward. */
    rise: Vector;
    /** Whether the head turns with the arm. */
    turnsHead: boolean;
  } | null;
  lensBearingRad: number;
  lensTiltRad: number;
  /** Axis of the turntable. */
  table: { x: number; y: number };
  subject: Vector;
  onTurntable: boolean;
}

/** The constants of a plan's rig and subject. */
export function geometryOf(plan: Plan): Geometry {
  const { rig, subject } = plan;
  const boom = rig.axes[poseAxis(plan, 'boom')];
  const lean = rig.arm.planeTiltDeg * RAD;
  return {
    pivotMm: rig.pivotHeightMm,
    slide: directionOf(rig.slide.bearingDeg * RAD, rig.slide.inclineDeg * RAD),
    boom: boom
      ? {
          lengthMm: rig.arm.lengthMm,
          zeroRad: rig.arm.zeroDeg * RAD,
          radPerUnit: boom.unit === 'mm' ? 1 / rig.arm.lengthMm : RAD,
          rise: { x: Math.sin(lean), y: 0, z: Math.cos(lean) },
          turnsHead: !rig.arm.keepsLevel,
        }
      : null,
    lensBearingRad: rig.lensBearingDeg * RAD,
    lensTiltRad: rig.lensTiltDeg * RAD,
    table: { x: rig.turntable.rightMm, y: rig.turntable.forwardMm },
    subject: { x: subject.rightMm, y: subject.forwardMm, z: subject.heightMm },
    onTurntable: subject.onTurntable,
  };
}

/** Unit vector of a bearing and an elevation, radians. */
export const directionOf = (bearing: number, elevation: number): Vector => ({
  x: Math.sin(bearing) * Math.cos(elevation),
  y: Math.cos(bearing) * Math.cos(elevation),
  z: Math.sin(elevation),
});

/** Two vectors, each so many times, together. */
export const sum = (a: Vector, b: Vector, scaleA = 1, scaleB = 1): Vector => ({
  x: scaleA * a.x + scaleB * b.x,
  y: scaleA * a.y + scaleB * b.y,
  z: scaleA * a.z + scaleB * b.z,
});

/** Angle of the arm from level, radians. */
export const armRad = ({ boom }: Geometry, { boom: position }: Stance): number =>
  boom ? boom.zeroRad + position * boom.radPerUnit : 0;

/** Place of the lens, mm. */
export function lensAt(geometry: Geometry, stance: Stance): Vector {
  const { boom, pivotMm, slide } = geometry;
  const base = sum({ x: 0, y: 0, z: pivotMm }, slide, 1, stance.slide);
  if (!boom) return base;
  const angle = armRad(geometry, stance);
  const out = sum(boom.rise, { x: 0, y: 1, z: 0 }, Math.sin(angle), Math.cos(angle));
  return sum(base, out, 1, boom.lengthMm);
}

/** Place of the subject, mm: it may stand on the turntable. */
export function subjectAt({ subject, onTurntable, table }: Geometry, stance: Stance): Vector {
  if (!onTurntable) return subject;
  const [sine, cosine] = [Math.sin(stance.turntable * RAD), Math.cos(stance.turntable * RAD)];
  const [x, y] = [subject.x - table.x, subject.y - table.y];
  return { x: table.x + x * cosine + y * sine, y: table.y + y * cosine - x * sine, z: subject.z };
}

/** What is nearer to the lens is not in the picture, nor at any direction from it. */
export const NEAREST_MM = 1;

/** Focal length in pixels of the camera's image. */
export const focalPx = ({ focalLengthMm, imageWidthPx, sensorWidthMm }: Plan['camera']): number =>
  (focalLengthMm * imageWidthPx) / sensorWidthMm;

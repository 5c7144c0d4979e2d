/** The camera in space by plain rotation matrices, and a pinhole's picture. */
import type { Axis, Plan } from '../../../src/engine/plan/schema.ts';

export type Vector = readonly [number, number, number];
type Matrix = readonly [Vector, Vector, Vector];

const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const plus = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const times = (m: Matrix, v: Vector): Vector => [dot(m[0], v), dot(m[1], v), dot(m[2], v)];
export const norm = (v: Vector): number => Math.hypot(...v);
export const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const turned = (m: Matrix): Matrix => [
  [m[0][0], m[1][0], m[2][0]],
  [m[0][1], m[1][1], m[2][1]],
  [m[0][2], m[1][2], m[2][2]],
];
const product = (a: Matrix, b: Matrix): Matrix => {
  const columns = turned(b);
  return [times(columns, a[0]), times(columns, a[1]), times(columns, a[2])];
};

const ONE: Matrix = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];
const RADIANS = Math.PI / 180;

// Right-handed turns by degrees about x (right), y (forward), z (up).
const aboutX = (degrees: number): Matrix => {
  const [s, c] = [Math.sin(degrees * RADIANS), Math.cos(degrees * RADIANS)];
  return [
    [1, 0, 0],
    [0, c, -s],
    [0, s, c],
  ];
};
const aboutY = (degrees: number): Matrix => {
  const [s, c] = [Math.sin(degrees * RADIANS), Math.cos(degrees * RADIANS)];
  return [
    [c, 0, s],
    [0, 1, 0],
    [-s, 0, c],
  ];
};
const aboutZ = (degrees: number): Matrix => {
  const [s, c] = [Math.sin(degrees * RADIANS), Math.cos(degrees * RADIANS)];
  return [
    [c, -s, 0],
    [s, c, 0],
    [0, 0, 1],
  ];
};

export type Kind = 'boom' | 'slide' | 'pan' | 'tilt' | 'roll' | 'turntable';
export type Positions = Readonly<Record<Kind, number>>;

export const AT_ZERO: Positions = { boom: 0, slide: 0, pan: 0, tilt: 0, roll: 0, turntable: 0 };

/** The axis that places or turns: the first of its kind, if it moves in a unit in which that kind can. */
export function actingAxis({ rig }: Plan, kind: Kind): Axis | undefined {
  const first = rig.axes.find((axis) => axis.kind === kind);
  const units = kind === 'boom' ? ['mm', 'deg'] : kind === 'slide' ? ['mm'] : ['deg'];
  return first && units.includes(first.unit) ? first : undefined;
}

/** Positions of the axes, from whole steps; `at` may be between two frames, where axes go straight. */
export function positionsAt(
  plan: Plan,
  columns: readonly { name: string; steps: Int32Array; stepsPerUnit: number }[],
  at: number,
): Positions {
  const of = (kind: Kind): number => {
    const axis = actingAxis(plan, kind);
    const own = columns.find(({ name }) => name === axis?.name);
    if (!axis || !own) return 0;
    const k = Math.floor(at);
    const [here, next] = [own.steps[k] as number, own.steps[k + 1] ?? (own.steps[k] as number)];
    return (here + (next - here) * (at - k)) / own.stepsPerUnit;
  };
  return {
    boom: of('boom'),
    slide: of('slide'),
    pan: of('pan'),
    tilt: of('tilt'),
    roll: of('roll'),
    turntable: of('turntable'),
  };
}

/** Degrees of the arm from level; null without one. */
export function armDeg(plan: Plan, { boom }: Positions): number | null {
  const axis = actingAxis(plan, 'boom');
  if (!axis) return null;
  const { lengthMm, zeroDeg } = plan.rig.arm;
  return zeroDeg + (axis.unit === 'deg' ? boom : boom / lengthMm / RADIANS);
}

/** The turn of the arm from level: within its plane, which leans to the right. */
export function armTurn({ rig }: Plan, degrees: number): Matrix {
  const lean = rig.arm.planeTiltDeg;
  return product(aboutY(lean), product(aboutX(degrees), aboutY(-lean)));
}

/** Where the slide has carried everything to, from the pivot with the slide at 0. */
export function slideWay({ rig }: Plan, { slide }: Positions): Vector {
  const { bearingDeg, inclineDeg } = rig.slide;
  return times(product(aboutZ(-bearingDeg), aboutX(inclineDeg)), [0, slide, 0]);
}

export interface SlowPose {
  place: Vector;
  /** Columns: right, ahead, up. */
  turn: Matrix;
  /** Turn of the head's foot. */
  foot: Matrix;
}

export function slowPose(plan: Plan, positions: Positions): SlowPose {
  const { rig } = plan;
  const pivot = plus([0, 0, rig.pivotHeightMm], slideWay(plan, positions));
  const degrees = armDeg(plan, positions);
  const arm = armTurn(plan, degrees ?? 0);
  const place = degrees !== null ? plus(pivot, times(arm, [0, rig.arm.lengthMm, 0])) : pivot;
  const foot = degrees !== null && !rig.arm.keepsLevel ? arm : ONE;
  const head = product(
    aboutZ(-(rig.lensBearingDeg + positions.pan)),
    product(aboutX(rig.lensTiltDeg + positions.tilt), aboutY(positions.roll)),
  );
  return { place, turn: product(foot, head), foot };
}

export function slowSubject({ subject, rig }: Plan, { turntable }: Positions): Vector {
  const at: Vector = [subject.rightMm, subject.forwardMm, subject.heightMm];
  if (!subject.onTurntable) return at;
  const middle: Vector = [rig.turntable.rightMm, rig.turntable.forwardMm, 0];
  return plus(middle, times(aboutZ(-turntable), minus(at, middle)));
}

/** Millimetres from the lens with all axes at 0; no lens makes a picture nearer than its focal length. */
export const subjectAtRestMm = (plan: Plan): number =>
  Math.max(plan.camera.focalLengthMm, norm(minus(slowSubject(plan, AT_ZERO), slowPose(plan, AT_ZERO).place)));

/** A point as the camera has it: right, ahead, up. */
export const seen = ({ place, turn }: SlowPose, point: Vector): Vector =>
  times(turned(turn), minus(point, place));

/** A point straight ahead. */
export const ahead = ({ place, turn }: SlowPose, distance: number): Vector =>
  plus(place, times(turn, [0, distance, 0]));

export const focalPxOf = ({ camera }: Plan): number =>
  (camera.focalLengthMm * camera.imageWidthPx) / camera.sensorWidthMm;

/** Where the head would have to look to, as its pan and tilt count it, degrees; level distance too, mm. */
export function directionTo(plan: Plan, { place, foot }: SlowPose, point: Vector) {
  const [right, forward, up] = times(turned(foot), minus(point, place));
  const level = Math.hypot(right, forward);
  return {
    panDeg: Math.atan2(right, forward) / RADIANS - plan.rig.lensBearingDeg,
    tiltDeg: Math.atan2(up, level) / RADIANS - plan.rig.lensTiltDeg,
    level,
  };
}

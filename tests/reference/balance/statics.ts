/** Statics without the levers' formulas: masses put in space one by one. */
import type { Plan } from '../../../src/engine/plan/schema.ts';

type Vector = readonly [number, number, number];

/** One mass, kg, and where it is, m. */
interface Mass {
  kg: number;
  at: Vector;
}

const RAD = Math.PI / 180;
const G = 9.80665;

const cross = ([a, b, c]: Vector, [d, e, f]: Vector): Vector => [b * f - c * e, c * d - a * f, a * e - b * d];
const dot = ([a, b, c]: Vector, [d, e, f]: Vector): number => a * d + b * e + c * f;
const plus = ([a, b, c]: Vector, [d, e, f]: Vector, times = 1): Vector => [
  a + d * times,
  b + e * times,
  c + f * times,
];

/** Turned about a unit axis, counter-clockwise when it points at the eye (Rodrigues). */
function turned(v: Vector, axis: Vector, angle: number): Vector {
  const [sine, cosine] = [Math.sin(angle), Math.cos(angle)];
  const out = plus([0, 0, 0], v, cosine);
  return plus(plus(out, cross(axis, v), sine), axis, dot(axis, v) * (1 - cosine));
}

const FORWARD: Vector = [0, 1, 0];

/** Direction of the arm: forward when level, swung in a plane that leans to the right. */
function armDirection(plan: Plan, thetaDeg: number): Vector {
  // An upright arc turns about the right; leaning to the right is a turn about forward, clockwise seen from behind.
  const axis = turned([1, 0, 0], FORWARD, plan.rig.arm.planeTiltDeg * RAD);
  return turned(FORWARD, axis, thetaDeg * RAD);
}

/** Direction of the slide: forward, raised about the right, then turned about the vertical. */
function slideDirection({ rig }: Plan): Vector {
  const raised = turned(FORWARD, [1, 0, 0], rig.slide.inclineDeg * RAD);
  return turned(raised, [0, 0, 1], -rig.slide.bearingDeg * RAD);
}

/** Counterweight as it is taken to be. */
export interface Weight {
  kg: number;
  mm: number;
}

/** What swings with the arm, and what goes with the slide only if there is no arm. */
function riding(plan: Plan, weight: Weight, thetaDeg: number | null, slideMm: number): Mass[] {
  const { payloadKg, armKg, armCentreMm } = plan.balance;
  const up: Vector = [0, 0, plan.rig.pivotHeightMm / 1000];
  const base = plus(up, slideDirection(plan), slideMm / 1000);
  if (thetaDeg === null) return [{ kg: payloadKg, at: base }];
  const along = armDirection(plan, thetaDeg);
  const onArm = (kg: number, mm: number): Mass => ({ kg, at: plus(base, along, mm / 1000) });
  return [onArm(payloadKg, plan.rig.arm.lengthMm), onArm(armKg, armCentreMm), onArm(weight.kg, -weight.mm)];
}

/** Potential energy of what is on the arm, J. */
export const energyJ = (plan: Plan, weight: Weight, thetaDeg: number): number =>
  riding(plan, weight, thetaDeg, 0).reduce((sum, { kg, at }) => sum + G * kg * at[2], 0);

/** Torque about the arm's own axis, N m: derivative of the energy by the angle, to the eighth order. */
export function torqueNm(plan: Plan, weight: Weight, thetaDeg: number): number {
  const h = 0.05;
  const slope = (times: number) => {
    const degrees = (times * h) / RAD;
    return energyJ(plan, weight, thetaDeg + degrees) - energyJ(plan, weight, thetaDeg - degrees);
  };
  return ((4 / 5) * slope(1) - (1 / 5) * slope(2) + (4 / 105) * slope(3) - (1 / 280) * slope(4)) / h;
}

/** Level place of the centre of mass of everything, mm from the middle of the feet. */
export function centreMm(
  plan: Plan,
  weight: Weight,
  thetaDeg: number | null,
  slideMm: number,
): readonly [number, number] {
  const { baseKg, supportKg, ballastKg } = plan.balance;
  const middle: Vector = [0, 0, 0];
  const standing = [baseKg, supportKg, ballastKg].map((kg): Mass => ({ kg, at: middle }));
  const masses = [...riding(plan, weight, thetaDeg, slideMm), ...standing];
  const total = masses.reduce((sum, { kg }) => sum + kg, 0);
  const moment = masses.reduce((sum, { kg, at }) => plus(sum, at, kg), middle);
  return [(moment[0] / total) * 1000, (moment[1] / total) * 1000];
}

/**
 * Millimetres from a place to the nearest edge of the feet's polygon, outside negative: all edges, the feet turned so that
 * one of them faces the place.
 */
export function edgeMm({ balance }: Plan, [x, y]: readonly [number, number]): number {
  const { feetRadiusMm, legs } = balance;
  const facing = Math.atan2(y, x) + Math.PI / legs;
  const feet = Array.from({ length: legs }, (_, i) => facing + (i * 2 * Math.PI) / legs).map(
    (angle) => [feetRadiusMm * Math.cos(angle), feetRadiusMm * Math.sin(angle)] as const,
  );
  const edges = feet.map(([ax, ay], i) => {
    const [bx, by] = feet[(i + 1) % legs] as readonly [number, number];
    return ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / Math.hypot(bx - ax, by - ay);
  });
  return Math.min(...edges);
}

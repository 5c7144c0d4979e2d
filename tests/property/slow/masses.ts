/** Balance of a rig as masses in space: each where it is, its weight, and its moment about the pivot. */
import type { Plan } from '../../../src/engine/plan/schema.ts';
import {
  AT_ZERO,
  actingAxis,
  armDeg,
  armTurn,
  cross,
  type Positions,
  plus,
  slideWay,
  times,
  type Vector,
} from './camera.ts';

const GRAVITY = 9.80665;

export interface Mass {
  kg: number;
  /** From the pivot with the slide at 0, mm. */
  at: Vector;
}

/** The counterweight: typed, or worked out. `fits`: on the rear arm. */
export interface Counterweight {
  kg: number;
  mm: number;
  fits: boolean;
  /** Whether that hangs on a rounding. */
  edge: boolean;
}

/** Moment of the camera's end without a counterweight, kg mm, the arm level. */
const frontOf = ({ balance, rig }: Plan): number =>
  balance.payloadKg * rig.arm.lengthMm + balance.armKg * balance.armCentreMm;

export function slowCounterweight(plan: Plan): Counterweight {
  const { workedOut, counterweightKg, counterweightMm, counterweightMaxMm } = plan.balance;
  const front = frontOf(plan);
  const at = Math.min(counterweightMm, counterweightMaxMm);
  const typed = { kg: counterweightKg, mm: at, fits: counterweightMm <= counterweightMaxMm, edge: false };
  if (workedOut === 'residual') return typed;
  if (front <= 0) return { kg: 0, mm: 0, fits: true, edge: false };
  if (workedOut === 'mass') return at === 0 ? { ...typed, kg: 0, fits: false } : { ...typed, kg: front / at };
  const wanted = front / counterweightKg;
  return {
    kg: counterweightKg,
    mm: Math.min(wanted, counterweightMaxMm),
    fits: wanted <= counterweightMaxMm,
    edge: Math.abs(wanted / counterweightMaxMm - 1) < 1e-8,
  };
}

/** What hangs on the arm: payload, the arm itself, counterweight. */
function onArm(plan: Plan, degrees: number): Mass[] {
  const { payloadKg, armKg, armCentreMm } = plan.balance;
  const turn = armTurn(plan, degrees);
  const { kg, mm } = slowCounterweight(plan);
  const along = (mass: number, x: number): Mass => ({ kg: mass, at: times(turn, [0, x, 0]) });
  return [along(payloadKg, plan.rig.arm.lengthMm), along(armKg, armCentreMm), along(kg, -mm)];
}

/** Moment about the arm's own axis at an angle from level, N m; positive: the camera's end drops. */
export function armMoment(plan: Plan, degrees: number): number {
  // Square to the plane of the arc; a turn about it, right-handed, lifts the camera's end.
  const lean = (plan.rig.arm.planeTiltDeg * Math.PI) / 180;
  const normal: Vector = [Math.cos(lean), 0, -Math.sin(lean)];
  let moment = 0;
  for (const { kg, at } of onArm(plan, degrees)) {
    const force: Vector = [0, 0, -kg * GRAVITY];
    const turning = cross([at[0] / 1000, at[1] / 1000, at[2] / 1000], force);
    moment -= turning[0] * normal[0] + turning[1] * normal[1] + turning[2] * normal[2];
  }
  return moment;
}

/** Every mass of the rig at a moment; those that go with the slide and those that do not. */
export function allMasses(plan: Plan, positions: Positions): Mass[] {
  const { payloadKg, baseKg, supportKg, ballastKg } = plan.balance;
  const way = slideWay(plan, positions);
  const degrees = armDeg(plan, positions);
  const hung: Mass[] = degrees === null ? [{ kg: payloadKg, at: [0, 0, 0] }] : onArm(plan, degrees);
  return [
    ...hung.map(({ kg, at }) => ({ kg, at: plus(at, way) })),
    { kg: baseKg + supportKg + ballastKg, at: [0, 0, 0] },
  ];
}

/** Level distance of the centre of mass from the middle of the feet, mm. */
export function offMiddleMm(plan: Plan, positions: Positions): number {
  let [kgs, x, y] = [0, 0, 0];
  for (const { kg, at } of allMasses(plan, positions)) {
    kgs += kg;
    x += kg * at[0];
    y += kg * at[1];
  }
  return kgs === 0 ? 0 : Math.hypot(x, y) / kgs;
}

/** Radius of the circle inside a regular polygon of feet: half a side from its middle, by Pythagoras. */
export function insideFeetMm({ balance }: Plan): number {
  const { feetRadiusMm, legs } = balance;
  const turn = (2 * Math.PI) / legs;
  const side = feetRadiusMm * Math.hypot(1 - Math.cos(turn), Math.sin(turn));
  return Math.sqrt(feetRadiusMm ** 2 - (side / 2) ** 2);
}

/** Torque at the motor, N m, that a moment at the arm asks for through its gearing. */
export function atMotor(plan: Plan, moment: number): number {
  const axis = actingAxis(plan, 'boom');
  if (!axis) return 0;
  const turnUnits = axis.unit === 'deg' ? 360 : 2 * Math.PI * plan.rig.arm.lengthMm;
  const motorTurns = (turnUnits / axis.unitsPerTurn) * axis.gearRatio;
  return Math.abs(moment) / (motorTurns * axis.driveEfficiencyShare);
}

/** Moment ahead of the pivot, N m, the arm level and its arc upright. */
export const aheadOf = ({ balance, rig }: Plan): number =>
  ((balance.payloadKg * rig.arm.lengthMm + Math.max(0, balance.armKg * balance.armCentreMm)) * GRAVITY) /
  1000;

/** What stands on the support, kg. */
export function onSupportKg(plan: Plan): number {
  const { supportKg } = plan.balance;
  return allMasses(plan, AT_ZERO).reduce((sum, { kg }) => sum + kg, 0) - supportKg;
}

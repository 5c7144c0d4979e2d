/**
 * Moments on the arm: what balances it, what is left over, and what its motor then holds.
 *
 * Positive moments: the camera's end is the heavier one. A mass m at x along the arm stands x sin(theta) cos(phi)
 * above the pivot (theta from level, phi the lean of the arc), so that its potential energy is g m x sin(theta)
 * cos(phi), and the moment that an arm feels about its own axis is the derivative of the sum, g sum(m x) cos(theta)
 * cos(phi): all of it where an upright arc is level, nothing on a flat one.
 *
 * Sources: the law of the lever; torque margin (peak - required) / required of at least 50 % for steppers without
 * feedback (Parker, EIPKB1 "Torque Margin"); g 9.80665 m/s^2 (CGPM 1901).
 */
import { poseAxis } from '../path/pose.ts';
import type { Axis, Plan } from '../plan/schema.ts';
import { type Carriers, largestLevelShare, nearestLevel } from './carried.ts';
import { exceeds } from './limits.ts';

/** N m for one kg mm. */
export const NM_PER_KG_MM = 9.80665 / 1000;

/** Torque in hand that a stepper without feedback should have, as a share of what is required. */
export const TORQUE_MARGIN = 0.5;

/** A moment that somebody or something has to hold. */
export interface Held {
  /** About the arm's axis, the arm level, N m; positive: the camera's end is the one that drops. */
  armNm: number;
  /** At the motor, N m, without sign. */
  motorNm: number;
}

/** What the arm's motor has to do. */
export interface MotorLoad {
  /** Turns of the motor for one whole turn of the arm. */
  ratio: number;
  /** Torque with the arm level, N m, counted as the next. */
  levelNm: number;
  /**
   * Largest torque over the move, N m, as if it raised the heavier end: the gearing's losses count against the motor, and
   * the friction that helps it to hold does not. What speeding up the arm takes is not in it.
   */
  neededNm: number;
  /** Its holding torque, N m; null if not given. */
  torqueNm: number | null;
  /** (torque - needed) / needed; null if no torque is given or nothing is needed. */
  marginShare: number | null;
}

/** The arm, its counterweight, and its motor. */
export interface ArmBalance {
  /** Counterweight as it comes to: typed, or worked out; 0 kg if none is needed. */
  counterweightKg: number;
  /** Where it sits behind the pivot, mm: never beyond the rear arm. */
  counterweightMm: number;
  /** Whether the place that was typed or worked out is on the rear arm. */
  fits: boolean;
  /** The arm is not heavier at the camera's end even without a counterweight. */
  needsNone: boolean;
  /** Place at which that mass would balance, also beyond the rear arm, mm; null if none does. */
  balancedMm: number | null;
  /** Mass that would balance at that place, kg; null if none does. */
  balancedKg: number | null;
  /** What hangs ahead of the pivot, N m, the arm level in an upright arc. */
  aheadNm: number;
  /** What is left unbalanced, likewise. */
  residualNm: number;
  /** Largest moment about the arm's own axis over the move, N m, without sign, and its frame, counted from 1. */
  worstNm: number;
  worstFrame: number;
  motor: MotorLoad;
  /** What is to be held with the camera off and the counterweight on, and the other way round. */
  cameraOff: Held;
  weightOff: Held;
  /** Payload allowed at this arm's length, kg: the same moment as its rating; null if it has none. */
  payloadAllowedKg: number | null;
}

/** Moments ahead of the counterweight, kg mm: of what is in front of the pivot, and of payload and arm together. */
function frontOf({ balance, rig }: Plan): { ahead: number; front: number } {
  const payload = balance.payloadKg * rig.arm.lengthMm;
  const arm = balance.armKg * balance.armCentreMm;
  return { ahead: payload + Math.max(0, arm), front: payload + arm };
}

/** Mass and place of the counterweight. */
type Counterweight = Pick<ArmBalance, 'counterweightKg' | 'counterweightMm' | 'fits'>;

function counterweightOf({ balance }: Plan, front: number): Counterweight {
  const { workedOut, counterweightKg, counterweightMm, counterweightMaxMm } = balance;
  const typedMm = Math.min(counterweightMm, counterweightMaxMm);
  const typedFits = counterweightMm <= counterweightMaxMm;
  if (workedOut === 'residual') return { counterweightKg, counterweightMm: typedMm, fits: typedFits };
  if (front <= 0) return { counterweightKg: 0, counterweightMm: 0, fits: true };
  if (workedOut === 'mass') {
    // At the pivot itself no mass balances anything.
    const kg = typedMm > 0 ? front / typedMm : 0;
    return { counterweightKg: kg, counterweightMm: typedMm, fits: typedFits && typedMm > 0 };
  }
  const wantedMm = front / counterweightKg;
  const fits = !exceeds(wantedMm, counterweightMaxMm);
  return { counterweightKg, counterweightMm: Math.min(wantedMm, counterweightMaxMm), fits };
}

/** What is left, kg mm: nothing where only the rounding of a division is. */
function leftOver(front: number, { counterweightKg, counterweightMm }: Counterweight): number {
  const left = front - counterweightKg * counterweightMm;
  return exceeds(Math.abs(left), 1e-9 * Math.abs(front)) ? left : 0;
}

/** A quotient that is a place or a mass; null if there is none. */
const quotient = (front: number, divisor: number): number | null =>
  front >= 0 && divisor > 0 ? front / divisor : null;

/** Cosine of the arc's lean: how much of a moment an arm feels about its own axis. */
export const uprightShare = ({ rig }: Plan): number =>
  // The cosine of a right angle is not 0 in floating point, and a flat arc carries no moment at all.
  rig.arm.planeTiltDeg === 90 ? 0 : Math.cos((rig.arm.planeTiltDeg * Math.PI) / 180);

function motorOf({ torqueNm }: Axis, ratio: number, levelNm: number, levelShare: number): MotorLoad {
  const neededNm = levelNm * levelShare;
  const marginShare = torqueNm === null || neededNm === 0 ? null : (torqueNm - neededNm) / neededNm;
  return { ratio, levelNm, neededNm, torqueNm, marginShare };
}

function ratedAt({ balance, rig }: Plan): number | null {
  const { ratedKg, ratedMm } = balance;
  // Same moment, common practice, no source: heavier camera, shorter arm.
  return ratedKg === null ? null : (ratedKg * ratedMm) / rig.arm.lengthMm;
}

/**
 * Balances the arm of a run.
 * @param carriers - of the same plan
 * @returns moments in N m at the arm, torque in N m at the motor; masses in kg, places in mm behind the pivot; null
 *   without a boom
 */
export function armBalanceOf(plan: Plan, carriers: Carriers): ArmBalance | null {
  const axis = plan.rig.axes[poseAxis(plan, 'boom')];
  const { boom } = carriers.geometry;
  if (!axis || !boom) return null;
  const { ahead, front } = frontOf(plan);
  const counterweight = counterweightOf(plan, front);
  const { counterweightKg, counterweightMm } = counterweight;
  const left = leftOver(front, counterweight);
  const upright = uprightShare(plan);
  const level = nearestLevel(carriers);
  const ratio = (axis.gearRatio * 2 * Math.PI) / (boom.radPerUnit * axis.unitsPerTurn);
  // Of a gearing that is said to pass on nothing, a hundredth is taken.
  const passesOn = ratio * axis.driveEfficiencyShare;
  const held = (moment: number): Held => {
    const armNm = moment * NM_PER_KG_MM * upright;
    return { armNm, motorNm: Math.abs(armNm) / passesOn };
  };
  const atLevel = held(left);
  const levelShare = largestLevelShare(carriers, level);
  return {
    ...counterweight,
    needsNone: front <= 0,
    balancedMm: quotient(front, counterweightKg),
    balancedKg: quotient(front, counterweightMm),
    aheadNm: ahead * NM_PER_KG_MM,
    residualNm: left * NM_PER_KG_MM,
    worstNm: Math.abs(atLevel.armNm) * levelShare,
    worstFrame: level + 1,
    motor: motorOf(axis, ratio, atLevel.motorNm, levelShare),
    cameraOff: held(left - plan.balance.payloadKg * boom.lengthMm),
    weightOff: held(front),
    payloadAllowedKg: ratedAt(plan),
  };
}

/** What the arm says: is it in balance, can its motor hold it, does it carry the payload. */
import type { Margin } from '../findings/types.ts';
import { percent, withUnit } from '../findings/words.ts';
import { firstOver } from '../leap.ts';
import { poseAxis } from '../path/pose.ts';
import type { Plan } from '../plan/schema.ts';
import type { Draft, Run } from '../run.ts';
import { type ArmBalance, TORQUE_MARGIN, uprightShare } from './arm.ts';
import { carriersOf, levelShares } from './carried.ts';
import { exceeds } from './limits.ts';

/**
 * Share of what hangs ahead of the pivot by which an arm may be out of balance: friction then keeps it where it is put.
 * Common practice, no source.
 */
const BALANCED_SHARE = 0.02;

const boomName = (plan: Plan): string => plan.rig.axes[poseAxis(plan, 'boom')]?.name ?? '';

/** Why the arm is not in balance, or what would bring it there. */
function remedy({ balance }: Plan, arm: ArmBalance): string {
  const { counterweightMaxMm, counterweightMm, workedOut } = balance;
  const end = withUnit(counterweightMaxMm, 'mm');
  if (arm.needsNone)
    return 'It needs no counterweight: even without one the camera’s end is not the heavier.';
  if (workedOut !== 'place' && counterweightMm > counterweightMaxMm)
    return `The counterweight cannot sit at ${withUnit(counterweightMm, 'mm')}: the rear arm ends at ${end}.`;
  if (!arm.fits && arm.balancedMm !== null)
    return `The counterweight would have to sit at ${withUnit(arm.balancedMm, 'mm')}, and the rear arm ends at ${end}: ${withUnit(arm.balancedKg ?? 0, 'kg')} there would balance it.`;
  if (arm.balancedMm !== null && arm.balancedMm <= counterweightMaxMm)
    return `The counterweight balances it at ${withUnit(arm.balancedMm, 'mm')} behind the pivot.`;
  return arm.balancedKg === null
    ? 'A counterweight that has no mass, or sits at the pivot, balances nothing.'
    : `${withUnit(arm.balancedKg, 'kg')} in place of the ${withUnit(arm.counterweightKg, 'kg')} would balance it.`;
}

function outOfBalance({ plan }: Run, arm: ArmBalance): Draft[] {
  const { aheadNm, residualNm, counterweightKg, counterweightMm } = arm;
  const felt = Math.abs(residualNm) * uprightShare(plan);
  const isOut = felt > BALANCED_SHARE * aheadNm;
  if (!isOut && arm.fits) return [];
  const end = residualNm > 0 ? 'camera’s end' : 'counterweight’s end';
  const share = aheadNm > 0 ? `, ${percent(felt / aheadNm)} of what hangs ahead` : '';
  const left = isOut
    ? `The ${end} of the arm is heavier by ${withUnit(felt, 'N m')}${share}: unlocked, it does not stay where it is put. `
    : '';
  return [
    {
      id: 'out-of-balance',
      severity: 'warning',
      subject: 'balance',
      message: `${left}${remedy(plan, arm)}`,
      frame: null,
      values: { residualNm, aheadNm, counterweightKg, counterweightMm },
    },
  ];
}

function motor(run: Run, arm: ArmBalance): Draft[] {
  const { plan } = run;
  const { levelNm, neededNm, torqueNm, marginShare } = arm.motor;
  if (torqueNm === null || marginShare === null || marginShare >= TORQUE_MARGIN) return [];
  const fails = marginShare < 0;
  const limitNm = fails ? torqueNm : torqueNm / (1 + TORQUE_MARGIN);
  const { valueAt, mostAFrame } = levelShares(carriersOf(plan, run.columns.axes));
  const needed = { valueAt: (at: number) => levelNm * valueAt(at), mostAFrame: levelNm * mostAFrame };
  const frame = firstOver(run.pace.frames, limitNm, needed, arm.worstFrame);
  const name = boomName(plan);
  const needs = `needs ${withUnit(neededNm, 'N m')} to hold the arm and to raise it`;
  const message = fails
    ? `The motor of ${name} ${needs}, and has ${withUnit(torqueNm, 'N m')}, from frame ${frame}.`
    : `The motor of ${name} ${needs}, of its ${withUnit(torqueNm, 'N m')}: ${percent(marginShare)} in hand, and a stepper without feedback should have ${percent(TORQUE_MARGIN)}, from frame ${frame}.`;
  return [
    {
      id: 'motor-cannot-hold',
      severity: fails ? 'stop' : 'warning',
      subject: 'balance',
      message,
      frame,
      values: { axis: name, neededNm, torqueNm, marginShare, worstFrame: arm.worstFrame },
    },
  ];
}

function armOverloaded({ plan }: Run, { payloadAllowedKg }: ArmBalance): Draft[] {
  const { payloadKg, ratedKg, ratedMm } = plan.balance;
  const { lengthMm } = plan.rig.arm;
  if (payloadAllowedKg === null || ratedKg === null || !exceeds(payloadKg, payloadAllowedKg)) return [];
  const longestMm = (ratedKg * ratedMm) / payloadKg;
  return [
    {
      id: 'arm-overloaded',
      severity: 'stop',
      subject: 'balance',
      message: `The payload is ${withUnit(payloadKg, 'kg')}, and an arm of ${withUnit(lengthMm, 'mm')} carries ${withUnit(payloadAllowedKg, 'kg')}, by the moment of ${withUnit(ratedKg, 'kg')} at ${withUnit(ratedMm, 'mm')}. Heavier camera, shorter arm: at most ${withUnit(longestMm, 'mm')}.`,
      frame: null,
      values: { payloadKg, payloadAllowedKg, lengthMm, longestMm },
    },
  ];
}

export const armFindings = (run: Run, arm: ArmBalance): Draft[] => [
  ...outOfBalance(run, arm),
  ...motor(run, arm),
  ...armOverloaded(run, arm),
];

export function motorMargin({ plan }: Run, arm: ArmBalance): Margin[] {
  const { neededNm, torqueNm } = arm.motor;
  if (torqueNm === null) return [];
  return [
    {
      id: 'motor',
      subject: 'balance',
      label: `${boomName(plan)} motor`,
      used: neededNm,
      available: torqueNm,
      unit: 'N m',
      reserve: torqueNm - torqueNm / (1 + TORQUE_MARGIN),
      left: torqueNm - neededNm,
      frame: arm.worstFrame,
      when: `nearest to level at frame ${arm.worstFrame}`,
    },
  ];
}

/** Balance of the arm, load on the support, and tip-over, over a run. */
import type { Plan } from '../plan/schema.ts';
import type { AxisColumns } from '../schedule-types.ts';
import { type ArmBalance, armBalanceOf, NM_PER_KG_MM } from './arm.ts';
import { carriersOf } from './carried.ts';
import { type Masses, type TipOver, tipOverOf } from './tip.ts';

/** What stands on the support. */
export interface SupportLoad {
  /** Payload, arm, counterweight, rest of the rig and weigh-down, kg. */
  loadKg: number;
  /** What its maker allows; null if not given. */
  ratedKg: number | null;
}

/** Balance of a run. */
export interface BalanceRun {
  /** null without a boom: then there is neither arm nor counterweight. */
  arm: ArmBalance | null;
  support: SupportLoad;
  tip: TipOver;
}

/** Masses by how they move. @param arm - null without one */
export function massesOf({ balance }: Plan, arm: ArmBalance | null): Masses {
  const { payloadKg, armKg, baseKg, supportKg, ballastKg } = balance;
  const fixedKg = baseKg + supportKg + ballastKg;
  if (arm === null) return { ridingKg: payloadKg, fixedKg, alongArmKgMm: 0 };
  return {
    ridingKg: payloadKg + armKg + arm.counterweightKg,
    fixedKg,
    alongArmKgMm: arm.residualNm / NM_PER_KG_MM,
  };
}

/**
 * Works out the balance of a run.
 * @param axes - columns of the axes, one for each of `plan.rig.axes` in their order
 * @returns null if the plan does not ask for it
 */
export function balanceOf(plan: Plan, axes: readonly AxisColumns[]): BalanceRun | null {
  if (!plan.balance.used) return null;
  const carriers = carriersOf(plan, axes);
  const arm = armBalanceOf(plan, carriers);
  const masses = massesOf(plan, arm);
  const { baseKg, ballastKg, supportRatedKg } = plan.balance;
  return {
    arm,
    support: { loadKg: masses.ridingKg + baseKg + ballastKg, ratedKg: supportRatedKg },
    tip: tipOverOf(plan, carriers, masses, arm ? [arm.worstFrame - 1] : []),
  };
}

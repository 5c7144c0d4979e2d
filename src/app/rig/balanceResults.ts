/** What the balance of a run comes to: a line for each figure that somebody has to look at. */
import { type ArmBalance, uprightShare } from '../../engine/balance/arm.ts';
import type { BalanceRun, SupportLoad } from '../../engine/balance/balance.ts';
import type { TipOver } from '../../engine/balance/tip.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import { numberText, shortNumber, withUnit } from '../format/numbers.ts';
import { degrees } from '../sections/lightText.ts';
import { millimetres } from './rigText.ts';

/** One figure, and whether it is as it should be. */
export interface Result {
  what: string;
  value: string;
  standing: 'fine' | 'stop';
  /** Name of its working. */
  of: string;
}

/** Less is not felt, and no figure shows it. */
const UNFELT_NM = 0.0005;

const kilograms = (kg: number): string => withUnit(numberText(kg, 2), 'kg');
const torque = (nm: number): string => withUnit(shortNumber(nm), 'N m');

const row = (of: string, what: string, value: string, fine = true): Result => ({
  of: `balance.${of}`,
  what,
  value,
  standing: fine ? 'fine' : 'stop',
});

function residual(plan: Plan, { residualNm, needsNone }: ArmBalance): Result {
  const feltNm = Math.abs(residualNm) * uprightShare(plan);
  if (feltNm < UNFELT_NM) return row('feltNm', 'Left unbalanced', 'nothing: it stays where it is put');
  const end = residualNm > 0 ? 'camera drops' : needsNone ? 'rear drops' : 'counterweight drops';
  return row('feltNm', 'Left unbalanced', `${torque(feltNm)}, ${end}`);
}

function counterweight(plan: Plan, arm: ArmBalance): Result[] {
  const { workedOut, counterweightMaxMm } = plan.balance;
  if (arm.needsNone) return [row('residualNm', 'Counterweight', 'none needed: the rear is the heavier end')];
  const placed = row(
    workedOut === 'mass' ? 'counterweightKg' : 'counterweightMm',
    'Counterweight',
    `${kilograms(arm.counterweightKg)} at ${millimetres(arm.counterweightMm)}`,
    arm.fits,
  );
  if (arm.fits || workedOut !== 'place' || arm.balancedMm === null) return [placed];
  const enoughKg = (arm.counterweightKg * arm.balancedMm) / counterweightMaxMm;
  return [
    row('balancedMm', 'It would have to sit at', millimetres(arm.balancedMm), false),
    row(
      'balancedMm',
      `At the end of the rear arm, ${millimetres(counterweightMaxMm)}`,
      `takes ${kilograms(enoughKg)}`,
    ),
  ];
}

function motor({ motor: { neededNm, torqueNm }, worstFrame }: ArmBalance): Result {
  if (neededNm < UNFELT_NM) return row('motor.neededNm', 'Motor holds', 'nothing');
  const needed = torque(neededNm);
  if (torqueNm === null) return row('motor.neededNm', 'Motor holds', `${needed}, frame ${worstFrame}`);
  return row('motor.neededNm', 'Motor holds', `${needed} of ${torque(torqueNm)}`, neededNm <= torqueNm);
}

/** What there is to see of arm, counterweight and motor. */
export function armResults(plan: Plan, arm: ArmBalance): Result[] {
  const { payloadKg } = plan.balance;
  const allowed = arm.payloadAllowedKg;
  return [
    ...counterweight(plan, arm),
    residual(plan, arm),
    motor(arm),
    ...(allowed === null
      ? []
      : [
          row(
            'payloadAllowedKg',
            'Payload',
            `${kilograms(payloadKg)} of ${kilograms(allowed)} at this arm`,
            payloadKg <= allowed,
          ),
        ]),
  ];
}

function load({ loadKg, ratedKg }: SupportLoad): Result {
  return ratedKg === null
    ? row('loadKg', 'On the support', kilograms(loadKg))
    : row('loadKg', 'On the support', `${kilograms(loadKg)} of ${kilograms(ratedKg)}`, loadKg <= ratedKg);
}

function tip({ marginMm, farthestMm, safeMm, frame, leanDeg }: TipOver): Result[] {
  const reach = row(
    'farthestMm',
    'Centre of mass off the middle',
    `${numberText(farthestMm, 0)} of ${millimetres(safeMm)}, frame ${frame}`,
    marginMm > 0,
  );
  if (marginMm <= 0) return [reach, row('marginMm', 'On level ground', 'it tips over', false)];
  return [
    reach,
    row('marginMm', 'Left before it tips', millimetres(marginMm)),
    row('leanDeg', 'Tips on ground that leans', degrees(Math.floor(leanDeg * 10) / 10)),
  ];
}

/** What there is to see of support and feet. */
export const supportResults = ({ support, tip: tipOver }: BalanceRun): Result[] => [
  row('totalKg', 'All together', kilograms(tipOver.totalKg)),
  load(support),
  ...tip(tipOver),
];

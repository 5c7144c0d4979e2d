/** What the rig does, in plain words: path, aim, picture, ringing, balance. */
import type { ArmBalance } from '../engine/balance/arm.ts';
import type { BalanceRun } from '../engine/balance/balance.ts';
import { figure, seconds, withUnit } from '../engine/findings/words.ts';
import type { AimSummary } from '../engine/path/aim.ts';
import type { ImageSummary } from '../engine/path/image-summary.ts';
import type { PathSummary } from '../engine/path/path.ts';
import type { RingingSummary } from '../engine/ringing/summary.ts';
import type { Schedule } from '../engine/schedule-types.ts';

type Row = readonly [label: string, text: string];

const mm = (value: number): string => withUnit(Math.round(value), 'mm');
const span = (from: number, to: number): string => `${figure(from)} to ${withUnit(to, 'deg')}`;

function path({ riseMm, reachMm, sagittaMm, deviationMm, clearanceMm }: PathSummary): Row[] {
  const arc = sagittaMm > 0 ? `, ${mm(sagittaMm)} of sagitta` : '';
  const shape = `rises ${mm(riseMm)}, reaches ${mm(reachMm)}${arc}`;
  return [['Lens', `${shape}, ${mm(deviationMm)} off a straight line, never under ${mm(clearanceMm)}`]];
}

function aim({ panFromDeg, panToDeg, tiltFromDeg, tiltToDeg, missFrames, worstPx }: AimSummary): Row[] {
  const ranges = [
    panFromDeg === null || panToDeg === null ? [] : [`pan ${span(panFromDeg, panToDeg)}`],
    tiltFromDeg === null || tiltToDeg === null ? [] : [`tilt ${span(tiltFromDeg, tiltToDeg)}`],
  ].flat();
  const held = missFrames === 0 ? 'holds at every frame' : `misses by up to ${withUnit(worstPx, 'px')}`;
  return [['Aim', [...ranges, held].join(', ')]];
}

function picture({ subject, background, blur, crossing }: ImageSummary): Row[] {
  const moves = `subject ${withUnit(subject.px, 'px')}, background ${withUnit(background.px, 'px')} a frame at most`;
  const smear = blur === null ? '' : `; blur up to ${withUnit(blur.px, 'px')}`;
  const across = crossing === null ? '' : `; a still thing crosses in ${seconds(crossing.shortestS)} or more`;
  return [['Picture', `${moves}${smear}${across}`]];
}

function ringing({ worstPx, frequencyHz, longestSettleS, quiet }: RingingSummary): Row[] {
  if (worstPx === null) return [];
  const ring = `up to ${withUnit(worstPx, 'px')} at ${withUnit(frequencyHz, 'Hz')}, settles in up to ${seconds(longestSettleS)}`;
  const saved =
    quiet === null || quiet.savesS <= 0
      ? ''
      : `; shortest interval ${seconds(quiet.shortestIntervalWithoutS)}, ${seconds(quiet.shortestIntervalS)} with quiet moves`;
  return [['Ringing', ring + saved]];
}

function arm({ counterweightKg, counterweightMm, needsNone, residualNm, motor }: ArmBalance): Row[] {
  const weight = needsNone
    ? 'no counterweight needed'
    : `counterweight ${withUnit(counterweightKg, 'kg')} at ${mm(counterweightMm)} behind the pivot`;
  const rated = motor.torqueNm === null ? '' : ` of ${withUnit(motor.torqueNm, 'N m')}`;
  const needs = `${withUnit(Math.abs(residualNm), 'N m')} left, ${withUnit(motor.neededNm, 'N m')}${rated} at the motor`;
  return [['Arm', `${weight}; ${needs}`]];
}

function balance({ arm: armBalance, support, tip }: BalanceRun): Row[] {
  const rated = support.ratedKg === null ? '' : ` of ${withUnit(support.ratedKg, 'kg')}`;
  const load = `bears ${withUnit(support.loadKg, 'kg')}${rated}; centre of mass ${mm(tip.marginMm)} inside the feet`;
  return [...(armBalance ? arm(armBalance) : []), ['Support', load]];
}

/** Rows on the rig; none for what the plan does not ask for. */
export const rigRows = ({ rig }: Schedule): Row[] => [
  ...(rig.path ? path(rig.path) : []),
  ...(rig.aim ? aim(rig.aim) : []),
  ...(rig.image ? picture(rig.image) : []),
  ...(rig.ringing ? ringing(rig.ringing) : []),
  ...(rig.balance ? balance(rig.balance) : []),
];

/** One line of facts for each folded group of the rig, its subject and its balance. */
import type { Axis, Plan } from '../../engine/plan/schema.ts';
import { numberText, withUnit } from '../format/numbers.ts';
import { degrees } from '../sections/lightText.ts';
import { facts } from '../sections/summary.ts';

/** Millimetres, whole. */
export const millimetres = (value: number): string => withUnit(numberText(value, 0), 'mm');

/** `3.0 m` from a metre on, millimetres below. */
export const lengthText = (mm: number): string =>
  Math.abs(mm) < 1000 ? millimetres(mm) : withUnit(numberText(mm / 1000, mm < 10_000 ? 2 : 1), 'm');

type Rig = Plan['rig'];

/** `up 10°`, `down 10°`, or nothing when level. */
const slopeText = (deg: number): string =>
  deg === 0 ? '' : `${deg > 0 ? 'up' : 'down'} ${degrees(Math.abs(deg))}`;

export const standsText = ({ pivotHeightMm, lensBearingDeg, lensTiltDeg }: Rig): string =>
  facts(
    `${millimetres(pivotHeightMm)} up`,
    lensBearingDeg === 0 ? 'lens forward' : `lens to ${degrees(lensBearingDeg)}`,
    slopeText(lensTiltDeg),
  );

const leanText = (deg: number): string => {
  if (deg === 0) return 'swings upright';
  return deg === 90 ? 'swings flat' : `leans ${degrees(deg)}`;
};

export const armText = ({ lengthMm, planeTiltDeg, zeroDeg, keepsLevel }: Rig['arm']): string =>
  facts(
    millimetres(lengthMm),
    leanText(planeTiltDeg),
    zeroDeg !== 0 && `${degrees(zeroDeg)} at zero`,
    keepsLevel ? 'head stays level' : 'camera turns with it',
  );

export const slideText = ({ bearingDeg, inclineDeg }: Rig['slide']): string =>
  facts(`to ${degrees(bearingDeg)}`, inclineDeg === 0 ? 'level' : `climbs ${degrees(inclineDeg)}`);

/** `300 mm to the left, 1.5 m forward`. */
export const spotText = (rightMm: number, forwardMm: number): string =>
  facts(
    rightMm !== 0 && `${lengthText(Math.abs(rightMm))} to the ${rightMm > 0 ? 'right' : 'left'}`,
    `${lengthText(Math.abs(forwardMm))} ${forwardMm < 0 ? 'back' : 'forward'}`,
  );

/** Whether the rig has an axis of a kind. */
export const hasKind = ({ axes }: Rig, kind: Axis['kind']): boolean =>
  axes.some((axis) => axis.kind === kind);

export function subjectText({ used, rightMm, forwardMm, heightMm, aimed }: Plan['subject']): string {
  if (!used) return 'None';
  return facts(spotText(rightMm, forwardMm), `${lengthText(heightMm)} up`, aimed && 'kept framed');
}

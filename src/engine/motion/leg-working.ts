/** One move from rest to rest as a formula: the branch of its profile that applies. */
import type { Axis } from '../plan/schema.ts';
import { DEFINITION, term, type Worked } from '../working/make.ts';
import type { Term } from '../working/types.ts';
import { limitsOf, type MoveShape, movePeakSpeed } from './profile.ts';

const TRAPEZOID = 'Trapezoid from rest to rest: Lynch & Park, Modern Robotics, ch. 9.2.2.2.';
const SEVEN =
  'Seven segments from rest to rest: Biagiotti & Melchiorri, Trajectory Planning, sec. 3.4 (from memory).';

/** Where the profile of a move is from. @param maxJerk - Infinity if it is not limited */
export const profileSource = (maxJerk: number): string =>
  maxJerk === Number.POSITIVE_INFINITY ? TRAPEZOID : SEVEN;

/** One leg of a move as a formula: the branch of the profile that applies. */
interface Leg {
  expression: string;
  terms: Term[];
  remark: string;
  source: string;
}

/** Symbols of a leg: plain for the way out, with a 2 for the way back. */
const symbolsOf = (i: number) => (i === 0 ? '' : String(i + 1));

const within = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-12 * Math.abs(b);

export function legOf({ plan }: Worked, axis: Axis, shape: MoveShape, i: number): Leg {
  const n = symbolsOf(i);
  const { unit, maxSpeed, maxAccel, maxJerk } = axis;
  const jerky = plan.move.profile === 'jerkLimited';
  const source = profileSource(limitsOf(axis, plan.move.profile).maxJerk);
  const { distance, peakSpeed } = shape;
  const d = term(`distance${n}`, i === 0 ? 'distance' : 'way back', distance, unit);
  const v = term('maxSpeed', 'highest speed', maxSpeed, `${unit}/s`);
  const a = term('maxAccel', 'highest acceleration', maxAccel, `${unit}/s^2`);
  const j = term('maxJerk', 'highest jerk', maxJerk, `${unit}/s^3`);
  if (plan.move.moveS !== null)
    return {
      expression: `fixedS`,
      terms: [term('fixedS', 'time that every move takes', plan.move.moveS, 's')],
      remark: 'Every move takes the time that you have set.',
      source: DEFINITION,
    };
  const fastest = movePeakSpeed(distance, maxSpeed, maxAccel, jerky ? maxJerk : Number.POSITIVE_INFINITY);
  if (!within(peakSpeed, fastest)) return quietLeg(plan, axis, shape, n, [d, a, j], source);
  const reachesAccel = !jerky || peakSpeed * maxJerk >= maxAccel * maxAccel * (1 - 1e-12);
  const speedingUp = !jerky
    ? 'maxSpeed / maxAccel'
    : reachesAccel
      ? 'maxSpeed / maxAccel + maxAccel / maxJerk'
      : '2 * sqrt(maxSpeed / maxJerk)';
  if (peakSpeed === maxSpeed)
    return {
      expression: `distance${n} / maxSpeed + ${speedingUp}`,
      terms: [d, v, ...(reachesAccel ? [a] : []), ...(jerky ? [j] : [])],
      remark: `${i === 0 ? 'It' : 'The way back'} reaches the highest speed${reachesAccel ? '' : ', but not the highest acceleration'}.`,
      source,
    };
  if (!jerky)
    return {
      expression: `2 * sqrt(distance${n} / maxAccel)`,
      terms: [d, a],
      remark: `${i === 0 ? 'It' : 'The way back'} is too short for the highest speed: it speeds up for half of it and brakes for the other.`,
      source,
    };
  return reachesAccel
    ? {
        expression: `maxAccel / maxJerk + sqrt((maxAccel / maxJerk) ^ 2 + 4 * distance${n} / maxAccel)`,
        terms: [a, j, d],
        remark: 'It is too short for the highest speed, and reaches the highest acceleration.',
        source,
      }
    : {
        expression: `4 * (distance${n} / (2 * maxJerk)) ^ (1 / 3)`,
        terms: [d, j],
        remark: 'It is too short for the highest acceleration: four phases of jerk and nothing else.',
        source,
      };
}

function quietLeg(
  plan: Worked['plan'],
  axis: Axis,
  { distance, peakSpeed }: MoveShape,
  n: string,
  [d, a, j]: readonly [Term, Term, Term],
  source: string,
): Leg {
  const { frequencyHz, dampingRatio } = plan.ringing;
  const periodS = 1 / (frequencyHz * Math.sqrt(1 - dampingRatio * dampingRatio));
  const periods = term(
    `periods${n}`,
    'whole periods of the ring',
    Math.round(distance / peakSpeed / periodS),
    'periods',
  );
  const cruise = `periods${n} * periodS`;
  const jerky = plan.move.profile === 'jerkLimited';
  const reaches = peakSpeed * axis.maxJerk >= axis.maxAccel * axis.maxAccel;
  const speed = `distance${n} / (${cruise})`;
  const up = !jerky
    ? `${speed} / maxAccel`
    : reaches
      ? `${speed} / maxAccel + maxAccel / maxJerk`
      : `2 * sqrt(${speed} / maxJerk)`;
  return {
    expression: `${cruise} + ${up}`,
    terms: [
      periods,
      term('periodS', 'period of the ring', periodS, 's', 'ringing.periodS'),
      d,
      ...(!jerky || reaches ? [a] : []),
      ...(jerky ? [j] : []),
    ],
    remark:
      'A quiet move: from the start of speeding up to the start of braking it takes whole periods of the ring, so that the two ring against each other.',
    source,
  };
}

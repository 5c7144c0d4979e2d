/** How fast an axis runs after a frame: how that came about. */
import { DEFINITION, type Draft, none, ofFrame, term, type Worked } from '../working/make.ts';
import type { Term } from '../working/types.ts';
import { profileSource } from './leg-working.ts';
import { fixedTimeSpeed, limitsOf, type MoveLimits, movePeakSpeed, shapeAtSpeed } from './profile.ts';
import { speedsOf } from './speeds.ts';
import { motorWays } from './take-up.ts';
import type { AxisOf } from './working.ts';

/** A move whose speed is explained. */
interface Moved {
  axis: AxisOf['axis'];
  limits: MoveLimits;
  distance: number;
  speed: number;
  /** `-` down the scale. */
  sign: string;
}

type Way = Pick<Draft, 'expression' | 'terms' | 'source'> & { remarks: string[] };

const near = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-7 * Math.abs(b);

const distanceTerm = ({ axis, distance }: Moved) =>
  term('distance', 'way of the motor, lost motion included', distance, axis.unit);

/** As fast as the axis can. */
function asFast(of: Moved): Way {
  const { axis, limits, distance, sign } = of;
  const { unit } = axis;
  const { maxSpeed, maxAccel, maxJerk } = limits;
  const v = term('maxSpeed', 'highest speed', maxSpeed, `${unit}/s`);
  const a = term('maxAccel', 'highest acceleration', maxAccel, `${unit}/s^2`);
  const j = term('maxJerk', 'highest jerk', maxJerk, `${unit}/s^3`);
  const [crest, terms] =
    maxJerk === Number.POSITIVE_INFINITY
      ? ['sqrt(maxAccel * distance)', [a]]
      : distance * maxJerk * maxJerk < 2 * maxAccel ** 3
        ? ['(distance ^ 2 * maxJerk / 4) ^ (1 / 3)', [j]]
        : [
            '2 * distance / (maxAccel / maxJerk + sqrt((maxAccel / maxJerk) ^ 2 + 4 * distance / maxAccel))',
            [a, j],
          ];
  return {
    expression: `${sign}min(maxSpeed, ${crest})`,
    terms: [v, ...terms, distanceTerm(of)],
    remarks: ['Of its move from rest to rest; on a short way it brakes before it gets to its highest.'],
    source: profileSource(maxJerk),
  };
}

/** As the time asks that the move takes. A root is explained backwards: by the time that speeding up takes. */
function inTime(of: Moved, time: Term): Way {
  const { axis, limits, distance, speed, sign } = of;
  const { maxAccel, maxJerk } = limits;
  const source = profileSource(maxJerk);
  if (fixedTimeSpeed(distance, maxAccel, time.value, maxJerk) === Number.POSITIVE_INFINITY)
    return {
      expression: `${sign}2 * distance / moveS`,
      terms: [distanceTerm(of), time],
      remarks: [
        'Its limits do not suffice for that time: it speeds up for half of it and brakes for the other, harder than they allow.',
      ],
      source,
    };
  const { accelS } = shapeAtSpeed(distance, speed, limits);
  const jerky = maxJerk < Number.POSITIVE_INFINITY ? ` and jerk of ${maxJerk} ${axis.unit}/s³` : '';
  return {
    expression: `${sign}distance / (moveS - upS)`,
    terms: [distanceTerm(of), time, term('upS', 'speeding up, as found', accelS, 's')],
    remarks: [
      `Of a move that takes the time given, speeding up and braking within an acceleration of ${maxAccel} ${axis.unit}/s²${jerky}: the slowest speed that does.`,
    ],
    source,
  };
}

/** Of a move from rest to rest. */
function peak(
  { plan }: Worked,
  { axis, columns }: AxisOf,
  k: number,
  { title, unit, value = 0 }: Draft,
): Draft {
  const limits = limitsOf(axis, plan.move.profile);
  const distance = motorWays(axis, columns)[k] as number;
  const of = { axis, limits, distance, speed: Math.abs(value), sign: value < 0 ? '-' : '' };
  const fixedS = plan.move.moveS;
  const fastest = movePeakSpeed(distance, limits.maxSpeed, limits.maxAccel, limits.maxJerk);
  const time =
    fixedS === null
      ? term(
          'moveS',
          'its move takes',
          columns.moveS[k] as number,
          's',
          ofFrame(k, `axes.${axis.name}.moveS`),
        )
      : term('moveS', 'time that every move takes', fixedS, 's');
  // The formula gives the value: a root that was searched for has fewer digits than it near its edge.
  return { title, unit, ...(fixedS === null && near(of.speed, fastest) ? asFast(of) : inTime(of, time)) };
}

/** Speed after one frame, up the scale positive. @param k - counted from 0, not the last */
export function speedAfter(of: Worked, own: AxisOf, k: number): Draft {
  const { axis, columns } = own;
  const { plan, made } = of;
  const [from, to] = [k, k + 1].map((n) => columns.steps[n] as number) as [number, number];
  const title = `${axis.name}: speed`;
  const unit = `${axis.unit}/s`;
  if (from === to) return none(title, unit, 'Nothing moves after this frame.');
  const at = (n: number, steps: number, symbol: string) =>
    term(
      symbol,
      `position at frame ${n + 1}`,
      steps / columns.stepsPerUnit,
      axis.unit,
      ofFrame(n, `axes.${axis.name}.position`),
    );
  const mean: Draft = {
    title,
    unit,
    value: speedsOf(columns, plan, made)[k] as number,
    expression: '(to - from) / intervalS',
    terms: [
      at(k + 1, to, 'to'),
      at(k, from, 'from'),
      term('intervalS', 'interval', made.columns.intervalS[k] as number, 's', ofFrame(k, 'intervalS')),
    ],
    source: DEFINITION,
  };
  return plan.move.mode === 'moveShootMove' ? peak(of, own, k, mean) : mean;
}

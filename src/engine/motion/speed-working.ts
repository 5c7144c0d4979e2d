/** How fast an axis runs after a frame: how that came about. */
import { DEFINITION, type Draft, none, ofFrame, sameAs, term, type Worked } from '../working/make.ts';
import { speedsOf } from './speeds.ts';
import { motorWays } from './take-up.ts';
import type { AxisOf } from './working.ts';

const TRAPEZOID = 'Trapezoid from rest to rest: Lynch & Park, Modern Robotics, ch. 9.2.2.2.';

const near = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-9 * Math.abs(b);

/** Of a move from rest to rest: as fast as the axis can, or as the time asks that the move takes. */
function peak({ plan }: Worked, { axis, columns }: AxisOf, k: number, base: Draft): Draft {
  const { unit, maxSpeed, maxAccel } = axis;
  const speed = base.value ?? 0;
  const sign = speed < 0 ? '-' : '';
  const distance = motorWays(axis, columns)[k] as number;
  const durationS = columns.moveS[k] as number;
  const terms = {
    distance: term('distance', 'way of the motor, lost motion included', distance, unit),
    speed: term('maxSpeed', 'highest speed', maxSpeed, `${unit}/s`),
    accel: term('maxAccel', 'highest acceleration', maxAccel, `${unit}/s^2`),
    time: term('moveS', 'its move takes', durationS, 's', ofFrame(k, `axes.${axis.name}.moveS`)),
  };
  const found = { ...base, source: TRAPEZOID };
  const trapezoid = plan.move.profile === 'trapezoidal';
  if (trapezoid && near(Math.min(maxSpeed, Math.sqrt(maxAccel * distance)), Math.abs(speed)))
    return {
      ...found,
      expression: `${sign}min(maxSpeed, sqrt(maxAccel * distance))`,
      terms: [terms.speed, terms.accel, terms.distance],
      remarks: ['Of its move from rest to rest; on a short way it brakes before it gets to its highest.'],
    };
  // The root of its quadratic loses half of the digits near its edge: it is explained backwards.
  const upS = Math.abs(speed) / maxAccel;
  if (trapezoid && near(distance / (durationS - upS), Math.abs(speed)))
    return {
      ...found,
      expression: `${sign}distance / (moveS - upS)`,
      terms: [terms.distance, terms.time, term('upS', 'speeding up, as found', upS, 's')],
      remarks: [
        `Of a move that takes the time given, speeding up and braking by ${maxAccel} ${unit}/s²: the slower of the two speeds that do.`,
      ],
    };
  return {
    ...sameAs(base.title, 'highest speed of its move', speed, base.unit, null),
    remarks: [`${trapezoid ? 'The acceleration' : 'The jerk'} is what the time of the move asks for.`],
  };
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

/** How the margins of an axis came about: its travel and its speed. */
import type { Margin } from '../findings/types.ts';
import {
  DEFINITION,
  type Draft,
  none,
  ofFrame,
  sameAs,
  term,
  type Worked,
  type Workings,
} from '../working/make.ts';
import { ofMargin } from '../working/margins.ts';
import { fixedTimeSpeed, limitsOf } from './profile.ts';
import { motorWays, takeUpOf } from './take-up.ts';
import type { AxisOf } from './working.ts';

type Range = () => number[];

function travelUsed(margin: Margin, { axis }: AxisOf, range: Range): Draft {
  const [minimum = 0, maximum = 0] = range();
  const { unit } = axis;
  const beyond = Math.max(maximum - axis.travelMax, axis.travelMin - minimum);
  const base = { title: `${margin.label}: used`, value: margin.used, unit, source: DEFINITION };
  const ends = [
    term('maximum', 'highest place', maximum, unit),
    term('minimum', 'lowest place', minimum, unit),
  ];
  // Half a step beyond the end is a rounding of the position.
  if (Math.abs(margin.used - (maximum - minimum)) <= 1e-9 * Math.max(1, Math.abs(margin.used)))
    return { ...base, expression: 'maximum - minimum', terms: ends };
  return {
    ...base,
    expression: 'travelMax - travelMin + max(0, maximum - travelMax, travelMin - minimum)',
    terms: [
      term('travelMax', 'upper end of the travel', axis.travelMax, unit),
      term('travelMin', 'lower end of the travel', axis.travelMin, unit),
      ...ends,
    ],
    remarks: beyond > 0 ? ['It would go beyond an end of its travel: that much more than all of it.'] : [],
  };
}

const travelAvailable = (margin: Margin, { axis }: AxisOf): Draft => ({
  title: `${margin.label}: available`,
  value: margin.available,
  unit: axis.unit,
  expression: 'travelMax - travelMin',
  terms: [
    term('travelMax', 'upper end of the travel', axis.travelMax, axis.unit),
    term('travelMin', 'lower end of the travel', axis.travelMin, axis.unit),
  ],
  source: DEFINITION,
});

/** Distance from a frame to the next over its interval. */
function continuousSpeed(of: Worked, margin: Margin, { axis, columns }: AxisOf): Draft {
  const k = margin.frame - 1;
  const { steps, stepsPerUnit } = columns;
  return {
    title: `${margin.label}: used`,
    value: margin.used,
    unit: margin.unit,
    expression: 'abs(stepsAfter - stepsBefore) / stepsPerUnit / intervalS',
    terms: [
      term('stepsAfter', 'steps at the next frame', steps[k + 1] ?? (steps[k] as number), 'steps'),
      term('stepsBefore', 'steps at this frame', steps[k] as number, 'steps'),
      term(
        'stepsPerUnit',
        `microsteps a ${axis.unit}`,
        stepsPerUnit,
        `steps/${axis.unit}`,
        `axes.${axis.name}.stepsPerUnit`,
      ),
      term('intervalS', 'interval', of.made.columns.intervalS[k] as number, 's', ofFrame(k, 'intervalS')),
    ],
    source: DEFINITION,
  };
}

/** Peak speed of a move that has to take a given time. */
function fixedSpeed({ plan }: Worked, margin: Margin, { axis, columns }: AxisOf): Draft {
  const { maxAccel, maxJerk } = limitsOf(axis, plan.move.profile);
  const moveS = plan.move.moveS ?? 0;
  const title = `${margin.label}: used`;
  const ways = [motorWays(axis, columns)[margin.frame - 1] ?? 0, takeUpOf(axis).beyond];
  const distance = ways.find((way) => fixedTimeSpeed(way, maxAccel, moveS, maxJerk) === margin.used);
  if (margin.used === 0)
    return none(
      title,
      margin.unit,
      'No move has a speed to speak of: it does not move, or its acceleration does not suffice.',
    );
  const found = sameAs(title, 'highest speed of a move', margin.used, margin.unit, null);
  if (distance === undefined) return found;
  const gentle = margin.used * maxJerk <= maxAccel * maxAccel;
  const jerky = plan.move.profile === 'jerkLimited';
  const [d, a] = [
    term('distance', 'distance', distance, axis.unit),
    term('maxAccel', 'highest acceleration', maxAccel, `${axis.unit}/s^2`),
  ];
  const j = term('maxJerk', 'highest jerk', maxJerk, `${axis.unit}/s^3`);
  const time = jerky ? '(moveS - maxAccel / maxJerk)' : 'moveS';
  const byJerk = jerky && gentle;
  return {
    ...found,
    expression: byJerk
      ? '3 * distance / (4 * cos(acos(-3 * sqrt(3 * distance / (maxJerk * moveS ^ 3))) / 3) ^ 2 * moveS)'
      : `2 * distance * maxAccel / (maxAccel * ${time} + sqrt((maxAccel * ${time}) ^ 2 - 4 * maxAccel * distance))`,
    terms: [
      d,
      ...(byJerk ? [] : [a]),
      ...(jerky ? [j] : []),
      term('moveS', 'time that every move takes', moveS, 's'),
    ],
    value: margin.used,
    remarks: ['Speeding up as fast as the axis can, so that the peak is as low as it can be in that time.'],
    source:
      'The smaller root of distance = v T − v²/a for the trapezoid, likewise with a jerk limit (textbook kinematics).',
  };
}

function speedUsed(of: Worked, margin: Margin, own: AxisOf): Draft {
  return of.plan.move.mode === 'continuous' ? continuousSpeed(of, margin, own) : fixedSpeed(of, margin, own);
}

const speedAvailable = (margin: Margin): Draft =>
  sameAs(`${margin.label}: available`, 'highest speed of the axis', margin.available, margin.unit, null, {
    value: margin.available,
  });

/** Used and available of the margins of an axis. @param range - lowest and highest place, worked out when asked for */
export function marginDrafts(of: Worked, own: AxisOf, range: Range): Workings {
  const find = (kind: string) => of.made.margins.find(({ id }) => id === `${kind}:${own.axis.name}`);
  const [travel, speed] = [find('travel'), find('speed')];
  const framed = (margin: Margin, draft: Draft): Draft => ({ ...draft, frame: margin.frame });
  return {
    ...(travel && {
      [ofMargin(travel, 'used')]: () => framed(travel, travelUsed(travel, own, range)),
      [ofMargin(travel, 'available')]: () => travelAvailable(travel, own),
    }),
    ...(speed && {
      [ofMargin(speed, 'used')]: () => framed(speed, speedUsed(of, speed, own)),
      [ofMargin(speed, 'available')]: () => speedAvailable(speed),
    }),
  };
}

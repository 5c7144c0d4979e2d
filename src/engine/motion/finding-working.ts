/** How the figures came about that the findings about travel, speed and acceleration state. */
import type { Finding } from '../findings/types.ts';
import { withUnit } from '../findings/words.ts';
import { DEFINITION, type Draft, ofFrame, sameAs, term, type Worked } from '../working/make.ts';
import { ofMargin } from '../working/margins.ts';
import { firstFrame, numberOf, type Said, type Sayers } from '../working/said.ts';
import { limitsOf } from './profile.ts';
import { speedsOf } from './speeds.ts';
import { axisOf, STEP_SAYS } from './step-finding-working.ts';
import { motorWays } from './take-up.ts';
import type { AxisOf } from './working.ts';

function beyond({ axis }: AxisOf, finding: Finding): Said {
  const value = (name: string) => numberOf(finding, name);
  return {
    text: withUnit(value('beyond'), axis.unit),
    what: 'beyond',
    draft: () => ({
      title: `${axis.name}: beyond its travel`,
      unit: axis.unit,
      expression: 'max(maximum - travelMax, travelMin - minimum)',
      terms: [
        term('maximum', 'highest place', value('maximum'), axis.unit),
        term('travelMax', 'upper end of the travel', axis.travelMax, axis.unit),
        term('travelMin', 'lower end of the travel', axis.travelMin, axis.unit),
        term('minimum', 'lowest place', value('minimum'), axis.unit),
      ],
      remarks: ['Of all places that it gets to, to arrive from its side as well.'],
      source: DEFINITION,
    }),
  };
}

const KINEMATICS = 'From rest to rest in a given time, textbook kinematics.';

/** What a fixed time asks of a move: acceleration, or jerk. */
function ofFixedTime({ plan }: Worked, own: AxisOf, finding: Finding, base: Draft): Draft {
  const { axis, columns } = own;
  const k = numberOf(finding, 'worstFrame') - 1;
  const { maxAccel, maxJerk } = limitsOf(axis, plan.move.profile);
  const distance = motorWays(axis, columns)[k] as number;
  const terms = [
    term('distance', 'way of the motor, lost motion included', distance, axis.unit),
    term('moveS', 'time that every move takes', plan.move.moveS ?? 0, 's'),
  ];
  const found = { ...base, frame: k + 1, source: KINEMATICS };
  if (base.unit.endsWith('s^3'))
    return {
      ...found,
      expression: '32 * distance / moveS ^ 3',
      terms,
      remarks: ['The least that does it: four phases of jerk and nothing else.'],
    };
  if (!Number.isFinite(maxJerk))
    return {
      ...found,
      expression: '4 * distance / moveS ^ 2',
      terms,
      remarks: ['The least that does it: speeding up for half of the time, braking for the other.'],
    };
  return {
    ...found,
    expression:
      '8 * distance / moveS / (moveS + sqrt(max(0, moveS ^ 2 - 32 * distance / (moveS * maxJerk))))',
    terms: [...terms, term('maxJerk', 'highest jerk', maxJerk, `${axis.unit}/s^3`)],
    remarks: [`The least that does it, with the jerk limited and no cruising; it can do ${maxAccel}.`],
  };
}

/** Change of the speed from one interval to the next. */
function ofSpeeds({ plan, made }: Worked, { axis, columns }: AxisOf, finding: Finding, base: Draft): Draft {
  const k = numberOf(finding, 'worstFrame') - 1;
  const speeds = speedsOf(columns, plan, made);
  const speed = (symbol: string, words: string, n: number) =>
    term(symbol, words, speeds[n] as number, `${axis.unit}/s`, ofFrame(n, `axes.${axis.name}.speed`));
  const intervalS = made.columns.intervalS[k] as number;
  return {
    ...base,
    expression: 'abs(speed - before) / intervalS',
    terms: [
      speed('speed', 'speed after this frame', k),
      speed('before', 'speed before this frame', k - 1),
      term('intervalS', 'interval', intervalS, 's', ofFrame(k, 'intervalS')),
    ],
    frame: k + 1,
  };
}

function acceleration(of: Worked, own: AxisOf, finding: Finding): Said {
  const { name, unit } = own.axis;
  const needed = numberOf(finding, 'needed');
  const isJerk = finding.message.includes('/s³');
  const base = sameAs(
    `${name}: ${isJerk ? 'jerk' : 'acceleration'} asked for`,
    'highest of the run',
    needed,
    `${unit}/s^${isJerk ? 3 : 2}`,
    null,
    { value: needed },
  );
  return {
    text: withUnit(needed, `${unit}/s${isJerk ? '³' : '²'}`),
    what: 'needed',
    draft: () =>
      of.plan.move.mode === 'continuous'
        ? ofSpeeds(of, own, finding, base)
        : ofFixedTime(of, own, finding, base),
  };
}

export const MOTION_SAYS: Sayers = {
  ...STEP_SAYS,
  travel: (of, finding) => {
    const own = axisOf(of, finding);
    return own ? [beyond(own, finding), firstFrame(finding, 'first frame beyond its travel')] : [];
  },
  speed: (of, finding) => {
    const own = axisOf(of, finding);
    if (!own) return [];
    return [
      {
        text: withUnit(numberOf(finding, 'needed'), `${own.axis.unit}/s`),
        of: ofMargin({ id: `speed:${own.axis.name}` }, 'used'),
      },
      firstFrame(finding, 'first frame after which it would have to run too fast'),
    ];
  },
  acceleration: (of, finding) => {
    const own = axisOf(of, finding);
    if (!own) return [];
    return [
      acceleration(of, own, finding),
      firstFrame(finding, 'first frame at which it would have to do more than it can'),
    ];
  },
};

/** How the figures came about that the findings about whole steps, lost motion and keyframes state. */
import type { Finding } from '../findings/types.ts';
import { seconds, withUnit } from '../findings/words.ts';
import type { Track } from '../plan/schema.ts';
import { pixelsPassed } from '../ringing/pixels.ts';
import { countWhere, whereRemark } from '../working/found.ts';
import { DEFINITION, type Draft, term, type Worked } from '../working/make.ts';
import {
  firstFrame,
  frameText,
  numberOf,
  type Said,
  type Sayer,
  type Sayers,
  wordOf,
} from '../working/said.ts';
import { type KeyframeFault, placeKeyframes, runClock } from './keyframes.ts';
import { moveMaker, moveOf, ringGiven } from './moves.ts';
import { times } from './step-findings.ts';
import { takeUpOf } from './take-up.ts';
import { stepsPerUnitTerm } from './track-working.ts';
import { type AxisOf, axesOf, ofAxis, turnedAt } from './working.ts';

/** The axis that a finding is about. */
export const axisOf = (of: Worked, finding: Finding): AxisOf | undefined =>
  axesOf(of).find(({ axis }) => axis.name === wordOf(finding, 'axis'));

/** By how much the picture shifts with one microstep. */
const shift = ({ plan }: Worked, own: AxisOf, finding: Finding): Said => ({
  text: withUnit(numberOf(finding, 'shiftPx'), 'px'),
  what: 'shiftPx',
  draft: () => ({
    title: `${own.axis.name}: shift of the picture by one microstep`,
    unit: 'px',
    expression: 'pxPerUnit / stepsPerUnit',
    terms: [
      term(
        'pxPerUnit',
        `shift of the picture for each ${own.axis.unit} that it goes`,
        pixelsPassed(plan, own.axis) ?? 0,
        `px/${own.axis.unit}`,
      ),
      stepsPerUnitTerm(own),
    ],
    source: 'Pinhole projection.',
  }),
});

/** Steps of all moves of a run, up and down its scale. */
const waySteps = ({ steps }: AxisOf['columns']): number =>
  steps.reduce((sum, step, k) => sum + Math.abs(step - (steps[k - 1] ?? step)), 0);

/** How far the track goes on from each frame to the next. */
const meanMove = (own: AxisOf, finding: Finding): Said => ({
  text: withUnit(numberOf(finding, 'meanMove'), own.axis.unit),
  what: 'meanMove',
  draft: () => ({
    title: `${own.axis.name}: its track moves, a frame`,
    unit: own.axis.unit,
    expression: 'waySteps / stepsPerUnit / (moves + repeats)',
    terms: [
      term('waySteps', 'microsteps of all moves together', waySteps(own.columns), 'steps'),
      stepsPerUnitTerm(own),
      term('moves', 'frames that it moves to', own.columns.moves, 'frames'),
      term('repeats', 'frames that repeat', own.columns.repeats, 'frames', ofAxis(own.axis.name, 'repeats')),
    ],
    remarks: ['The mean over the frames on which its track goes on.'],
    source: DEFINITION,
  }),
});

/** How often lost motion is taken up. */
function takeUps({ axis, columns }: AxisOf): Said {
  const { steps } = columns;
  const turned = (k: number) => k + 1 < steps.length && turnedAt(axis, steps, k);
  const moves = (k: number) => k + 1 < steps.length && steps[k] !== steps[k + 1];
  return {
    text: times(columns.takeUps),
    what: 'takeUps',
    draft: () => ({
      title: `${axis.name}: takes up lost motion`,
      unit: 'frames',
      expression: 'moves - straight',
      terms: [
        term('moves', 'frames that it moves after', countWhere(steps.length, moves), 'frames'),
        term(
          'straight',
          'those of them without lost motion',
          countWhere(steps.length, (k) => moves(k) && !turned(k)),
          'frames',
        ),
      ],
      remarks: [`In the move after each such frame. ${whereRemark(steps.length, turned)}`],
      source: DEFINITION,
    }),
  };
}

/** Seconds of all moves that have lost motion to take up, with and without it. */
function turnedSeconds({ plan }: Worked, { axis, columns }: AxisOf): [withS: number, withoutS: number] {
  const maker = moveMaker(plan, axis, ringGiven(plan));
  const { steps, stepsPerUnit: perUnit } = columns;
  const sums: [number, number] = [0, 0];
  for (let k = 0; k + 1 < steps.length; k += 1) {
    if (!turnedAt(axis, steps, k)) continue;
    const distance = Math.abs((steps[k + 1] as number) - (steps[k] as number)) / perUnit;
    const quiet = plan.move.quiet && maker.ring !== null;
    sums[0] += moveOf(maker, distance, true, quiet).durationS;
    sums[1] += moveOf(maker, distance, false, quiet).durationS;
  }
  return sums;
}

const takeUpTime = (of: Worked, own: AxisOf): Said => ({
  text: seconds(own.columns.takeUpS),
  what: 'takeUpS',
  draft: () => {
    const [withS, withoutS] = turnedSeconds(of, own);
    return {
      title: `${own.axis.name}: time to take up lost motion`,
      value: own.columns.takeUpS,
      unit: 's',
      expression: 'withS - withoutS',
      terms: [
        term('withS', 'all moves that take it up, together', withS, 's'),
        term('withoutS', 'the same moves if there were none', withoutS, 's'),
      ],
      source: DEFINITION,
    };
  },
});

/** How far it is carried past its end. */
function overrun({ axis }: AxisOf): Said[] {
  if (axis.overrun !== null) return [];
  const { overrun: past } = takeUpOf(axis);
  return [
    {
      text: withUnit(past, axis.unit),
      what: 'overrun',
      draft: () => ({
        title: `${axis.name}: overrun`,
        unit: axis.unit,
        expression: '2 * backlash',
        terms: [term('backlash', 'backlash', axis.backlash, axis.unit)],
        remarks: ['Twice its backlash, as long as none is given.'],
        source: 'Common practice, no source.',
      }),
    },
  ];
}

/** Frame at which a keyframe beyond the end would be. */
function keyframePlace({ made }: Worked, { index }: KeyframeFault): Said[] {
  const frame = Math.ceil(index) + 1;
  const draft = (): Draft => ({
    title: 'Where the keyframe would be',
    unit: '',
    expression: 'ceil(intervals) + 1',
    terms: [term('intervals', 'intervals from the first frame to its moment', index, 'intervals')],
    remarks: ['The frame at or after its moment; the run goes on beyond its end for that.'],
    source: DEFINITION,
  });
  return [
    { text: frameText(frame), what: 'keyframeAt', draft },
    { text: `${made.totals.frames} frames`, of: 'totals.frames' },
  ];
}

/** How many keyframes are misplaced besides the first. */
function moreMisplaced({ axis, keyframes }: Track, faults: readonly KeyframeFault[]): Said {
  const { length: all } = keyframes;
  const numbers = faults.map(({ keyframe }) => keyframe).join(', ');
  return {
    text: `${faults.length - 1} more`,
    what: 'more',
    draft: () => ({
      title: `${axis}: other keyframes that are misplaced`,
      unit: 'keyframes',
      expression: 'keyframes - inPlace - 1',
      terms: [
        term('keyframes', 'keyframes of the track', all, 'keyframes'),
        term('inPlace', 'those in their place', all - faults.length, 'keyframes'),
      ],
      remarks: [
        `Misplaced are ${numbers}: each stands no later than one before it, or is not reached. The first is named.`,
      ],
      source: DEFINITION,
    }),
  };
}

const misplaced: Sayer = (of, finding) => {
  const track = of.plan.move.tracks.find(({ axis }) => axis === wordOf(finding, 'axis'));
  const faults = track ? placeKeyframes(track, runClock(of.made.columns.intervalS)).faults : [];
  const [first] = faults;
  if (!track || !first) return [];
  return [...(first.what === 'order' ? [] : keyframePlace(of, first)), moreMisplaced(track, faults)];
};

export const STEP_SAYS: Sayers = {
  'keyframe-order': misplaced,
  'stair-stepping': (of, finding) => {
    const own = axisOf(of, finding);
    if (!own) return [];
    const { axis, columns } = own;
    const named = (what: string) => ofAxis(axis.name, what);
    return [
      { text: `${columns.repeats} frames`, of: named('repeats') },
      { text: frameText(columns.firstRepeat ?? 1), of: named('firstRepeat') },
      { text: withUnit(1 / columns.stepsPerUnit, axis.unit), of: named('microstep') },
      ...(pixelsPassed(of.plan, axis) === null ? [] : [shift(of, own, finding)]),
      meanMove(own, finding),
    ];
  },
  reversal: (of, finding) => {
    const own = axisOf(of, finding);
    if (!own) return [];
    const named = (what: string) => ofAxis(own.axis.name, what);
    return [
      { text: times(own.columns.reversals), of: named('reversals') },
      { text: frameText(own.columns.firstReversal ?? 1), of: named('firstReversal') },
    ];
  },
  'backlash-taken-up': (of, finding) => {
    const own = axisOf(of, finding);
    if (!own) return [];
    return [
      takeUps(own),
      firstFrame(finding, 'first frame that such a move leads to'),
      ...overrun(own),
      takeUpTime(of, own),
    ];
  },
};

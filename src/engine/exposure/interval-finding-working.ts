/** How the figures came about that the finding of an interval states that grows with the exposure. */
import type { Finding } from '../findings/types.ts';
import { counted, seconds } from '../findings/words.ts';
import { DEFINITION, type Draft, ofFrame, term, type Worked, withFloor, worth } from '../working/make.ts';
import { firstFrame, numberOf, ofFinding, type Said, type Sayer } from '../working/said.ts';
import { gapToEnd, stretchesUpTo } from './interval-findings.ts';

/** The interval of a length. */
function interval({ made }: Worked, lengthS: number): Said[] {
  const k = made.columns.intervalS.indexOf(lengthS);
  return k < 0 ? [] : [{ text: seconds(lengthS), of: ofFrame(k, 'intervalS') }];
}

/** Frames in the event, against an interval that stays. */
function fewer({ plan, made }: Worked, finding: Finding): Said {
  const { eventS } = plan.pacing;
  const { frames } = made.totals;
  const firstS = numberOf(finding, 'firstIntervalS');
  const difference = numberOf(finding, 'fewer');
  return {
    text: counted(Math.abs(difference), 'frame'),
    what: 'fewer',
    draft: () => ({
      title: 'Frames that the growing interval makes of difference',
      unit: 'frames',
      expression: 'abs(floor(intervals) + 1 - frames)',
      terms: [
        term(
          'intervals',
          'first intervals in the event',
          withFloor(eventS / firstS, difference + frames - 1),
          'intervals',
        ),
        term('frames', 'frames', frames, 'frames', 'totals.frames'),
      ],
      remarks: [
        `An interval of ${firstS} s, as the run begins with it, in an event of ${eventS} s; both ends count, as with the posts of a fence.`,
      ],
      source: DEFINITION,
    }),
  };
}

/** When the last frame comes, against an interval that stays. */
function later({ made }: Worked, finding: Finding): Said {
  const last = made.totals.frames - 1;
  return {
    text: seconds(Math.abs(numberOf(finding, 'laterS'))),
    what: 'laterS',
    draft: () => ({
      title: 'Difference of the end',
      unit: 's',
      expression: 'abs(lastS - (frames - 1) * firstIntervalS)',
      terms: [
        term(
          'lastS',
          'opening of the last frame',
          made.columns.elapsedS[last] ?? 0,
          's',
          ofFrame(last, 'elapsedS'),
        ),
        term('frames', 'frames', made.totals.frames, 'frames', 'totals.frames'),
        term(
          'firstIntervalS',
          'interval of the first frame',
          numberOf(finding, 'firstIntervalS'),
          's',
          ofFrame(0, 'intervalS'),
        ),
      ],
      source: DEFINITION,
    }),
  };
}

/** Times open that are named; what more there is stands as one. */
const MOST_NAMED = 10;

/** The run with the setting that keeps its end exactly: how many of its intervals have the shutter open for how long. */
function keptEnd({ made: { columns, totals } }: Worked, finding: Finding) {
  const { rung } = columns;
  const starts = [...(rung ?? [])].flatMap((index, k) => (k === 0 || index !== rung?.[k - 1] ? [k] : []));
  const intervals = totals.frames - 1;
  const endS = intervals * numberOf(finding, 'firstIntervalS');
  const stretches = stretchesUpTo(columns, starts, totals.dialS, endS);
  const gapS = gapToEnd(stretches, intervals, endS);
  const byOpen = new Map<number, number>();
  for (const { durationS, spanS } of stretches)
    byOpen.set(spanS, (byOpen.get(spanS) ?? 0) + durationS / (gapS + spanS));
  const open = [...byOpen].filter(([, count]) => count > 0).map(([spanS, count]) => ({ spanS, count }));
  return { open, intervals };
}

/** Mean time that the shutter is open, or between a bracket's first opening and last closing, over those intervals. */
function meanOpen(of: Worked, finding: Finding): Draft {
  const { open, intervals } = keptEnd(of, finding);
  const named = open.slice(0, open.length > MOST_NAMED + 1 ? MOST_NAMED : open.length);
  const others = open.slice(named.length);
  const sum = (all: typeof open, of: (each: (typeof open)[number]) => number) =>
    all.reduce((total, each) => total + of(each), 0);
  const othersCount = sum(others, ({ count }) => count);
  const parts = [
    ...named.map(({ spanS, count }, n) => ({
      name: `open${n + 1}`,
      words: `intervals ${n + 1}`,
      spanS,
      count,
    })),
    ...(others.length === 0
      ? []
      : [
          {
            name: 'others',
            words: 'intervals of the others',
            spanS: sum(others, ({ spanS, count }) => spanS * count) / othersCount,
            count: othersCount,
          },
        ]),
  ];
  return {
    title: 'Opening to closing, mean of the intervals',
    unit: 's',
    expression: `(${parts.map(({ name }) => `${name}Count * ${name}S`).join(' + ')}) / intervals`,
    terms: [
      ...parts.flatMap(({ name, words, spanS, count }) => [
        term(`${name}Count`, words, count, 'intervals'),
        term(`${name}S`, `opening to closing of ${words}`, spanS, 's'),
      ]),
      term('intervals', 'intervals of the run', intervals, 'intervals'),
    ],
    remarks: [
      'At each moment the shutter opens for as long as it does now, since the light does not wait. How many intervals fall on each time was found by halving the setting.',
    ],
    source: DEFINITION,
  };
}

/** The setting of the trigger that would keep the end. */
function keeping(of: Worked, finding: Finding): Said[] {
  const keepDialS = numberOf(finding, 'keepDialS');
  const firstIntervalS = numberOf(finding, 'firstIntervalS');
  const { stepS } = of.plan.trigger;
  const steps = (): Draft => {
    const openS = worth(meanOpen(of, finding));
    return {
      title: 'Steps of the trigger that would keep the end',
      value: withFloor((firstIntervalS - openS) / stepS, Math.round(keepDialS / stepS)),
      unit: 'steps',
      expression: '(intervalS - openS) / stepS',
      terms: [
        term('intervalS', 'interval as the run begins', firstIntervalS, 's', ofFrame(0, 'intervalS')),
        term(
          'openS',
          'opening to closing, mean of the intervals',
          openS,
          's',
          ofFinding(finding, 'meanOpenS'),
        ),
        term('stepS', 'step of the trigger', stepS, 's'),
      ],
      source: DEFINITION,
    };
  };
  return [
    {
      text: seconds(keepDialS),
      what: 'keepDialS',
      draft: () => ({
        title: 'Setting that would about keep the end',
        value: keepDialS,
        unit: 's',
        expression: 'floor(steps) * stepS',
        terms: [
          term(
            'steps',
            'steps of the trigger, not yet whole',
            worth(steps()),
            'steps',
            ofFinding(finding, 'keepSteps'),
          ),
          term('stepS', 'step of the trigger', stepS, 's'),
        ],
        remarks: ['The last frame then comes as with an interval that stays, or just before.'],
        source: DEFINITION,
      }),
    },
    { text: null, what: 'keepSteps', draft: steps },
    { text: null, what: 'meanOpenS', draft: () => meanOpen(of, finding) },
  ];
}

export const growingSays: Sayer = (of, finding) => [
  ...interval(of, numberOf(finding, 'shortestIntervalS')),
  ...interval(of, numberOf(finding, 'longestIntervalS')),
  ...('fewer' in finding.values ? [fewer(of, finding)] : [later(of, finding)]),
  ...('keepDialS' in finding.values ? keeping(of, finding) : []),
  firstFrame(finding, 'first frame with another setting'),
];

/** How the figures came about that the findings of settings, ramp and lamps state. */

import { cameraLane } from '../cycle/cycle.ts';
import { lostTo } from '../cycle/lost-working.ts';
import { bracketTogether } from '../cycle/working.ts';
import type { Finding } from '../findings/types.ts';
import { counted, figure, seconds, withUnit } from '../findings/words.ts';
import { night, scene } from '../light/working.ts';
import type { RampStep } from '../plan/schema.ts';
import { whereRemark } from '../working/found.ts';
import { APEX, DEFINITION, type Draft, ofFrame, term, type Worked, worth } from '../working/make.ts';
import {
  firstFrame,
  framesWhere,
  numberOf,
  ofFinding,
  type Said,
  type Sayers,
  wordOf,
} from '../working/said.ts';
import { brighterStops, dialMarks, type Mark } from './dials.ts';
import { growingSays } from './interval-finding-working.ts';
import type { Rung } from './ladder.ts';
import type { RampChange } from './ramp.ts';
import { rippleSays } from './ripple-finding-working.ts';
import { bracketS, openAtMarkS, openShutterS } from './shutter.ts';
import { SAME_MARK_STOPS } from './stops.ts';
import { settingsEv } from './working.ts';

/** What the settings come to in all. */
const bracketTime = (of: Worked, finding: Finding): Said => ({
  text: seconds(numberOf(finding, 'exposureS')),
  what: 'exposureS',
  draft: () => bracketTogether(of, openShutterS(of.plan), 'exposure.openS'),
});

/** The end of the ladder beyond which the light lies, and whether it is the dark end of the light. */
function endOf({ made }: Worked, finding: Finding): { end: Rung | undefined; side: 1 | -1 } {
  const bright = wordOf(finding, 'side') === 'too bright';
  const rungs = made.exposure?.rungs ?? [];
  return bright ? { end: rungs[0], side: 1 } : { end: rungs.at(-1), side: -1 };
}

function outOfRange(of: Worked, finding: Finding): Said[] {
  const { plan, made } = of;
  const { columns, exposure } = made;
  const { end, side } = endOf(of, finding);
  if (!end || !exposure) return [];
  const allowed = plan.exposure.ramp.toleranceStops;
  const errorAt = (k: number): number => columns.evError?.[k] as number;
  const offAt = (k: number): number =>
    side * (errorAt(k) + (exposure.rungs[columns.rung?.[k] ?? 0]?.ev100 ?? 0) - end.ev100);
  const worst = numberOf(finding, 'worstFrame') - 1;
  return [
    framesWhere(of, {
      text: counted(numberOf(finding, 'frames'), 'frame'),
      title: `Frames ${wordOf(finding, 'side')}`,
      others: 'frames within what you allow',
      holds: (k) => side * errorAt(k) > allowed && offAt(k) > allowed,
      remarks: [`You allow ${allowed} stops.`],
    }),
    {
      text: withUnit(numberOf(finding, 'worstStops'), 'stops'),
      what: 'worstStops',
      draft: () => ({
        title: 'Light beyond the settings',
        unit: 'stops',
        expression: side === 1 ? 'evScene + nightStops - evEnd' : 'evEnd - (evScene + nightStops)',
        terms: [
          term('evScene', 'scene', worth(scene(of, worst)), 'EV', ofFrame(worst, 'evScene')),
          term(
            'nightStops',
            'night allowance',
            worth(night(of, worst)),
            'stops',
            ofFrame(worst, 'nightStops'),
          ),
          term('evEnd', 'settings at their end', end.ev100, 'EV', ofFinding(finding, 'evEnd')),
        ],
        frame: worst + 1,
        remarks: ['Where it is farthest beyond. The schedule keeps the light to seven digits.'],
        source: APEX,
      }),
    },
    {
      text: null,
      what: 'evEnd',
      draft: () => ({ ...settingsEv(plan, end, null), title: 'Exposure value at the end of the settings' }),
    },
    firstFrame(finding, 'first frame beyond what you allow'),
  ];
}

/** A mark, and whether its exact time fits: once if it does, never if not. */
const markIfItFits = ({ plan }: Worked, symbol: string, words: string, { name, marked, exact }: Mark) => ({
  text: `${symbol}S * floor(min(1, ceilingS / ${symbol}OpenS * (1 + 1e-10)))`,
  terms: [
    term(`${symbol}S`, `${words} ${name}`, marked, 's'),
    term(`${symbol}OpenS`, `time that ${name} is open`, openAtMarkS(plan, marked, exact), 's'),
  ],
});

/** Where a step of the shutter ends: at the longest mark on its way that fits. */
function reachedDraft(of: Worked, finding: Finding): Draft {
  const { plan, made } = of;
  const reachedS = numberOf(finding, 'reachedS');
  const index = numberOf(finding, 'step') - 1;
  const marks = dialMarks(plan, plan.exposure.ramp.steps[index] as RampStep);
  const goesOn = made.exposure?.rungs.some(({ stepIndex }) => stepIndex === index) ?? false;
  const at = goesOn ? marks.find(({ marked }) => marked === reachedS) : undefined;
  const beyond = marks.find(({ marked }) => brighterStops('shutter', marked, reachedS) > SAME_MARK_STOPS);
  const here = at && markIfItFits(of, 'mark', 'mark', at);
  const next = beyond && markIfItFits(of, 'next', 'next mark', beyond);
  const parts = [here?.text ?? 'fromS', ...(next ? [next.text] : [])];
  return {
    title: 'The step ends at',
    value: reachedS,
    unit: 's',
    expression: parts.length === 1 ? (parts[0] as string) : `max(${parts.join(', ')})`,
    terms: [
      ...(here?.terms ?? [term('fromS', 'where the shutter is before the step', reachedS, 's')]),
      ...(next?.terms ?? []),
      ...(here || next
        ? [
            term(
              'ceilingS',
              'longest shutter time',
              made.exposure?.ceiling.ceilingS ?? 0,
              's',
              'exposure.ceilingS',
            ),
          ]
        : []),
    ],
    remarks: [
      'The longest mark on its way that fits: rounded down, a mark counts once if it does, and not at all if it does not.',
    ],
    source: DEFINITION,
  };
}

const reached = (of: Worked, finding: Finding): Said => ({
  text: seconds(numberOf(finding, 'reachedS')),
  what: 'reachedS',
  draft: () => reachedDraft(of, finding),
});

/** The angle of the first settings. */
function angle({ plan, made: { totals } }: Worked, finding: Finding): Said {
  const longestS = bracketS(plan).at(-1) as number;
  const one = plan.exposure.bracketCount === 1;
  const grows = plan.trigger.counts === 'endToStart';
  const intervalS = grows
    ? totals.dialS + cameraLane(plan).holdS - plan.camera.shutterLagS
    : totals.intervalS;
  return {
    text: `${figure(numberOf(finding, 'angleDeg'))}°`,
    what: 'angleDeg',
    draft: () => ({
      title: 'Shutter angle of the first settings',
      unit: 'deg',
      expression: '360 * openS / intervalS',
      terms: [
        term(
          'openS',
          one ? 'shutter open' : 'longest of the bracket',
          longestS,
          's',
          one ? 'exposure.openS' : null,
        ),
        term('intervalS', 'interval', intervalS, 's', grows ? null : 'totals.intervalS'),
      ],
      source: 'Shutter angle: t = angle / (360 × rate).',
    }),
  };
}

/** Changes by hand, and the frames that each loses. */
function byHand({ made }: Worked): (RampChange & { lostFrames: number })[] {
  const lost = new Map(
    made.events
      .filter(({ kind }) => kind === 'exposureChange')
      .map((event) => [event.frame, event.lostFrames]),
  );
  const changes = made.exposure?.changes ?? [];
  return changes
    .filter(({ by }) => by === 'hand')
    .map((change) => ({ ...change, lostFrames: lost.get(change.frame) ?? 0 }));
}

/** All frames that they lose, those that lose as many taken together. */
function allLost(changes: readonly { lostFrames: number }[]): Draft {
  const sizes = [...new Set(changes.map(({ lostFrames }) => lostFrames))].filter((size) => size > 0);
  return {
    title: 'Frames lost by changes of the settings',
    unit: 'frames',
    expression: sizes.map((_, i) => `changes${i + 1} * lost${i + 1}`).join(' + '),
    terms: sizes.flatMap((size, i) => [
      term(
        `changes${i + 1}`,
        `changes that lose ${counted(size, 'frame')}`,
        changes.filter(({ lostFrames }) => lostFrames === size).length,
        '',
      ),
      term(`lost${i + 1}`, 'frames lost by each', size, 'frames'),
    ]),
    source: DEFINITION,
  };
}

function changes(of: Worked, finding: Finding): Said[] {
  const all = byHand(of);
  const fits = all.filter(({ lostFrames }) => lostFrames === 0).length;
  const late = new Set(all.filter(({ lostFrames }) => lostFrames > 0).map(({ frame }) => frame));
  return [
    firstFrame(finding, 'first frame before which a change by hand loses frames'),
    lostTo(
      of,
      finding,
      'exposureChange',
      all.map(({ frame }) => frame),
    ),
    {
      text: `${numberOf(finding, 'late')} such changes`,
      what: 'late',
      draft: () => ({
        title: 'Changes by hand that lose frames',
        unit: '',
        expression: 'changes - fits',
        terms: [
          term('changes', 'changes by hand', all.length, ''),
          term('fits', 'those of them that fit', fits, ''),
        ],
        remarks: [`Before these. ${whereRemark(of.made.totals.frames, (k) => late.has(k + 1))}`],
        source: DEFINITION,
      }),
    },
    {
      text: counted(numberOf(finding, 'allLostFrames'), 'frame'),
      what: 'allLostFrames',
      draft: () => allLost(all),
    },
  ];
}

export const EXPOSURE_SAYS: Sayers = {
  'shutter-marked-exact': (of, finding) => [
    { text: seconds(numberOf(finding, 'exactS')), of: 'exposure.openS' },
    ...(of.plan.exposure.bracketCount > 1 ? [bracketTime(of, finding)] : []),
  ],
  'light-out-of-range': outOfRange,
  'shutter-beyond-cycle': (of, finding) => [
    { text: seconds(numberOf(finding, 'ceilingS')), of: 'exposure.ceilingS' },
    reached(of, finding),
  ],
  'change-does-not-fit': changes,
  'interval-grows': growingSays,
  'blur-share': (of, finding) => [angle(of, finding)],
  ripple: rippleSays,
};

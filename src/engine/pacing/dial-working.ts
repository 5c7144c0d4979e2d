/** How the interval and the dial setting came about. */
import { cameraLane } from '../cycle/cycle.ts';
import { growsWithLight } from '../frames.ts';
import type { Plan } from '../plan/schema.ts';
import { decimalRatio, floor, over } from '../time/ratio.ts';
import {
  DEFINITION,
  type Draft,
  ofFrame,
  PRACTICE,
  sameAs,
  term,
  type Worked,
  withFloor,
} from '../working/make.ts';
import type { Term } from '../working/types.ts';
import { framesForClip, type Pace, paceOf } from './pacing.ts';

export const EXACT =
  'Counted in exact ratios of whole numbers, so that no rounding makes a frame more or less.';
export const FENCE_POSTS = 'Both ends count, as with the posts of a fence: one frame more than intervals.';

/** What the workings here go by. */
export interface Paced extends Worked {
  pace: Pace;
  /** Whether the interval follows the exposure, so that frames are counted one by one. */
  grows: boolean;
}

export const pacedOf = (of: Worked): Paced => ({
  ...of,
  pace: paceOf(of.plan),
  grows: growsWithLight(of.plan) && of.made.exposure !== null,
});

const stepTerm = ({ plan }: Worked): Term => term('stepS', 'step of the dial', plan.trigger.stepS, 's');
const openTerm = ({ made, plan }: Worked): Term =>
  term(
    'openSpanS',
    'first opening to last closing',
    openSpanOf({ made, plan }),
    's',
    ofFrame(0, 'openSpanS'),
  );

/** Seconds that an end-to-start trigger waits for after the first opening of frame 1. */
const openSpanOf = ({ made, plan }: Worked): number =>
  (made.columns.holdS[0] as number) - plan.camera.shutterLagS;

/** The same at the settings of the plan, which a ramp may have left by frame 1. */
const plannedOpenTerm = (of: Paced): Term =>
  of.grows
    ? term('openSpanS', 'first opening to last closing, at the first settings', openAtFirst(of), 's')
    : openTerm(of);

const openAtFirst = ({ plan }: Paced): number => cameraLane(plan).holdS - plan.camera.shutterLagS;

/** The interval that just fits the clip into the event, or the one that was typed. */
export function rawInterval({ plan, made }: Paced): Draft {
  const base = { title: 'Interval asked for', value: made.totals.rawIntervalS, unit: 's' };
  if (plan.pacing.workedOut !== 'interval')
    return {
      ...base,
      expression: 'typedS',
      terms: [term('typedS', 'interval as typed', plan.pacing.intervalS, 's')],
      source: DEFINITION,
    };
  return {
    ...base,
    expression: 'eventS / (max(framesForClip, 2) - 1)',
    terms: [
      term('eventS', 'event', plan.pacing.eventS, 's'),
      term('framesForClip', 'frames for the clip', framesForClip(plan), 'frames', 'pacing.framesForClip'),
    ],
    remarks: [FENCE_POSTS],
    source: DEFINITION,
  };
}

const endToStart = ({ plan }: Worked): boolean => plan.trigger.counts === 'endToStart';
export const worksOut = ({ plan }: Worked): boolean => plan.pacing.workedOut === 'interval';

/** Steps of the dial that make up what was asked for; half a step more where the nearest setting is wanted. */
export function stepsWanted(of: Paced): Draft {
  const { plan, made, pace } = of;
  const { stepS } = plan.trigger;
  const open = endToStart(of);
  const openS = open ? openAtFirst(of) : 0;
  const half = worksOut(of) ? 0 : 0.5;
  const whole = Math.round(pace.dialS / stepS);
  const longest = longestSteps(plan);
  const found = (pace.rawIntervalS - openS) / stepS + half;
  return {
    title: 'Steps of the dial',
    // Beyond the end of the dial it does not matter how far.
    value: whole < longest || found < longest ? withFloor(found, whole) : found,
    unit: 'steps',
    expression: `(rawIntervalS${open ? ' - openSpanS' : ''}) / stepS${half > 0 ? ' + 1 / 2' : ''}`,
    terms: [
      term('rawIntervalS', 'interval asked for', made.totals.rawIntervalS, 's', 'totals.rawIntervalS'),
      ...(open ? [plannedOpenTerm(of)] : []),
      stepTerm(of),
    ],
    remarks: [
      half > 0
        ? 'Half a step more, so that rounding down finds the nearest setting.'
        : 'Rounded down afterwards: one may drop frames, one cannot invent them.',
      EXACT,
    ],
    source: PRACTICE,
  };
}

const longestSteps = ({ trigger }: Plan): number =>
  Number(floor(over(decimalRatio(trigger.maxS), decimalRatio(trigger.stepS))));

/** Whole steps of the dial. */
function byTheDial(of: Paced): Pick<Draft, 'expression' | 'terms' | 'remarks' | 'source'> {
  const { plan } = of;
  const wanted = stepsWanted(of).value ?? 0;
  const longest = longestSteps(plan);
  const limited = worksOut(of) && Math.floor(wanted) > longest;
  return {
    expression: limited ? 'longestSteps * stepS' : 'floor(stepsWanted) * stepS',
    terms: [
      limited
        ? term('longestSteps', 'steps to the end of the dial', longest, 'steps')
        : term('stepsWanted', 'steps of the dial', wanted, 'steps', 'pacing.stepsWanted'),
      stepTerm(of),
    ],
    remarks: [
      worksOut(of)
        ? 'Down to what the trigger can be set to: one may drop frames, one cannot invent them.'
        : 'To the nearest setting of the trigger, which counts the gap from closing to opening.',
    ],
    source: PRACTICE,
  };
}

/** Whether the dial decides about the interval: it was worked out, or is a gap. */
export const dialDecides = (of: Paced): boolean => of.pace.settable && (worksOut(of) || endToStart(of));

export function interval(of: Paced): Draft {
  const { made, pace, grows } = of;
  const base = { title: 'Interval', value: made.totals.intervalS, unit: 's' };
  if (endToStart(of) && (pace.settable || grows))
    return {
      ...base,
      expression: 'dialS + openSpanS',
      terms: [term('dialS', 'dial setting', made.totals.dialS, 's', 'totals.dialS'), openTerm(of)],
      frame: grows ? 1 : null,
      remarks: [
        'The trigger counts from the last closing to the next opening.',
        ...(grows ? ['The interval after the first frame; it follows the exposure.'] : []),
      ],
      source: DEFINITION,
    };
  if (dialDecides(of)) return { ...base, ...byTheDial(of) };
  return {
    ...rawInterval(of),
    ...base,
    remarks: pace.settable ? [] : ['The trigger cannot be set to it.'],
  };
}

export function dial(of: Paced): Draft {
  const { plan, made, pace, grows } = of;
  const base = { title: 'Dial setting', value: made.totals.dialS, unit: 's' };
  if (grows && worksOut(of))
    return {
      ...sameAs('', 'longest setting that fits', made.totals.dialS, 's', null),
      ...base,
      remarks: [
        `Found by halving: the longest setting with which the ${framesForClip(plan)} frames of the clip open within the event, each interval being the setting and that frame's exposures.`,
      ],
    };
  if (endToStart(of) && pace.settable) return { ...base, ...byTheDial(of) };
  if (!endToStart(of))
    return {
      ...sameAs('', 'interval', made.totals.intervalS, 's', 'totals.intervalS'),
      ...base,
      remarks: ['The trigger counts from opening to opening.'],
    };
  return {
    ...base,
    expression: 'rawIntervalS - openSpanS',
    terms: [
      term('rawIntervalS', 'interval asked for', made.totals.rawIntervalS, 's', 'totals.rawIntervalS'),
      plannedOpenTerm(of),
    ],
    remarks: ['The trigger cannot be set to it.'],
    source: DEFINITION,
  };
}

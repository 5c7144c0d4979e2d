import type { Plan } from '../plan/schema.ts';
import { ceil, decimalRatio, over, parseRate, type Ratio, times, toNumber } from '../time/ratio.ts';
import {
  DEFINITION,
  type Draft,
  PRACTICE,
  sameAs,
  term,
  type Worked,
  type Workings,
  withCeil,
  withFloor,
} from '../working/make.ts';
import type { Term } from '../working/types.ts';
import {
  dial,
  dialDecides,
  EXACT,
  FENCE_POSTS,
  interval,
  type Paced,
  pacedOf,
  rawInterval,
  stepsWanted,
  worksOut,
} from './dial-working.ts';
import { framesForClip } from './pacing.ts';

const rate = ({ clip }: Plan): Ratio => parseRate(clip.frameRate);

const rateTerm = ({ made }: Worked): Term =>
  term('frameRate', 'frame rate', made.totals.frameRate, 'fps', 'totals.frameRate');
const framesTerm = ({ made }: Worked): Term =>
  term('frames', 'frames', made.totals.frames, 'frames', 'totals.frames');
const intervalTerm = ({ made }: Worked): Term =>
  term('intervalS', 'interval', made.totals.intervalS, 's', 'totals.intervalS');
const holdTerm = ({ plan }: Worked): Term =>
  term('holdFrames', 'frames that an exposure is held for', plan.clip.holdFrames, 'frames');
const handlesTerm = ({ plan }: Worked): Term =>
  term('handlesFrames', 'frames of a handle', plan.clip.handlesFrames, 'frames');
/** Screen time of the clip in frames: a whole number or not. */
function screenFrames({ plan }: Paced): Draft {
  const exact = times(decimalRatio(plan.pacing.clipLengthS), rate(plan));
  const { num, den } = rate(plan);
  return {
    title: 'Clip, in frames',
    value: withCeil(toNumber(exact), Number(ceil(exact))),
    unit: 'frames',
    expression: den === 1n ? 'clipLengthS * rateFrames' : 'clipLengthS * rateFrames / rateS',
    terms: [
      term('clipLengthS', 'clip asked for', plan.pacing.clipLengthS, 's'),
      term(
        'rateFrames',
        den === 1n ? 'frame rate' : 'frames of the frame rate',
        Number(num),
        den === 1n ? 'fps' : 'frames',
      ),
      ...(den === 1n ? [] : [term('rateS', 'seconds of the frame rate', Number(den), 's')]),
    ],
    remarks: [EXACT],
    source: DEFINITION,
  };
}

function framesForClipDraft(of: Paced): Draft {
  return {
    title: 'Frames for the clip',
    value: framesForClip(of.plan),
    unit: 'frames',
    expression: 'ceil((ceil(clipFrames) + 2 * handlesFrames) / holdFrames)',
    terms: [
      term('clipFrames', 'clip in frames', screenFrames(of).value ?? 0, 'frames', 'pacing.clipInFrames'),
      handlesTerm(of),
      holdTerm(of),
    ],
    remarks: ['A frame that is begun is shot.', EXACT],
    source: PRACTICE,
  };
}

function intervalsInEvent({ plan, made }: Paced): Draft {
  const { eventS } = plan.pacing;
  const { frames, intervalS } = made.totals;
  return {
    title: 'Intervals in the event',
    value: withFloor(toNumber(over(decimalRatio(eventS), decimalRatio(intervalS))), frames - 1),
    unit: 'intervals',
    expression: 'eventS / intervalS',
    terms: [
      term('eventS', 'event', eventS, 's'),
      term('intervalS', 'interval', intervalS, 's', 'totals.intervalS'),
    ],
    remarks: [EXACT],
    source: DEFINITION,
  };
}

/** Whether the event and the interval make the frames: not if the clip does, or nothing can be set. */
const countsByEvent = ({ plan, pace }: Paced): boolean =>
  plan.pacing.workedOut === 'clip' || (plan.pacing.workedOut === 'interval' && pace.settable);

function framesDraft(of: Paced): Draft {
  const { plan, made, grows } = of;
  const base = { title: 'Frames', value: made.totals.frames, unit: 'frames' };
  const forClip = term(
    'framesForClip',
    'frames for the clip',
    framesForClip(plan),
    'frames',
    'pacing.framesForClip',
  );
  if (plan.pacing.workedOut === 'event') return { ...framesForClipDraft(of), ...base };
  if (grows) return { ...grownFrames(of), ...base };
  if (!countsByEvent(of))
    return {
      ...base,
      expression: 'max(framesForClip, 2)',
      terms: [forClip],
      remarks: ['The trigger cannot be set to the interval: these are the frames that were asked for.'],
      source: PRACTICE,
    };
  return {
    ...base,
    expression: 'floor(intervals) + 1',
    terms: [
      term(
        'intervals',
        'intervals in the event',
        intervalsInEvent(of).value ?? 0,
        'intervals',
        'pacing.intervalsInEvent',
      ),
    ],
    remarks: [FENCE_POSTS],
    source: DEFINITION,
  };
}

/** Frames whose intervals differ are counted one by one. */
function grownFrames({ plan, made }: Paced): Draft {
  const { frames } = made.totals;
  const last = frames - 1;
  const lastS = made.columns.elapsedS[last] as number;
  const nextS = lastS + (made.columns.intervalS[last] as number);
  return sameAs('Frames', 'shutter openings within the event', frames, 'frames', null, {
    remarks: [
      'The trigger counts from closing to opening, so that the interval follows the exposure: the frames are counted one by one.',
      `Frame ${frames} opens after ${lastS} s; the next would after ${nextS} s, and the event takes ${plan.pacing.eventS} s.`,
    ],
  });
}

function clipFrames(of: Paced): Draft {
  return {
    title: 'Frames of the clip',
    value: of.made.totals.clipFrames,
    unit: 'frames',
    expression: 'frames * holdFrames',
    terms: [framesTerm(of), holdTerm(of)],
    remarks: ['Handles included.'],
    source: DEFINITION,
  };
}

function frameRate({ plan, made }: Paced): Draft {
  const { num, den } = rate(plan);
  const whole = den === 1n;
  return {
    title: 'Frame rate',
    value: made.totals.frameRate,
    unit: 'fps',
    expression: whole ? 'rateFrames' : 'rateFrames / rateS',
    terms: [
      term('rateFrames', whole ? 'frame rate as set' : 'frames', Number(num), whole ? 'fps' : 'frames'),
      ...(whole ? [] : [term('rateS', 'in so many seconds', Number(den), 's')]),
    ],
    remarks: whole ? [] : ['An exact ratio: 23.976 is short for 24000/1001.'],
    source: 'Rates of 1000/1001 as in SMPTE ST 12-1.',
  };
}

/** How many intervals there are of each length, up to the last frame. */
function intervalsByLength({ made }: Worked): [lengthS: number, count: number][] {
  const counts = new Map<number, number>();
  for (const lengthS of made.columns.intervalS.subarray(0, -1))
    counts.set(lengthS, (counts.get(lengthS) ?? 0) + 1);
  return [...counts];
}

function event(of: Paced): Draft {
  const { made, grows } = of;
  const base = { title: 'Event', value: made.totals.eventDurationS, unit: 's' };
  if (!grows)
    return {
      ...base,
      expression: '(frames - 1) * intervalS',
      terms: [framesTerm(of), intervalTerm(of)],
      remarks: ['First shutter opening to the last: fence posts, not rails.'],
      source: DEFINITION,
    };
  const lengths = intervalsByLength(of);
  return {
    ...base,
    expression:
      lengths.length === 0 ? '0' : lengths.map((_, i) => `count${i + 1} * interval${i + 1}S`).join(' + '),
    terms: lengths.flatMap(([lengthS, count], i) => [
      term(`count${i + 1}`, `intervals of the ${i + 1}. length`, count, 'intervals'),
      term(`interval${i + 1}S`, `${i + 1}. length`, lengthS, 's'),
    ]),
    remarks: ['Every interval up to the last frame: they follow the exposure.'],
    source: DEFINITION,
  };
}

function clipLength(of: Paced): Draft {
  const { made } = of;
  return {
    title: 'Clip',
    value: made.totals.clipLengthS,
    unit: 's',
    expression: 'max(0, clipFrames - 2 * handlesFrames) / frameRate',
    terms: [
      term('clipFrames', 'frames of the clip', made.totals.clipFrames, 'frames', 'totals.clipFrames'),
      handlesTerm(of),
      rateTerm(of),
    ],
    remarks: ['Screen time, handles left out.'],
    source: DEFINITION,
  };
}

function speedUp(of: Paced): Draft {
  const { made, grows } = of;
  return {
    title: 'Speed-up',
    value: made.totals.speedUp,
    unit: '',
    expression: 'intervalS * frameRate / holdFrames',
    terms: [intervalTerm(of), rateTerm(of), holdTerm(of)],
    remarks: [
      'Real seconds in one second of the clip.',
      ...(grows ? ['At the interval after the first frame.'] : []),
    ],
    source: DEFINITION,
  };
}

/** Workings of the pacing. */
export function pacingWorkings(given: Worked): Workings {
  const of = pacedOf(given);
  const asksClip = of.plan.pacing.workedOut !== 'clip';
  return {
    'totals.frames': () => framesDraft(of),
    'totals.clipFrames': () => clipFrames(of),
    'totals.frameRate': () => frameRate(of),
    'totals.rawIntervalS': () => rawInterval(of),
    'totals.intervalS': () => interval(of),
    'totals.dialS': () => dial(of),
    'totals.eventDurationS': () => event(of),
    'totals.clipLengthS': () => clipLength(of),
    'totals.speedUp': () => speedUp(of),
    ...(asksClip && {
      'pacing.clipInFrames': () => screenFrames(of),
      'pacing.framesForClip': () => framesForClipDraft(of),
    }),
    ...(countsByEvent(of) && !of.grows && { 'pacing.intervalsInEvent': () => intervalsInEvent(of) }),
    ...(dialDecides(of) && !(of.grows && worksOut(of)) && { 'pacing.stepsWanted': () => stepsWanted(of) }),
  };
}

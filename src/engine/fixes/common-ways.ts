/**
 * Ways out that many findings share: another interval, a longer or a shorter run. The same change has the same kind,
 * whichever finding asks for it.
 *
 * Two of event, interval and clip are held; with another interval either the event or the clip can be. Frames that are
 * longer apart over the same event are fewer, and each move of the rig is longer.
 */
import { cameraLane } from '../cycle/cycle.ts';
import { openSpanS } from '../exposure/ceiling.ts';
import { seconds } from '../findings/words.ts';
import { clipOf, framesForClip, paceOf } from '../pacing/pacing.ts';
import type { Edit } from '../plan/paths.ts';
import type { Plan } from '../plan/schema.ts';
import type { Schedule } from '../schedule-types.ts';
import { planWith, tidy, tidyDown, tidyUp, way } from './build.ts';
import type { Way } from './types.ts';

type Totals = Schedule['totals'];

/** More values than anybody turns a dial through. */
const MOST_SETTINGS = 200_000;

/** The settings of a trigger on one side of the present one, nearest first. */
function settingsFrom({ trigger }: Plan, dialS: number, side: 1 | -1) {
  const { stepS, minS, maxS } = trigger;
  const lowest = Math.ceil(minS / stepS - 1e-9);
  const highest = Math.floor(maxS / stepS + 1e-9);
  const present = dialS / stepS;
  const nearest =
    side === 1
      ? Math.max(lowest, Math.floor(present + 1e-9) + 1)
      : Math.min(highest, Math.ceil(present - 1e-9) - 1);
  const count = side === 1 ? highest - nearest + 1 : nearest - lowest + 1;
  return {
    count: Math.min(MOST_SETTINGS, count),
    at: (step: number) => tidy((nearest + side * (step - 1)) * stepS, 9),
    /** The first setting that is at least so long, or, going down, at most. */
    reaching: (wantedS: number) =>
      side === 1
        ? Math.ceil(wantedS / stepS - 1e-9) - nearest + 1
        : nearest - Math.floor(wantedS / stepS + 1e-9) + 1,
  };
}

/** Seconds that a trigger adds to its setting: those that the shutter is open, if it counts from closing to opening. */
const addedS = (plan: Plan): number =>
  plan.trigger.counts === 'endToStart' ? openSpanS(plan, cameraLane(plan)) : 0;

/** Clip length of so many frames, seconds: rounded down so that counting gives as many again. */
export function clipLengthOf(plan: Plan, frames: number): number {
  const exact = clipOf(plan, frames).clipLengthS;
  return tidyDown(exact, 1e-6);
}

/** Clip of the frames that fit into the present event at an interval. */
const clipWithin = (plan: Plan, eventS: number, intervalS: number): number =>
  clipLengthOf(plan, Math.floor(eventS / intervalS + 1e-9) + 1);

/** Event that so many frames take, seconds: whole ones where that makes no frame more. */
const eventFor = (frames: number, intervalS: number): number =>
  tidyUp((frames - 1) * intervalS, intervalS > 1 ? 1 : 1e-6);

/** Edits to a setting of the trigger, the event held. */
function eventHeld(plan: Plan, totals: Totals, intervalS: number): Edit[] {
  const to: Edit = ['pacing.intervalS', intervalS];
  if (plan.pacing.workedOut === 'clip') return [to];
  if (plan.pacing.workedOut === 'interval') return [['pacing.workedOut', 'clip'], to];
  return [to, ['pacing.clipLengthS', clipWithin(plan, totals.eventDurationS, intervalS)]];
}

/** Edits to a setting of the trigger, the clip held. */
function clipHeld(plan: Plan, totals: Totals, intervalS: number): Edit[] {
  const to: Edit = ['pacing.intervalS', intervalS];
  const { workedOut } = plan.pacing;
  if (workedOut === 'event') return [to];
  const frames = workedOut === 'clip' ? totals.frames : Math.max(2, framesForClip(plan));
  const event: Edit = ['pacing.eventS', eventFor(frames, intervalS)];
  return workedOut === 'clip' ? [to, event] : [event];
}

function intervalWords(plan: Plan): string {
  const { dialS, intervalS } = paceOf(plan);
  return plan.trigger.counts === 'endToStart'
    ? `Trigger to ${seconds(dialS)}`
    : `Interval to ${seconds(intervalS)}`;
}

/** Event and clip where they are typed differently: `event to 1:42:40`. */
function lengthsWords({ pacing: before }: Plan, { pacing }: Plan): string[] {
  const { eventS, clipLengthS } = pacing;
  const event = before.eventS === eventS ? [] : [`event to ${seconds(eventS)}`];
  return before.clipLengthS === clipLengthS ? event : [...event, `clip to ${seconds(tidy(clipLengthS, 3))}`];
}

/** What stands on the button for a plan whose interval is another: what is typed differently in it. */
const words = (before: Plan, changed: Plan): string =>
  [intervalWords(changed), ...lengthsWords(before, changed)].join(', ');

interface IntervalWay {
  kind: string;
  side: 1 | -1;
  edits: typeof eventHeld;
  wantedDialS?: number | undefined;
}

function intervalWay(plan: Plan, totals: Totals, { kind, side, edits, wantedDialS }: IntervalWay): Way[] {
  const settings = settingsFrom(plan, totals.dialS, side);
  return way({
    kind,
    steps: settings.count,
    first: wantedDialS === undefined ? 1 : settings.reaching(wantedDialS),
    at: (step) => planWith(plan, edits(plan, totals, tidy(settings.at(step) + addedS(plan), 9))),
    label: (changed) => words(plan, changed),
  });
}

/** Fewer frames in the same event. @param wantedDialS - the setting that should just suffice */
export const intervalLonger = (plan: Plan, { totals }: Schedule, wantedDialS?: number): Way[] =>
  intervalWay(plan, totals, { kind: 'interval-longer', side: 1, edits: eventHeld, wantedDialS });

/** More frames in the same event. */
export const intervalShorter = (plan: Plan, { totals }: Schedule, wantedDialS?: number): Way[] =>
  intervalWay(plan, totals, { kind: 'interval-shorter', side: -1, edits: eventHeld, wantedDialS });

/** The same frames over a longer event. */
export const slowerRun = (plan: Plan, { totals }: Schedule, wantedDialS?: number): Way[] =>
  intervalWay(plan, totals, { kind: 'run-slower', side: 1, edits: clipHeld, wantedDialS });

/** The same frames over a shorter event. */
export const fasterRun = (plan: Plan, { totals }: Schedule, wantedDialS?: number): Way[] =>
  intervalWay(plan, totals, { kind: 'run-faster', side: -1, edits: clipHeld, wantedDialS });

/** How far an event is changed in one step, seconds: what a person would say, and at least an interval. */
function eventStepS(eventS: number, intervalS: number): number {
  const handyS = eventS >= 3600 ? 60 : eventS >= 600 ? 30 : eventS >= 60 ? 5 : eventS >= 10 ? 1 : 0.1;
  return Math.max(handyS, intervalS);
}

/** How far a clip is changed in one step, seconds: at least by one exposure. */
function clipStepS({ clip, pacing: { clipLengthS } }: Plan, frameRate: number): number {
  const handyS = clipLengthS >= 60 ? 1 : clipLengthS >= 10 ? 0.5 : 0.1;
  return Math.max(handyS, clip.holdFrames / frameRate);
}

/** The length that makes a run longer or shorter at its present interval: the clip if the event follows it. */
interface RunLength {
  presentS: number;
  stepS: number;
  /** The length that goes with an event of so many seconds. */
  withEvent: (eventS: number) => number;
  edits: (lengthS: number) => Edit[];
}

function runLength(plan: Plan, { intervalS, frameRate }: Totals): RunLength {
  const { workedOut, eventS, clipLengthS } = plan.pacing;
  const clipFor = (length: number): Edit => ['pacing.clipLengthS', clipWithin(plan, length, intervalS)];
  if (workedOut === 'event')
    return {
      presentS: clipLengthS,
      stepS: clipStepS(plan, frameRate),
      withEvent: (length) => clipWithin(plan, length, intervalS),
      edits: (length) => [['pacing.clipLengthS', length]],
    };
  return {
    presentS: eventS,
    stepS: eventStepS(eventS, intervalS),
    withEvent: (length) => length,
    edits: (length) =>
      workedOut === 'clip' ? [['pacing.eventS', length]] : [['pacing.eventS', length], clipFor(length)],
  };
}

const MOST_LENGTHS = 5000;

function runWay(kind: string, side: 1 | -1, plan: Plan, totals: Totals, wantedS?: number): Way[] {
  const { presentS, stepS, withEvent, edits } = runLength(plan, totals);
  const start = side === 1 ? Math.floor(presentS / stepS + 1e-9) : Math.ceil(presentS / stepS - 1e-9);
  const wanted = wantedS === undefined ? start + side : withEvent(wantedS) / stepS;
  return way({
    kind,
    steps: side === 1 ? MOST_LENGTHS : Math.min(MOST_LENGTHS, start - 1),
    first: side === 1 ? Math.ceil(wanted - 1e-9) - start : start - Math.floor(wanted + 1e-9),
    at: (step) => planWith(plan, edits(tidy((start + side * step) * stepS))),
    label: (changed) => lastingWords(plan, changed),
  });
}

function lastingWords(before: Plan, changed: Plan): string {
  const text = lengthsWords(before, changed).join(', ');
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Fewer frames at the same interval: the run ends earlier. @param wantedS - event that should just suffice */
export const shorterRun = (plan: Plan, { totals }: Schedule, wantedS?: number): Way[] =>
  runWay('run-shorter', -1, plan, totals, wantedS);

/** More frames at the same interval: the run ends later. */
export const longerRun = (plan: Plan, { totals }: Schedule, wantedS?: number): Way[] =>
  runWay('run-longer', 1, plan, totals, wantedS);

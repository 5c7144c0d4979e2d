/**
 * Event, interval, frames, clip: one of event, interval and clip follows from the other two.
 *
 * `frames = ceil(clip x rate) + 2 x handles`; `event = (frames - 1) x interval`: fence posts, not rails.
 * Counting is exact: frame rates are ratios, and seconds stand for the decimals they are written as.
 */
import { cameraPhases, openPhases } from '../cycle/cycle.ts';
import type { Plan } from '../plan/schema.ts';
import {
  ceil,
  decimalRatio,
  floor,
  minus,
  over,
  parseRate,
  plus,
  type Ratio,
  times,
  toNumber,
  wholeRatio,
} from '../time/ratio.ts';

/** Pacing figures of a plan. */
export interface Pace {
  /** Frames the camera shoots. */
  frames: number;
  /** Frames of the clip, handles included. */
  clipFrames: number;
  /** Frames a second, as a double. */
  frameRate: number;
  /** The interval asked for: typed, or the one that just fits the clip into the event. */
  rawIntervalS: number;
  /** Start to start, as the trigger will make it. */
  intervalS: number;
  /** What to set on the trigger. */
  dialS: number;
  /** Whether the trigger can be set to `dialS`. */
  settable: boolean;
  eventDurationS: number;
  /** Screen time without handles, at least 0. */
  clipLengthS: number;
  /** Real seconds in one second of the clip. */
  speedUp: number;
}

/** Frames to shoot for a clip of the plan's length: whole exposures, each held for the plan's frames. */
export function framesForClip(plan: Plan): number {
  const { frameRate, handlesFrames, holdFrames } = plan.clip;
  const clip = ceil(times(decimalRatio(plan.pacing.clipLengthS), parseRate(frameRate)));
  return Number(ceil({ num: clip + 2n * BigInt(handlesFrames), den: BigInt(holdFrames) }));
}

/** Frames that fit into an event: as many whole intervals as it holds, and one more. */
const framesForEvent = (eventS: number, interval: Ratio): number =>
  Number(floor(over(decimalRatio(eventS), interval))) + 1;

/** What the trigger makes of an interval, exactly. */
interface Setting {
  interval: Ratio;
  dial: Ratio;
  settable: boolean;
}

/** The dial goes from its shortest to its longest setting. */
function inRange({ trigger }: Plan, dial: Ratio): boolean {
  const { minS, maxS } = trigger;
  return minus(dial, decimalRatio(minS)).num >= 0n && minus(dial, decimalRatio(maxS)).num <= 0n;
}

/** Whole dial steps below (or at) a setting, at least none. */
const stepsBelow = (dial: Ratio, step: Ratio): bigint => (dial.num < 0n ? 0n : floor(over(dial, step)));

/** Seconds an end-to-start trigger waits for before it begins to count. */
const openRatio = (plan: Plan): Ratio =>
  plan.trigger.counts === 'endToStart'
    ? openPhases(cameraPhases(plan)).reduce(
        (sum, { durationS }) => plus(sum, decimalRatio(durationS)),
        wholeRatio(0),
      )
    : wholeRatio(0);

/** An interval that was worked out goes down to a setting: one may drop frames, one cannot invent them. */
function settingBelow(plan: Plan, raw: Ratio): Setting {
  const open = openRatio(plan);
  const step = decimalRatio(plan.trigger.stepS);
  const longest = stepsBelow(decimalRatio(plan.trigger.maxS), step);
  let steps = stepsBelow(minus(raw, open), step);
  if (steps > longest) steps = longest;
  const dial = times(wholeRatio(steps), step);
  if (inRange(plan, dial)) return { interval: plus(open, dial), dial, settable: true };
  return { interval: raw, dial: minus(raw, open), settable: false };
}

/**
 * An interval that was typed. A start-to-start trigger is given it as it is, settable or not. An end-to-start
 * trigger counts the gap, which goes to the nearest setting: nobody can dial the shutter time along with it.
 */
function settingFor(plan: Plan, raw: Ratio): Setting {
  const open = openRatio(plan);
  const wanted = minus(raw, open);
  const step = decimalRatio(plan.trigger.stepS);
  if (plan.trigger.counts === 'startToStart') {
    const whole = wanted.num >= 0n && (wanted.num * step.den) % (wanted.den * step.num) === 0n;
    return { interval: raw, dial: wanted, settable: whole && inRange(plan, wanted) };
  }
  const half = over(step, wholeRatio(2));
  const dial = times(wholeRatio(stepsBelow(plus(wanted, half), step)), step);
  if (inRange(plan, dial)) return { interval: plus(open, dial), dial, settable: true };
  return { interval: raw, dial: wanted, settable: false };
}

/** Frames and setting of a plan, exactly. */
function countOf(plan: Plan): { frames: number; raw: Ratio; setting: Setting } {
  const { workedOut, eventS, intervalS } = plan.pacing;
  if (workedOut !== 'interval') {
    const raw = decimalRatio(intervalS);
    const setting = settingFor(plan, raw);
    const frames = workedOut === 'event' ? framesForClip(plan) : framesForEvent(eventS, setting.interval);
    return { frames, raw, setting };
  }
  // With a single frame there is no interval to work out: two are the least that span an event.
  const wanted = Math.max(2, framesForClip(plan));
  const raw = over(decimalRatio(eventS), wholeRatio(wanted - 1));
  const setting = settingBelow(plan, raw);
  return { frames: setting.settable ? framesForEvent(eventS, setting.interval) : wanted, raw, setting };
}

/**
 * Works out the pacing of a plan.
 * @param plan - a plan whose fields fit the schema
 * @returns exact counts; each duration is the nearest double of its exact value
 */
export function paceOf(plan: Plan): Pace {
  const { frames, raw, setting } = countOf(plan);
  const { interval, dial, settable } = setting;
  const rate = parseRate(plan.clip.frameRate);
  return {
    ...clipOf(plan, frames),
    frameRate: toNumber(rate),
    rawIntervalS: toNumber(raw),
    intervalS: toNumber(interval),
    dialS: toNumber(dial),
    settable,
    eventDurationS: toNumber(times(wholeRatio(frames - 1), interval)),
    speedUp: toNumber(over(times(interval, rate), wholeRatio(plan.clip.holdFrames))),
  };
}

/** The clip that so many frames make. */
export function clipOf(plan: Plan, frames: number): Pick<Pace, 'frames' | 'clipFrames' | 'clipLengthS'> {
  const { handlesFrames, holdFrames, frameRate } = plan.clip;
  const clipFrames = frames * holdFrames;
  const clip = over(wholeRatio(clipFrames - 2 * handlesFrames), parseRate(frameRate));
  return { frames, clipFrames, clipLengthS: Math.max(0, toNumber(clip)) };
}

/**
 * The settings of the trigger up to a time on its dial.
 * @returns how many there are, and the n-th of them, counted from 0, in seconds
 */
export function settingsUpTo(plan: Plan, dialS: number): { count: number; at: (n: number) => number } {
  const step = decimalRatio(plan.trigger.stepS);
  const first = ceil(over(decimalRatio(plan.trigger.minS), step));
  const last = stepsBelow(decimalRatio(Math.min(dialS, plan.trigger.maxS)), step);
  return {
    count: Math.max(0, Number(last - first) + 1),
    at: (n) => toNumber(times(wholeRatio(first + BigInt(n)), step)),
  };
}

/**
 * Interval for a subject that crosses the frame: it takes `realS` and should take `screenS` on screen.
 * @param frameRate - frames a second of the clip
 * @returns seconds, start to start
 * @throws RangeError if an argument is not positive
 */
export function crossingIntervalS(realS: number, screenS: number, frameRate: number): number {
  for (const [name, value] of Object.entries({ realS, screenS, frameRate })) {
    if (!(value > 0)) throw new RangeError(`${name}: found ${value}, allowed: more than 0`);
  }
  return realS / (screenS * frameRate);
}

/** The settings of the trigger at or just below and just above a time on its dial, seconds. */
export function neighbouringSettings(plan: Plan, dialS: number): number[] {
  const step = decimalRatio(plan.trigger.stepS);
  const below = stepsBelow(decimalRatio(dialS), step);
  return [below, below + 1n]
    .map((steps) => times(wholeRatio(steps), step))
    .filter((dial) => inRange(plan, dial))
    .map(toNumber);
}

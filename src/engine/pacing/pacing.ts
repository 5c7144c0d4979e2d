/**
 * Event, interval, frames, clip: one of event, interval and clip follows from the other two.
 *
 * `frames = ceil(clip x rate) + 2 x handles`; `event = (frames - 1) x interval`: fence posts, not rails.
 * Counting is exact: frame rates are ratios, and seconds stand for the decimals they are written as.
 */
import { cameraLane } from '../cycle/cycle.ts';
import type { Plan } from '../plan/schema.ts';
import { ceil, decimalRatio, minus, over, parseRate, stepsIn, times, toNumber } from '../time/ratio.ts';

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
function framesForClip(plan: Plan): number {
  const { frameRate, handlesFrames, holdFrames } = plan.clip;
  const clip = ceil(times(decimalRatio(plan.pacing.clipLengthS), parseRate(frameRate)));
  return Number(ceil({ num: clip + 2n * BigInt(handlesFrames), den: BigInt(holdFrames) }));
}

/** Frames that fit into the event: a whole number of intervals, and one more. */
const framesForEvent = (eventS: number, intervalS: number): number => stepsIn(eventS, intervalS) + 1;

interface Trigger {
  rawIntervalS: number;
  intervalS: number;
  dialS: number;
  settable: boolean;
}

/**
 * What the trigger makes of an interval.
 * @param rounding - `down` for an interval that was worked out: one may drop frames, one cannot invent them.
 *   `asked` for one that was typed: a start-to-start trigger is given it as it is; an end-to-start trigger
 *   counts the gap, which goes to the nearest setting, since nobody can dial the shutter time along with it.
 */
function throughTrigger(plan: Plan, rawIntervalS: number, rounding: 'down' | 'asked'): Trigger {
  const { stepS, minS, maxS, counts } = plan.trigger;
  const openS = counts === 'endToStart' ? cameraLane(plan).openS : 0;
  const wantedS = openS === 0 ? rawIntervalS : rawIntervalS - openS;
  const down = Math.max(0, stepsIn(Math.max(0, wantedS), stepS));
  const inRange = (dialS: number) => dialS >= minS && dialS <= maxS;
  if (rounding === 'down') {
    const dialS = multiple(Math.min(down, stepsIn(maxS, stepS)), stepS);
    if (inRange(dialS)) return { rawIntervalS, intervalS: openS + dialS, dialS, settable: true };
    return { rawIntervalS, intervalS: rawIntervalS, dialS: wantedS, settable: false };
  }
  if (counts === 'startToStart') {
    const settable = multiple(down, stepS) === wantedS && inRange(wantedS);
    return { rawIntervalS, intervalS: rawIntervalS, dialS: wantedS, settable };
  }
  const nearest = multiple(wantedS - multiple(down, stepS) >= stepS / 2 ? down + 1 : down, stepS);
  if (!inRange(nearest)) return { rawIntervalS, intervalS: rawIntervalS, dialS: wantedS, settable: false };
  return { rawIntervalS, intervalS: openS + nearest, dialS: nearest, settable: true };
}

/** A whole multiple of a decimal step, rounded once: 3 x 0.1 is 0.3. */
const multiple = (steps: number, stepS: number): number =>
  toNumber(times({ num: BigInt(steps), den: 1n }, decimalRatio(stepS)));

/**
 * Works out the pacing of a plan.
 * @param plan - a plan whose fields fit the schema
 * @returns exact counts; the durations are doubles of exact products
 */
export function paceOf(plan: Plan): Pace {
  const { workedOut, eventS, intervalS } = plan.pacing;
  let frames: number;
  let trigger: Trigger;
  if (workedOut === 'interval') {
    // With a single frame there is no interval to work out: two are the least that span an event.
    const wanted = Math.max(2, framesForClip(plan));
    const raw = toNumber(over(decimalRatio(eventS), { num: BigInt(wanted - 1), den: 1n }));
    trigger = throughTrigger(plan, raw, 'down');
    frames = trigger.settable ? framesForEvent(eventS, trigger.intervalS) : wanted;
  } else {
    trigger = throughTrigger(plan, intervalS, 'asked');
    frames = workedOut === 'event' ? framesForClip(plan) : framesForEvent(eventS, trigger.intervalS);
  }
  const rate = parseRate(plan.clip.frameRate);
  const clipFrames = frames * plan.clip.holdFrames;
  const clip = minus(
    over({ num: BigInt(clipFrames), den: 1n }, rate),
    over({ num: 2n * BigInt(plan.clip.handlesFrames), den: 1n }, rate),
  );
  return {
    frames,
    clipFrames,
    frameRate: toNumber(rate),
    ...trigger,
    eventDurationS: elapsedAt(frames - 1, trigger.intervalS),
    clipLengthS: Math.max(0, toNumber(clip)),
    speedUp: (trigger.intervalS * toNumber(rate)) / plan.clip.holdFrames,
  };
}

/** Seconds from the first shutter opening to the one `index` intervals later, rounded once. */
const elapsedAt = (index: number, intervalS: number): number =>
  toNumber(times({ num: BigInt(index), den: 1n }, decimalRatio(intervalS)));

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

/** The settings of the trigger just below and just above an interval, seconds on its dial. */
export function neighbouringSettings(plan: Plan, dialS: number): number[] {
  const { stepS, minS, maxS } = plan.trigger;
  const down = stepsIn(Math.max(0, dialS), stepS);
  return [multiple(down, stepS), multiple(down + 1, stepS)].filter((s) => s >= minS && s <= maxS);
}

/** Pacing in exact fractions from beginning to end; only the results become numbers. */
import type { Plan } from '../../../src/engine/plan/schema.ts';
import type { Shot } from './exposure.ts';
import {
  add,
  ceilOf,
  compare,
  decimal,
  divide,
  type Fraction,
  floorOf,
  multiply,
  rateOf,
  subtract,
  toDouble,
  whole,
} from './fraction.ts';

export interface SlowPace {
  /** Exposures that the clip asks for. */
  wanted: number;
  frames: number;
  clipFrames: number;
  raw: Fraction;
  interval: Fraction;
  dial: Fraction;
  /** What an end-to-start trigger waits for; 0 for start to start. */
  open: Fraction;
  settable: boolean;
  eventDurationS: number;
  clipLengthS: number;
  speedUp: number;
}

/** From the first shutter opening of a frame to its last closing. */
function openSpan(shots: readonly Shot[]): Fraction {
  let span = whole(0);
  shots.forEach((shot, i) => {
    if (i > 0) span = add(span, decimal(shot.lagS));
    span = add(span, decimal(shot.openS));
    if (i < shots.length - 1) span = add(span, add(decimal(shot.darkS), decimal(shot.writeS)));
  });
  return span;
}

export function slowPace(plan: Plan, shots: readonly Shot[]): SlowPace {
  const { clip, pacing, trigger } = plan;
  const rate = rateOf(clip.frameRate);
  const event = decimal(pacing.eventS);
  const step = decimal(trigger.stepS);
  const open = trigger.counts === 'endToStart' ? openSpan(shots) : whole(0);
  const clipFrames = ceilOf(multiply(decimal(pacing.clipLengthS), rate)) + 2 * clip.handlesFrames;
  const wanted = Math.ceil(clipFrames / clip.holdFrames);
  const inRange = (dial: Fraction) =>
    compare(dial, decimal(trigger.minS)) >= 0 && compare(dial, decimal(trigger.maxS)) <= 0;

  const asked = pacing.workedOut !== 'interval';
  const gaps = Math.max(2, wanted) - 1;
  const raw = asked ? decimal(pacing.intervalS) : divide(event, whole(gaps));
  const rawDial = subtract(raw, open);
  const steps = Math.max(0, floorOf(divide(rawDial, step)));
  let dial: Fraction;
  if (!asked) {
    const most = floorOf(divide(decimal(trigger.maxS), step));
    dial = multiply(whole(Math.min(steps, most)), step);
  } else if (trigger.counts === 'startToStart') {
    dial = rawDial;
  } else {
    const over = subtract(rawDial, multiply(whole(steps), step));
    const up = compare(multiply(over, whole(2)), step) >= 0 ? 1 : 0;
    dial = multiply(whole(steps + up), step);
  }
  const onStep = compare(multiply(whole(floorOf(divide(dial, step))), step), dial) === 0;
  const settable = onStep && inRange(dial);
  if (!settable) dial = rawDial;
  const interval = settable ? add(open, dial) : raw;
  const inEvent = () => floorOf(divide(event, interval)) + 1;
  let frames: number;
  if (pacing.workedOut === 'event') frames = wanted;
  else if (pacing.workedOut === 'clip') frames = inEvent();
  else frames = settable ? inEvent() : Math.max(2, wanted);

  const finished = whole(frames * clip.holdFrames - 2 * clip.handlesFrames);
  return {
    wanted,
    frames,
    clipFrames: frames * clip.holdFrames,
    raw,
    interval,
    dial,
    open,
    settable,
    eventDurationS: toDouble(multiply(whole(frames - 1), interval)),
    clipLengthS: Math.max(0, toDouble(divide(finished, rate))),
    speedUp: toDouble(divide(multiply(interval, rate), whole(clip.holdFrames))),
  };
}

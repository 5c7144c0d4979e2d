import fc from 'fast-check';
import { test, vi } from 'vitest';
import { paceOf } from '../../src/engine/pacing/pacing.ts';
import { close, must, same } from './close.ts';
import { type Case, plans } from './plans.ts';
import { PATIENCE_MS, settings } from './settings.ts';
import { shotsOf } from './slow/exposure.ts';
import {
  add,
  compare,
  decimal,
  divide,
  floorOf,
  multiply,
  rateOf,
  subtract,
  toDouble,
  whole,
} from './slow/fraction.ts';
import { slowPace } from './slow/pacing.ts';

vi.setConfig({ testTimeout: PATIENCE_MS });

const property = (check: (given: Case) => void) => fc.assert(fc.property(plans, check), settings(2));

test('frames, interval, dial, event and clip agree with exact fractions', () => {
  property(({ plan, marked }) => {
    const pace = paceOf(plan);
    const want = slowPace(plan, shotsOf(plan, marked));
    same(pace.settable, want.settable, 'settable');
    same(pace.frames, want.frames, 'frames');
    same(pace.clipFrames, want.clipFrames, 'clipFrames');
    close(pace.rawIntervalS, toDouble(want.raw), 'rawIntervalS');
    close(pace.intervalS, toDouble(want.interval), 'intervalS');
    close(pace.dialS, toDouble(want.dial), 'dialS', pace.rawIntervalS);
    close(pace.eventDurationS, want.eventDurationS, 'eventDurationS');
    close(pace.clipLengthS, want.clipLengthS, 'clipLengthS');
    close(pace.speedUp, want.speedUp, 'speedUp');
  });
});

test('event duration is (frames - 1) x interval, and a clip that was asked for has all its frames', () => {
  property(({ plan }) => {
    const pace = paceOf(plan);
    close(pace.eventDurationS, (pace.frames - 1) * pace.intervalS, 'eventDurationS');
    if (plan.pacing.workedOut === 'clip') return;
    const asked = multiply(decimal(plan.pacing.clipLengthS), rateOf(plan.clip.frameRate));
    const given = whole(pace.clipFrames - 2 * plan.clip.handlesFrames);
    must(compare(given, asked) >= 0, `the clip is short: ${pace.clipFrames} frames`);
  });
});

test('frames that are counted over an event end within it, and one more would not', () => {
  property(({ plan, marked }) => {
    if (plan.pacing.workedOut === 'event') return;
    const { frames, settable } = paceOf(plan);
    if (plan.pacing.workedOut === 'interval' && !settable) return;
    const { interval } = slowPace(plan, shotsOf(plan, marked));
    const event = decimal(plan.pacing.eventS);
    must(compare(multiply(whole(frames - 1), interval), event) <= 0, `${frames} frames outlast the event`);
    must(compare(multiply(whole(frames), interval), event) > 0, `one more than ${frames} frames would fit`);
  });
});

test('a worked-out interval is the longest the trigger can be set to that loses no frame', () => {
  property(({ plan, marked }) => {
    if (plan.pacing.workedOut !== 'interval') return;
    const pace = paceOf(plan);
    if (!pace.settable) return;
    const { stepS, minS, maxS } = plan.trigger;
    const { wanted, open } = slowPace(plan, shotsOf(plan, marked));
    const dial = decimal(pace.dialS);
    const steps = divide(dial, decimal(stepS));
    same(compare(whole(floorOf(steps)), steps), 0, `${pace.dialS} is no multiple of ${stepS}`);
    must(pace.dialS >= minS && pace.dialS <= maxS, `${pace.dialS} is outside ${minS} to ${maxS}`);
    must(pace.frames >= wanted, `${pace.frames} frames, ${wanted} asked for`);
    const longer = add(dial, decimal(stepS));
    const raw = divide(decimal(plan.pacing.eventS), whole(Math.max(2, wanted) - 1));
    const settableLonger = compare(longer, decimal(maxS)) <= 0;
    must(
      !settableLonger || compare(longer, subtract(raw, open)) > 0,
      `a dial of ${toDouble(longer)} would do as well`,
    );
  });
});

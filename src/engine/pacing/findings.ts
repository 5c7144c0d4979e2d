/** What the pacing says: can the trigger be set to it, and is there a clip. */
import { seconds } from '../findings/words.ts';
import type { Draft, Judge, Run } from '../run.ts';
import { neighbouringSettings } from './pacing.ts';

function notSettable({ plan, pace }: Run): Draft[] {
  if (pace.settable) return [];
  const { stepS, minS, maxS } = plan.trigger;
  const near = neighbouringSettings(plan, pace.dialS);
  const nearest = near.length > 0 ? ` Nearest: ${near.map(seconds).join(' and ')}.` : '';
  const range = `it goes in steps of ${seconds(stepS)}, from ${seconds(minS)} to ${seconds(maxS)}`;
  const cannot =
    pace.dialS > 0
      ? `cannot be set to ${seconds(pace.dialS)}`
      : 'would have to fire before the shutter closes';
  return [
    {
      id: 'interval-not-settable',
      severity: 'stop',
      subject: 'trigger',
      message: `The trigger ${cannot}: ${range}.${nearest}`,
      frame: null,
      values: { dialS: pace.dialS, stepS, minS, maxS },
    },
  ];
}

function stretched({ plan, pace }: Run): Draft[] {
  const asked = plan.pacing.workedOut !== 'interval';
  if (!asked || !pace.settable || Math.abs(pace.intervalS - pace.rawIntervalS) < 0.0005) return [];
  const { intervalS, rawIntervalS, dialS } = pace;
  return [
    {
      id: 'interval-stretched',
      severity: 'note',
      subject: 'trigger',
      message: `The trigger counts from one shutter closing to the next opening: set to ${seconds(dialS)}, it makes the interval ${seconds(intervalS)}, not ${seconds(rawIntervalS)}.`,
      frame: null,
      values: { intervalS, rawIntervalS, dialS },
    },
  ];
}

function noClip({ plan, pace }: Run): Draft[] {
  if (pace.clipLengthS > 0) return [];
  const { handlesFrames } = plan.clip;
  return [
    {
      id: 'no-clip',
      severity: 'stop',
      subject: 'clip',
      message: `The handles take all ${pace.clipFrames} frames (${handlesFrames} at each end): none is left for the clip.`,
      frame: null,
      values: { clipFrames: pace.clipFrames, handlesFrames },
    },
  ];
}

export const judgePacing: Judge = (run) => ({
  findings: [...notSettable(run), ...stretched(run), ...noClip(run)],
  margins: [],
});

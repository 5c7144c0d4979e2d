/** What an interval that grows with the exposure does to a run: a trigger that counts from closing to opening. */
import { counted, seconds } from '../findings/words.ts';
import { neighbouringSettings } from '../pacing/pacing.ts';
import type { Draft, Run } from '../run.ts';
import type { RampRun } from './ramp-run.ts';

/** A stretch of a run in which the shutter stays as it is. */
interface Stretch {
  durationS: number;
  /** From a frame's first opening to its last closing, seconds. */
  spanS: number;
}

/** The stretches of a run up to a moment; the last one goes on if the run ends before. */
function stretchesUpTo(run: Run, { changes }: RampRun, endS: number): Stretch[] {
  const { elapsedS, intervalS } = run.columns;
  const starts = [0, ...changes.map(({ frame }) => frame - 1)];
  return starts.map((k, i) => {
    const next = starts[i + 1];
    const untilS = next === undefined ? endS : Math.min(endS, elapsedS[next] as number);
    const durationS = Math.max(0, untilS - (elapsedS[k] as number));
    return { durationS, spanS: (intervalS[k] as number) - run.pace.dialS };
  });
}

/**
 * Setting of the trigger, of those that there are, at which the last frame comes at a moment or just before: the
 * light does not wait, so the shutter opens as long at each moment as it does now. null if there is none.
 */
function dialToEnd(run: Run, ramp: RampRun, endS: number): number | null {
  const stretches = stretchesUpTo(run, ramp, endS);
  const wanted = run.pace.frames - 1;
  const intervalsAt = (dialS: number) =>
    stretches.reduce((sum, { durationS, spanS }) => sum + durationS / (dialS + spanS), 0);
  let low = 0;
  let high = endS / wanted;
  for (let round = 0; round < 50; round += 1) {
    const middle = (low + high) / 2;
    if (intervalsAt(middle) < wanted) high = middle;
    else low = middle;
  }
  return neighbouringSettings(run.plan, high).find((setting) => setting <= high) ?? null;
}

/** What comes of the growing interval: a later end if the clip was asked for, else fewer frames in the event. */
function consequence(run: Run, ramp: RampRun): { text: string; values: Record<string, number> } {
  const { frames } = run.pace;
  const { workedOut, eventS } = run.plan.pacing;
  const { firstIntervalS } = ramp;
  if (workedOut !== 'event') {
    const fewer = Math.floor(eventS / firstIntervalS) + 1 - frames;
    return {
      text: `${counted(Math.abs(fewer), 'frame')} ${fewer < 0 ? 'more' : 'fewer'} in the event`,
      values: { fewer },
    };
  }
  const steadyEndS = (frames - 1) * firstIntervalS;
  const laterS = (run.columns.elapsedS[frames - 1] ?? 0) - steadyEndS;
  const keepDialS = dialToEnd(run, ramp, steadyEndS);
  const end = `the run ends ${seconds(Math.abs(laterS))} ${laterS < 0 ? 'earlier' : 'later'}`;
  if (keepDialS === null)
    return { text: `${end}, and no setting of the trigger would keep the end`, values: { laterS } };
  const keep = `a setting of ${seconds(keepDialS)} would about keep the end`;
  return { text: `${end}; ${keep}`, values: { laterS, keepDialS } };
}

/** That the interval does not stay as it begins, what comes of it, and which setting would keep the end. */
export function growingInterval(run: Run, ramp: RampRun): Draft[] {
  const { firstIntervalS, shortestIntervalS, longestIntervalS } = ramp;
  if (longestIntervalS - shortestIntervalS < 1e-9 || run.pace.frames < 2) return [];
  const { text, values } = consequence(run, ramp);
  return [
    {
      id: 'interval-grows',
      // An interval that was worked out has it counted in.
      severity: run.plan.pacing.workedOut === 'interval' ? 'note' : 'warning',
      subject: 'trigger',
      message: `The trigger counts from closing to opening: the interval goes from ${seconds(shortestIntervalS)} to ${seconds(longestIntervalS)} with the shutter. Against one that stays as it begins, ${text}.`,
      frame: ramp.changes[0]?.frame ?? 1,
      values: { firstIntervalS, shortestIntervalS, longestIntervalS, ...values },
    },
  ];
}

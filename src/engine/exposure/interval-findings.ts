/** What an interval that grows with the exposure does to a run: a trigger that counts from closing to opening. */
import { counted, seconds } from '../findings/words.ts';
import { neighbouringSettings } from '../pacing/pacing.ts';
import type { Draft, Run } from '../run.ts';
import type { RampRun } from './ramp-run.ts';

/** A stretch of a run in which the shutter stays as it is. */
export interface Stretch {
  durationS: number;
  /** From a frame's first opening to its last closing, seconds. */
  spanS: number;
}

/**
 * The stretches of a run up to a moment; the last one goes on if the run ends before.
 * @param starts - indices of their first frames, counted from 0
 */
export function stretchesUpTo(
  { elapsedS, intervalS }: Pick<Run['columns'], 'elapsedS' | 'intervalS'>,
  starts: readonly number[],
  dialS: number,
  endS: number,
): Stretch[] {
  return starts.map((k, i) => {
    const next = starts[i + 1];
    const untilS = next === undefined ? endS : Math.min(endS, elapsedS[next] as number);
    const durationS = Math.max(0, untilS - (elapsedS[k] as number));
    return { durationS, spanS: (intervalS[k] as number) - dialS };
  });
}

/** Gap between two exposures, seconds, with which so many intervals come to an end at a moment. */
export function gapToEnd(stretches: readonly Stretch[], intervals: number, endS: number): number {
  const intervalsAt = (gapS: number) =>
    stretches.reduce((sum, { durationS, spanS }) => sum + durationS / (gapS + spanS), 0);
  let low = 0;
  let high = endS / intervals;
  for (let round = 0; round < 50; round += 1) {
    const middle = (low + high) / 2;
    if (intervalsAt(middle) < intervals) high = middle;
    else low = middle;
  }
  return high;
}

/**
 * Setting of the trigger, of those that there are, at which the last frame comes at a moment or just before: the
 * light does not wait, so the shutter opens as long at each moment as it does now. null if there is none.
 */
function dialToEnd(run: Run, { changes }: RampRun, endS: number): number | null {
  const starts = [0, ...changes.map(({ frame }) => frame - 1)];
  const stretches = stretchesUpTo(run.columns, starts, run.pace.dialS, endS);
  const gapS = gapToEnd(stretches, run.pace.frames - 1, endS);
  return neighbouringSettings(run.plan, gapS).find((setting) => setting <= gapS) ?? null;
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

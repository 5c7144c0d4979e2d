/** What the cycle says: does everything fit into every interval. */

import type { Margin } from '../findings/types.ts';
import { seconds } from '../findings/words.ts';
import type { Draft, Judge, Run } from '../run.ts';

interface Overrun {
  first: number;
  worst: number;
  needsS: number;
  intervalS: number;
}

/** Frames, counted from 1, whose lane is longer than their interval: the first and the worst. */
function overrun(run: Run, lane: Float64Array): Overrun | null {
  const { intervalS } = run.columns;
  const over = (k: number) => (lane[k] as number) - (intervalS[k] as number);
  const first = lane.findIndex((_, k) => over(k) > 0 && k + 1 < lane.length);
  if (first === -1) return null;
  let worst = first;
  for (let k = first; k + 1 < lane.length; k += 1) if (over(k) > over(worst)) worst = k;
  return {
    first: first + 1,
    worst: worst + 1,
    needsS: lane[worst] as number,
    intervalS: intervalS[worst] as number,
  };
}

function lanes(run: Run): Draft[] {
  // Most plans fit: then no lane needs to be searched.
  if (run.cycle.tightestSpareS + run.plan.cycle.guardS > 0) return [];
  const rig = overrun(run, run.columns.rigS);
  const camera = overrun(run, run.columns.cameraS);
  const drafts: Draft[] = [];
  if (rig) {
    const { intervalS, needsS, first, worst } = rig;
    drafts.push({
      id: 'cycle-overrun',
      severity: 'stop',
      subject: 'cycle',
      message: `Interval ${seconds(intervalS)} is ${seconds(needsS - intervalS)} too short: shutter, move and settle need ${seconds(needsS)}, from frame ${first}.`,
      frame: first,
      values: { intervalS, needsS, shortS: needsS - intervalS, worstFrame: worst },
    });
  }
  if (camera) {
    const { intervalS, needsS, first, worst } = camera;
    drafts.push({
      id: 'camera-not-ready',
      severity: 'stop',
      subject: 'cycle',
      message: `The camera is not ready for the next frame: it needs ${seconds(needsS)} of each ${seconds(intervalS)}, from frame ${first}.`,
      frame: first,
      values: { intervalS, needsS, shortS: needsS - intervalS, worstFrame: worst },
    });
  }
  return drafts;
}

function guard(run: Run): Draft[] {
  const { tightestSpareS, tightestFrame } = run.cycle;
  const { guardS } = run.plan.cycle;
  if (tightestSpareS >= 0 || tightestSpareS + guardS < 0) return [];
  // After the last frame there is nothing to be in time for.
  const firstIndex = run.columns.spareS.subarray(0, -1).findIndex((spareS) => spareS < 0);
  if (firstIndex === -1) return [];
  const freeS = tightestSpareS + guardS;
  return [
    {
      id: 'guard-used',
      severity: 'warning',
      subject: 'cycle',
      message: `${seconds(freeS)} is free in the longest interval; you asked to keep ${seconds(guardS)}, from frame ${firstIndex + 1}.`,
      frame: firstIndex + 1,
      values: { freeS, guardS, worstFrame: tightestFrame },
    },
  ];
}

function margins(run: Run): Margin[] {
  const { longestFrame, longestS, tightestFrame, tightestSpareS } = run.cycle;
  const { guardS } = run.plan.cycle;
  const last = run.pace.frames === 1;
  const available = last ? longestS + guardS : (run.columns.intervalS[tightestFrame - 1] ?? 0);
  const used = available - guardS - tightestSpareS;
  return [
    {
      id: 'interval',
      subject: 'cycle',
      label: 'Interval',
      used: last ? longestS : used,
      available,
      unit: 's',
      reserve: guardS,
      left: available - (last ? longestS : used),
      frame: last ? longestFrame : tightestFrame,
      when: `tightest at frame ${last ? longestFrame : tightestFrame}`,
    },
  ];
}

export const judgeCycle: Judge = (run) => ({
  findings: [...lanes(run), ...guard(run)],
  margins: margins(run),
});

/**
 * The single door into the engine: a plan in, everything that follows from it out.
 *
 * Each subject works out its own numbers and says its own findings. Adding a subject means adding its folder and
 * a line here.
 */

import { fillCycle } from './cycle/columns.ts';
import { cameraLane } from './cycle/cycle.ts';
import { judgeCycle } from './cycle/findings.ts';
import { energyOf } from './energy/energy.ts';
import { judgeEnergy } from './energy/findings.ts';
import { judgeExposure } from './exposure/findings.ts';
import { inOrder, verdictOf } from './findings/order.ts';
import type { Finding, Severity } from './findings/types.ts';
import { judgeMotion } from './motion/findings.ts';
import { motionOf } from './motion/motion.ts';
import { judgePacing } from './pacing/findings.ts';
import { paceOf } from './pacing/pacing.ts';
import type { Plan } from './plan/schema.ts';
import { Room } from './room.ts';
import type { Draft, Judge, Run } from './run.ts';
import { eventsOf } from './schedule-events.ts';
import type { Schedule, Totals } from './schedule-types.ts';
import { judgeStorage } from './storage/findings.ts';
import { storageOf } from './storage/storage.ts';
import { isoAt, offsetSpans, startOf } from './time/clock.ts';
import { judgeTime } from './time/findings.ts';

const JUDGES: readonly Judge[] = [
  judgePacing,
  judgeCycle,
  judgeExposure,
  judgeMotion,
  judgeEnergy,
  judgeStorage,
  judgeTime,
];

/**
 * Works out a plan.
 * @param plan - a plan as `parsePlan` gives it: every field in range, every reference known
 * @param room - memory for the columns. A room used before is used again: what the earlier schedule's columns
 *   held is gone, so that nobody may read them any more.
 * @returns columns with one entry a frame, totals, events, findings and margins. The same plan gives the same
 *   schedule; the plan is not changed.
 */
export function schedule(plan: Plan, room = new Room()): Schedule {
  room.clear();
  const run = runOf(plan, room);
  const judged = JUDGES.map((judge) => judge(run));
  const findings = inOrder(judged.flatMap((said) => said.findings).map((draft) => timed(run, draft)));
  const margins = judged.flatMap((said) => said.margins);
  const count = (severity: Severity) => findings.filter((finding) => finding.severity === severity).length;
  return {
    columns: run.columns,
    totals: totalsOf(run),
    sources: run.sources.map((source) => source.summary),
    cards: run.storage.cards,
    events: eventsOf(run),
    findings,
    margins,
    startMs: run.start.startMs,
    offsets: run.offsets,
    counts: { stop: count('stop'), warning: count('warning'), note: count('note') },
    verdict: verdictOf(findings, margins),
  };
}

function runOf(plan: Plan, room: Room): Run {
  const pace = paceOf(plan);
  const lane = cameraLane(plan);
  const intervalS = room.f64(pace.frames).fill(pace.intervalS);
  const motion = motionOf(plan, intervalS, room);
  const elapsedS = room.f64(pace.frames);
  for (let k = 0; k < pace.frames; k += 1) elapsedS[k] = k * pace.intervalS;
  const lanes = [lane];
  const rung = null;
  const cycle = fillCycle(plan, { lanes, rung, elapsedS, intervalS, moveS: motion.moveS }, room);
  const periods = {
    periodS: cycle.periodS,
    runS: cycle.runS,
    lanes,
    rung,
    moveS: motion.moveS,
    axes: motion.axes,
  };
  const sources = energyOf(plan, periods, room);
  const storage = storageOf(plan, intervalS, room);
  const start = startOf(plan);
  const endMs = start.startMs + pace.eventDurationS * 1000;
  const offsets = offsetSpans(plan.place.zone, start.startMs, endMs, plan.place.utcOffsetMin);
  const frameAt = (ms: number) => Math.ceil((ms - start.startMs) / 1000 / pace.intervalS) + 1;
  return {
    plan,
    pace,
    lane,
    columns: {
      ...cycle.columns,
      intervalS,
      moveS: motion.moveS,
      axes: motion.axes,
      sources: sources.map((source) => source.columns),
      cardIndex: storage.cardIndex,
      cardBytes: storage.cardBytes,
      bufferBytes: storage.bufferBytes,
    },
    cycle: cycle.extremes,
    sources,
    storage,
    start,
    offsets,
    clockChanges: offsets.slice(1).map((span, i) => ({
      frame: Math.min(pace.frames, frameAt(span.fromMs)),
      fromMin: offsets[i]?.offsetMin ?? 0,
      toMin: span.offsetMin,
    })),
    at: (frame) => isoAt(start.startMs + (frame - 1) * pace.intervalS * 1000, offsets),
  };
}

function timed(run: Run, draft: Draft): Finding {
  if (draft.frame === null) return { ...draft, elapsedS: null, at: null };
  return {
    ...draft,
    elapsedS: run.columns.elapsedS[draft.frame - 1] ?? null,
    at: run.at(draft.frame),
  };
}

function totalsOf(run: Run): Totals {
  const { pace, plan, cycle, storage } = run;
  const storageBytes = storage.frameBytes * pace.frames;
  return {
    frames: pace.frames,
    clipFrames: pace.clipFrames,
    frameRate: pace.frameRate,
    rawIntervalS: pace.rawIntervalS,
    intervalS: pace.intervalS,
    dialS: pace.dialS,
    eventDurationS: pace.eventDurationS,
    clipLengthS: pace.clipLengthS,
    speedUp: pace.speedUp,
    firstFrameAt: run.at(1),
    lastFrameAt: run.at(pace.frames),
    shortestIntervalS: cycle.longestS + plan.cycle.guardS,
    longestCycleFrame: cycle.longestFrame,
    tightestSpareS: cycle.tightestSpareS,
    tightestFrame: cycle.tightestFrame,
    frameBytes: storage.frameBytes,
    storageBytes,
    copiesBytes: storageBytes * plan.storage.copies,
    energyWh: run.sources.reduce((sum, source) => sum + source.summary.drawnWh, 0),
  };
}

/**
 * The single door into the engine: a plan in, everything that follows from it out.
 *
 * Each subject works out its own numbers and says its own findings. Adding a subject means adding its folder and
 * a line here.
 */

import { fillCycle } from './cycle/columns.ts';
import { type CameraLane, cameraLane } from './cycle/cycle.ts';
import { judgeCycle } from './cycle/findings.ts';
import { energyOf, type UsedWh } from './energy/energy.ts';
import { judgeEnergy } from './energy/findings.ts';
import { judgeExposure } from './exposure/findings.ts';
import { judgeRamp } from './exposure/ramp-findings.ts';
import { inOrder, verdictOf } from './findings/order.ts';
import { aboutOf, type Finding, type Severity } from './findings/types.ts';
import { framesOf, longestRunS, type Memory } from './frames.ts';
import { judgeMotion } from './motion/findings.ts';
import { judgePacing } from './pacing/findings.ts';
import { paceOf } from './pacing/pacing.ts';
import type { Plan } from './plan/schema.ts';
import { judgeRig, type RigMotion, rigMotionOf, rigRunOf } from './rig.ts';
import { Room } from './room.ts';
import type { Draft, Judge, Run } from './run.ts';
import { eventsOf } from './schedule-events.ts';
import type { Columns, ExposureSummary, Schedule, Totals } from './schedule-types.ts';
import { firstWhere } from './search.ts';
import { judgeSky } from './sky/findings.ts';
import { skyRunOf } from './sky/run.ts';
import { skyStart } from './sky/start.ts';
import { daysTrack, fillSky, type SkyColumns, type SkyTrack } from './sky/track.ts';
import { judgeStorage } from './storage/findings.ts';
import { storageOf } from './storage/storage.ts';
import { isoAt, offsetSpans, type Start, startOf } from './time/clock.ts';
import { judgeTime } from './time/findings.ts';

const JUDGES: readonly Judge[] = [
  judgePacing,
  judgeCycle,
  judgeExposure,
  judgeRamp,
  judgeMotion,
  judgeRig,
  judgeEnergy,
  judgeStorage,
  judgeSky,
  judgeTime,
];

/** What a schedule may be given besides its plan. */
export interface Given {
  /**
   * Memory for the columns. A room used before is used again: what the earlier schedule's columns held is gone, so that
   * nobody may read them any more.
   */
  room?: Room;
  /**
   * A schedule of the plan as it was before an edit: moves that the edit leaves as they were are taken from it. Its
   * columns must still be as they were.
   */
  before?: Schedule | null;
  /** The present, milliseconds of the epoch: then a start that is past is said. The engine itself has no clock. */
  nowMs?: number;
  /** The run begins so many seconds later than the plan says. */
  delayS?: number;
  /** What the packs in use have given before the first frame: of a run that is under way. */
  usedWh?: UsedWh;
}

/**
 * Works out a plan.
 * @param plan - a plan as `parsePlan` gives it: every field in range, every reference known
 * @returns columns with one entry a frame, totals, events, findings and margins. The same plan gives the same
 *   schedule; the plan is not changed.
 */
export function schedule(
  plan: Plan,
  { room = new Room(), before = null, nowMs, delayS = 0, usedWh }: Given = {},
): Schedule {
  room.clear();
  const moves = movesOf(plan, room, before);
  const start = delayed(startFor(plan), delayS);
  const run = runOf(plan, start, { room, motion: moves.motion }, nowMs ?? null, usedWh);
  const judged = JUDGES.map((judge) => judge(run));
  const findings = inOrder(judged.flatMap((said) => said.findings).map((draft) => timed(run, draft)));
  const margins = judged.flatMap((said) => said.margins);
  const count = (severity: Severity) => findings.filter((finding) => finding.severity === severity).length;
  const made: Schedule = {
    columns: run.columns,
    totals: totalsOf(run),
    sources: run.sources.map((source) => source.summary),
    cards: run.storage.cards,
    events: eventsOf(run),
    findings,
    margins,
    exposure: exposureOf(run),
    rig: run.rig,
    sky: run.sky,
    startMs: run.start.startMs,
    offsets: run.offsets,
    counts: { stop: count('stop'), warning: count('warning'), note: count('note') },
    verdict: verdictOf(findings, margins),
  };
  return keep(made, moves.kept());
}

/** What a schedule's moves came from, and where they and the other columns are. */
interface Kept {
  plan: Plan;
  motion: RigMotion;
  motionRoom: Room;
  room: Room;
}

// Not a WeakMap: what is in one is only given back by the long collections of garbage, columns and all.
const KEPT = Symbol('kept');

const keptOf = (made: Schedule): Kept | undefined => (made as { [KEPT]?: Kept })[KEPT];

/** Notes beside a schedule, where nobody sees it, what it came from. */
const keep = (made: Schedule, kept: Kept): Schedule =>
  Object.defineProperty(made, KEPT, { value: kept, enumerable: false });

/** The rooms that hold the columns of a schedule: its own, and that of the moves that it has from an earlier one. */
export function roomsOf(made: Schedule): readonly Room[] {
  const kept = keptOf(made);
  return kept ? [kept.room, kept.motionRoom] : [];
}

/** Whether two runs have as many frames, and the same times between them if keyframes stand at times. */
function alikeInTime({ tracks }: Plan['move'], intervalS: Float64Array, before: Float64Array): boolean {
  if (intervalS.length !== before.length) return false;
  const timed = tracks.some(({ keyframes }) => keyframes.some(({ at }) => at === 'time'));
  return !timed || intervalS.every((seconds, k) => seconds === before[k]);
}

/** What of the camera decides how far its picture shifts as the rig moves and rings. */
const shiftsAlike = (a: Plan['camera'], b: Plan['camera']): boolean =>
  a.focalLengthMm === b.focalLengthMm &&
  a.sensorWidthMm === b.sensorWidthMm &&
  a.imageWidthPx === b.imageWidthPx &&
  a.imageHeightPx === b.imageHeightPx;

/** Moves that are the same as before: of the same rig and tracks, whenever the frames are shot. */
const alike = (plan: Plan, intervalS: Float64Array, kept: Kept, before: Schedule): boolean =>
  kept.plan.rig === plan.rig &&
  kept.plan.move === plan.move &&
  kept.plan.subject === plan.subject &&
  kept.plan.ringing === plan.ringing &&
  shiftsAlike(kept.plan.camera, plan.camera) &&
  alikeInTime(plan.move, intervalS, before.columns.intervalS) &&
  plan.move.mode !== 'continuous';

/** Works the moves of a run out, or takes them from the schedule before. */
function movesOf(
  plan: Plan,
  room: Room,
  before: Schedule | null,
): { motion: Memory['motion']; kept: () => Kept } {
  const earlier = before && keptOf(before);
  let last: Kept | null = null;
  const motion = (intervalS: Float64Array): RigMotion => {
    const same = earlier && alike(plan, intervalS, earlier, before);
    last = same
      ? { ...earlier, plan, room }
      : { plan, room, motion: rigMotionOf(plan, intervalS, room), motionRoom: room };
    return last.motion;
  };
  return { motion, kept: () => last as Kept };
}

/** The run's start: by the clock, or by the sky. Where the event does not happen the clock time stands in. */
export function startFor(plan: Plan): Start {
  const bySky = plan.start.tiedTo === 'sky' ? skyStart(plan) : null;
  if (!bySky || !('ms' in bySky)) return startOf(plan);
  const { zone, utcOffsetMin } = plan.place;
  // Nobody starts to the millisecond.
  const startMs = Math.round(bySky.ms / 1000) * 1000;
  const [span] = offsetSpans(zone, startMs, startMs, utcOffsetMin);
  return { startMs, offsetMin: span?.offsetMin ?? 0, kind: 'plain' };
}

/** Sun and moon over the days of the run; null without a place. */
function skyOver(plan: Plan, startMs: number, runS: number): SkyTrack | null {
  const { latitudeDeg, longitudeDeg } = plan.place;
  if (latitudeDeg === null || longitudeDeg === null) return null;
  return daysTrack(startMs, startMs + runS * 1000, latitudeDeg, longitudeDeg);
}

function skyColumns(track: SkyTrack, startMs: number, elapsedS: Float64Array, room: Room): SkyColumns {
  const column = () => room.f32(elapsedS.length);
  const columns = { sunAltitudeDeg: column(), sunAzimuthDeg: column(), moonAltitudeDeg: column() };
  fillSky(track, startMs, elapsedS, columns);
  return columns;
}

/** A start that slips. */
const delayed = (start: Start, delayS: number): Start =>
  delayS === 0 ? start : { ...start, startMs: start.startMs + Math.round(delayS * 1000), kind: 'plain' };

function runOf(plan: Plan, start: Start, memory: Memory, nowMs: number | null, usedWh?: UsedWh): Run {
  const { room } = memory;
  const nominal = paceOf(plan);
  const track = skyOver(plan, start.startMs, longestRunS(plan, nominal));
  const frames = framesOf(plan, nominal, start.startMs, track, memory);
  const { pace, elapsedS, intervalS, spells, motion, ramp } = frames;
  const lanes = ramp?.ladder.rungs.map(({ openS }) => cameraLane(plan, openS)) ?? [cameraLane(plan)];
  const { moveS, settleS, axes, coded } = motion;
  const cycle = fillCycle(plan, { lanes, spells, elapsedS, moveS, settleS }, room);
  const sources = energyOf(plan, { periods: cycle.periods, lanes, moveS, axes, coded }, room, usedWh);
  const storage = storageOf(plan, spells, room);
  const endMs = start.startMs + pace.eventDurationS * 1000;
  const offsets = offsetSpans(plan.place.zone, start.startMs, endMs, plan.place.utcOffsetMin);
  const columns: Columns = {
    ...cycle.columns,
    intervalS,
    moveS,
    settleS,
    rung: ramp?.rung ?? null,
    evScene: ramp?.evScene ?? null,
    evError: ramp?.evError ?? null,
    sky: track && skyColumns(track, start.startMs, elapsedS, room),
    ringPx: motion.ringPx,
    subjectPx: motion.image?.subjectPx ?? null,
    backgroundPx: motion.image?.backgroundPx ?? null,
    aimMissPx: motion.aim?.missPx ?? null,
    axes,
    sources: sources.map((source) => source.columns),
    cardIndex: storage.cardIndex,
    cardBytes: storage.cardBytes,
    bufferBytes: storage.bufferBytes,
  };
  return {
    plan,
    pace,
    lane: lanes[0] as CameraLane,
    columns,
    sky: track && skyRunOf(plan, start.startMs, columns, track),
    ramp,
    cycle: cycle.extremes,
    rig: rigRunOf(plan, motion, columns, { lanes, spells, ...cycle.extremes }, pace.frameRate),
    sources,
    storage,
    start,
    nowMs,
    offsets,
    clockChanges: offsets.slice(1).map((span, i) => ({
      frame: frameFrom(elapsedS, (span.fromMs - start.startMs) / 1000),
      fromMin: offsets[i]?.offsetMin ?? 0,
      toMin: span.offsetMin,
    })),
    frameFrom: (atS) => frameFrom(elapsedS, atS),
    at: (frame) => isoAt(start.startMs + elapsedOf(elapsedS, intervalS, frame) * 1000, offsets),
  };
}

/** First frame, counted from 1, that opens at a moment or after it; the last one if none does. */
const frameFrom = (elapsedS: Float64Array, atS: number): number =>
  firstWhere(0, elapsedS.length - 1, (k) => (elapsedS[k] as number) >= atS) + 1;

/** Seconds to a frame counted from 1; frames beyond the last go on at its interval. */
function elapsedOf(elapsedS: Float64Array, intervalS: Float64Array, frame: number): number {
  const last = elapsedS.length - 1;
  if (frame - 1 <= last) return elapsedS[frame - 1] as number;
  return (elapsedS[last] as number) + (frame - 1 - last) * (intervalS[last] as number);
}

function exposureOf({ ramp }: Run): ExposureSummary | null {
  if (ramp === null) return null;
  const { follows, changes, ceiling, shortestIntervalS, longestIntervalS } = ramp;
  return { follows, rungs: ramp.ladder.rungs, changes, ceiling, shortestIntervalS, longestIntervalS };
}

function timed(run: Run, draft: Draft): Finding {
  const about = aboutOf(draft.values);
  if (draft.frame === null) return { ...draft, about, elapsedS: null, at: null };
  return {
    ...draft,
    about,
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

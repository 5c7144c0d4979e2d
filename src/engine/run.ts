/** What the subjects share while a schedule is made: the plan, and what earlier subjects have worked out. */
import type { CameraLane } from './cycle/cycle.ts';
import type { SourceRun } from './energy/energy.ts';
import type { RampRun } from './exposure/ramp-run.ts';
import type { Finding, Margin } from './findings/types.ts';
import type { Pace } from './pacing/pacing.ts';
import type { Plan } from './plan/schema.ts';
import type { RigRun } from './rig.ts';
import type { Columns, OffsetSpan } from './schedule-types.ts';
import type { SkyRun } from './sky/run.ts';
import type { StorageRun } from './storage/storage.ts';
import type { Start } from './time/clock.ts';

/** Everything worked out, before findings. */
export interface Run {
  plan: Plan;
  pace: Pace;
  lane: CameraLane;
  columns: Columns;
  /** What the sky does; null without a place. */
  sky: SkyRun | null;
  /** Settings of the frames; null if the light is not planned. */
  ramp: RampRun | null;
  cycle: CycleExtremes;
  rig: RigRun;
  sources: SourceRun[];
  storage: StorageRun;
  start: Start;
  /** The present, milliseconds of the epoch; null if nobody has said it. */
  nowMs: number | null;
  offsets: OffsetSpan[];
  /** Frame, counted from 1, at which each later offset span begins. */
  clockChanges: { frame: number; fromMin: number; toMin: number }[];
  /** First frame, counted from 1, that opens at a moment or after it, seconds; the last one if none does. */
  frameFrom: (elapsedS: number) => number;
  /** ISO time of a frame counted from 1; also beyond the last. */
  at: (frame: number) => string;
}

/** The frames that decide about the cycle, counted from 1. */
export interface CycleExtremes {
  /** Longest of all lanes, seconds, and its frame. */
  longestS: number;
  longestFrame: number;
  /** Tightest spare, seconds, and its frame. */
  tightestSpareS: number;
  tightestFrame: number;
}

/** A finding before it is told from others of its kind, and its frame is given a time. */
export type Draft = Omit<Finding, 'about' | 'elapsedS' | 'at'>;

/** What one subject says of a run. */
export type Judge = (run: Run) => { findings: Draft[]; margins: Margin[] };

/** Share of an interval that is the rounding of a sum: work of three intervals loses three. */
const HAIR = 1e-9;

/** Frames fired in vain while hands are on the rig for `handsS` after a frame that leaves `freeS`. */
export function lostFrames(handsS: number, freeS: number, intervalS: number): number {
  return Math.max(0, Math.ceil((handsS - freeS) / intervalS - HAIR));
}

/** Seconds between the end of the longer lane of a frame, counted from 1, and the next shutter opening. */
export function freeAfter({ columns }: Pick<Run, 'columns'>, frame: number): number {
  const { intervalS, cameraS, rigS } = columns;
  const k = frame - 1;
  return Math.max(0, (intervalS[k] ?? 0) - Math.max(cameraS[k] ?? 0, rigS[k] ?? 0));
}

/** Frames lost by work of `handsS` that has to be done just before a frame counted from 1. */
export const lostBefore = (run: Run, frame: number, handsS: number): number =>
  lostFrames(handsS, freeAfter(run, frame - 1), run.columns.intervalS[frame - 2] ?? run.pace.intervalS);

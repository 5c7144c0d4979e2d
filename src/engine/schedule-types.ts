/** What `schedule()` gives: one typed array a quantity, one entry a frame, and what follows from them. */
import type { Rung } from './exposure/ladder.ts';
import type { RampRun } from './exposure/ramp-run.ts';
import type { Finding, Margin, Severity } from './findings/types.ts';
import type { RigRun } from './rig.ts';
import type { SkyRun } from './sky/run.ts';
import type { SkyColumns } from './sky/track.ts';

/** Columns of one axis. */
export interface AxisColumns {
  name: string;
  unit: 'mm' | 'deg';
  /** Microsteps for one unit; `steps / stepsPerUnit` is the position in the axis's unit. */
  stepsPerUnit: number;
  /** Whole microsteps from the axis's zero, at each frame. */
  steps: Int32Array;
  /** Lowest and highest position, and the largest number of steps from one frame to the next. */
  lowestSteps: number;
  highestSteps: number;
  largestMoveSteps: number;
  /** How many frames it moves after. */
  moves: number;
  /** Smallest number of steps of a move that is one; 0 if the axis never moves. */
  smallestMoveSteps: number;
  /** Frames that repeat the position before them while the track itself goes on; the first, counted from 1. */
  repeats: number;
  firstRepeat: number | null;
  /** Times that the axis turns back; the frame, counted from 1, that the first move after one leads to. */
  reversals: number;
  firstReversal: number | null;
  /** Moves made longer by backlash or by arriving from one side, and the seconds that this adds, all together. */
  takeUps: number;
  takeUpS: number;
  /** Seconds the axis moves after each frame, rest to rest; the whole interval in continuous motion. */
  moveS: Float64Array;
}

/** Columns of one source. */
export interface SourceColumns {
  name: string;
  /** Energy left in the pack in use when the shutter opens, watt-hours, reserve included; Infinity for mains. */
  leftWh: Float64Array;
}

/** One entry a frame; index 0 is frame 1. */
export interface Columns {
  /** Seconds from the first shutter opening to this one. */
  elapsedS: Float64Array;
  /** Seconds to the next shutter opening. */
  intervalS: Float64Array;
  /** Seconds the shutter is open, all exposures of a bracket together. */
  exposureS: Float64Array;
  /** Seconds from the trigger until the last exposure has closed: the rig stands still, if it moves between. */
  holdS: Float64Array;
  /** Camera lane: lag, exposures, dark frames, write. */
  cameraS: Float64Array;
  /** Seconds the rig moves after this frame; the slowest axis, or all in turn. */
  moveS: Float64Array;
  /** Seconds allowed for ringing after the move. */
  settleS: Float64Array;
  /** Rig lane: hold, move, settle. 0 if the rig is still or moves all the time. */
  rigS: Float64Array;
  /** Interval minus guard minus the longer lane. Negative: the guard is used, or worse. */
  spareS: Float64Array;
  /** Settings in use, an index into the schedule's `exposure.rungs`; null if the light is not planned. */
  rung: Uint16Array | null;
  /** Exposure value of the scene at ISO 100; null if the light is not planned. */
  evScene: Float32Array | null;
  /** Stops by which the picture comes out brighter than wanted; null if the light is not planned. */
  evError: Float32Array | null;
  /** Sun and moon; null without a place. */
  sky: SkyColumns | null;
  /** Ring of the move after this frame when it ends, px; null unless the settle goes by the ringing. */
  ringPx: Float32Array | null;
  /** Pixels that subject and background move in the picture until the next frame; null without a subject. */
  subjectPx: Float32Array | null;
  backgroundPx: Float32Array | null;
  /** Pixels from the picture's centre to the subject where the aim does not hold; null unless it is kept framed. */
  aimMissPx: Float32Array | null;
  axes: AxisColumns[];
  sources: SourceColumns[];
  /** Which card takes the frame, counted from 0. */
  cardIndex: Uint8Array;
  /** Bytes on that card after the frame. */
  cardBytes: Float64Array;
  /** Bytes waiting in the camera's buffer just after the frame. */
  bufferBytes: Float64Array;
}

/** A moment that matters. */
export interface ScheduleEvent {
  kind: 'firstFrame' | 'exposureChange' | 'sky' | 'swap' | 'cardChange' | 'clockChange' | 'lastFrame';
  /** Frame, counted from 1; for a swap or a change, the first one after it. */
  frame: number;
  elapsedS: number;
  /** ISO 8601 with the local offset. */
  at: string;
  /** What happens, in a few words. */
  text: string;
  /** Frames that the trigger fires in vain meanwhile. */
  lostFrames: number;
  /** Settings before and after, for a change of the exposure. */
  from?: string;
  to?: string;
}

/** The single figures. */
export interface Totals {
  /** Frames the camera shoots: exposures, in stop-motion. */
  frames: number;
  /** Frames of the clip, handles included: frames x frames an exposure is held for. */
  clipFrames: number;
  /** Frames a second of the clip. */
  frameRate: number;
  /** The interval that was typed, or that the other two ask for, before the trigger has its say. */
  rawIntervalS: number;
  /** Start to start, as it will be. */
  intervalS: number;
  /** What to set on the trigger. */
  dialS: number;
  /** First shutter opening to the last. */
  eventDurationS: number;
  /** Screen time without handles. */
  clipLengthS: number;
  /** Real seconds in one second of the clip. */
  speedUp: number;
  /** ISO 8601 with the local offset. */
  firstFrameAt: string;
  lastFrameAt: string;
  /** Longest lane of all frames plus the guard. */
  shortestIntervalS: number;
  /** Frame, counted from 1, with the longest lane. */
  longestCycleFrame: number;
  /** Smallest spare of all frames. */
  tightestSpareS: number;
  /** Frame, counted from 1, of the tightest spare. */
  tightestFrame: number;
  /** Bytes of one frame, all its exposures. */
  frameBytes: number;
  storageBytes: number;
  /** Over all copies. */
  copiesBytes: number;
  /** Watt-hours drawn from all sources. */
  energyWh: number;
}

/** One source over the run. */
export interface SourceSummary {
  name: string;
  kind: 'battery' | 'mains';
  /** Rated, one pack. null for mains. */
  ratedWh: number | null;
  /** At the temperature, without the reserve, one pack. null for mains. */
  usableWh: number | null;
  drawnWh: number;
  /** Mean draw over the run. */
  meanW: number;
  needed: number;
  brought: number;
  /** First frames, counted from 1, on a fresh pack. At most as many as were brought allow. */
  swapFrames: number[];
  /** First frame that no pack is left for; null if they last. */
  shortAtFrame: number | null;
  /** Where passenger aircraft take it (lithium, by rated watt-hours); check the carrier's present rules. */
  flight: 'cabin' | 'ask the carrier' | 'not as baggage' | null;
}

/** One card over the run. */
export interface CardSummary {
  name: string;
  usableBytes: number;
  usedBytes: number;
  /** First and last frame on it, counted from 1; null if it is not used. */
  firstFrame: number | null;
  lastFrame: number | null;
}

/** One change of the local offset from UTC within the run, or its start. */
export interface OffsetSpan {
  /** Milliseconds of the epoch from which it holds. */
  fromMs: number;
  offsetMin: number;
}

/** The settings of a run whose light is planned: all that they can be, and how they change. */
export type ExposureSummary = Pick<
  RampRun,
  'follows' | 'changes' | 'ceiling' | 'shortestIntervalS' | 'longestIntervalS'
> & {
  rungs: readonly Rung[];
};

/** Everything that follows from a plan. */
export interface Schedule {
  columns: Columns;
  totals: Totals;
  sources: SourceSummary[];
  cards: CardSummary[];
  /** In order of time. */
  events: ScheduleEvent[];
  /** Worst first, then earliest first. */
  findings: Finding[];
  margins: Margin[];
  /** Settings over the run; null if the light is not planned. */
  exposure: ExposureSummary | null;
  /** What the rig does to the camera over the run. */
  rig: RigRun;
  /** What the sky does over the run; null without a place. */
  sky: SkyRun | null;
  /** First shutter opening, milliseconds of the epoch. */
  startMs: number;
  /** Offsets from UTC over the run; the first holds at the start. */
  offsets: OffsetSpan[];
  /** How many findings there are of each severity. */
  counts: Readonly<Record<Severity, number>>;
  /** The plan in one sentence: whether it can be shot, and the tightest thing. */
  verdict: string;
}

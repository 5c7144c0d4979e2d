/** The exposure sheet: one typed array a quantity, one entry an exposure, and what follows from them. */
import type { Severity } from '../findings/types.ts';
import type { Span } from '../sky/spans.ts';

/** One shot of the sheet. */
export interface SheetShot {
  name: string;
  /** Of the production, counted from 1; if the shot has no exposures, that of the next one that there would be. */
  firstExposure: number;
  exposures: number;
  /** Of the production, counted from 1. */
  firstFrame: number;
  frames: number;
  /** Before its first exposure, test frames left out. */
  setUpMin: number;
  /** Of its first frame. */
  timecode: string;
}

/** One action of the sheet. */
export interface SheetAction {
  /** Index into the shots. */
  shot: number;
  text: string;
  /** Of the production, counted from 1. */
  firstExposure: number;
  exposures: number;
  /** Of the shot, counted from 1. */
  firstFrame: number;
  frames: number;
  /** The last exposure is shorter than its hold: the frames do not divide evenly. */
  lastShort: boolean;
  /** On twos, on ones and twos. */
  holdsText: string;
}

/** One axis of the rig over all exposures. */
export interface SheetAxis {
  name: string;
  unit: 'mm' | 'deg';
  /** Microsteps for one unit; `steps / stepsPerUnit` is the position in the axis's unit. */
  stepsPerUnit: number;
  /** Whole microsteps from the axis's zero. */
  steps: Int32Array;
  /** -1 arrives going down its scale, +1 going up, 0 stays where it is. */
  from: Int8Array;
}

/** One entry an exposure; index 0 is exposure 1 of the production. */
export interface SheetColumns {
  /** Index into the shots. */
  shot: Uint16Array;
  /** Index into the actions. */
  action: Uint32Array;
  /** Of the shot, counted from 1. */
  firstFrame: Int32Array;
  /** It is held for. */
  frames: Int32Array;
  /** Bit p set: it has pass p of the plan. */
  passes: Uint32Array;
  /** Planned, hands on: animating, and switching the light of its passes. */
  minutes: Float64Array;
  /** Planned, hands off: the move to it and its settle, and the camera for all its passes. */
  rigS: Float64Array;
  /** Milliseconds of the epoch: when it is begun, as estimated; for one that is ticked, when it was. */
  startMs: Float64Array;
  /** When it was ticked; NaN if it is not. */
  doneMs: Float64Array;
  /** Index of its tick in the plan; -1 if it is not ticked. */
  tick: Int32Array;
  axes: SheetAxis[];
}

/** What one source gives on a day. */
export interface DayEnergy {
  /** Name of the source. */
  source: string;
  wh: number;
  /** Packs that takes, at the temperature, above their reserve; null for mains. */
  packs: number | null;
}

/** What is done on a day of work, seconds: what its energy goes by. */
export interface DaySpent {
  /** From the beginning of work to its end, breaks included. */
  presentS: number;
  exposureS: number;
  busyS: number;
  moveS: number;
  /** Each axis by itself. */
  axisMoveS: readonly number[];
}

/** One day of work. */
export interface SheetDay {
  /** Local, `yyyy-mm-dd`. */
  date: string;
  /** From the beginning of work to the end of the last exposure; breaks lie within. */
  fromMs: number;
  toMs: number;
  /** Of the production, counted from 1; null on a day that goes by with setting up. */
  firstExposure: number | null;
  lastExposure: number | null;
  /** Where the day ends: last frame of its shot, counted from 1, and that shot's index; null as above. */
  frame: number | null;
  shot: number | null;
  /** Work, breaks left out: planned for what is left, real for what is done. */
  workMin: number;
  energyWh: DayEnergy[];
  spent: DaySpent;
  /** Sun on the set within the working day; empty without pane or place, and far ahead. */
  sunSpans: Span[];
}

/** Every kind of finding of the sheet. */
export type SheetFindingId =
  | 'no-exposures'
  | 'start-outside-hours'
  | 'exposure-too-long'
  | 'calendar-too-long'
  | 'last-short'
  | 'ticks-ignored'
  | 'sun-on-set'
  | 'lamps-stay-on'
  | 'source-short'
  | 'card-full';

/** One thing that is wrong with the sheet, or worth knowing. */
export interface SheetFinding {
  id: SheetFindingId;
  severity: Severity;
  /** One sentence with its numbers. */
  message: string;
  /** Exposure of the production where it first happens, counted from 1; null if it concerns all of it. */
  exposure: number | null;
  /** The numbers of the message, by name with unit. */
  values: Readonly<Record<string, number | string>>;
}

/** How the work really goes, from the first tick to the last. */
export interface Pace {
  /** Planned for what was ticked after the first tick, retakes included. */
  plannedMin: number;
  /** That it really took: working time between both ticks, breaks and nights left out. */
  realMin: number;
  /** Real over planned; 1 as long as there is nothing to go by. */
  factor: number;
}

/** The single figures. */
export interface SheetTotals {
  /** Planned, all of it: exposures, their retakes so far, set-ups and test frames. */
  workMin: number;
  /** End of the last exposure, at the planned pace. */
  finishMs: number;
  /** Days of work. */
  days: number;
  /** All passes of all exposures and of their retakes so far. */
  storageBytes: number;
  /** Over all copies. */
  copiesBytes: number;
  /** From all sources. */
  energyWh: number;
  done: number;
  left: number;
  pace: Pace;
  /** End of the last exposure, at the pace so far. */
  finishAtPaceMs: number;
  findings: SheetFinding[];
}

/** A production's exposure sheet. */
export interface Sheet {
  frames: number;
  exposures: number;
  shots: SheetShot[];
  actions: SheetAction[];
  columns: SheetColumns;
  days: SheetDay[];
  totals: SheetTotals;
}

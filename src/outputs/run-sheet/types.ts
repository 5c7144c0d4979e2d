/** What a run sheet says: words and figures, before anybody draws them. */

/** A label, and what is said of it. */
export interface SheetLine {
  label: string;
  text: string;
}

/** One thing to do, or to expect, at a time of the day. */
export interface ClockLine {
  /** Milliseconds of the epoch. */
  ms: number;
  /** Local: `Sat 8 Aug 2026`. */
  date: string;
  /** Local: `20:31` for what is planned by the minute, `20:31:10` for what happens to the second. */
  clock: string;
  /** Counted from 1; null for what is no matter of a frame. */
  frame: number | null;
  text: string;
  /** Somebody has to do something: there is a box to tick. */
  hand: boolean;
  /** The day's steps and the run's ends; what a hand has to do in the run; sun and moon. */
  kind: 'step' | 'settings' | 'moment' | 'sky';
}

/** How many lines of each part there was no room for. */
export interface Left {
  changes: number;
  keyframes: number;
  moments: number;
  sky: number;
  /** Days of sun and moon. */
  sun: number;
  findings: number;
  days: number;
  shots: number;
  /** Letters of the notes. */
  notes: number;
}

/** One change of the settings, or several by the camera. */
export interface ChangeLine {
  /** Of the first, and of the last. */
  frame: number;
  lastFrame: number;
  /** Local date, as in the clock. */
  date: string;
  clock: string;
  /** Settings before the first and after the last. */
  from: string;
  to: string;
  count: number;
  by: 'hand' | 'camera';
}

/** Where the axes stand at the keyframes. */
export interface RigTable {
  axes: { name: string; unit: 'mm' | 'deg' }[];
  rows: { frame: number; date: string; clock: string; steps: number[]; units: number[] }[];
}

/** One working day of stop-motion. */
export interface WorkLine {
  date: string;
  from: string;
  to: string;
  exposures: string;
  ends: string;
  packs: string;
}

/** What is still wrong, or worth knowing. */
export interface FindingLine {
  severity: string;
  text: string;
}

/** A run sheet; for stop-motion the cover page of its exposure sheet. */
export interface RunSheet {
  title: string;
  /** Date, place, zone. */
  facts: string[];
  sentence: string;
  verdict: string;
  bring: SheetLine[];
  dials: SheetLine[];
  /** The day of a time-lapse; empty for stop-motion. */
  clock: ClockLine[];
  /** The working days of stop-motion; empty for a time-lapse. */
  work: WorkLine[];
  /** Shots of stop-motion, and their set-ups. */
  shots: SheetLine[];
  changes: ChangeLine[];
  /** Whether changes by the camera are taken together, since they are many. */
  changesGrouped: boolean;
  rig: RigTable | null;
  /** Of each local day; its title is the date. */
  sun: SheetLine[];
  findings: FindingLine[];
  cautions: string[];
  notes: string;
  left: Left;
}

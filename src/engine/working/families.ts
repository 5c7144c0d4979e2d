/** Figures of which there is one for each frame, exposure, day and so on: their names, and who knows them. */
import { frameLaneWorkings } from '../cycle/lane-working.ts';
import { frameLostWorkings } from '../cycle/lost-working.ts';
import { frameCycleWorkings } from '../cycle/working.ts';
import { frameEnergyWorkings } from '../energy/working.ts';
import { frameExposureWorkings } from '../exposure/working.ts';
import { frameLightWorkings } from '../light/working.ts';
import { frameMotionWorkings } from '../motion/working.ts';
import { framePathWorkings } from '../path/working.ts';
import { frameRingingWorkings } from '../ringing/working.ts';
import { sheetActionWorkings } from '../sheet/action-working.ts';
import { workDayWorkings } from '../sheet/day-working.ts';
import { sheetExposureWorkings } from '../sheet/exposure-working.ts';
import { sheetFindingWorkings } from '../sheet/finding-figures.ts';
import { sheetShotWorkings } from '../sheet/shot-working.ts';
import { dateWorkings, yearWorkings } from '../sky/days-working.ts';
import { sunWorkings } from '../sky/patch-working.ts';
import { frameSkyWorkings } from '../sky/working.ts';
import { frameStorageWorkings } from '../storage/working.ts';
import { frameTimeWorkings } from '../time/frame-working.ts';
import { findingWorkings } from './finding-figures.ts';
import type { Worked, Workings } from './make.ts';
import { measureWorkings } from './measures.ts';

/** Of one frame, counted from 0; names without the `frame.N.` before them. */
const FRAME_SUBJECTS: readonly ((of: Worked, k: number) => Workings)[] = [
  frameTimeWorkings,
  frameCycleWorkings,
  frameLaneWorkings,
  frameLostWorkings,
  frameMotionWorkings,
  frameRingingWorkings,
  framePathWorkings,
  frameExposureWorkings,
  frameLightWorkings,
  frameSkyWorkings,
  frameEnergyWorkings,
  frameStorageWorkings,
];

/** All of one frame. @param k - counted from 0 */
export const frameWorkings = (of: Worked, k: number): Workings =>
  k < of.made.totals.frames ? Object.assign({}, ...FRAME_SUBJECTS.map((subject) => subject(of, k))) : {};

/** A kind of figures by the beginning of their names. */
interface Family {
  /** Which one, and what of it. */
  name: RegExp;
  workings: (of: Worked, which: string) => Workings;
}

const counted = (of: (of: Worked, index: number) => Workings) => (worked: Worked, which: string) =>
  of(worked, Number(which) - 1);

const FRAME = /^frame\.([1-9]\d*)\.(.+)$/s;

const FAMILIES: readonly Family[] = [
  { name: FRAME, workings: counted(frameWorkings) },
  { name: /^sheet\.exposure\.([1-9]\d*)\.(.+)$/s, workings: counted(sheetExposureWorkings) },
  { name: /^sheet\.action\.([1-9]\d*)\.(.+)$/s, workings: counted(sheetActionWorkings) },
  { name: /^sheet\.shot\.([1-9]\d*)\.(.+)$/s, workings: counted(sheetShotWorkings) },
  { name: /^sheet\.day\.([1-9]\d*)\.(.+)$/s, workings: counted(workDayWorkings) },
  { name: /^sheet\.findings\.(.+)\.([A-Za-z]\w*)$/s, workings: sheetFindingWorkings },
  { name: /^findings\.(.+)\.([A-Za-z]\w*)$/s, workings: findingWorkings },
  { name: /^measure\.(.+)\.([A-Za-z]+)$/s, workings: (_, which) => measureWorkings(which) },
  { name: /^sun\.(\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ)\.(.+)$/s, workings: sunWorkings },
  { name: /^days\.(\d{4}-\d\d-\d\d)\.(.+)$/s, workings: dateWorkings },
  { name: /^days\.(\d{4})\.(.+)$/s, workings: (of, which) => yearWorkings(of, Number(which)) },
];

/** Frame that a name speaks of, counted from 1; null if of none. */
export const frameNamed = (figure: string): number | null => {
  const [, frame] = FRAME.exec(figure) ?? [];
  return frame === undefined ? null : Number(frame);
};

/** Who knows a figure, and what it is called there; null for a figure of the whole run. */
export function familyOf(of: Worked, figure: string): { workings: Workings; what: string } | null {
  for (const { name, workings } of FAMILIES) {
    const [, which, what] = name.exec(figure) ?? [];
    if (which !== undefined && what !== undefined) return { workings: workings(of, which), what };
  }
  return null;
}

/**
 * The working behind every figure. Each subject has its own in its `working.ts`; here they are joined, and found by
 * name. Names are stable: part of the prompt's output.
 */
import { balanceWorkings } from '../balance/working.ts';
import { cycleWorkings, frameCycleWorkings } from '../cycle/working.ts';
import { energyWorkings, frameEnergyWorkings } from '../energy/working.ts';
import { exposureWorkings, frameExposureWorkings } from '../exposure/working.ts';
import { frameLightWorkings } from '../light/working.ts';
import { frameMotionWorkings, motionWorkings } from '../motion/working.ts';
import { pacingWorkings } from '../pacing/working.ts';
import { framePathWorkings, pathWorkings } from '../path/working.ts';
import type { Plan } from '../plan/schema.ts';
import { frameRingingWorkings, ringingWorkings } from '../ringing/working.ts';
import type { Schedule } from '../schedule-types.ts';
import { sheetWorkings } from '../sheet/working.ts';
import { frameSkyWorkings } from '../sky/working.ts';
import { frameStorageWorkings, storageWorkings } from '../storage/working.ts';
import { timeWorkings } from '../time/working.ts';
import { type Draft, ofFrame, type Worked, type Workings, worth } from './make.ts';
import { marginWorkings } from './margins.ts';
import type { Working } from './types.ts';

export { formulaText, numbersText, readable, workingText } from './text.ts';
export type { Term, Working } from './types.ts';

/** Of the whole run. */
const SUBJECTS: readonly ((of: Worked) => Workings)[] = [
  pacingWorkings,
  timeWorkings,
  cycleWorkings,
  storageWorkings,
  energyWorkings,
  exposureWorkings,
  motionWorkings,
  ringingWorkings,
  pathWorkings,
  balanceWorkings,
  sheetWorkings,
];

/** Of one frame, counted from 0; names without the `frame.N.` before them. */
const FRAME_SUBJECTS: readonly ((of: Worked, k: number) => Workings)[] = [
  frameCycleWorkings,
  frameMotionWorkings,
  frameRingingWorkings,
  framePathWorkings,
  frameExposureWorkings,
  frameLightWorkings,
  frameSkyWorkings,
  frameEnergyWorkings,
  frameStorageWorkings,
];

const FRAME = /^frame\.([1-9]\d*)\.(.+)$/s;

const finished = (figure: string, draft: Draft, frame: number | null): Working => ({
  figure,
  title: draft.title,
  value: worth(draft),
  unit: draft.unit,
  expression: draft.expression,
  terms: [...draft.terms],
  frame: draft.frame ?? frame,
  remarks: [...(draft.remarks ?? [])],
  source: draft.source,
});

/** Of the whole run, with what is left of every margin. */
function wholeRun(of: Worked): Workings {
  const own: Workings = Object.assign({}, ...SUBJECTS.map((subject) => subject(of)));
  return { ...own, ...marginWorkings(of, own) };
}

const oneFrame = (of: Worked, k: number): Workings =>
  Object.assign({}, ...FRAME_SUBJECTS.map((subject) => subject(of, k)));

/**
 * How a figure came about.
 * @param made - the schedule of that plan, its columns as they were made
 * @param figure - its name: `totals.intervalS`, `margins.interval.left`, `frame.12.cameraS`, `axes.Boom.largestMove`
 * @returns null if the plan has no figure of that name
 */
export function workingOf(plan: Plan, made: Schedule, figure: string): Working | null {
  const [, number, what = figure] = FRAME.exec(figure) ?? [];
  const frame = number === undefined ? null : Number(number);
  if (frame !== null && frame > made.totals.frames) return null;
  const of = { plan, made };
  const workings = frame === null ? wholeRun(of) : oneFrame(of, frame - 1);
  const draft = Object.hasOwn(workings, what) ? workings[what] : undefined;
  return draft ? finished(figure, draft(), frame) : null;
}

/** Frames that a figure of the run stands for, counted from 1. */
function framesOfNote({ totals, margins, rig }: Schedule): number[] {
  const { image, aim, ringing } = rig;
  const ringFrame = ringing?.worstFrame ? ringing.worstFrame - 1 : null;
  const worst = [
    image?.subject.frame,
    image?.background.frame,
    image?.blur?.frame,
    aim?.worstFrame,
    ringFrame,
  ];
  const all = [
    1,
    totals.longestCycleFrame,
    totals.tightestFrame,
    totals.frames,
    ...margins.map(({ frame }) => frame),
  ];
  const within = [...all, ...worst].filter((frame) => typeof frame === 'number' && frame <= totals.frames);
  return [...new Set(within as number[])].sort((a, b) => a - b);
}

/** Names of the figures of the whole run. */
export const runFiguresOf = (plan: Plan, made: Schedule): string[] => Object.keys(wholeRun({ plan, made }));

/** Names of the figures of a frame, counted from 1. */
export const frameFiguresOf = (plan: Plan, made: Schedule, frame: number): string[] =>
  Object.keys(oneFrame({ plan, made }, frame - 1)).map((what) => ofFrame(frame - 1, what));

/**
 * Names of all figures that have a working in this plan. Of the frames those that a figure of the run stands for (the
 * first, the longest, the tightest, the last and so on); the names of any other frame go as well.
 */
export const figuresOf = (plan: Plan, made: Schedule): string[] => [
  ...runFiguresOf(plan, made),
  ...framesOfNote(made).flatMap((frame) => frameFiguresOf(plan, made, frame)),
];

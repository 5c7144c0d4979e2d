/**
 * The working behind every figure. Each subject has its own in its `working.ts`; here they are joined, and found by
 * name. Names are stable: part of the prompt's output.
 */
import { balanceWorkings } from '../balance/working.ts';
import { cycleWorkings } from '../cycle/working.ts';
import { energyWorkings } from '../energy/working.ts';
import { exposureWorkings } from '../exposure/working.ts';
import { lightWorkings } from '../light/working.ts';
import { motionWorkings } from '../motion/working.ts';
import { type OnSet, onsetWorkings } from '../onset/working.ts';
import { pacingWorkings } from '../pacing/working.ts';
import { pathWorkings } from '../path/working.ts';
import type { Plan } from '../plan/schema.ts';
import { ringingWorkings } from '../ringing/working.ts';
import type { Schedule } from '../schedule-types.ts';
import { sheetActionWorkings } from '../sheet/action-working.ts';
import { workDayWorkings } from '../sheet/day-working.ts';
import { sheetExposureWorkings } from '../sheet/exposure-working.ts';
import { sheetFindingsFiguresOf } from '../sheet/finding-figures.ts';
import { sheetNotes } from '../sheet/known.ts';
import { sheetShotWorkings } from '../sheet/shot-working.ts';
import { sheetWorkings } from '../sheet/working.ts';
import { skyWorkings, yearWorkings } from '../sky/days-working.ts';
import { storageWorkings } from '../storage/working.ts';
import { stepsWorkings } from '../time/steps-working.ts';
import { timeWorkings } from '../time/working.ts';
import { workingAtSetting } from './at-setting.ts';
import { familyOf, frameNamed, frameWorkings } from './families.ts';
import { findingsFiguresOf } from './finding-figures.ts';
import { type Draft, type Worked, type Workings, worth } from './make.ts';
import { marginWorkings } from './margins.ts';
import { ofAction, ofExposure, ofFrame, ofShot, ofWorkDay, ofYear } from './names.ts';
import type { Working } from './types.ts';
import { type FixesKnown, workingWithFix } from './with-fix.ts';

export { formulaText, numbersText, readable, workingText } from './text.ts';
export type { Term, Working } from './types.ts';
export type { FixesKnown } from './with-fix.ts';

/** Of the whole run. */
const SUBJECTS: readonly ((of: Worked) => Workings)[] = [
  pacingWorkings,
  timeWorkings,
  stepsWorkings,
  cycleWorkings,
  storageWorkings,
  energyWorkings,
  exposureWorkings,
  lightWorkings,
  motionWorkings,
  ringingWorkings,
  pathWorkings,
  balanceWorkings,
  skyWorkings,
  sheetWorkings,
];

const finished = (figure: string, draft: Draft, frame: number | null): Working => ({
  figure,
  title: draft.title,
  value: worth(draft),
  unit: draft.unit,
  label: draft.label ?? null,
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

/**
 * How a figure came about.
 * @param made - the schedule of that plan, its columns as they were made
 * @param figure - its name: `totals.intervalS`, `margins.interval.left`, `frame.12.cameraS`, `axes.Boom.largestMove`,
 *   `sheet.day.2.workMin`, `days.2026-08-08.sunset`, `ladder.15.totals.frames` with 15 s on the trigger
 * @param run - a run as it is being shot, for figures that begin with `onset.`
 * @param fixes - ways out of the plan's findings, for figures that begin with `fix.`
 * @returns null if the plan has no figure of that name
 */
export function workingOf(
  plan: Plan,
  made: Schedule,
  figure: string,
  run?: OnSet,
  fixes?: FixesKnown,
): Working | null {
  const of = { plan, made };
  const there = (other: Worked, what: string) => workingOf(other.plan, other.made, what);
  const withFix = workingWithFix(of, figure, fixes, (name, draft) => finished(name, draft, null), there);
  if (withFix !== undefined) return withFix;
  const atSetting = workingAtSetting(of, figure, there);
  if (atSetting !== undefined) return atSetting;
  const family = familyOf(of, figure);
  const onSet = run && figure.startsWith('onset.') ? onsetWorkings(run) : null;
  const workings = onSet ?? family?.workings ?? wholeRun(of);
  const what = family?.what ?? figure;
  const draft = Object.hasOwn(workings, what) ? workings[what] : undefined;
  return draft ? finished(figure, draft(), frameNamed(figure)) : null;
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

/** What stands behind an event of the sky: one comes to it through the event. */
const BEHIND = /^sky\..+\.(azimuthDeg|altitudeDeg|declinationDeg|hourAngleDeg|utcS)$/;

/** Names of the figures of the whole run; those that only stand behind others are left out. */
export const runFiguresOf = (plan: Plan, made: Schedule): string[] =>
  Object.keys(wholeRun({ plan, made })).filter((figure) => !BEHIND.test(figure));

/** Names of the figures of a frame, counted from 1. */
export const frameFiguresOf = (plan: Plan, made: Schedule, frame: number): string[] =>
  Object.keys(frameWorkings({ plan, made }, frame - 1)).map((what) => ofFrame(frame - 1, what));

/** Names of the figures of an exposure of the sheet, counted from 1. */
export const exposureFiguresOf = (plan: Plan, made: Schedule, exposure: number): string[] =>
  Object.keys(sheetExposureWorkings({ plan, made }, exposure - 1)).map((what) =>
    ofExposure(exposure - 1, what),
  );

/** Of the sheet those exposures, actions and days that come first or last, or next. */
function sheetFiguresOf(of: Worked): string[] {
  const { exposures, actions, shots, days } = sheetNotes(of);
  return [
    ...exposures.flatMap((i) => exposureFiguresOf(of.plan, of.made, i + 1)),
    ...actions.flatMap((a) => Object.keys(sheetActionWorkings(of, a)).map((what) => ofAction(a, what))),
    ...shots.flatMap((s) => Object.keys(sheetShotWorkings(of, s)).map((what) => ofShot(s, what))),
    ...days.flatMap((d) => Object.keys(workDayWorkings(of, d)).map((what) => ofWorkDay(d, what))),
    ...sheetFindingsFiguresOf(of),
  ];
}

/** How many days there are of each kind in the plan's year. */
function yearFiguresOf(of: Worked): string[] {
  const year = Number(of.plan.start.date.slice(0, 4));
  return Object.keys(yearWorkings(of, year)).map((what) => ofYear(year, what));
}

/**
 * Names of all figures that have a working in this plan. Of the frames those that a figure of the run stands for (the
 * first, the longest, the tightest, the last and so on), and likewise of the sheet's exposures, actions and days; the
 * names of any other go as well, and so do dates and years.
 */
export function figuresOf(plan: Plan, made: Schedule): string[] {
  const of = { plan, made };
  return [
    ...Object.keys(wholeRun(of)),
    ...sheetFiguresOf(of),
    ...yearFiguresOf(of),
    ...findingsFiguresOf(of),
    ...framesOfNote(made).flatMap((frame) => frameFiguresOf(plan, made, frame)),
  ];
}

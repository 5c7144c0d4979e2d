/** How the figures of one exposure, and of one action, came about. */
import { laterDraft, type Moment, minutesPart, momentDraft } from '../time/moment-working.ts';
import {
  DEFINITION,
  type Draft,
  PRACTICE,
  sameAs,
  term,
  type Worked,
  type Workings,
} from '../working/make.ts';
import { ofAction, ofExposure } from '../working/names.ts';
import { knownSheet } from './known.ts';
import { startFrameOf } from './labels.ts';
import { passSets } from './passes.ts';
import { shotsOf } from './shots.ts';
import { takesMin, timecodeAt } from './texts.ts';
import type { Sheet, SheetAction, SheetAxis } from './types.ts';

/** An exposure of a sheet, counted from 0. */
interface One {
  plan: Worked['plan'];
  sheet: Sheet;
  i: number;
}

const at = (column: ArrayLike<number>, i: number): number => column[i] ?? 0;
const titled = ({ i }: One, what: string): string => `Exposure ${i + 1}: ${what}`;

const actionAt = ({ sheet, i }: One): SheetAction =>
  sheet.actions[at(sheet.columns.action, i)] as SheetAction;

function handsOn(of: One): Draft {
  const { plan, sheet, i } = of;
  const { changeMin } = passSets(plan)(at(sheet.columns.passes, i));
  const minutes = at(sheet.columns.minutes, i);
  return {
    title: titled(of, 'hands on'),
    value: minutes,
    unit: 'min',
    expression: 'animatingMin + changeMin',
    terms: [
      term('animatingMin', 'animating', minutes - changeMin, 'min'),
      term('changeMin', 'switching the light of its passes', changeMin, 'min'),
    ],
    source: PRACTICE,
  };
}

function handsOff(of: One): Draft {
  const { plan, sheet, i } = of;
  const { cameraS } = passSets(plan)(at(sheet.columns.passes, i));
  const rigS = at(sheet.columns.rigS, i);
  return {
    title: titled(of, 'hands off'),
    value: rigS,
    unit: 's',
    expression: 'rigS + cameraS',
    terms: [
      term('rigS', 'moving and settling', rigS - cameraS, 's'),
      term('cameraS', 'the camera, all its passes', cameraS, 's'),
    ],
    source: DEFINITION,
  };
}

const takes = (of: One): Draft => ({
  title: titled(of, 'takes'),
  value: takesMin(of.sheet, of.i),
  unit: 'min',
  expression: 'handsOnMin + handsOffS / 60',
  terms: [
    term('handsOnMin', 'hands on', at(of.sheet.columns.minutes, of.i), 'min', ofExposure(of.i, 'handsOnMin')),
    term('handsOffS', 'hands off', at(of.sheet.columns.rigS, of.i), 's', ofExposure(of.i, 'handsOffS')),
  ],
  source: DEFINITION,
});

const atPace = (of: One): Draft => ({
  title: titled(of, 'at your pace'),
  unit: 'min',
  expression: 'takesMin * factor',
  terms: [
    term('takesMin', 'as planned', takesMin(of.sheet, of.i), 'min', ofExposure(of.i, 'takesMin')),
    term('factor', 'pace so far', of.sheet.totals.pace.factor, '', 'sheet.pace.factor'),
  ],
  source: DEFINITION,
});

/** When it is begun, as estimated: after the one before. */
function clock(of: One): Draft {
  const { plan, sheet, i } = of;
  const { startMs, doneMs } = sheet.columns;
  const ms = at(startMs, i);
  const title = titled(of, 'clock');
  if (!Number.isNaN(at(doneMs, i)))
    return momentDraft(title, plan.place, ms, { remarks: ['When it was ticked.'] });
  if (i === 0 || !Number.isNaN(at(doneMs, i - 1)) || at(startMs, i - 1) > ms)
    return momentDraft(title, plan.place, ms, {
      remarks: [
        'Estimated: the first that is left begins after set-up and test frames, or after the last tick, within working hours.',
      ],
      source: PRACTICE,
    });
  const before: Moment = {
    ms: at(startMs, i - 1),
    figure: ofExposure(i - 1, 'clock'),
    words: `exposure ${i} begins`,
  };
  return {
    ...laterDraft(
      title,
      plan.place,
      before,
      ms,
      [minutesPart('takesMin', `exposure ${i} takes`, takesMin(sheet, i - 1), ofExposure(i - 1, 'takesMin'))],
      'breaks, nights, set-up between',
    ),
    remarks: ['Estimated. An exposure is begun only where it also ends before the next break.'],
    source: PRACTICE,
  };
}

/** The frames that it is held for, of its shot. */
function lastFrame(of: One): Draft {
  const { sheet, i } = of;
  const first = at(sheet.columns.firstFrame, i);
  const held = at(sheet.columns.frames, i);
  const { firstFrame, firstExposure } = actionAt(of);
  return {
    title: titled(of, 'last frame'),
    value: first + held - 1,
    unit: '',
    expression: 'actionFrame + beforeFrames + heldFrames - 1',
    terms: [
      term('actionFrame', 'first frame of its action', firstFrame, ''),
      term(
        'beforeFrames',
        `frames of the ${i + 1 - firstExposure} exposures of the action before it`,
        first - firstFrame,
        'frames',
      ),
      term('heldFrames', 'frames that it is held for', held, 'frames'),
    ],
    remarks: [`Of the shot, counted from 1: it is on screen from frame ${first} on.`],
    source: DEFINITION,
  };
}

function timecode(of: One): Draft {
  const { plan, sheet, i } = of;
  const shotFrame = sheet.shots[at(sheet.columns.shot, i)]?.firstFrame ?? 1;
  const firstFrame = at(sheet.columns.firstFrame, i);
  const start = startFrameOf(plan);
  const label = timecodeAt(plan, sheet, i);
  return {
    title: titled(of, 'timecode'),
    value: start + shotFrame + firstFrame - 2,
    unit: 'frames',
    label,
    expression: 'startFrame + shotFrame + frame - 2',
    terms: [
      term('startFrame', `frames from 00:00:00:00 to ${plan.sheet.startTimecode}`, start, 'frames'),
      term('shotFrame', 'first frame of its shot, in the production', shotFrame, ''),
      term('frame', 'its first frame, in the shot', firstFrame, ''),
    ],
    remarks: [`Label ${label}: so many frames after 00:00:00:00.`],
    source: 'SMPTE ST 12-1; after 24 hours the labels begin anew.',
  };
}

function position(of: One, { name, unit, steps, stepsPerUnit }: SheetAxis): Draft {
  return {
    title: titled(of, `${name} to`),
    value: at(steps, of.i) / stepsPerUnit,
    unit,
    expression: 'steps / stepsPerUnit',
    terms: [
      term('steps', 'whole microsteps from zero', at(steps, of.i), 'steps'),
      term('stepsPerUnit', `microsteps a ${unit}`, stepsPerUnit, `steps/${unit}`),
    ],
    remarks: ['Rounded to whole steps at its first frame.'],
    source: DEFINITION,
  };
}

function travel(of: One, axis: SheetAxis): Draft {
  const { name, unit, steps, stepsPerUnit } = axis;
  const name_ = (i: number) => ofExposure(i, `axes.${name}.position`);
  return {
    title: titled(of, `${name}, from the last`),
    unit,
    expression: 'to - from',
    terms: [
      term('to', `${name} to`, at(steps, of.i) / stepsPerUnit, unit, name_(of.i)),
      term('from', 'from', at(steps, of.i - 1) / stepsPerUnit, unit, name_(of.i - 1)),
    ],
    source: DEFINITION,
  };
}

function axisWorkings(of: One): Workings {
  const { shot, axes } = of.sheet.columns;
  const sameShot = of.i > 0 && shot[of.i - 1] === shot[of.i];
  return Object.assign(
    {},
    ...axes.map((axis) => ({
      [`axes.${axis.name}.position`]: () => position(of, axis),
      ...(sameShot && { [`axes.${axis.name}.by`]: () => travel(of, axis) }),
    })),
  );
}

/** Workings of one exposure, counted from 0; names without the `sheet.exposure.N.` before them. */
export function sheetExposureWorkings({ plan }: Worked, i: number): Workings {
  const sheet = knownSheet(plan);
  if (!sheet || i >= sheet.exposures) return {};
  const of = { plan, sheet, i };
  return {
    clock: () => clock(of),
    takesMin: () => takes(of),
    handsOnMin: () => handsOn(of),
    handsOffS: () => handsOff(of),
    atPaceMin: () => atPace(of),
    lastFrame: () => lastFrame(of),
    timecode: () => timecode(of),
    ...axisWorkings(of),
  };
}

/** Exposures that fill the frames of an action. */
function exposuresOfAction({ plan, sheet }: Pick<One, 'plan' | 'sheet'>, a: number): Draft {
  const { text, frames, exposures, lastShort } = sheet.actions[a] as SheetAction;
  const holds = shotsOf(plan).flatMap(({ actions }) => actions)[a]?.holds ?? [1];
  const frameTerm = term('frames', 'frames of the action', frames, 'frames', ofAction(a, 'frames'));
  const around = holds.reduce((sum, hold) => sum + hold, 0);
  const repeats = Math.floor(frames / around);
  const base = {
    title: `${text === '' ? `Action ${a + 1}` : text}: exposures`,
    value: exposures,
    unit: 'exposures',
    remarks: lastShort ? ['The last exposure is shorter than its hold.'] : [],
    source: PRACTICE,
  };
  if (holds.length === 1)
    return {
      ...base,
      expression: 'ceil(frames / holdFrames)',
      terms: [frameTerm, term('holdFrames', 'frames that an exposure is held for', holds[0] ?? 1, 'frames')],
    };
  return {
    ...base,
    expression: 'floor(frames / patternFrames) * patternExposures + begun',
    terms: [
      frameTerm,
      term('patternFrames', 'frames of the pattern of holds', around, 'frames'),
      term('patternExposures', 'exposures of the pattern', holds.length, 'exposures'),
      term('begun', 'exposures of the last, begun pattern', exposures - repeats * holds.length, 'exposures'),
    ],
  };
}

function framesOfAction({ plan, sheet }: Pick<One, 'plan' | 'sheet'>, a: number): Draft {
  const { text, frames } = sheet.actions[a] as SheetAction;
  const action = shotsOf(plan).flatMap(({ actions }) => actions)[a];
  const title = `${text === '' ? `Action ${a + 1}` : text}: frames`;
  if (action?.lengthIn !== 'seconds') return sameAs(title, 'frames as typed', frames, 'frames', null);
  const [num = 24, den = 1] = plan.clip.frameRate.split('/').map(Number);
  const base = { title, value: frames, unit: 'frames', source: PRACTICE };
  // Counted by the exact rate: where doubles say otherwise it is half a frame.
  if (Math.floor((action.lengthS * num) / den + 1 / 2) !== frames)
    return {
      ...base,
      expression: 'floor(exactFrames + 1 / 2)',
      terms: [term('exactFrames', 'length on screen by the frame rate', frames - 1 / 2, 'frames')],
    };
  return {
    ...base,
    expression: 'floor(lengthS * rateFrames / rateS + 1 / 2)',
    terms: [
      term('lengthS', 'length on screen', action.lengthS, 's'),
      term('rateFrames', 'frames of the frame rate', num, 'frames'),
      term('rateS', 'in so many seconds', den, 's'),
    ],
    remarks: ['To the nearest frame, halves up.'],
  };
}

/** Workings of one action, counted from 0; names without the `sheet.action.N.` before them. */
export function sheetActionWorkings({ plan }: Worked, a: number): Workings {
  const sheet = knownSheet(plan);
  if (!sheet || a >= sheet.actions.length) return {};
  return {
    frames: () => framesOfAction({ plan, sheet }, a),
    exposures: () => exposuresOfAction({ plan, sheet }, a),
  };
}

/** How the figures of one exposure, and of one action, came about. */
import { laterDraft, type Moment, minutesPart, momentDraft } from '../time/moment-working.ts';
import {
  capital,
  DEFINITION,
  type Draft,
  PRACTICE,
  sameAs,
  term,
  type Worked,
  type Workings,
} from '../working/make.ts';
import { ofExposure } from '../working/names.ts';
import { knownSheet } from './known.ts';
import { startFrameOf } from './labels.ts';
import { passSets } from './passes.ts';
import { at, axisWorkings, type One, titled } from './position-working.ts';
import { passesOf, takesMin, timecodeAt } from './texts.ts';
import type { SheetAction } from './types.ts';

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

function hold(of: One): Draft {
  const { holdsText, lastShort } = actionAt(of);
  const frames = at(of.sheet.columns.frames, of.i);
  return sameAs(titled(of, 'hold'), 'frames that it is held for', frames, 'frames', null, {
    remarks: [`${capital(holdsText)}${lastShort ? ', the last one shorter' : ''}.`],
  });
}

function passes(of: One): Draft {
  const names = passesOf(of.plan, of.sheet, of.i);
  return sameAs(titled(of, 'passes'), 'passes that are chosen for it', names.length, '', null, {
    remarks: names.length > 0 ? [`${names.join(', ')}.`] : [],
  });
}

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
    holdFrames: () => hold(of),
    passes: () => passes(of),
    timecode: () => timecode(of),
    ...axisWorkings(of),
  };
}

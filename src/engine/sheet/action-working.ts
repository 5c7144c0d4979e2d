/** How the frames and exposures of one action came about. */
import type { Plan } from '../plan/schema.ts';
import { type Draft, PRACTICE, sameAs, term, type Worked, type Workings } from '../working/make.ts';
import { ofAction } from '../working/names.ts';
import { doneDraft } from './counts-working.ts';
import { knownSheet } from './known.ts';
import { shotsOf } from './shots.ts';
import type { Sheet, SheetAction } from './types.ts';

interface Of {
  plan: Plan;
  sheet: Sheet;
}

const nameOf = ({ actions }: Sheet, a: number): string => actions[a]?.text || `Action ${a + 1}`;

/** Exposures that fill the frames of an action. */
function exposuresOfAction({ plan, sheet }: Of, a: number): Draft {
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

function framesOfAction({ plan, sheet }: Of, a: number): Draft {
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
    done: () => doneDraft(sheet, sheet.actions[a] as SheetAction, `${nameOf(sheet, a)}: exposures done`),
  };
}

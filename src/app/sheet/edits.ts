/** Edits of the sheet at the desk: each is one step, and what is refused is said. */
import { type Fault, faultSentence } from '../../engine/plan/faults.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import {
  nameShot,
  pasteRows,
  Refused,
  retime,
  setAction,
  setAxisPosition,
  setCue,
  setPasses,
  setText,
} from '../../engine/sheet/edits.ts';
import { type ExposurePlace, placeOf } from '../../engine/sheet/texts.ts';
import { plural, readNumber } from '../format/numbers.ts';
import { planDesk } from '../store/plan.ts';
import { actionOf, beginningCues, readCues, readHolds, readPasses } from './cells.ts';
import type { Column } from './columns.ts';
import { gridNow, say, selected, setGrid } from './gridStore.ts';
import type { Spot } from './rows.ts';
import { type Sheeted, sheetedNow } from './sheeted.ts';

/** Why an edit was not made; null if it was. */
export function attempt(edit: (plan: Plan) => Plan): string | null {
  planDesk.endGesture();
  const { plan } = planDesk.store.getState();
  try {
    const next = edit(plan);
    if (next === plan) return null;
    const [fault] = planDesk.change(next);
    return fault ? faultSentence(fault) : null;
  } catch (error) {
    if (error instanceof Error) return error instanceof Refused ? faultSentence(error.fault) : error.message;
    throw error;
  }
}

/** Makes an edit and says what came of it. */
export function doIt(what: string, edit: (plan: Plan) => Plan): boolean {
  const error = attempt(edit);
  say(error === null ? what : `Not done: ${error}`, error !== null);
  return error === null;
}

/** Puts what was typed into a cell into the plan. @returns why not, or null */
export function enterCell(spot: Spot, column: Column, text: string): string | null {
  const of = sheetedNow();
  const error = attempt((plan) => {
    if (spot.kind === 'shot') return nameShot(plan, spot.index + 1, text.trim());
    if (spot.kind === 'action') return actionWith(of, plan, spot.index, column, text);
    return exposureWith(of, plan, spot.index, column, text);
  });
  if (error === null) setGrid({ entered: { spot, column: column.id, text } });
  return error;
}

function actionWith(of: Sheeted, plan: Plan, index: number, { kind }: Column, text: string): Plan {
  const found = actionOf(of, index);
  if (!found) return plan;
  const change = (to: Parameters<typeof setAction>[3]) => setAction(plan, found.shot, found.number, to);
  if (kind === 'text' || kind === 'what') return change({ text: text.trim() });
  if (kind === 'hold') return change({ holds: readHolds(text) });
  if (kind === 'passes') return change({ passes: readPasses(plan, text) });
  if (kind === 'frames') return change(readLength(text));
  return plan;
}

/** `24` frames, or `1.5 s`. */
function readLength(
  text: string,
): { lengthIn: 'frames'; frames: number } | { lengthIn: 'seconds'; lengthS: number } {
  const [, number = '', unit = ''] = /^\s*([\d.,/ ]+?)\s*(s|sec|seconds?|f|frames?)?\s*$/i.exec(text) ?? [];
  const value = readNumber(number);
  if (value === null || value <= 0) throw new Error('A length such as 24 frames, or 1.5 s.');
  return /^s/i.test(unit) ? { lengthIn: 'seconds', lengthS: value } : { lengthIn: 'frames', frames: value };
}

function exposureWith(of: Sheeted, plan: Plan, i: number, column: Column, text: string): Plan {
  const place = placeOf(of.sheet, i);
  const range = selected(gridNow()) ?? { first: i + 1, last: i + 1 };
  switch (column.kind) {
    case 'text':
    case 'what':
      return setText(plan, place, text.trim());
    case 'hold':
      return retime(plan, range, readHold(text));
    case 'passes':
      return passesWith(of, plan, range, readPasses(plan, text));
    case 'cues':
      return cuesWith(of, plan, i, text);
    case 'axis':
      return setAxisPosition(
        plan,
        place,
        of.sheet.columns.axes[column.axis ?? -1]?.name ?? '',
        readPosition(text),
      );
    default:
      return plan;
  }
}

function readHold(text: string): number {
  const hold = readNumber(text.replace(/\s*(f|frames?)$/i, ''));
  if (hold === null) throw new Error('A whole number of frames.');
  return hold;
}

function readPosition(text: string): number {
  const position = readNumber(text.replace(/\s*(mm|deg|°)$/i, ''));
  if (position === null) throw new Error('A number, in the unit of the axis.');
  return position;
}

/** Each is an edit of its own. */
const MOST_AT_ONCE = 500;

function passesWith(
  { sheet }: Sheeted,
  plan: Plan,
  range: { first: number; last: number },
  names: string[],
): Plan {
  if (range.last - range.first >= MOST_AT_ONCE)
    throw new Error(
      `At most ${MOST_AT_ONCE} exposures at once: passes of a whole action stand in its own row.`,
    );
  let next = plan;
  for (let i = range.first - 1; i < range.last; i += 1) next = setPasses(next, placeOf(sheet, i), names);
  return next;
}

function cuesWith(of: Sheeted, plan: Plan, i: number, text: string): Plan {
  const place: ExposurePlace = placeOf(of.sheet, i);
  const wanted = readCues(text);
  const gone = beginningCues(of, i).filter(({ kind }) => !wanted.some((cue) => cue.kind === kind));
  const cleared = gone.reduce((then, { kind }) => setCue(then, place, { kind, text: '' }), plan);
  return wanted.reduce((then, cue) => setCue(then, place, cue), cleared);
}

/** Pastes rows behind an exposure; says what is wrong with them, if anything is. */
export function pasteAt(i: number, text: string): void {
  const { plan, sheet } = sheetedNow();
  const place = sheet.exposures === 0 ? { shot: 1, exposure: 0 } : placeOf(sheet, i);
  const pasted = pasteRows(plan, place, text);
  const faults: readonly Fault[] = pasted.ok ? planDesk.change(pasted.plan) : pasted.faults;
  if (faults.length > 0)
    say('Nothing was pasted, and nothing was changed. Correct these cells and paste again.', true, faults);
  else if (pasted.ok) {
    say(`${plural(pasted.exposures, 'exposure')} pasted.`);
    setGrid({ at: { kind: 'exposure', index: i + pasted.exposures }, anchor: i + 1 });
  }
}

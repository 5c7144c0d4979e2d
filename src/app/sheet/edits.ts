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

/** By how much an edit changed what there is to see; empty if it did not. An action never gets longer unsaid. */
function lengthText(framesBefore: number): string {
  const by = sheetedNow().sheet.frames - framesBefore;
  return by === 0 ? '' : ` ${plural(Math.abs(by), 'frame')} ${by > 0 ? 'longer' : 'shorter'} on screen.`;
}

/** Makes an edit and says what came of it. */
export function doIt(what: string, edit: (plan: Plan) => Plan): boolean {
  const { frames } = sheetedNow().sheet;
  const error = attempt(edit);
  say(error === null ? what + lengthText(frames) : `Not done: ${error}`, error !== null);
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
  if (error !== null) return error;
  setGrid({ entered: { spot, column: column.id, text } });
  const range = spot.kind === 'exposure' ? selected(gridNow()) : null;
  const length = lengthText(of.sheet.frames);
  if (range && range.last > range.first)
    say(`Exposures ${range.first} to ${range.last} changed together.${length}`);
  else if (length !== '') say(`Changed.${length}`);
  return null;
}

function actionWith(of: Sheeted, plan: Plan, index: number, { kind }: Column, text: string): Plan {
  const found = actionOf(of, index);
  if (!found) return plan;
  const change = (to: Parameters<typeof setAction>[3]) => setAction(plan, found.shot, found.number, to);
  if (kind === 'text' || kind === 'what') return change({ text: text.trim() });
  if (kind === 'hold') return change({ holds: holdsWithin(of.sheet.actions[index]?.frames ?? 0, text) });
  if (kind === 'passes') return change({ passes: readPasses(plan, text) });
  if (kind === 'frames') return change(readLength(text));
  return plan;
}

/** Holds that the action is long enough for. */
function holdsWithin(frames: number, text: string): number[] {
  const holds = readHolds(text);
  const longest = Math.max(...holds);
  if (longest > frames)
    throw new Error(`A hold of ${longest} is longer than the action, which has ${plural(frames, 'frame')}.`);
  return holds;
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
  const range = selected(gridNow()) ?? { first: i + 1, last: i + 1 };
  const each = (edit: (then: Plan, index: number) => Plan) => eachOf(range, plan, edit);
  switch (column.kind) {
    case 'text':
    case 'what':
      return each((then, index) => setText(then, placeOf(of.sheet, index), text.trim()));
    case 'hold':
      return retime(plan, range, readHold(text));
    case 'passes': {
      const names = readPasses(plan, text);
      return each((then, index) => setPasses(then, placeOf(of.sheet, index), names));
    }
    case 'cues':
      return each((then, index) => cuesWith(of, then, index, text));
    case 'axis': {
      const name = of.sheet.columns.axes[column.axis ?? -1]?.name ?? '';
      const position = readPosition(text);
      return each((then, index) => setAxisPosition(then, placeOf(of.sheet, index), name, position));
    }
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

/** Makes an edit of each exposure of a range, one after another. */
function eachOf(
  { first, last }: { first: number; last: number },
  plan: Plan,
  edit: (then: Plan, index: number) => Plan,
): Plan {
  if (last - first >= MOST_AT_ONCE)
    throw new Error(
      `At most ${MOST_AT_ONCE} exposures at once: what a whole action has stands in its own row.`,
    );
  let then = plan;
  for (let index = first - 1; index < last; index += 1) then = edit(then, index);
  return then;
}

function cuesWith(of: Sheeted, plan: Plan, i: number, text: string): Plan {
  const place: ExposurePlace = placeOf(of.sheet, i);
  const wanted = readCues(text);
  const gone = beginningCues(of, i).filter(({ kind }) => !wanted.some((cue) => cue.kind === kind));
  const cleared = gone.reduce((then, { kind }) => setCue(then, place, { kind, text: '' }), plan);
  return wanted.reduce((then, cue) => setCue(then, place, cue), cleared);
}

const BAD_ROWS =
  'Nothing was pasted, and nothing was changed. Correct these cells and paste again. Without headings the columns are action, frames, passes, cues.';

/** Pastes rows behind an exposure; says what is wrong with them, if anything is. */
export function pasteAt(i: number, text: string): void {
  const { plan, sheet } = sheetedNow();
  const place = sheet.exposures === 0 ? { shot: 1, exposure: 0 } : placeOf(sheet, i);
  const pasted = pasteRows(plan, place, text);
  const faults: readonly Fault[] = pasted.ok ? planDesk.change(pasted.plan) : pasted.faults;
  if (faults.length > 0) say(BAD_ROWS, true, faults);
  else if (pasted.ok) {
    say(`${plural(pasted.exposures, 'exposure')} pasted.`);
    setGrid({ at: { kind: 'exposure', index: i + pasted.exposures }, anchor: i + 1 });
  }
}

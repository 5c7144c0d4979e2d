/** What keys and buttons do with the rows. */
import type { Plan } from '../../engine/plan/schema.ts';
import {
  addAction,
  addShot,
  duplicate,
  insertAfter,
  mergeWithNext,
  moveShot,
  removeAction,
  removeExposures,
  removeShot,
  retime,
  splitAction,
  tick,
  untick,
} from '../../engine/sheet/edits.ts';
import { shotsOf } from '../../engine/sheet/shots.ts';
import { placeOf } from '../../engine/sheet/texts.ts';
import { plural } from '../format/numbers.ts';
import { holdText } from '../strip/notes.ts';
import { actionOf } from './cells.ts';
import { attempt, doIt } from './edits.ts';
import { gridNow, say, selected, setActionOpen, setGrid } from './gridStore.ts';
import { pausesOf } from './pauses.ts';
import type { Spot } from './rows.ts';
import { type Sheeted, sheetedNow } from './sheeted.ts';
import { tickedOf } from './ticked.ts';

/** Index of the first exposure that is not done; -1 if all are. */
export const nextOf = ({ sheet }: Sheeted): number => tickedOf(sheet).next;

const exposures = ({ first, last }: { first: number; last: number }): string =>
  first === last ? `Exposure ${first}` : `Exposures ${first} to ${last}`;

/** Goes to an exposure: opens its action and moves the cell there. */
export function goToExposure(index: number): void {
  const action = sheetedNow().sheet.columns.action[index];
  if (action !== undefined) setActionOpen(action, true);
  setGrid({ at: { kind: 'exposure', index }, anchor: null, typing: null });
}

/** Takes back or makes the ticks of a range: if all are done they are taken back. */
export function toggleDone(range: { first: number; last: number }): void {
  const { doneMs, action } = sheetedNow().sheet.columns;
  // Its last exposure ticked, it would close and take the cell out of sight.
  setActionOpen(action[range.last - 1] ?? 0, true);
  const all = doneMs.subarray(range.first - 1, range.last).every((ms) => !Number.isNaN(ms));
  if (all) doIt(`${exposures(range)} not done any more.`, (plan) => untick(plan, range));
  else doIt(`${exposures(range)} done.`, (plan) => tick(plan, range, Date.now()));
}

/** Ticks the next exposure and goes on to the one after. */
export function markNext(): void {
  const index = nextOf(sheetedNow());
  if (index < 0) return;
  const range = { first: index + 1, last: index + 1 };
  if (!doIt(`${exposures(range)} done.`, (plan) => tick(plan, range, Date.now()))) return;
  const then = nextOf(sheetedNow());
  if (then >= 0) setGrid({ at: { kind: 'exposure', index: then }, anchor: null, typing: null });
}

export function insertRows(count: number): void {
  const { at } = gridNow();
  const of = sheetedNow();
  if (at.kind === 'action') insertAtHead(of, at.index);
  if (at.kind !== 'exposure') return;
  const range = selected(gridNow());
  const after = (range?.last ?? 0) - 1;
  const place = of.sheet.exposures === 0 ? { shot: 1, exposure: 0 } : placeOf(of.sheet, after);
  if (doIt(`${plural(count, 'exposure')} inserted.`, (plan) => insertAfter(plan, place, count)))
    setGrid({ at: { kind: 'exposure', index: after + count }, anchor: count > 1 ? after + 1 : null });
}

/** A new action after the one that one is at. */
function insertAtHead(of: Sheeted, index: number): void {
  const found = actionOf(of, index);
  if (!found) return;
  if (doIt('Action inserted.', (plan) => addAction(plan, found.shot, found.number)))
    setGrid({ at: { kind: 'action', index: index + 1 }, anchor: null });
}

export function removeRows(): void {
  const { at } = gridNow();
  const of = sheetedNow();
  if (at.kind === 'exposure') {
    const range = selected(gridNow());
    if (!range || of.sheet.exposures === 0) return;
    const count = range.last - range.first + 1;
    if (
      !doIt(`${plural(count, 'exposure')} removed. Undo brings them back.`, (plan) =>
        removeExposures(plan, range),
      )
    )
      return;
    setGrid({ at: { kind: 'exposure', index: Math.max(0, range.first - 1) }, anchor: null });
    clampSpot();
  } else if (at.kind === 'action') {
    const found = actionOf(of, at.index);
    if (!found) return;
    const edit = (plan: Plan) => removeAction(plan, found.shot, found.number);
    if (doIt('Action removed with its exposures. Undo brings it back.', edit)) clampSpot();
  } else if (at.kind === 'shot') {
    if (doIt('Shot removed. Undo brings it back.', (plan) => removeShot(plan, at.index + 1))) clampSpot();
  }
}

const FIRST: Spot = { kind: 'exposure', index: 0 };

/** Index of the exposure that one is at, or after which work stops there; null on a heading. */
export function exposureAt({ plan, sheet }: Sheeted, { kind, index }: Spot): number | null {
  if (kind === 'pause') return pausesOf(plan, sheet)[index]?.after ?? null;
  return kind === 'exposure' ? index : null;
}

/** A cell on the sheet, where the one that one was at is gone. */
export function clampSpot(of = sheetedNow()): void {
  const { at, anchor } = gridNow();
  const spot = clamped(at, of);
  const last = of.sheet.exposures - 1;
  if (spot.kind !== at.kind || spot.index !== at.index || (anchor ?? 0) > last)
    setGrid({ at: spot, anchor: null });
}

/** The nearest spot that there is. */
export function clamped({ kind, index }: Spot, { plan, sheet }: Sheeted): Spot {
  if (kind === 'pause') {
    const { length } = pausesOf(plan, sheet);
    return length > 0 ? { kind, index: Math.min(length - 1, index) } : clamped(FIRST, { plan, sheet });
  }
  const counts = { shot: sheet.shots.length > 1 ? sheet.shots.length : 0, action: sheet.actions.length };
  if (kind === 'exposure' && sheet.exposures > 0)
    return { kind, index: Math.max(0, Math.min(sheet.exposures - 1, index)) };
  if (kind === 'shot' && counts.shot > 0) return { kind, index: Math.min(counts.shot - 1, index) };
  if (counts.action > 0) return { kind: 'action', index: Math.max(0, Math.min(counts.action - 1, index)) };
  return { kind: 'shot', index: 0 };
}

export function duplicateRows(): void {
  const range = selected(gridNow());
  if (!range) return;
  const count = range.last - range.first + 1;
  if (doIt(`${plural(count, 'exposure')} said once more.`, (plan) => duplicate(plan, range)))
    setGrid({ at: { kind: 'exposure', index: range.last + count - 1 }, anchor: range.last });
}

export function retimeRows(hold: number): void {
  const range = selected(gridNow());
  if (range) doIt(`${exposures(range)} ${holdText(hold)}.`, (plan) => retime(plan, range, hold));
}

export function splitHere(): void {
  const { at } = gridNow();
  const of = sheetedNow();
  if (at.kind !== 'exposure' || of.sheet.exposures === 0) return;
  const { action } = of.sheet.columns;
  if (action[at.index] !== action[at.index - 1]) {
    say('Not done: an action begins here already. On its own row, New action adds one after it.', true);
    return;
  }
  if (doIt('A new action begins here.', (plan) => splitAction(plan, placeOf(of.sheet, at.index))))
    setGrid({ at: { kind: 'action', index: (of.sheet.columns.action[at.index] ?? 0) + 1 }, column: 'text' });
}

/** Index of the action that one is in; null on a shot's row. */
export function actionAt(of: Sheeted, at: Spot): number | null {
  return at.kind === 'action' ? at.index : (of.sheet.columns.action[exposureAt(of, at) ?? -1] ?? null);
}

export function joinNext(): void {
  const of = sheetedNow();
  const found = actionOf(of, actionAt(of, gridNow().at) ?? -1);
  if (found) doIt('Joined with the next action.', (plan) => mergeWithNext(plan, found.shot, found.number));
}

export function newAction(): void {
  const of = sheetedNow();
  const { at } = gridNow();
  const index = actionAt(of, at);
  if (index !== null) insertAtHead(of, index);
  else if (at.kind === 'shot') doIt('Action added.', (plan) => addAction(plan, at.index + 1, 0));
}

/** Index of the shot that one is in. */
export function shotAt(of: Sheeted, at: Spot): number {
  if (at.kind === 'shot') return at.index;
  if (at.kind === 'action') return of.sheet.actions[at.index]?.shot ?? 0;
  return of.sheet.columns.shot[exposureAt(of, at) ?? -1] ?? 0;
}

export function newShot(): void {
  const of = sheetedNow();
  const shot = shotAt(of, gridNow().at);
  if (doIt('Shot added.', (plan) => addShot(plan, shot + 1)))
    setGrid({ at: { kind: 'shot', index: shot + 1 }, column: 'text', anchor: null });
}

export function moveShotBy(step: 1 | -1): void {
  const of = sheetedNow();
  const shot = shotAt(of, gridNow().at);
  if (doIt('Shot moved.', (plan) => moveShot(plan, shot + 1, shot + 1 + step)))
    setGrid({ at: { kind: 'shot', index: shot + step }, anchor: null });
}

/** Makes real shots of the clip that stands as one action. */
export function writeOut(): void {
  const error = attempt((plan) => ({ ...plan, sheet: { ...plan.sheet, shots: [...shotsOf(plan)] } }));
  say(error ?? 'Written out: the sheet now has a shot of its own.', error !== null);
}

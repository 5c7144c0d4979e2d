/** What the sheet says of one exposure in words; `i` is its index in the columns. */

import type { Action, Cue, Plan, Shot, Tick } from '../plan/schema.ts';
import { firstWhere } from '../search.ts';
import { labeller } from './labels.ts';
import { hasPass } from './passes.ts';
import { shotsOf } from './shots.ts';
import type { Sheet, SheetAction, SheetShot } from './types.ts';

/** Where an exposure is, as ticks and edits count: its shot, and its number within the shot, both from 1. */
export interface ExposurePlace {
  shot: number;
  exposure: number;
}

const shotAt = (sheet: Sheet, i: number): SheetShot => {
  const found = sheet.shots[sheet.columns.shot[i] ?? -1];
  if (!found) throw new RangeError(`exposure: found index ${i}, allowed: 0 to ${sheet.exposures - 1}`);
  return found;
};

/** Shot and number of an exposure. @throws RangeError if there is no such exposure */
export const placeOf = (sheet: Sheet, i: number): ExposurePlace => ({
  shot: (sheet.columns.shot[i] ?? -1) + 1,
  exposure: i + 2 - shotAt(sheet, i).firstExposure,
});

/** Index of an exposure; null if it is not on the sheet. */
export function indexAt(sheet: Sheet, { shot, exposure }: ExposurePlace): number | null {
  const placed = sheet.shots[shot - 1];
  return placed && exposure >= 1 && exposure <= placed.exposures ? placed.firstExposure + exposure - 2 : null;
}

// Rows are asked for one by one: what all of them need is put in order once.
const actionsOf = memory((shots: readonly Shot[]): Action[] => shots.flatMap(({ actions }) => actions));

const ownTexts = memory((details: Action['details']): Map<number, string> => {
  const texts = new Map<number, string>();
  for (const { exposure, text } of details) if (text !== null) texts.set(exposure, text);
  return texts;
});

function memory<Key extends object, Value>(make: (key: Key) => Value): (key: Key) => Value {
  const known = new WeakMap<Key, Value>();
  return (key) => {
    const found = known.get(key) ?? make(key);
    known.set(key, found);
    return found;
  };
}

/** What happens at an exposure: its own text, or that of its action. */
export function exposureText(plan: Plan, sheet: Sheet, i: number): string {
  const index = sheet.columns.action[i] as number;
  const action = actionsOf(shotsOf(plan))[index];
  if (!action) return '';
  const { firstExposure } = sheet.actions[index] as SheetAction;
  return ownTexts(action.details).get(i + 2 - firstExposure) ?? action.text;
}

/** Names of the passes of an exposure. */
export const passesOf = (plan: Plan, sheet: Sheet, i: number): string[] =>
  plan.sheet.passes.filter((_, p) => hasPass(sheet.columns.passes[i] as number, p)).map(({ name }) => name);

/** Timecode of an exposure's first frame. */
export const timecodeAt = (plan: Plan, sheet: Sheet, i: number): string =>
  labelsOf(plan)(shotAt(sheet, i).firstFrame + (sheet.columns.firstFrame[i] as number) - 1);

const labelsOf = memory(labeller);

const cuesByKind = memory((cues: Shot['cues']): Cue[][] => {
  const kinds = new Map<Cue['kind'], Cue[]>();
  for (const cue of [...cues].sort((a, b) => a.frame - b.frame)) {
    const kind = kinds.get(cue.kind) ?? [];
    kind.push(cue);
    kinds.set(cue.kind, kind);
  }
  return [...kinds.values()];
});

/** Cues, in order and apart from one another, that reach into a stretch of frames. */
function reachingInto(cues: readonly Cue[], firstFrame: number, lastFrame: number): Cue[] {
  const first = firstWhere(0, cues.length, (c) => {
    const { frame, frames } = cues[c] as Cue;
    return frame + frames - 1 >= firstFrame;
  });
  const found: Cue[] = [];
  for (let c = first; c < cues.length && (cues[c] as Cue).frame <= lastFrame; c += 1)
    found.push(cues[c] as Cue);
  return found;
}

/** Cues that fall within an exposure, wholly or in part, in order. */
export function cuesAt(plan: Plan, sheet: Sheet, i: number): Cue[] {
  const { shot, firstFrame, frames } = sheet.columns;
  const cues = shotsOf(plan)[shot[i] as number]?.cues;
  if (!cues || cues.length === 0) return [];
  const first = firstFrame[i] as number;
  const last = first + (frames[i] as number) - 1;
  return cuesByKind(cues)
    .flatMap((kind) => reachingInto(kind, first, last))
    .sort((a, b) => a.frame - b.frame);
}

/** The tick of an exposure; null if it is not in the camera. */
export const tickAt = (plan: Plan, sheet: Sheet, i: number): Tick | null =>
  plan.sheet.ticks[sheet.columns.tick[i] ?? -1] ?? null;

/** Planned for an exposure, hands on and off, minutes. */
export const takesMin = ({ columns: { minutes, rigS } }: Sheet, i: number): number =>
  (minutes[i] ?? 0) + (rigS[i] ?? 0) / 60;

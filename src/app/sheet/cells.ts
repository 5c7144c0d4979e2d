/** What the cells say, and what is read from them. */
import type { Action, Cue, Plan } from '../../engine/plan/schema.ts';
import { CUE_KINDS, secondOfKind } from '../../engine/sheet/edits.ts';
import { shotsOf } from '../../engine/sheet/shots.ts';
import { cuesAt, exposureText, passesOf, timecodeAt } from '../../engine/sheet/texts.ts';
import type { SheetAxis } from '../../engine/sheet/types.ts';
import { digitsFor, fixed, signed } from '../charts/format.ts';
import { numberText } from '../format/numbers.ts';
import type { Column } from './columns.ts';
import type { Spot } from './rows.ts';
import type { Sheeted } from './sheeted.ts';

/** `59–60`, or `59`. */
export const framesText = (first: number, frames: number): string =>
  frames === 1 ? String(first) : `${first}\u2013${first + frames - 1}`;

/** Lowest and highest step of an axis, and the decimals to show. */
export interface AxisRange {
  low: number;
  high: number;
  digits: number;
}

/** An axis over all exposures, or over all frames. */
export type TracedAxis = Pick<SheetAxis, 'name' | 'unit' | 'steps' | 'stepsPerUnit'>;

const ranges = new WeakMap<TracedAxis, AxisRange>();

export function rangeOf(axis: TracedAxis): AxisRange {
  const known = ranges.get(axis);
  if (known) return known;
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const step of axis.steps) {
    if (step < low) low = step;
    if (step > high) high = step;
  }
  if (high < low) [low, high] = [0, 0];
  const range = { low, high, digits: Math.max(1, digitsFor((high - low) / axis.stepsPerUnit)) };
  ranges.set(axis, range);
  return range;
}

/** Position of an axis at an exposure, in its unit. */
export const positionAt = ({ steps, stepsPerUnit }: TracedAxis, i: number): number =>
  (steps[i] ?? Number.NaN) / stepsPerUnit;

/** A position as it stands in the table; turning axes carry their sign. */
export const positionText = (axis: TracedAxis, value: number): string =>
  (axis.unit === 'deg' ? signed : fixed)(value, rangeOf(axis).digits);

/** `sound: knock; light: key off`. */
export const cuesText = (cues: readonly Cue[]): string =>
  cues.map(({ kind, text }) => `${kind}: ${text}`).join('; ');

/** An action of the plan by its index on the sheet: its shot and number, from 1, and itself. */
export function actionOf(
  { plan, sheet }: Sheeted,
  index: number,
): { shot: number; number: number; action: Action } | null {
  const placed = sheet.actions[index];
  if (!placed) return null;
  const first = sheet.actions.findIndex(({ shot }) => shot === placed.shot);
  const action = shotsOf(plan)[placed.shot]?.actions[index - first];
  return action ? { shot: placed.shot + 1, number: index - first + 1, action } : null;
}

/** Cues that begin at an exposure: what its cell is edited as. */
export function beginningCues({ plan, sheet }: Sheeted, i: number): Cue[] {
  const first = sheet.columns.firstFrame[i] ?? 0;
  return cuesAt(plan, sheet, i).filter(({ frame }) => frame >= first);
}

/** Text of a cell as one edits it; null where there is nothing to edit. */
export function editText(of: Sheeted, spot: Spot, column: Column): string | null {
  if (spot.kind === 'exposure') return exposureEdit(of, spot.index, column);
  if (spot.kind === 'shot')
    return column.kind === 'text' || column.kind === 'what'
      ? (of.sheet.shots[spot.index]?.name ?? null)
      : null;
  if (spot.kind === 'action') return actionEdit(of, spot.index, column);
  return null;
}

function exposureEdit(of: Sheeted, i: number, { kind, axis: a }: Column): string | null {
  const { plan, sheet } = of;
  if (kind === 'text' || kind === 'what') return exposureText(plan, sheet, i);
  if (kind === 'hold') return String(sheet.columns.frames[i]);
  if (kind === 'passes') return passesOf(plan, sheet, i).join(', ');
  if (kind === 'cues') return cuesText(beginningCues(of, i));
  const axis = kind === 'axis' ? sheet.columns.axes[a ?? -1] : undefined;
  return axis ? numberText(positionAt(axis, i), 4) : null;
}

function actionEdit(of: Sheeted, index: number, { kind }: Column): string | null {
  const found = actionOf(of, index);
  if (!found) return null;
  const { action } = found;
  if (kind === 'text' || kind === 'what') return action.text;
  if (kind === 'frames')
    return action.lengthIn === 'frames' ? String(action.frames) : `${numberText(action.lengthS)} s`;
  if (kind === 'hold') return action.holds.join(', ');
  if (kind === 'passes') return (action.passes ?? of.plan.sheet.passes.map(({ name }) => name)).join(', ');
  return null;
}

/** Reads the cues of a cell; without a kind it is a sound. @throws Error if two are of one kind */
export function readCues(text: string): { kind: Cue['kind']; text: string }[] {
  const cues = text.split(';').flatMap((part) => {
    const [, word, rest = ''] = /^\s*(\w+):\s*(.*)$/s.exec(part) ?? [];
    const kind = CUE_KINDS.find((name) => name === word?.toLowerCase());
    const cue = { kind: kind ?? 'sound', text: (kind ? rest : part).trim() } as const;
    return cue.text === '' ? [] : [cue];
  });
  const twice = secondOfKind(cues);
  if (twice)
    throw new Error(
      `One cue of a kind: “${twice.text}” is another ${twice.kind}. Kinds: ${CUE_KINDS.join(', ')}.`,
    );
  return cues;
}

/** Reads names of passes. @throws Error with the names that there are */
export function readPasses({ sheet }: Plan, text: string): string[] {
  const known = sheet.passes.map(({ name }) => name);
  const names = text
    .split(/[,;]/)
    .map((name) => name.trim())
    .filter((name) => name !== '');
  const found = names.map((name) => known.find((one) => one.toLowerCase() === name.toLowerCase()));
  if (names.length === 0 || found.includes(undefined))
    throw new Error(`Passes of this production: ${known.join(', ')}.`);
  return [...new Set(found as string[])];
}

/** Reads a pattern of holds: `2`, `1, 2`, `1 1 2`. @throws Error */
export function readHolds(text: string): number[] {
  const holds = text
    .split(/[\s,;]+/)
    .filter((part) => part !== '')
    .map(Number);
  if (holds.length === 0 || holds.some((hold) => !Number.isInteger(hold) || hold < 1))
    throw new Error('Whole numbers of frames, such as 2, or 1, 2 for a mix.');
  return holds;
}

/** A cell of copied text: never a formula, quoted where it would break a row. */
function copied(text: string): string {
  const safe = /^[=+\-@]/.test(text) ? `'${text}` : text;
  return /["\t\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** Rows as tab-separated text with headings, as they can be pasted here and into a spreadsheet. */
export function rowsText({ plan, sheet }: Sheeted, first: number, last: number): string {
  const lines = ['exposure\ttimecode\taction\tframes\tpass\tcues'];
  for (let i = first - 1; i < last; i += 1) {
    const cells = [
      String(i + 1),
      timecodeAt(plan, sheet, i),
      copied(exposureText(plan, sheet, i)),
      String(sheet.columns.frames[i]),
      copied(passesOf(plan, sheet, i).join(', ')),
      copied(cuesText(beginningCues({ plan, sheet }, i))),
    ];
    lines.push(cells.join('\t'));
  }
  return lines.join('\r\n');
}

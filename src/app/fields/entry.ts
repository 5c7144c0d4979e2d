/** What happens to a value on its way from a field into the plan. No DOM, so that it can be tested as it is. */
import { type Fault, type FieldInfo, pathText } from '../../engine/plan/faults.ts';
import { readPlan } from '../../engine/plan/parse.ts';
import { type Edit, editAll, partsOf } from '../../engine/plan/paths.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import { allowedText, type Codec } from '../format/allowed.ts';
import { infoAt } from '../store/infos.ts';
import { changeField, planDesk } from '../store/plan.ts';

/** A value, or why the text is none. */
export type Read = { value: number | null } | { error: string };

/** Reads a number field's text: its form, its range, whole or not. */
export function readField(text: string, info: FieldInfo, codec: Codec, present: number): Read {
  if (text.trim() === '' && info.optional) return { value: null };
  const value = codec.read(text, present);
  const { minimum = Number.NEGATIVE_INFINITY, maximum = Number.POSITIVE_INFINITY } = info;
  if (value === null || !Number.isFinite(value))
    return { error: `Not ${codec.kind}. ${allowedText(info, codec)}` };
  if (value < minimum || value > maximum || (info.whole && !Number.isInteger(value))) {
    return { error: allowedText(info, codec) };
  }
  return { value };
}

/** Label of the field that a fault's path names. */
function labelOf(path: string): string {
  try {
    return infoAt(path.replace(/\[(\d+)\]/g, '.$1')).title;
  } catch {
    return path;
  }
}

/** Faults of a change in one field, in words that stand beside that field. */
export function faultsText(faults: readonly Fault[], path: string): string | null {
  const [fault] = faults;
  if (!fault) return null;
  const [own, other] = [labelOf(pathText(partsOf(path))), labelOf(fault.path)];
  // Quotes belong to the file, not to the form.
  const allowed = fault.allowed.replace(/^text in quotes: /, '');
  return own === other ? `Allowed: ${allowed}.` : `Does not fit '${other}', which must be ${allowed}.`;
}

/** Puts a value into the plan. @returns why it does not fit, or null */
export const enter = (path: string, value: unknown, desk = planDesk): string | null =>
  faultsText(changeField(path, value, desk), path);

/** A value some steps on, within the range, free of binary dust. */
export function stepped(value: number, steps: number, info: FieldInfo): number {
  const step = info.step ?? (info.whole ? 1 : niceStep(value));
  const { minimum = Number.NEGATIVE_INFINITY, maximum = Number.POSITIVE_INFINITY } = info;
  const next = Number((value + steps * step).toFixed(9));
  return Math.min(maximum, Math.max(minimum, next));
}

// A tenth of the value's power of ten: 0.31 goes by 0.01, 31 by 1.
const niceStep = (value: number): number =>
  value === 0 ? 0.1 : 10 ** (Math.floor(Math.log10(Math.abs(value))) - 1);

/**
 * Puts a text into the plan.
 * @param put - makes the changed plan; by default the field alone changes
 * @returns why it does not fit, or null
 */
export function enterText(
  path: string,
  text: string,
  put: (plan: Plan, text: string) => Plan,
  desk = planDesk,
): string | null {
  const next = put(desk.store.getState().plan, text);
  const read = readPlan(next);
  return faultsText(read.ok ? desk.change(next, path) : read.faults, path);
}

/**
 * Puts several values into the plan, all or none.
 * @param gesture - changes in a row under one name are one step; without a name it is a step of its own
 * @returns why they do not fit, or null
 */
export function enterAll(
  edits: readonly Edit[],
  gesture: string | null = null,
  desk = planDesk,
): string | null {
  const next = editAll(desk.store.getState().plan, edits);
  const read = readPlan(next);
  const error = faultsText(read.ok ? desk.change(next, gesture) : read.faults, edits[0]?.[0] ?? '');
  // What was typed there before is not what stands there now.
  if (error === null) for (const [path] of edits) desk.drafts.set(path, null);
  return error;
}

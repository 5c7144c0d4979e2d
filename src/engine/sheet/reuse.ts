/**
 * What a later sheet may take from an earlier one: edits leave what they do not touch as the very same objects, so that
 * what was worked out of the same things is the same.
 */
import type { Plan } from '../plan/schema.ts';
import { HOURS, type WorkCalendar } from './calendar.ts';
import type { Exposures } from './exposures.ts';
import type { Sheet } from './types.ts';

/** What a sheet was worked out of. */
export interface Origin {
  plan: Plan;
  exposures: Exposures;
  calendar: WorkCalendar;
}

// Not a WeakMap: what is in one is only given back by the long collections of garbage, columns and all.
const ORIGIN = Symbol('origin');

/** What a sheet came from; null if it is not known. */
export const originOf = (sheet: Sheet | null): Origin | null =>
  (sheet as { [ORIGIN]?: Origin } | null)?.[ORIGIN] ?? null;

/** Notes beside a sheet, where nobody sees it, what it came from. */
export const withOrigin = (sheet: Sheet, origin: Origin): Sheet =>
  Object.defineProperty(sheet, ORIGIN, { value: origin, enumerable: false });

/** Whether two objects have the very same in all fields but some. */
export function sameBut<T extends object>(a: T, b: T, but: readonly (keyof T)[]): boolean {
  const keys = Object.keys(a) as (keyof T)[];
  return (
    keys.length === Object.keys(b).length &&
    keys.every((key) => Object.is(a[key], b[key]) || but.includes(key))
  );
}

/** Whether two columns say the same. */
export function sameColumn(a: Int32Array, b: Int32Array): boolean {
  if (a.length !== b.length) return false;
  for (let k = 0; k < a.length; k += 1) if (a[k] !== b[k]) return false;
  return true;
}

/** Whether nothing that the rig goes by has changed but, perhaps, the shots. */
export const sameRig = (a: Plan, b: Plan): boolean => sameBut(a, b, ['sheet', 'title', 'notes']);

/** Fields of the sheet that the exposures do not go by: what is done, and when there is work. */
const OF_THE_CLOCK = ['ticks', 'notes', 'testFrames', ...HOURS] as const;

/** Whether two plans have the same exposures. One without shots has its title for a name. */
export const sameExposures = (a: Plan, b: Plan): boolean =>
  sameBut(a, b, ['sheet', 'notes']) && sameBut(a.sheet, b.sheet, OF_THE_CLOCK);

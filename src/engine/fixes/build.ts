/** Building ways out: edits that end where a field's range ends, and values in order of distance. */
import type { Finding } from '../findings/types.ts';
import { crossFaults } from '../plan/check.ts';
import { type FieldInfo, fieldInfo } from '../plan/faults.ts';
import { type Edit, editAll, getAt, partsOf } from '../plan/paths.ts';
import type { Plan } from '../plan/schema.ts';
import type { Way } from './types.ts';

const infos = new Map<string, FieldInfo>();

/** What the plan's table says of the field at a path, remembered. Fields of one list are alike. */
function infoAt(path: string): FieldInfo {
  const pattern = path.replace(/\.\d+(?=\.|$)/g, '.0');
  const info = infos.get(pattern) ?? fieldInfo(partsOf(pattern));
  infos.set(pattern, info);
  return info;
}

/** The allowed range of the number at a path. */
export function rangeAt(path: string): { minimum: number; maximum: number } {
  const { minimum = Number.NEGATIVE_INFINITY, maximum = Number.POSITIVE_INFINITY } = infoAt(path);
  return { minimum, maximum };
}

function isAllowed([path, value]: Edit): boolean {
  if (typeof value !== 'number') return true;
  const { minimum, maximum } = rangeAt(path);
  return value >= minimum && value <= maximum;
}

/** Whether an edit puts there what stands there. */
const isIdle = (plan: Plan, [path, value]: Edit): boolean => {
  const present = getAt(plan, path);
  return Object.is(present, value) || JSON.stringify(present) === JSON.stringify(value);
};

/**
 * The plan with all edits made; null if they change nothing, a number leaves its field's range, or they make no plan
 * that can be read.
 */
export function planWith(plan: Plan, edits: readonly Edit[]): Plan | null {
  if (!edits.every(isAllowed) || edits.every((edit) => isIdle(plan, edit))) return null;
  const next = editAll(plan, edits);
  return crossFaults(next).length === 0 ? next : null;
}

/** A number without the noise of sums in its last places: what is written into a plan. */
export const tidy = (value: number, decimals = 6): number => Number(value.toFixed(decimals));

/** The same, never below it or never above it. */
export const tidyUp = (value: number, unit: number): number => tidy(Math.ceil(value / unit - 1e-9) * unit, 9);
export const tidyDown = (value: number, unit: number): number =>
  tidy(Math.floor(value / unit + 1e-9) * unit, 9);

/** A way before its ends are known. */
export interface WayGiven {
  kind: string;
  steps: number;
  /** Where the search begins; brought into 1 to `steps`. */
  first?: number;
  at: (step: number) => Plan | null;
  label: (changed: Plan) => string;
  needs?: string | ((changed: Plan) => string | null) | null;
}

/** A way, or none if it has no values. */
export function way({ kind, steps, first = 1, at, label, needs = null }: WayGiven): Way[] {
  if (!(steps >= 1)) return [];
  const start = Number.isFinite(first) ? Math.round(first) : steps;
  const within = (step: number) => (step >= 1 && step <= steps ? at(step) : null);
  return [
    {
      kind,
      steps,
      first: Math.min(steps, Math.max(1, start)),
      at: within,
      label,
      needs: typeof needs === 'function' ? needs : () => needs,
    },
  ];
}

/** A way over the values of a list, nearest first. */
export const wayOver = <T>(
  values: readonly T[],
  { plan, edits, ...given }: Omit<WayGiven, 'steps' | 'at'> & { plan: Plan; edits: (value: T) => Edit[] },
): Way[] =>
  way({
    ...given,
    steps: values.length,
    at: (step) => {
      const value = values[step - 1];
      return value === undefined ? null : planWith(plan, edits(value));
    },
  });

/** Something that is either so or not; no way where it is so already. */
export function switchWay(
  plan: Plan,
  edits: readonly Edit[],
  given: Omit<WayGiven, 'steps' | 'at' | 'first'>,
): Way[] {
  if (edits.every((edit) => isIdle(plan, edit))) return [];
  return way({ ...given, steps: 1, at: () => planWith(plan, edits) });
}

/** A number at a path, changed step by step. */
export interface Stepped {
  kind: string;
  path: string;
  /** How far one step goes; its sign says which way. */
  by: number;
  /** The value that should just suffice; the search begins there. */
  wanted?: number;
  /** An end before that of the field's range. */
  until?: number;
  label: (value: number) => string;
  needs?: string | ((value: number) => string | null) | null;
}

/** The mark of the grid at a value or just behind it, as one goes: below it going up, above it going down. */
const onGrid = (value: number, by: number): number => Math.floor(value / by + 1e-9) * by;

/** A way along a number of the plan; its values lie on the grid of its step. */
export function stepsOf(plan: Plan, { kind, path, by, wanted, until, label, needs = null }: Stepped): Way[] {
  const present = getAt(plan, path);
  if (typeof present !== 'number') return [];
  const { minimum, maximum } = rangeAt(path);
  const end = by > 0 ? Math.min(maximum, until ?? maximum) : Math.max(minimum, until ?? minimum);
  const start = onGrid(present, by);
  const valueAt = (step: number) => tidy(start + step * by, 9);
  const presentIn = (changed: Plan) => getAt(changed, path) as number;
  return way({
    kind,
    steps: Math.floor((end - start) / by + 1e-9),
    first: wanted === undefined ? 1 : Math.ceil((wanted - start) / by - 1e-9),
    at: (step) => planWith(plan, [[path, valueAt(step)]]),
    label: (changed) => label(presentIn(changed)),
    needs: typeof needs === 'function' ? (changed) => needs(presentIn(changed)) : needs,
  });
}

/** A number that a finding carries. */
export const numberIn = ({ values }: Finding, name: string): number => Number(values[name] ?? Number.NaN);

/** A word that a finding carries. */
export const wordIn = ({ values }: Finding, name: string): string => String(values[name] ?? '');

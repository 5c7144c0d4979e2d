/** Paths into the plan, written with dots: `rig.axes.0.maxSpeed`. */
import type { Plan } from './schema.ts';

type Part = string | number;

const cache = new Map<string, readonly Part[]>();

/** Parts of a dotted path; list places are numbers. */
export function partsOf(path: string): readonly Part[] {
  let parts = cache.get(path);
  if (!parts) {
    parts = path.split('.').map((part) => (/^\d+$/.test(part) ? Number(part) : part));
    cache.set(path, parts);
  }
  return parts;
}

/** What stands at a path; undefined if the path leads nowhere. */
export function getAt(plan: Plan, path: string): unknown {
  let value: unknown = plan;
  for (const part of partsOf(path)) {
    if (value === null || typeof value !== 'object') return undefined;
    value = (value as Record<Part, unknown>)[part];
  }
  return value;
}

function put(target: unknown, parts: readonly Part[], value: unknown): unknown {
  const [part, ...rest] = parts;
  if (part === undefined) return value;
  const copy: Record<Part, unknown> = Array.isArray(target)
    ? ([...target] as never)
    : { ...(target as object) };
  copy[part] = put(copy[part], rest, value);
  return copy;
}

/** The plan with another value at a path; everything off the path is shared with the old one. */
export const setAt = (plan: Plan, path: string, value: unknown): Plan =>
  put(plan, partsOf(path), value) as Plan;

/** A path and the value to put there. */
export type Edit = readonly [path: string, value: unknown];

/** The plan with all edits made. */
export const editAll = (plan: Plan, edits: readonly Edit[]): Plan =>
  edits.reduce((next, [path, value]) => setAt(next, path, value), plan);

/** What differs between two plans, as values at paths: small enough to send, to show, and to make again. */
import { setAt } from './paths.ts';
import type { Plan } from './schema.ts';

/** One value that differs. */
export interface Change {
  /** Dotted path, as `setAt` takes it: `rig.axes.0.maxSpeed`. A list of another length is one value. */
  path: string;
  from: unknown;
  to: unknown;
}

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Values with names inside: fields of a section, or members of two lists of one length. */
function parts(from: unknown, to: unknown): readonly string[] | null {
  if (Array.isArray(from) && Array.isArray(to) && from.length === to.length)
    return from.map((_, index) => String(index));
  if (!isRecord(from) || !isRecord(to)) return null;
  const names = Object.keys(from);
  // Eases of two kinds have other fields: they are one value.
  const same = names.length === Object.keys(to).length && names.every((name) => Object.hasOwn(to, name));
  return same ? names : null;
}

function between(path: string, from: unknown, to: unknown): Change[] {
  if (Object.is(from, to)) return [];
  const names = parts(from, to);
  if (names === null) {
    return JSON.stringify(from) === JSON.stringify(to) ? [] : [{ path, from, to }];
  }
  const at = (value: unknown, name: string) => (value as Record<string, unknown>)[name];
  return names.flatMap((name) =>
    between(path === '' ? name : `${path}.${name}`, at(from, name), at(to, name)),
  );
}

/** Every value that differs, in the order of the plan file. Equal plans give none. */
export const changesBetween = (before: Plan, after: Plan): Change[] => between('', before, after);

/** The plan with all changes made, each to its `to`. Made twice they change nothing more. */
export const withChanges = (plan: Plan, changes: readonly Change[]): Plan =>
  changes.reduce((next, { path, to }) => setAt(next, path, to), plan);

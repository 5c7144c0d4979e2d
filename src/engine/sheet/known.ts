/** The sheet of a plan, worked out once for all its workings; and which of its parts are of note. */
import type { Plan } from '../plan/schema.ts';
import type { Worked } from '../working/make.ts';
import { sheetOf } from './sheet.ts';
import type { Sheet } from './types.ts';

const known = new WeakMap<Plan, Sheet>();

/** The sheet of a plan; null if that is no stop-motion. */
export function knownSheet(plan: Plan): Sheet | null {
  if (plan.technique !== 'stopMotion') return null;
  const sheet = known.get(plan) ?? sheetOf(plan);
  known.set(plan, sheet);
  return sheet;
}

/** Whole numbers from 0 to before another, each once, in order. */
const within = (numbers: readonly number[], count: number): number[] =>
  [...new Set(numbers)].filter((number) => number >= 0 && number < count).sort((a, b) => a - b);

/** The exposures, actions, shots and days that come first, next and last, counted from 0. */
export function sheetNotes({ plan }: Worked): Record<'exposures' | 'actions' | 'shots' | 'days', number[]> {
  const sheet = knownSheet(plan);
  if (!sheet) return { exposures: [], actions: [], shots: [], days: [] };
  const { exposures, actions, shots, days, columns } = sheet;
  const next = columns.doneMs.findIndex((ms) => Number.isNaN(ms));
  return {
    exposures: within([0, next, exposures - 1], exposures),
    actions: within([0, actions.length - 1], actions.length),
    shots: within([0, shots.length - 1], shots.length),
    days: within([0, days.length - 1], days.length),
  };
}

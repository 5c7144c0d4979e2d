/** The exposure sheet of the present plan: worked out once for each plan. */
import { useEffect, useReducer } from 'react';
import type { Plan } from '../../engine/plan/schema.ts';
import { sheetOf } from '../../engine/sheet/sheet.ts';
import type { Sheet } from '../../engine/sheet/types.ts';
import { currentPlan, usePlan } from '../store/plan.ts';
import { afterPaint } from '../store/schedules.ts';

/** A plan and its sheet. */
export interface Sheeted {
  plan: Plan;
  sheet: Sheet;
}

let last: Sheeted | null = null;

/** A plan with its sheet; the same object for the same plan. */
export function sheeted(plan: Plan): Sheeted {
  if (last?.plan !== plan) last = { plan, sheet: sheetOf(plan, { before: last?.sheet ?? null }) };
  return last;
}

/** The present plan with its sheet. */
export const sheetedNow = (): Sheeted => sheeted(currentPlan());

/** Sheets longer than this follow the edits a paint later, so that what was typed stands at once. */
const LONG = 100_000;

/** The sheet to show: that of the present plan, or for a moment the one before. */
export function useSheeted(): Sheeted {
  const plan = usePlan((present) => present);
  const [, redraw] = useReducer((n: number) => n + 1, 0);
  const behind = last !== null && last.plan !== plan && last.sheet.exposures > LONG ? last : null;
  useEffect(() => {
    if (!behind) return;
    afterPaint(() => {
      sheetedNow();
      redraw();
    });
  }, [behind]);
  return behind ?? sheeted(plan);
}

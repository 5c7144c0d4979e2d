/** Puts a plan into the form in which it is kept. */
import programMark from 'virtual:mark';
import type { Plan } from '../../engine/plan/schema.ts';
import { serialisePlan } from '../../engine/plan/serialise.ts';
import type { Kept } from './kept.ts';

/** A plan as it is kept. */
export const keepable = (plan: Plan): Kept => ({ text: serialisePlan(plan), mark: programMark });

import { PLAN_FORMAT, PLAN_VERSION } from './constants.ts';
import type { Plan } from './schema.ts';

/** The plan as the text of a plan file, indented, with a line end at the end. */
export const serialisePlan = (plan: Plan): string =>
  `${JSON.stringify({ ...plan, format: PLAN_FORMAT, version: PLAN_VERSION }, null, 2)}\n`;

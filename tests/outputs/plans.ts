/** Plans made in the tests: what is said here, and the defaults for the rest. */
import { readPlan } from '../../src/engine/plan/parse.ts';
import type { Plan } from '../../src/engine/plan/schema.ts';

/** A plan file's value with the fields given; the rest is left to the defaults. */
export const planFile = (fields: object): object => ({ format: 'escapement-plan', version: 1, ...fields });

/**
 * A plan with the fields given.
 * @throws Error with the faults, if there are any
 */
export function planOf(fields: object): Plan {
  const parsed = readPlan(planFile(fields));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults, null, 2));
  return parsed.plan;
}

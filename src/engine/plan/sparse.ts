/** A plan file without what the defaults fill in again: as short as it can be written. */
import type * as z from 'zod/mini';
import { PLAN_FORMAT, PLAN_VERSION } from './constants.ts';
import { type Plan, planSchema } from './schema.ts';

type AnySchema = z.core.$ZodType;

/** What a wrapper, an object or a list is made of. */
interface Def {
  type: string;
  innerType?: AnySchema;
  shape?: Record<string, AnySchema>;
  element?: AnySchema;
}

const defOf = (schema: AnySchema): Def => schema._zod.def as Def;

/** What a field reads as if it is left out, as JSON; null where it may not be. */
const leftOut = new WeakMap<AnySchema, string | null>();

function leftOutOf(schema: AnySchema): string | null {
  let text = leftOut.get(schema);
  if (text === undefined) {
    const read = (schema as z.ZodMiniType).safeParse(undefined);
    text = read.success ? JSON.stringify(read.data) : null;
    leftOut.set(schema, text);
  }
  return text;
}

/** Whether a value reads the same as one left out. */
const isDefault = (schema: AnySchema, value: unknown): boolean => leftOutOf(schema) === JSON.stringify(value);

/** The schema under defaults and null. */
function bare(schema: AnySchema): AnySchema {
  const { innerType } = defOf(schema);
  return innerType ? bare(innerType) : schema;
}

function sparse(schema: AnySchema, value: unknown): unknown {
  const inner = bare(schema);
  const { shape, element } = defOf(inner);
  if (element && Array.isArray(value)) return value.map((member) => sparse(element, member));
  if (!shape || value === null || typeof value !== 'object') return value;
  const fields = value as Record<string, unknown>;
  return Object.fromEntries(
    Object.entries(shape)
      .filter(([name, field]) => !isDefault(field, fields[name]))
      .map(([name, field]) => [name, sparse(field, fields[name])]),
  );
}

/**
 * The plan as the value of a plan file, without the fields that stand at their defaults.
 *
 * `readPlan` makes the same plan of it again, as long as the defaults stay what they are: one that changes is a
 * migration.
 * @returns JSON, with `format` and `version`
 */
export const sparsePlan = (plan: Plan): Record<string, unknown> => ({
  format: PLAN_FORMAT,
  version: PLAN_VERSION,
  ...(sparse(planSchema, plan) as Record<string, unknown>),
});

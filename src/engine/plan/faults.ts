/** What the table of fields says of a field, and the faults of a value that does not fit it. */
import type * as z from 'zod/mini';
import { type Fault, foundText, pathText } from './fault.ts';
import { type FieldMeta, fieldRegistry } from './fields.ts';
import { planSchema } from './schema.ts';

export { type Fault, faultSentence, foundText, pathText } from './fault.ts';

/** What the form needs to know about one field. */
export interface FieldInfo extends FieldMeta {
  /** Smallest and largest value, for numbers. */
  minimum?: number;
  maximum?: number;
  /** True where only whole numbers are allowed. */
  whole: boolean;
  /** True where `null` says 'not given'. */
  optional: boolean;
  /** The words of a choice. */
  words?: readonly string[];
  /** What is allowed, in words. */
  allowed: string;
}

type AnySchema = z.core.$ZodType;
type PathPart = string | number;

/** Ends of a range, of a number or of a length. */
interface Limits {
  minimum?: number;
  maximum?: number;
  whole?: boolean;
}

/** The limits that the checks of a schema set. */
function limitsOf(schema: AnySchema): Limits {
  const limits: Limits = {};
  const { checks = [] } = schema._zod.def as { checks?: readonly z.core.$ZodCheck[] };
  for (const check of checks) {
    const def = check._zod.def as { check: string; value?: number; minimum?: number; maximum?: number };
    if (def.check === 'number_format') limits.whole = true;
    if (def.check === 'greater_than' && def.value !== undefined) limits.minimum = def.value;
    if (def.check === 'less_than' && def.value !== undefined) limits.maximum = def.value;
    if (def.check === 'min_length' && def.minimum !== undefined) limits.minimum = def.minimum;
    if (def.check === 'max_length' && def.maximum !== undefined) limits.maximum = def.maximum;
  }
  return limits;
}

/** The schema under defaults and null. */
function bare(schema: AnySchema): { schema: AnySchema; optional: boolean } {
  const def = schema._zod.def as { type: string; innerType?: AnySchema };
  if ((def.type === 'default' || def.type === 'prefault') && def.innerType) return bare(def.innerType);
  if (def.type === 'nullable' && def.innerType) return { schema: bare(def.innerType).schema, optional: true };
  return { schema, optional: false };
}

/** What is registered of a field: on the schema, or on what it wraps. */
function metaOf(schema: AnySchema): FieldMeta | undefined {
  const { innerType } = schema._zod.def as { innerType?: AnySchema };
  return fieldRegistry.get(schema) ?? (innerType && metaOf(innerType));
}

function child(schema: AnySchema, part: PathPart): AnySchema | undefined {
  const inner = bare(schema).schema;
  const def = inner._zod.def as {
    type: string;
    shape?: Record<string, AnySchema>;
    element?: AnySchema;
    options?: AnySchema[];
  };
  if (def.type === 'object') return Object.hasOwn(def.shape ?? {}, part) ? def.shape?.[part] : undefined;
  if (def.type === 'array') return def.element;
  if (def.type === 'union') {
    // The kind of an ease is one field with several words, whichever ease stands there.
    if (part === 'kind') return inner;
    for (const option of def.options ?? []) {
      const found = child(option, part);
      if (found) return found;
    }
  }
  return undefined;
}

function schemaAt(path: readonly PathPart[]): AnySchema | undefined {
  let schema: AnySchema | undefined = planSchema;
  for (const part of path) schema = schema && child(schema, part);
  return schema;
}

const number = new Intl.NumberFormat('en', { maximumSignificantDigits: 12, useGrouping: false });

function allowedOf(schema: AnySchema): string {
  const { schema: inner, optional } = bare(schema);
  const def = inner._zod.def as {
    type: string;
    entries?: Record<string, string>;
    values?: readonly unknown[];
    options?: AnySchema[];
  };
  const orNull = optional ? ', or null' : '';
  switch (def.type) {
    case 'number': {
      const limits = limitsOf(inner);
      const unit = fieldRegistry.get(inner)?.unit;
      const kind = limits.whole ? 'a whole number' : 'a number';
      const range = `${kind} from ${number.format(limits.minimum ?? 0)} to ${number.format(limits.maximum ?? 0)}`;
      return `${range}${unit ? ` (${unit})` : ''}${orNull}`;
    }
    case 'enum':
      return `one of ${Object.values(def.entries ?? {}).join(', ')}${orNull}`;
    case 'literal':
      return `${def.values?.map((value) => JSON.stringify(value)).join(' or ')}${orNull}`;
    case 'boolean':
      return `true or false${orNull}`;
    case 'string': {
      const form = fieldRegistry.get(inner)?.form;
      if (form) return `text in quotes: ${form}${orNull}`;
      const limits = limitsOf(inner);
      const least = limits.minimum ? `${limits.minimum}` : '0';
      return `text of ${least} to ${limits.maximum ?? 'any number of'} characters${orNull}`;
    }
    case 'array': {
      const limits = limitsOf(inner);
      return `a list of ${limits.minimum ?? 0} to ${limits.maximum ?? 'any number of'} members`;
    }
    case 'union':
      return `one of ${easeKinds(def.options ?? []).join(', ')} with its figures`;
    default:
      return 'a group of fields in { }';
  }
}

const easeKinds = (options: readonly AnySchema[]): string[] =>
  options.flatMap((option) => {
    const kind = child(option, 'kind');
    return kind ? (kind._zod.def as unknown as { values: string[] }).values : [];
  });

/**
 * Label, unit, range and help of one field of the plan.
 * @param path - parts of the path; any index for a list member, e.g. `['rig', 'axes', 0, 'maxSpeed']`
 * @throws RangeError if the plan has no such field
 */
export function fieldInfo(path: readonly PathPart[]): FieldInfo {
  const schema = schemaAt(path);
  if (!schema) throw new RangeError(`no field ${pathText(path)} in a plan`);
  const { schema: inner, optional } = bare(schema);
  const def = inner._zod.def as { type: string; entries?: Record<string, string>; options?: AnySchema[] };
  const words = def.entries ? Object.values(def.entries) : easeKinds(def.options ?? []);
  const limits = limitsOf(inner);
  const meta = metaOf(schema) ?? { title: String(path.at(-1)) };
  return {
    ...meta,
    ...(limits.minimum !== undefined && def.type === 'number' ? { minimum: limits.minimum } : {}),
    ...(limits.maximum !== undefined && def.type === 'number' ? { maximum: limits.maximum } : {}),
    ...(words.length > 0 ? { words } : {}),
    whole: limits.whole ?? false,
    optional,
    allowed: allowedOf(schema),
  };
}

function valueAt(root: unknown, path: readonly PropertyKey[]): unknown {
  let value: unknown = root;
  for (const part of path) {
    if (value === null || typeof value !== 'object' || !Object.hasOwn(value, part)) return undefined;
    value = (value as Record<PropertyKey, unknown>)[part];
  }
  return value;
}

/** A name that somebody else made up may be as long as the file. */
const shortened = (key: string): string => (key.length > 60 ? `${key.slice(0, 57)}…` : key);

/** Faults of a value that does not fit the schema, in the order of the file's fields. */
export function schemaFaults(input: unknown, error: z.core.$ZodError): Fault[] {
  return error.issues.flatMap((issue) => {
    const parts = issue.path as PathPart[];
    const path = pathText(parts);
    const found = foundText(valueAt(input, parts));
    if (issue.code === 'unrecognized_keys') {
      const schema = schemaAt(parts);
      const def = schema && (bare(schema).schema._zod.def as { shape?: Record<string, unknown> });
      const known = def?.shape ? Object.keys(def.shape).join(', ') : 'no further field';
      return issue.keys.map(shortened).map((key) => ({
        path: path === '' ? key : `${path}.${key}`,
        found: 'a field that plans do not have',
        allowed: known,
      }));
    }
    if (issue.code === 'invalid_union') {
      const options = (issue as { options?: readonly unknown[] }).options;
      if (options) return [{ path, found, allowed: `one of ${options.join(', ')}` }];
    }
    const schema = schemaAt(parts);
    return [{ path, found, allowed: schema ? allowedOf(schema) : issue.message }];
  });
}

/**
 * The building blocks of the plan's one table of fields.
 *
 * Every quantity of the plan is declared once, with its title, unit, allowed range, default and a sentence.
 * The TypeScript type, the faults of a bad file, the JSON Schema in `public/` and the hints of the form all
 * come from that one declaration.
 */

import * as z from 'zod/mini';
import { MAX_NAME } from './constants.ts';

// A strict content security policy forbids compiling validators at run time.
z.config({ jitless: true });

/** What a person needs to know to fill in one field. */
export interface FieldMeta {
  /** Label on the form, e.g. `Settle after moving`. */
  title: string;
  /** Unit shown behind the value, e.g. `s`. Absent for counts and words. */
  unit?: string;
  /** One sentence of help. */
  description?: string;
  /** Step of the arrow keys and of the − and + buttons. */
  step?: number;
  /** Form of the text, in words, where it has a fixed one. */
  form?: string;
}

/** Metadata of every declared field, looked up by schema. */
export const fieldRegistry = z.registry<FieldMeta>();

type NumberMeta = FieldMeta & { minimum: number; maximum: number };

function bounded(meta: NumberMeta, whole: boolean) {
  const { minimum, maximum, ...field } = meta;
  const schema = whole
    ? z.number().check(z.int(), z.gte(minimum), z.lte(maximum))
    : z.number().check(z.gte(minimum), z.lte(maximum));
  return schema.register(fieldRegistry, field);
}

/** A number with a unit, an allowed range (both ends included) and a default. */
export const quantity = (meta: NumberMeta, byDefault: number) => z._default(bounded(meta, false), byDefault);

/** A whole number with an allowed range (both ends included) and a default. */
export const count = (meta: NumberMeta, byDefault: number) => z._default(bounded(meta, true), byDefault);

/** Like {@link quantity}, but `null` says 'not given: work it out'. */
export const optionalQuantity = (meta: NumberMeta) =>
  z._default(z.nullable(bounded(meta, false)).register(fieldRegistry, withoutRange(meta)), null);

const withoutRange = ({ minimum: _minimum, maximum: _maximum, ...field }: NumberMeta): FieldMeta => field;

/** A line of text, at most `longest` characters. */
export const text = (meta: FieldMeta & { longest: number; shortest?: number }, byDefault: string) => {
  const { longest, shortest = 0, ...field } = meta;
  return z._default(
    z.string().check(z.minLength(shortest), z.maxLength(longest)).register(fieldRegistry, field),
    byDefault,
  );
};

/** Text of a fixed form, e.g. a date. `form` says the form in words and is what a fault shows as allowed. */
export const formattedText = (meta: FieldMeta & { pattern: RegExp; form: string }, byDefault: string) => {
  const { pattern, ...field } = meta;
  return z._default(z.string().check(z.regex(pattern, meta.form)).register(fieldRegistry, field), byDefault);
};

/** A switch. */
export const flag = (meta: FieldMeta, byDefault: boolean) =>
  z._default(z.boolean().register(fieldRegistry, meta), byDefault);

/** One word out of a list. */
export const choice = <const T extends readonly [string, ...string[]]>(
  meta: FieldMeta,
  words: T,
  byDefault: T[number],
) => z._default(z.enum(words).register(fieldRegistry, meta), byDefault as never);

/** A group of fields; left out of a file it is there with its defaults. */
export const section = <T extends z.core.$ZodLooseShape>(shape: T) =>
  z.prefault(z.strictObject(shape), {} as never);

/** What the user calls one member of a list. */
export const name = (byDefault: string) =>
  text({ title: 'Name', description: 'What you call it.', shortest: 1, longest: MAX_NAME }, byDefault);

/** A share from 0 to 1, or to a larger `maximum`. */
export const share = (title: string, description: string, byDefault: number, maximum = 1) =>
  quantity({ title, description, unit: 'share', minimum: 0, maximum, step: 0.05 }, byDefault);

/** A draw in watts. */
export const watts = (title: string, description: string, byDefault = 0) =>
  quantity({ title, description, unit: 'W', minimum: 0, maximum: 1000, step: 0.1 }, byDefault);

/** Name of the source that feeds something; null if none does. */
export const sourceName = z._default(
  z.nullable(z.string().check(z.minLength(1), z.maxLength(40))).register(fieldRegistry, {
    title: 'Fed by',
    description: 'Name of the source that feeds it; none if its draw does not matter.',
  }),
  null,
);

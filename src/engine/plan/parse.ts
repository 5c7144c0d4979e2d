/** Text in, Plan or a list of named faults out; and back. */
import { crossFaults } from './check.ts';
import { type Fault, foundText, schemaFaults } from './faults.ts';
import { migrate, READABLE_VERSIONS } from './migrate.ts';
import { memberSchemas, PLAN_FORMAT, PLAN_VERSION, type Plan, planSchema } from './schema.ts';

/** A plan, or everything that is wrong with the text. */
export type Parsed = { ok: true; plan: Plan } | { ok: false; faults: Fault[] };

/** Largest plan file that is read, in characters. */
export const MAX_PLAN_CHARACTERS = 4_000_000;

/** A new plan: every field at its default, shootable as it stands. */
export const defaultPlan = (): Plan => planSchema.parse({});

/** A list member with every field at its default. */
export const newAxis = () => memberSchemas.axis.parse({});
export const newSource = () => memberSchemas.source.parse({});
export const newLoad = () => memberSchemas.load.parse({});
export const newCard = () => memberSchemas.card.parse({});

const fail = (path: string, found: string, allowed: string): Parsed => ({
  ok: false,
  faults: [{ path, found, allowed }],
});

/** Says where JSON text breaks off, as far as the reader's message tells. */
function jsonFault(text: string, error: unknown): Parsed {
  const message = error instanceof Error ? error.message : '';
  const position = /position (\d+)/.exec(message)?.[1];
  const said = /line (\d+) column (\d+)/.exec(message);
  let line = said?.[1];
  let column = said?.[2];
  if (!line && position) {
    const before = text.slice(0, Number(position)).split('\n');
    line = String(before.length);
    column = String((before.at(-1)?.length ?? 0) + 1);
  }
  const atEnd = /end of (JSON|data|input)|unterminated/i.test(message);
  const where = line ? `line ${line}, column ${column}` : atEnd ? 'the end of the file' : 'the text';
  const found = atEnd && !line ? 'text that breaks off' : `text that is not JSON at ${where}`;
  return fail('', found, 'a plan file: JSON text in { }');
}

/**
 * Reads a plan file.
 * @param text - the whole file, JSON with `"format": "escapement-plan"` and a `"version"`
 * @returns the plan with defaults filled in, or all faults found, each with its path. Never throws.
 */
export function parsePlan(text: string): Parsed {
  if (text.length > MAX_PLAN_CHARACTERS) {
    return fail('', `${text.length} characters`, `at most ${MAX_PLAN_CHARACTERS} characters`);
  }
  let file: unknown;
  try {
    // A byte order mark is not JSON, but editors write one.
    file = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    return jsonFault(text, error);
  }
  return readPlan(file);
}

/** Like {@link parsePlan}, for a value that is already parsed. */
export function readPlan(file: unknown): Parsed {
  if (file === null || typeof file !== 'object' || Array.isArray(file)) {
    return fail('', foundText(file), 'a plan file: JSON text in { }');
  }
  const { format, version } = file as Record<string, unknown>;
  if (format !== PLAN_FORMAT) return fail('format', foundText(format), `"${PLAN_FORMAT}"`);
  if (typeof version !== 'number' || !READABLE_VERSIONS.includes(version)) {
    return fail(
      'version',
      foundText(version),
      `one of the versions read here: ${READABLE_VERSIONS.join(', ')}`,
    );
  }
  const present = migrate(file as Record<string, unknown>, version);
  const result = planSchema.safeParse(present);
  if (!result.success) return { ok: false, faults: schemaFaults(present, result.error) };
  const faults = crossFaults(result.data);
  return faults.length === 0 ? { ok: true, plan: result.data } : { ok: false, faults };
}

/** The plan as the text of a plan file, indented, with a line end at the end. */
export const serialisePlan = (plan: Plan): string =>
  `${JSON.stringify({ ...plan, format: PLAN_FORMAT, version: PLAN_VERSION }, null, 2)}\n`;

/** Text in, Plan or a list of named faults out; and back. */
import { crossFaults } from './check.ts';
import { PLAN_FORMAT } from './constants.ts';
import { type Fault, foundText, schemaFaults } from './faults.ts';
import { migrate, READABLE_VERSIONS } from './migrate.ts';
import { type Keyframe, memberSchemas, type Plan, planSchema } from './schema.ts';

export { serialisePlan } from './serialise.ts';

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

/** A keyframe at a share of the run, or wherever else it is said to be. */
export const newKeyframe = (given: Pick<Keyframe, 'position'> & Partial<Keyframe>): Keyframe =>
  memberSchemas.keyframe.parse(given);

const fail = (path: string, found: string, allowed: string): Parsed => ({
  ok: false,
  faults: [{ path, found, allowed }],
});

/** Index in the text at which the JSON reader gave up, as far as its message tells; null if it does not. */
function brokenAt(text: string, message: string): number | null {
  const position = /position (\d+)/.exec(message)?.[1];
  if (position) return Number(position);
  // Some readers quote ten characters on each side of the place instead of saying where it is.
  const quoted = /, \.\.\."([\s\S]+?)"(?:\.\.\.)? is not valid JSON$/.exec(message)?.[1];
  const index = quoted ? text.indexOf(quoted) : -1;
  if (quoted && index !== -1 && text.indexOf(quoted, index + 1) === -1) return index + 10;
  return null;
}

/** Says where JSON text breaks off. */
function jsonFault(text: string, error: unknown): Parsed {
  const message = error instanceof Error ? error.message : '';
  const allowed = 'a plan file: JSON text in { }';
  const index = brokenAt(text, message);
  const atEnd = index !== null && index >= text.trimEnd().length;
  if (atEnd || /end of (JSON|data|input)|unterminated/i.test(message)) {
    return fail('', 'text that breaks off', allowed);
  }
  const line =
    /line (\d+)/.exec(message)?.[1] ?? (index === null ? null : text.slice(0, index).split('\n').length);
  return fail('', `text that is not JSON${line === null ? '' : `, in line ${line}`}`, allowed);
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

/** More faults than this are counted, not listed: nobody reads them, and a page could not show them. */
const MOST_FAULTS = 200;

function readable(faults: Fault[]): Fault[] {
  const more = faults.length - MOST_FAULTS;
  if (more <= 0) return faults;
  return [...faults.slice(0, MOST_FAULTS), { path: '', found: `${more} more faults`, allowed: 'none' }];
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
  if (!result.success) return { ok: false, faults: readable(schemaFaults(present, result.error)) };
  const faults = crossFaults(result.data);
  return faults.length === 0 ? { ok: true, plan: result.data } : { ok: false, faults: readable(faults) };
}

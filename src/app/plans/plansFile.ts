/**
 * Many plans as one file, and back. The form, version 1:
 *
 * `{ "format": "escapement-plans", "version": 1, "plans": [ { "changed": "2026-08-08T18:31:10.000Z", "plan": { … } } ] }`
 *
 * Each `plan` is a whole plan file (`public/plan.schema.json`) of any version that is read. What was kept and is no JSON
 * stands there as a string, so that nothing is lost. `changed` is when the plan was changed last, and may be missing.
 */
import { type Fault, foundText } from '../../engine/plan/fault.ts';
import type { Parsed } from '../../engine/plan/parse.ts';
import type { Plan } from '../../engine/plan/schema.ts';

/** The word that marks such a file. */
export const PLANS_FORMAT = 'escapement-plans';
export const PLANS_VERSION = 1;

/** Most plans that are read from one file, and its largest size. */
export const MAX_PLANS = 2000;
export const MAX_PLANS_BYTES = 64_000_000;

/** A plan of the file. */
export interface Arrived {
  plan: Plan;
  /** When it was changed last, ms since 1970; null if the file does not say. */
  changedMs: number | null;
}

/** A plan of the file that is at fault, by the name it is found under. */
export interface LeftOut {
  name: string;
  faults: readonly Fault[];
}

export type PlansRead = { arrived: Arrived[]; leftOut: LeftOut[] } | { fault: Fault };

/** What checks a plan: `parsePlan` and `readPlan` of the engine. */
export interface Checker {
  parsePlan: (text: string) => Parsed;
  readPlan: (file: unknown) => Parsed;
}

function rawPlan(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return text;
  }
}

/** The text of a file of plans, in pieces. */
export function writePlans(plans: readonly { text: string; changedMs: number }[]): string[] {
  const entries = plans.map(({ text, changedMs }, index) => {
    const entry = JSON.stringify(
      { changed: new Date(changedMs).toISOString(), plan: rawPlan(text) },
      null,
      2,
    );
    return `${index > 0 ? ',' : ''}\n${entry}`;
  });
  const head = `{"format": "${PLANS_FORMAT}", "version": ${PLANS_VERSION}, "plans": [`;
  return [head, ...entries, '\n]}\n'];
}

const refuse = (path: string, found: string, allowed: string) => ({ fault: { path, found, allowed } });

/** The date of an entry; one that is no date is as good as none. */
function changedOf(changed: unknown): number | null {
  const ms = typeof changed === 'string' ? Date.parse(changed) : Number.NaN;
  return Number.isFinite(ms) ? ms : null;
}

/** What may stand in an object of the file. */
interface Loose {
  [field: string]: unknown;
  format?: unknown;
  title?: unknown;
}

const isRecord = (value: unknown): value is Loose =>
  value !== null && typeof value === 'object' && !Array.isArray(value);

function nameOf(plan: unknown, path: string): string {
  const title = isRecord(plan) && typeof plan.title === 'string' ? plan.title.slice(0, 120) : '';
  return title === '' ? path : `${path}, ‘${title}’`;
}

function readAll(entries: readonly unknown[], { parsePlan, readPlan }: Checker): PlansRead {
  const arrived: Arrived[] = [];
  const leftOut: LeftOut[] = [];
  entries.forEach((entry, index) => {
    const path = `plans[${index}]`;
    const { plan, changed } = isRecord(entry) ? entry : { plan: entry, changed: null };
    const read = typeof plan === 'string' ? parsePlan(plan) : readPlan(plan);
    if (read.ok) arrived.push({ plan: read.plan, changedMs: changedOf(changed) });
    else leftOut.push({ name: nameOf(plan, path), faults: read.faults });
  });
  return { arrived, leftOut };
}

/**
 * Reads a file of plans, or a plan file.
 * @returns the plans that can be read, and those that cannot with their faults; or why it is no such file. Never throws.
 */
export function readPlans(text: string, checker: Checker): PlansRead {
  const file = rawPlan(text.replace(/^\uFEFF/, ''));
  if (!isRecord(file) || file.format !== PLANS_FORMAT) {
    const read = checker.parsePlan(text);
    return read.ok
      ? { arrived: [{ plan: read.plan, changedMs: null }], leftOut: [] }
      : {
          arrived: [],
          leftOut: [{ name: isRecord(file) ? nameOf(file, 'the plan') : '', faults: read.faults }],
        };
  }
  const { version, plans } = file;
  if (version !== PLANS_VERSION)
    return refuse('version', foundText(version), `the version read here: ${PLANS_VERSION}`);
  if (!Array.isArray(plans)) return refuse('plans', foundText(plans), 'a list of plans');
  if (plans.length > MAX_PLANS) return refuse('plans', `${plans.length} plans`, `at most ${MAX_PLANS}`);
  return readAll(plans, checker);
}

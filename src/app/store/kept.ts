/** The form in which a plan is kept in this browser, and how it is read back. */
import programMark from 'virtual:mark';
import type { Plan } from '../../engine/plan/schema.ts';
import { fetchChecks } from './checker.ts';

/** The text of a plan file, and the mark of the program that checked it. Once it was the text alone. */
export interface Kept {
  text: string;
  mark: string | null;
}

function trusted(text: string): Plan | null {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

async function checked(text: string): Promise<Plan | null> {
  const { parsePlan } = await fetchChecks();
  const read = parsePlan(text);
  return read.ok ? read.plan : null;
}

/**
 * Reads what was kept. What this very program wrote is taken as it is; anything else is read like a file.
 * @param mark - the mark of this program; null trusts nothing
 * @returns null if it is no plan
 * @throws if the checker is needed and cannot be fetched
 */
export async function readKept(kept: unknown, mark: string | null = programMark): Promise<Plan | null> {
  if (typeof kept === 'string') return checked(kept);
  const { text, mark: writtenBy } = (kept ?? {}) as Partial<Kept>;
  if (typeof text !== 'string') return null;
  return (mark !== null && writtenBy === mark ? trusted(text) : null) ?? checked(text);
}

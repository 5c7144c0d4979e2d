/**
 * Plan files of older versions, brought up one version at a time.
 *
 * A step takes the file of one version and gives the file of the next. It must not throw on a file that is
 * broken in other ways: what it cannot read it leaves alone, and parsing then names the fault.
 */
import { PLAN_VERSION } from './constants.ts';

type PlanFile = Record<string, unknown>;

/** `MIGRATIONS[n]` makes a file of version n + 1 from one of version n. Version 1 is the first. */
export const MIGRATIONS: Readonly<Record<number, (file: PlanFile) => PlanFile>> = {};

/** Versions that can be read, oldest first. */
export const READABLE_VERSIONS: readonly number[] = Array.from({ length: PLAN_VERSION }, (_, i) => i + 1);

/**
 * Brings a plan file of any readable version up to the present one.
 * @param file - a parsed file whose version is one of {@link READABLE_VERSIONS}
 */
export function migrate(file: PlanFile, version: number): PlanFile {
  let current = file;
  for (let from = version; from < PLAN_VERSION; from += 1) {
    const step = MIGRATIONS[from];
    if (!step) throw new RangeError(`no migration from version ${from}`);
    current = { ...step(current), version: from + 1 };
  }
  return current;
}

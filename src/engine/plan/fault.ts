/** One fault of a plan file, in words: where, what was found, what is allowed. */

/** One thing wrong with a plan file. */
export interface Fault {
  /** Where it is, e.g. `rig.axes[1].maxSpeed`; empty for the file as a whole. */
  path: string;
  /** What stands there, shortened. */
  found: string;
  /** What may stand there. */
  allowed: string;
}

/** A fault in one sentence. */
export const faultSentence = (fault: Fault): string =>
  `${fault.path || 'file'}: found ${fault.found}; allowed: ${fault.allowed}`;

/** Path as it is printed: `rig.axes[1].maxSpeed`. */
export function pathText(path: readonly PropertyKey[]): string {
  let printed = '';
  for (const part of path) {
    if (typeof part === 'number') printed += `[${part}]`;
    else printed += printed === '' ? String(part) : `.${String(part)}`;
  }
  return printed;
}

/** What was found, short enough for one line. */
export function foundText(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'number') return String(value);
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (value !== null && typeof value === 'object') return 'a group of fields';
  const written = JSON.stringify(value) ?? String(value);
  return written.length > 60 ? `${written.slice(0, 57)}…` : written;
}

/** What is in the camera, looked up once for each sheet. */
import type { Sheet } from '../../engine/sheet/types.ts';

export interface Ticked {
  /** Index of the first exposure that is not done; -1 if all are. */
  next: number;
  /** Indices of those that are, in order of time. */
  inTime: Uint32Array;
  /** The one that was ticked last, and when; null if none is. */
  last: number | null;
  lastMs: number | null;
}

const known = new WeakMap<Float64Array, Ticked>();

export function tickedOf({ columns: { doneMs } }: Sheet): Ticked {
  const found = known.get(doneMs) ?? lookUp(doneMs);
  known.set(doneMs, found);
  return found;
}

function lookUp(doneMs: Float64Array): Ticked {
  const done: number[] = [];
  let next = -1;
  let sorted = true;
  for (let i = 0; i < doneMs.length; i += 1) {
    const ms = doneMs[i] as number;
    if (Number.isNaN(ms)) {
      if (next < 0) next = i;
      continue;
    }
    if (done.length > 0 && ms < (doneMs[done.at(-1) as number] as number)) sorted = false;
    done.push(i);
  }
  // As a rule they were ticked in the order of the sheet.
  if (!sorted) done.sort((a, b) => (doneMs[a] as number) - (doneMs[b] as number) || a - b);
  const last = done.at(-1) ?? null;
  return {
    next,
    inTime: Uint32Array.from(done),
    last,
    lastMs: last === null ? null : (doneMs[last] ?? null),
  };
}

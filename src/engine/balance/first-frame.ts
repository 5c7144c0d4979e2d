import type { Run } from '../run.ts';

/** First frame, counted from 1, of which something is true; `otherwise` if it is of none. */
export function firstFrame(run: Run, otherwise: number, isSo: (at: number) => boolean): number {
  for (let k = 0; k < run.pace.frames; k += 1) if (isSo(k)) return k + 1;
  return otherwise;
}

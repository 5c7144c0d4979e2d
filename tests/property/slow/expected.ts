/** What a finding is expected to be. A value within a hair of its limit may go either way: that is left open. */
import type { Severity } from '../../../src/engine/findings/types.ts';

export type Expected = 'yes' | 'no' | 'open';

/** A finding with the frame, counted from 1, from which it holds, and how grave it is; as far as that is sure. */
export interface Verdict {
  is: Expected;
  frame?: number;
  severity?: Severity;
}

export type Table = Map<string, Expected | Verdict>;

/** `over` says yes, `under` says no, and a hair between them leaves it open. */
export function above(value: number, limit: number, hair = 1e-8): Expected {
  if (limit === Number.POSITIVE_INFINITY) return 'no';
  const width = hair * Math.max(Math.abs(limit), Math.abs(value), 1e-6);
  return value > limit + width ? 'yes' : value < limit - width ? 'no' : 'open';
}

export const either = (...all: Expected[]): Expected =>
  all.includes('yes') ? 'yes' : all.includes('open') ? 'open' : 'no';

export const sure = (holds: boolean): Expected => (holds ? 'yes' : 'no');

/**
 * The verdict on a run from that on each frame; its frame only if none before it is open.
 * @param shift - from an index to the frame that is named
 */
export function firstOf(all: readonly Expected[], shift = 1): Verdict {
  const is = all.includes('yes') ? 'yes' : all.includes('open') ? 'open' : 'no';
  const first = all.findIndex((one) => one !== 'no');
  return is === 'yes' && all[first] === 'yes' ? { is, frame: first + shift } : { is };
}

export const verdictOf = (expected: Expected | Verdict): Verdict =>
  typeof expected === 'string' ? { is: expected } : expected;

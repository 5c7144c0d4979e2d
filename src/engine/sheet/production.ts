/**
 * What a production is made of: shots, actions, and how long each exposure is held.
 *
 * An action's holds are a pattern that is said again from its start until the action is full. Where the frames do not
 * divide evenly the last exposure is shorter; none is ever longer than its hold.
 */
import type { Action, Shot } from '../plan/schema.ts';
import { decimalRatio, floor, parseRate, plus, times } from '../time/ratio.ts';

const HALF = { num: 1n, den: 2n };

/** Frames of so many seconds on screen: the nearest whole number, halves up, by the exact rate. */
export const framesOfSeconds = (lengthS: number, rate: string): number =>
  Number(floor(plus(times(decimalRatio(lengthS), parseRate(rate)), HALF)));

/** Frames of an action. */
export const actionFrames = (
  action: Pick<Action, 'lengthIn' | 'frames' | 'lengthS'>,
  rate: string,
): number => (action.lengthIn === 'frames' ? action.frames : framesOfSeconds(action.lengthS, rate));

/** Frames of a shot. */
export const shotFrames = ({ actions }: Shot, rate: string): number =>
  actions.reduce((sum, action) => sum + actionFrames(action, rate), 0);

/** How often a pattern of holds is said to fill an action, and how far into it the action ends. */
interface Filling {
  /** Whole repeats. */
  repeats: number;
  /** Exposures of the pattern begun after them. */
  more: number;
  /** Frames by which the last exposure is shorter than its hold. */
  shortBy: number;
}

function fillingOf(holds: readonly number[], frames: number): Filling {
  const around = holds.reduce((sum, hold) => sum + hold, 0);
  const repeats = Math.floor(frames / around);
  let rest = frames - repeats * around;
  let more = 0;
  while (rest > 0) {
    rest -= holds[more] as number;
    more += 1;
  }
  return { repeats, more, shortBy: -rest };
}

/** Exposures that fill so many frames. */
export function exposuresIn(holds: readonly number[], frames: number): number {
  const { repeats, more } = fillingOf(holds, frames);
  return repeats * holds.length + more;
}

/** Frames by which the last exposure is shorter than its hold; 0 if all divides evenly. */
export const lastShortBy = (holds: readonly number[], frames: number): number =>
  fillingOf(holds, frames).shortBy;

/**
 * Fills how long each exposure of an action is held.
 * @param out - one entry an exposure, from an index on
 * @returns the index after the last
 */
export function fillHolds(out: Int32Array, from: number, holds: readonly number[], frames: number): number {
  const { shortBy } = fillingOf(holds, frames);
  const to = from + exposuresIn(holds, frames);
  const [only] = holds;
  if (holds.length === 1) out.fill(only as number, from, to);
  else
    for (let k = from, h = 0; k < to; k += 1, h = h + 1 === holds.length ? 0 : h + 1)
      out[k] = holds[h] as number;
  if (shortBy > 0) out[to - 1] = (out[to - 1] as number) - shortBy;
  return to;
}

const COUNT_WORDS = ['ones', 'twos', 'threes', 'fours', 'fives', 'sixes', 'sevens', 'eights'];

const holdWord = (hold: number): string => COUNT_WORDS[hold - 1] ?? `${hold}s`;

/** In words: on twos; on ones and twos; one that is held for all of the action: held for 24 frames. */
export function holdsText(holds: readonly number[], frames: number): string {
  const first = holds[0] as number;
  if (first >= frames) return `held for ${frames}\u00A0frame${frames === 1 ? '' : 's'}`;
  const words = [...new Set(holds)].sort((a, b) => a - b).map(holdWord);
  const last = words.pop();
  return words.length === 0 ? `on ${last}` : `on ${words.join(', ')} and ${last}`;
}

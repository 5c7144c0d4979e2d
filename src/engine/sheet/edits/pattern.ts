/** Holds one by one, and the shortest pattern that says them. */
import { MAX_FRAMES, MAX_HOLDS } from '../../plan/constants.ts';
import type { Action, Plan } from '../../plan/schema.ts';
import { actionFrames, exposuresIn, fillHolds, lastShortBy } from '../production.ts';
import { Refused, wholeWithin } from './refused.ts';

/** How long each exposure of an action is held. */
export function holdsOf(plan: Plan, action: Action): Int32Array {
  const frames = actionFrames(action, plan.clip.frameRate);
  const holds = new Int32Array(exposuresIn(action.holds, frames));
  fillHolds(holds, 0, action.holds, frames);
  return holds;
}

/**
 * The shortest pattern that, said again and again until the frames are full, gives these holds.
 *
 * It is as long as the list less its longest beginning that is also its end (Knuth, Morris & Pratt).
 * @param endsShort - the last hold is one that was cut short: it may be shorter than its place in the pattern
 */
export function patternOf(holds: ArrayLike<number>, endsShort = false): number[] {
  const list = Array.from(holds);
  if (list.length < 2) return list;
  const count = endsShort ? list.length - 1 : list.length;
  const border = bordersOf(list, count);
  for (let b = border[count - 1] as number; ; b = border[b - 1] as number) {
    const length = count - b;
    const last = list[list.length - 1] as number;
    if (!endsShort || last <= (list[count % length] as number)) return list.slice(0, length);
    // Where the last does not fit, a longer pattern may do: each shorter border gives one.
    if (b === 0) return list;
  }
}

/** For each beginning of a list the length of its longest beginning that is also its end, itself left out. */
function bordersOf(list: readonly number[], count: number): Int32Array {
  const border = new Int32Array(count);
  for (let k = 1, b = 0; k < count; k += 1) {
    while (b > 0 && list[k] !== list[b]) b = border[b - 1] as number;
    if (list[k] === list[b]) b += 1;
    border[k] = b;
  }
  return border;
}

/** The action with these holds; its length stays in seconds as long as it stays the same. @throws Refused if too much */
export function withHolds(plan: Plan, action: Action, holds: ArrayLike<number>): Action {
  let frames = 0;
  for (let k = 0; k < holds.length; k += 1) frames += wholeWithin('hold', holds[k] as number, 1, MAX_FRAMES);
  const framesBefore = actionFrames(action, plan.clip.frameRate);
  const pattern = patternOf(holds, lastShortBy(action.holds, framesBefore) > 0);
  if (pattern.length > MAX_HOLDS) {
    throw new Refused({
      path: 'holds',
      found: `${pattern.length} that no pattern says`,
      allowed: `at most ${MAX_HOLDS} in an action: split it first`,
    });
  }
  if (frames === framesBefore) return { ...action, holds: pattern };
  wholeWithin('frames of the action', frames, 1, MAX_FRAMES);
  return { ...action, lengthIn: 'frames', frames, holds: pattern };
}

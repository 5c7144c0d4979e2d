/**
 * When a smooth function of time crosses a level.
 *
 * The span is cut where the function turns, so that on each piece it only rises or only falls and crosses a level
 * once or not at all. Two crossings close together, as of a sun that grazes the horizon, are both found, or none.
 */

/** A function of an instant, milliseconds of the epoch. */
export type Curve = (ms: number) => number;

/** A crossing: when, and whether the function rises through the level. */
export interface Crossing {
  ms: number;
  rising: boolean;
}

/** How closely crossings are found. */
const PRECISE_MS = 1;
const MINUTE_MS = 60_000;

/** Where the parabola through three values, `stepMs` apart, turns. */
const vertex = (middleMs: number, stepMs: number, before: number, here: number, after: number): number => {
  const bend = before - 2 * here + after;
  return bend === 0 ? middleMs : middleMs + (stepMs * (before - after)) / (2 * bend);
};

/** Where a function turns that does so about an instant: by a parabola, and a narrow one about where that turns. */
function turnAbout(
  curve: Curve,
  middleMs: number,
  stepMs: number,
  before: number,
  here: number,
  after: number,
) {
  const ms = vertex(middleMs, stepMs, before, here, after);
  const narrow = vertex(ms, MINUTE_MS, curve(ms - MINUTE_MS), curve(ms), curve(ms + MINUTE_MS));
  return Math.min(Math.max(narrow, middleMs - stepMs), middleMs + stepMs);
}

/**
 * Instants that cut a span into pieces on which a function only rises or only falls.
 * @param curve - may be asked up to two steps outside the span, where a turn just inside shows itself
 * @param stepMs - how closely to look: shorter than half the time between two turns
 * @returns the two ends and the turns between them, in order
 */
export function turningPoints(curve: Curve, fromMs: number, toMs: number, stepMs: number): number[] {
  const found: number[] = [fromMs];
  const keep = (ms: number) => {
    if (ms > (found.at(-1) ?? fromMs) && ms < toMs) found.push(ms);
  };
  let before = curve(fromMs - stepMs);
  let here = curve(fromMs);
  for (let ms = fromMs; ms < toMs + stepMs; ms += stepMs) {
    const after = curve(ms + stepMs);
    const turns = here > before ? after <= here : here < before && after >= here;
    if (turns) keep(turnAbout(curve, ms, stepMs, before, here, after));
    before = here;
    here = after;
  }
  found.push(toMs);
  return found;
}

/**
 * The instant between two at which a function that only rises or falls between them reaches a level.
 *
 * Source: Ridders 1979 (from memory). The bracket is halved at every step, so that a function which is nearly flat
 * at an end does not mislead it.
 */
function crossingBetween(curve: Curve, level: number, fromMs: number, toMs: number): number {
  let low = fromMs;
  let high = toMs;
  let atLow = curve(low) - level;
  let atHigh = curve(high) - level;
  let ms = low;
  while (high - low > PRECISE_MS) {
    const beforeMs = ms;
    const middle = (low + high) / 2;
    const atMiddle = curve(middle) - level;
    const root = Math.sqrt(atMiddle * atMiddle - atLow * atHigh);
    ms = root === 0 ? middle : middle + ((middle - low) * Math.sign(atLow - atHigh) * atMiddle) / root;
    const here = curve(ms) - level;
    if (here === 0 || Math.abs(ms - beforeMs) < PRECISE_MS / 10) return ms;
    // Keep that piece between the two instants and the ends on which the sign changes.
    if (here < 0 !== atMiddle < 0) {
      low = Math.min(ms, middle);
      high = Math.max(ms, middle);
      atLow = ms < middle ? here : atMiddle;
      atHigh = ms < middle ? atMiddle : here;
    } else if (here < 0 === atLow < 0) {
      low = Math.max(ms, middle);
      atLow = ms > middle ? here : atMiddle;
    } else {
      high = Math.min(ms, middle);
      atHigh = ms < middle ? here : atMiddle;
    }
  }
  return (low + high) / 2;
}

/**
 * All crossings of a level.
 * @param turns - as {@link turningPoints} gives them
 * @returns crossings in order of time; a level that is only touched is not crossed
 */
export function crossings(curve: Curve, turns: readonly number[], level: number): Crossing[] {
  const found: Crossing[] = [];
  for (let i = 1; i < turns.length; i += 1) {
    const fromMs = turns[i - 1] as number;
    const toMs = turns[i] as number;
    const below = curve(fromMs) < level;
    if (below === curve(toMs) < level) continue;
    found.push({ ms: crossingBetween(curve, level, fromMs, toMs), rising: below });
  }
  return found;
}

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

const PRECISE_MS = 1;

/** Where the function turns within (fromMs, toMs), by golden section; `sign` is 1 for a summit, -1 for a trough. */
function turnBetween(curve: Curve, fromMs: number, toMs: number, sign: 1 | -1): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let low = fromMs;
  let high = toMs;
  while (high - low > PRECISE_MS) {
    const left = high - golden * (high - low);
    const right = low + golden * (high - low);
    if (sign * curve(left) > sign * curve(right)) high = right;
    else low = left;
  }
  return (low + high) / 2;
}

/**
 * Instants that cut a span into pieces on which a function only rises or only falls.
 * @param stepMs - how closely to look: shorter than half the time between two turns
 * @returns the two ends and the turns between them, in order
 */
export function turningPoints(curve: Curve, fromMs: number, toMs: number, stepMs: number): number[] {
  const steps = Math.max(2, Math.ceil((toMs - fromMs) / stepMs));
  const at = (i: number) => fromMs + ((toMs - fromMs) * i) / steps;
  const values = Array.from({ length: steps + 1 }, (_, i) => curve(at(i)));
  const turns: number[] = [fromMs];
  for (let i = 1; i < steps; i += 1) {
    const before = (values[i] as number) - (values[i - 1] as number);
    const after = (values[i + 1] as number) - (values[i] as number);
    if (before > 0 && after <= 0) turns.push(turnBetween(curve, at(i - 1), at(i + 1), 1));
    if (before < 0 && after >= 0) turns.push(turnBetween(curve, at(i - 1), at(i + 1), -1));
  }
  turns.push(toMs);
  return turns;
}

/** The instant between two at which a function that only rises or falls between them reaches a level. */
function crossingBetween(curve: Curve, level: number, fromMs: number, toMs: number, rising: boolean): number {
  let low = fromMs;
  let high = toMs;
  while (high - low > PRECISE_MS / 2) {
    const middle = (low + high) / 2;
    if (curve(middle) < level === rising) low = middle;
    else high = middle;
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
    found.push({ ms: crossingBetween(curve, level, fromMs, toMs, below), rising: below });
  }
  return found;
}

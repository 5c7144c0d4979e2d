/** Stretches of time: in order, apart from one another, none empty. */
import type { Curve } from './crossings.ts';
import { crossings } from './crossings.ts';

/** From one instant up to, and not including, another; milliseconds of the epoch. */
export interface Span {
  fromMs: number;
  toMs: number;
}

/** The stretch itself, or nothing if it is empty. */
export const spanOf = (fromMs: number, toMs: number): Span[] => (toMs > fromMs ? [{ fromMs, toMs }] : []);

/** What lies in both. */
export function both(a: readonly Span[], b: readonly Span[]): Span[] {
  const found: Span[] = [];
  let j = 0;
  for (const { fromMs, toMs } of a) {
    while (j < b.length && (b[j] as Span).toMs <= fromMs) j += 1;
    for (let k = j; k < b.length && (b[k] as Span).fromMs < toMs; k += 1) {
      const other = b[k] as Span;
      found.push({ fromMs: Math.max(fromMs, other.fromMs), toMs: Math.min(toMs, other.toMs) });
    }
  }
  return found;
}

/** What lies in either; pieces that touch become one. */
export function either(a: readonly Span[], b: readonly Span[]): Span[] {
  const found: Span[] = [];
  for (const span of [...a, ...b].sort((x, y) => x.fromMs - y.fromMs)) {
    const last = found.at(-1);
    if (last && span.fromMs <= last.toMs) last.toMs = Math.max(last.toMs, span.toMs);
    else found.push({ ...span });
  }
  return found;
}

/** What lies in the first and not in the second. */
export function without(a: readonly Span[], b: readonly Span[]): Span[] {
  const gaps: Span[] = [];
  let fromMs = Number.NEGATIVE_INFINITY;
  for (const span of b) {
    gaps.push(...spanOf(fromMs, span.fromMs));
    fromMs = span.toMs;
  }
  gaps.push(...spanOf(fromMs, Number.POSITIVE_INFINITY));
  return both(a, gaps);
}

/**
 * Where a smooth function is at a level or above.
 * @param turns - as `turningPoints` gives them, the ends of the stretch included
 */
export function spansAbove(curve: Curve, turns: readonly number[], level: number): Span[] {
  const found: Span[] = [];
  const endMs = turns.at(-1) as number;
  let fromMs: number | null = curve(turns[0] as number) >= level ? (turns[0] as number) : null;
  for (const { ms, rising } of crossings(curve, turns, level)) {
    if (!rising && fromMs !== null) found.push(...spanOf(fromMs, ms));
    fromMs = rising ? ms : null;
  }
  if (fromMs !== null) found.push(...spanOf(fromMs, endMs));
  return found;
}

/**
 * Where a condition holds within some stretches, by looking every so often and halving in between.
 * @param stepMs - what holds, or fails, for a shorter time may be missed
 * @returns ends to the millisecond
 */
export function spansWhere(within: readonly Span[], stepMs: number, holds: (ms: number) => boolean): Span[] {
  return within.flatMap(({ fromMs, toMs }) => {
    const found: Span[] = [];
    let openMs = holds(fromMs) ? fromMs : null;
    let beforeMs = fromMs;
    while (beforeMs < toMs) {
      const ms = Math.min(beforeMs + stepMs, toMs);
      if (holds(ms) !== (openMs !== null)) {
        const changeMs = changeBetween(holds, beforeMs, ms, openMs !== null);
        if (openMs !== null) found.push(...spanOf(openMs, changeMs));
        openMs = openMs === null ? changeMs : null;
      }
      beforeMs = ms;
    }
    if (openMs !== null) found.push(...spanOf(openMs, toMs));
    return found;
  });
}

function changeBetween(
  holds: (ms: number) => boolean,
  lowMs: number,
  highMs: number,
  atLow: boolean,
): number {
  let low = lowMs;
  let high = highMs;
  while (high - low > 1) {
    const middle = (low + high) / 2;
    if (holds(middle) === atLow) low = middle;
    else high = middle;
  }
  return atLow ? low : high;
}

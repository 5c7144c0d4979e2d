/** Plans for worked cases, made from the default plan with everything that matters set by the case itself. */
import {
  defaultPlan,
  newAxis,
  newCard,
  newKeyframe,
  newLoad,
  newSource,
} from '../../src/engine/plan/parse.ts';
import type { Axis, Card, Load, Plan, Source } from '../../src/engine/plan/schema.ts';

/** Only some fields of a value, at any depth; lists are given whole. */
export type Some<T> = T extends readonly unknown[]
  ? T
  : T extends object
    ? { [K in keyof T]?: Some<T[K]> }
    : T;

function merged<T>(base: T, change: Some<NoInfer<T>>): T {
  if (base === null || typeof base !== 'object' || Array.isArray(base)) return change as T;
  const entries = Object.entries(change as object).map(([key, value]) => {
    const before = (base as Record<string, unknown>)[key];
    return [key, before === undefined ? value : merged(before, value as never)] as const;
  });
  return { ...base, ...Object.fromEntries(entries) };
}

/**
 * A plan with `frames` exposures every `intervalS` seconds: one frame a second of clip, exact times, no lag, no
 * write, no guard, no sources; then what the case sets.
 */
export function plainPlan(frames: number, intervalS: number, change: Some<Plan> = {}): Plan {
  const plain: Some<Plan> = {
    clip: { frameRate: '1' },
    pacing: { workedOut: 'event', intervalS, clipLengthS: frames },
    trigger: { stepS: 0.001, minS: 0.001 },
    camera: { shutterLagS: 0, writeS: 0, exactStops: false },
    exposure: { shutterS: 0.5, timedBy: 'trigger' },
    cycle: { guardS: 0 },
    power: { temperatureC: 25, sources: [], loads: [] },
  };
  return merged(merged(defaultPlan(), plain), change);
}

export const axisOf = (change: Some<Axis>): Axis => merged(newAxis(), change);
export const sourceOf = (change: Some<Source>): Source => merged(newSource(), change);
export const loadOf = (change: Some<Load>): Load => merged(newLoad(), change);
export const cardOf = (change: Some<Card>): Card => merged(newCard(), change);

/** A straight track from one position to another over the whole run. */
export const straight = (axis: string, from: number, to: number): Plan['move']['tracks'][number] => ({
  axis,
  thereAndBack: false,
  keyframes: [
    newKeyframe({ share: 0, position: from, ease: { kind: 'linear' } }),
    newKeyframe({ share: 1, position: to, ease: { kind: 'linear' } }),
  ],
});

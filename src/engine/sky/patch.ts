/** The shape of a patch of sun on the floor plan, and how it moves. Directions as in `pane.ts`. */
import type { Plan } from '../plan/schema.ts';
import type { Patch } from './pane.ts';

/** A point of the floor plan. */
export interface FloorPoint {
  intoMm: number;
  alongMm: number;
}

/** Corners of a patch: near left, near right, far right, far left, as seen looking out. */
export function cornersOf(
  { widthMm }: Pick<Plan['pane'], 'widthMm'>,
  { nearMm, farMm, skew }: Patch,
): FloorPoint[] {
  const at = (intoMm: number, side: number) => ({ intoMm, alongMm: skew * intoMm + (side * widthMm) / 2 });
  return [at(nearMm, -1), at(nearMm, 1), at(farMm, 1), at(farMm, -1)];
}

/**
 * How far the middle of a patch moves from one instant to another, millimetres: its creep an interval.
 * @returns null if there is no patch at either
 */
export function creepMm(before: Patch | null, after: Patch | null): number | null {
  if (before === null || after === null) return null;
  const from = middleOf(before);
  const to = middleOf(after);
  return Math.hypot(to.intoMm - from.intoMm, to.alongMm - from.alongMm);
}

function middleOf({ nearMm, farMm, skew }: Patch): FloorPoint {
  const intoMm = (nearMm + farMm) / 2;
  return { intoMm, alongMm: skew * intoMm };
}

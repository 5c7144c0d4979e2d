/** The moves of a run whose moves are in codes: all that follows from a move is worked out once for each code. */
import type { Axis, Plan } from '../plan/schema.ts';
import type { AxisColumns } from '../schedule-types.ts';
import type { Picked } from './blocks.ts';
import { addAxis, type CombinedEnds, type Ends, noneCombined } from './combined.ts';
import { type MoveCodes, sizeIn } from './move-codes.ts';
import { fillSlot, type MoveTable, moveTable } from './move-table.ts';
import { moveMaker, type RingGiven } from './moves.ts';
import { takeUpOf } from './take-up.ts';

/** Moves put together, and the columns of the axes' own moves, still to be filled. */
export interface SmallMoves extends CombinedEnds {
  own: Picked[];
}

/**
 * Puts the moves of each frame together.
 * @returns combinations by code; null if an axis has lost motion to take up, so that its moves depend on those before
 */
export function smallMoves(
  plan: Plan,
  axes: readonly AxisColumns[],
  codes: MoveCodes,
  ring: RingGiven | null,
): SmallMoves | null {
  if (plan.rig.axes.some((axis) => takeUpOf(axis).beyond > 0)) return null;
  const { of, seen, width } = codes;
  const how = { inTurn: plan.move.order === 'inTurn', decayRate: ring?.decayRate ?? 0 };
  const ownMoves: Picked[] = [];
  let combined = noneCombined(new Int32Array(seen.length), ring?.quietMatters ?? false);
  plan.rig.axes.forEach((axis, a) => {
    const own = axes[a] as AxisColumns;
    if (own.moves === 0) return;
    const slots = seen.map((code) => sizeIn(code, a));
    const table = tableOf(plan, axis, own, slots, ring);
    ownMoves.push({ column: own.moveS, table: spread(table.durationS, slots, seen, width) });
    combined = addAxis(combined, slots, table, how);
  });
  const byCode = ({ durationS, ringPx }: Ends): Ends => ({
    durationS: spread(durationS, combined.of, seen, width),
    ringPx: spread(ringPx, combined.of, seen, width),
  });
  const { sums, otherwise } = combined;
  return { of, sums: byCode(sums), otherwise: otherwise && byCode(otherwise), own: ownMoves };
}

/** The moves of an axis that there are. */
function tableOf(
  plan: Plan,
  axis: Axis,
  { stepsPerUnit, steps, largestMoveSteps }: AxisColumns,
  sizes: Int32Array,
  ring: RingGiven | null,
): MoveTable {
  const table = moveTable(moveMaker(plan, axis, ring), stepsPerUnit, steps, largestMoveSteps);
  for (const size of new Set(sizes)) if (size > 0) fillSlot(table, size, size, false);
  return table;
}

/**
 * Values by code.
 * @param of - which of the values each code that there is has
 */
function spread(values: ArrayLike<number>, of: Int32Array, seen: Int32Array, width: number): Float64Array {
  const byCode = new Float64Array(width);
  seen.forEach((code, i) => {
    byCode[code] = values[of[i] as number] as number;
  });
  return byCode;
}

/** Lost motion: what a move that turns back, or goes the wrong way for its axis, travels more than its way. */
import type { Axis } from '../plan/schema.ts';
import type { AxisColumns } from '../schedule-types.ts';

/** How an axis deals with its backlash. */
export interface TakeUp {
  /**
   * The direction in which it arrives at every position: 1 up its scale, -1 down; 0 if it does not matter. Then only a
   * move against the one before has lost motion to take up.
   */
  side: -1 | 0 | 1;
  /** How far a move the other way carries the load past its end, to come back from there; in the axis's unit. */
  overrun: number;
  /** What such a move travels more: backlash and overrun. It comes back over as much, if the axis has a side. */
  beyond: number;
}

const SIDES = { eitherWay: 0, upwards: 1, downwards: -1 } as const;

/** How an axis deals with its backlash; an overrun that is not given is twice that. */
export function takeUpOf({ arrive, backlash, overrun }: Axis): TakeUp {
  const side = SIDES[arrive];
  const past = side === 0 ? 0 : (overrun ?? 2 * backlash);
  return { side, overrun: past, beyond: backlash + past };
}

/**
 * Whether a move has lost motion to take up.
 * @param direction - sign of the move
 * @param facing - the axis's side, or the sign of the move before if it has none; 0 before the first move, since the
 *   rig is homed so that nothing is lost on it
 */
export const turnsBack = (direction: number, facing: number): boolean => direction === -facing;

/** The longest way of the motor in the move after each frame, in the axis's unit: lost motion and overrun included. */
export function motorWays(
  axis: Axis,
  { steps, stepsPerUnit }: Pick<AxisColumns, 'steps' | 'stepsPerUnit'>,
): Float64Array {
  const { side, beyond } = takeUpOf(axis);
  const ways = new Float64Array(steps.length);
  let facing: number = side;
  for (let k = 0; k + 1 < steps.length; k += 1) {
    const move = (steps[k + 1] as number) - (steps[k] as number);
    if (move === 0) continue;
    const direction = Math.sign(move);
    ways[k] = Math.abs(move) / stepsPerUnit + (turnsBack(direction, facing) ? beyond : 0);
    if (side === 0) facing = direction;
  }
  return ways;
}

/** Whether an axis is carried past the position of an index, counted from 0, to arrive there from its side. */
export const overrunsAt = (steps: Int32Array, k: number, side: number): boolean =>
  side * ((steps[k] as number) - (steps[k - 1] ?? (steps[k] as number))) < 0;

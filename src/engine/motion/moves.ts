/** The single moves of an axis between exposures: how long each takes, and how it leaves the rig ringing. */
import type { Axis, Plan } from '../plan/schema.ts';
import { pixelsPerUnit } from '../ringing/pixels.ts';
import { quietSpeed, type Ringing, ringAfter, settleS } from '../ringing/ring.ts';
import {
  fastestShape,
  fixedTimeShape,
  limitsOf,
  type MoveLimits,
  type MoveShape,
  shapeAtSpeed,
} from './profile.ts';
import { type TakeUp, takeUpOf } from './take-up.ts';

/** What rings, and when it no longer shows. */
export interface RingGiven {
  ringing: Ringing;
  /** e^(-decayRate t) is what is left of a ring, 1/s. */
  decayRate: number;
  tolerancePx: number;
  /** Whether moves may be slowed so that they ring less. */
  quiet: boolean;
  /** Whether that could make any of them end sooner: not if every move takes or settles a time of its own. */
  quietMatters: boolean;
}

/** The ringing of a plan; null where it plays no part in the settle. */
export function ringGiven({ move, ringing: given }: Plan): RingGiven | null {
  if (move.mode !== 'moveShootMove' || move.settleBy !== 'ringing') return null;
  const ringing = { omega: 2 * Math.PI * given.frequencyHz, damping: given.dampingRatio };
  return {
    ringing,
    decayRate: ringing.damping * ringing.omega,
    tolerancePx: given.tolerancePx,
    quiet: move.quiet,
    quietMatters: given.measuredSettleS === null && move.moveS === null,
  };
}

/** Everything that decides about a move of one axis. */
export interface MoveMaker {
  limits: MoveLimits;
  /** Seconds for every move; null for as few as the limits allow. */
  fixedS: number | null;
  takeUp: TakeUp;
  ring: RingGiven | null;
  pxPerUnit: number;
}

export const moveMaker = (plan: Plan, axis: Axis, ring: RingGiven | null): MoveMaker => ({
  limits: limitsOf(axis, plan.move.profile),
  fixedS: plan.move.moveS,
  takeUp: takeUpOf(axis),
  ring,
  pxPerUnit: ring ? pixelsPerUnit(plan, axis) : 0,
});

/** One move, with its way back if it overran. */
export interface Move {
  durationS: number;
  /** Ring that it leaves at its end, px. */
  ringPx: number;
  /** What it is made of, one after another: the way out, and the way back if there is one. */
  shapes: readonly MoveShape[];
}

const AT_REST: Move = { durationS: 0, ringPx: 0, shapes: [] };

/**
 * A move.
 * @param distance - travel of the load, in the axis's unit, above 0
 * @param turned - whether it has lost motion to take up
 * @param quiet - whether it may be slowed so that it rings less
 */
export function moveOf(maker: MoveMaker, distance: number, turned: boolean, quiet: boolean): Move {
  const { side, beyond } = maker.takeUp;
  if (!turned || beyond === 0) return soonest(maker, after(maker, AT_REST, distance, quiet));
  const out = after(maker, AT_REST, distance + beyond, quiet);
  if (side === 0) return soonest(maker, out);
  return soonest(
    maker,
    out.flatMap((move) => after(maker, move, beyond, quiet)),
  );
}

/** The ways of going on over a distance after what an axis has done before. */
function after(maker: MoveMaker, before: Move, distance: number, quiet: boolean): Move[] {
  return shapesOf(maker, distance, quiet).map((shape) => {
    const durationS = before.durationS + shape.durationS;
    const shapes = [...before.shapes, shape];
    if (maker.ring === null) return { durationS, ringPx: 0, shapes };
    const left = before.ringPx * Math.exp(-maker.ring.decayRate * shape.durationS);
    return { durationS, ringPx: left + maker.pxPerUnit * ringAfter(shape, maker.ring.ringing), shapes };
  });
}

function shapesOf(
  { limits, fixedS, ring, pxPerUnit }: MoveMaker,
  distance: number,
  quiet: boolean,
): MoveShape[] {
  if (fixedS !== null) return [fixedTimeShape(distance, fixedS, limits)];
  const fastest = fastestShape(distance, limits);
  if (!quiet || !ring?.quietMatters || pxPerUnit === 0) return [fastest];
  return [fastest, shapeAtSpeed(distance, quietSpeed(distance, fastest, ring.ringing), limits)];
}

/** The one that ends and has died down soonest, the first of several. */
function soonest({ ring }: MoveMaker, moves: readonly Move[]): Move {
  const endS = ({ durationS, ringPx }: Move) =>
    durationS + (ring ? settleS(ringPx, ring.tolerancePx, ring.ringing) : 0);
  return moves.reduce((best, move) => (endS(move) < endS(best) ? move : best));
}

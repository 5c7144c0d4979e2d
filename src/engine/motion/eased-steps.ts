/**
 * Positions along one stretch of a track, in whole microsteps.
 *
 * Each kind of ease has a loop of its own, and nothing is kept in between: one loop that calls whichever function it
 * is given is compiled for none, and a pass over memory costs more than the arithmetic.
 */
import type { Ease } from '../plan/schema.ts';
import { bezierCurve, bezierParameter, bezierY, type Curve, ramped, smooth, smoother } from './ease.ts';

/** From one keyframe to the next. */
export interface Stretch {
  /** First index, and the one after the last. */
  begin: number;
  end: number;
  /** Index (whole or half) at which the track ends: share of the run = index / lastIndex. */
  lastIndex: number;
  /** Share of the run at the keyframe, and to the next. */
  fromShare: number;
  span: number;
  /** Position at the keyframe and from there to the next, in the axis's unit. */
  position: number;
  travel: number;
  /** Microsteps a unit. */
  perUnit: number;
}

/** Fills the steps of one stretch. */
export function fillEased(steps: Int32Array, ease: Ease, stretch: Stretch): void {
  if (ease.kind === 'hold') fillHeld(steps, stretch);
  else if (ease.kind === 'linear') fillLinear(steps, stretch);
  else if (ease.kind === 'smooth') fillSmooth(steps, stretch);
  else if (ease.kind === 'smoother') fillSmoother(steps, stretch);
  else if (ease.kind === 'ramped') fillRamped(steps, stretch, ease.headShare, ease.tailShare);
  else fillBezier(steps, stretch, bezierCurve(ease));
}

/** Share of the stretch's time at an index. */
const timeShare = (k: number, lastIndex: number, fromShare: number, span: number): number =>
  // Most stretches are the whole run: a division less.
  span === 1 && fromShare === 0 ? k / lastIndex : (k / lastIndex - fromShare) / span;

/** Whole steps at a share of the stretch's travel. */
const stepsAt = (share: number, position: number, travel: number, perUnit: number): number =>
  Math.round((position + travel * share) * perUnit);

/** Stays, and goes to the next keyframe in the one move that ends there. */
function fillHeld(steps: Int32Array, { begin, end, lastIndex, fromShare, span, ...place }: Stretch): void {
  const { position, travel, perUnit } = place;
  for (let k = begin; k < end; k += 1) {
    const share = timeShare(k, lastIndex, fromShare, span) < 1 ? 0 : 1;
    steps[k] = stepsAt(share, position, travel, perUnit);
  }
}

function fillLinear(steps: Int32Array, stretch: Stretch): void {
  const { begin, end, lastIndex, fromShare, span, position, travel, perUnit } = stretch;
  for (let k = begin; k < end; k += 1)
    steps[k] = stepsAt(timeShare(k, lastIndex, fromShare, span), position, travel, perUnit);
}

function fillSmooth(steps: Int32Array, stretch: Stretch): void {
  const { begin, end, lastIndex, fromShare, span, position, travel, perUnit } = stretch;
  for (let k = begin; k < end; k += 1)
    steps[k] = stepsAt(smooth(timeShare(k, lastIndex, fromShare, span)), position, travel, perUnit);
}

function fillSmoother(steps: Int32Array, stretch: Stretch): void {
  const { begin, end, lastIndex, fromShare, span, position, travel, perUnit } = stretch;
  for (let k = begin; k < end; k += 1)
    steps[k] = stepsAt(smoother(timeShare(k, lastIndex, fromShare, span)), position, travel, perUnit);
}

function fillRamped(steps: Int32Array, stretch: Stretch, head: number, tail: number): void {
  const { begin, end, lastIndex, fromShare, span, position, travel, perUnit } = stretch;
  for (let k = begin; k < end; k += 1)
    steps[k] = stepsAt(
      ramped(timeShare(k, lastIndex, fromShare, span), head, tail),
      position,
      travel,
      perUnit,
    );
}

function fillBezier(steps: Int32Array, stretch: Stretch, curve: Curve): void {
  const { begin, end, lastIndex, fromShare, span, position, travel, perUnit } = stretch;
  // The parameter goes on evenly but for a little: it is looked for from where the last two point.
  let before = 0;
  let parameter = 0;
  for (let k = begin; k < end; k += 1) {
    const x = timeShare(k, lastIndex, fromShare, span);
    const found = bezierParameter(curve, x, 2 * parameter - before);
    before = parameter;
    parameter = found;
    steps[k] = stepsAt(bezierY(curve, found), position, travel, perUnit);
  }
}

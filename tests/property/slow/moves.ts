/** The moves of a rig between exposures, each axis's by itself and all together: how long, and how they ring. */
import type { Axis, Plan } from '../../../src/engine/plan/schema.ts';
import { subjectAtRestMm } from './camera.ts';
import {
  atSpeed,
  fastest,
  lasting,
  type SlowLimits,
  type Stretch,
  slowLimits,
  topSpeed,
  within,
} from './profile.ts';
import { oscillatorOf, quietSpeedOf, ringOf, settlesIn } from './ring.ts';

/** What an axis does after a frame: all its ways, one after another. */
export interface SlowMove {
  durationS: number;
  /** Ring at its end, px, and the size of what was added up to it. */
  ringPx: number;
  summedPx: number;
  /** Another way of doing it ends as soon, but for a rounding. */
  tied: boolean;
}

const STILL: SlowMove = { durationS: 0, ringPx: 0, summedPx: 0, tied: false };

/** How far the motor goes after each frame, one piece after another, lost motion included; from whole steps. */
export function motorWays(axis: Axis, steps: ArrayLike<number>, stepsPerUnit: number): number[][] {
  const way = { eitherWay: 0, upwards: 1, downwards: -1 }[axis.arrive];
  const past = way === 0 ? 0 : (axis.overrun ?? 2 * axis.backlash);
  let before = 0;
  return Array.from(steps, (here, k) => {
    const move = (steps[k + 1] ?? here) - here;
    const distance = Math.abs(move) / stepsPerUnit;
    if (move === 0) return [];
    const wrongWay = way === 0 ? before * move < 0 : way * move < 0;
    before = move;
    if (!wrongWay) return [distance];
    // Out over the lost motion and past the position; back over the lost motion and what it was past by.
    const out = distance + axis.backlash + past;
    return way === 0 || past + axis.backlash === 0 ? [out] : [out, axis.backlash + past];
  });
}

/** Pixels for one unit of an axis's ring. */
export function pxPerUnit(plan: Plan, axis: Axis): number {
  const { camera, rig, ringing, subject } = plan;
  const focalPx = (camera.focalLengthMm * camera.imageWidthPx) / camera.sensorWidthMm;
  const perMm = focalPx * (1.5 / ringing.flexMm + (subject.used ? 1 / subjectAtRestMm(plan) : 0));
  const perDegree = Math.PI / 180;
  if (axis.kind === 'turntable' || axis.kind === 'focus') return 0;
  if (axis.kind === 'roll') return (camera.imageWidthPx / 2) * perDegree;
  if (axis.kind === 'pan' || axis.kind === 'tilt') return focalPx * perDegree;
  return axis.kind === 'boom' && axis.unit === 'deg' ? perMm * rig.arm.lengthMm * perDegree : perMm;
}

/** All ways of doing one piece: as fast as can be, or quietly. */
function piece(plan: Plan, distance: number, limits: SlowLimits, px: number, quiet: boolean): Stretch[][] {
  const { moveS } = plan.move;
  if (moveS !== null) return [within(distance, moveS, limits)];
  const plain = fastest(distance, limits);
  const useful = quiet && px > 0 && plan.ringing.measuredSettleS === null;
  if (!useful || plan.move.settleBy !== 'ringing') return [plain];
  const speed = quietSpeedOf(distance, topSpeed(distance, limits), oscillatorOf(plan));
  return [plain, atSpeed(distance, speed, limits)];
}

function axisMove(plan: Plan, axis: Axis, ways: readonly number[], quiet: boolean): SlowMove {
  const rings = plan.move.settleBy === 'ringing';
  const { moveS } = plan.move;
  if (ways.length === 0) return STILL;
  if (!rings && moveS !== null) return { ...STILL, durationS: moveS * ways.length };
  const px = rings ? pxPerUnit(plan, axis) : 0;
  const decay = plan.ringing.dampingRatio * 2 * Math.PI * plan.ringing.frequencyHz;
  let done: SlowMove[] = [STILL];
  for (const distance of ways) {
    const options = piece(plan, distance, slowLimits(plan, axis), px, quiet);
    done = done.flatMap((before) =>
      options.map((move) => {
        const left = Math.exp(-decay * lasting(move));
        const { size, summed } = px > 0 ? ringOf(move, oscillatorOf(plan)) : { size: 0, summed: 0 };
        return {
          durationS: before.durationS + lasting(move),
          ringPx: before.ringPx * left + px * size,
          summedPx: before.summedPx * left + px * summed,
          tied: false,
        };
      }),
    );
  }
  const ends = done.map((move) => move.durationS + (rings ? settlesIn(move.ringPx, plan) : 0));
  const soonest = Math.min(...ends);
  const best = done[ends.indexOf(soonest)] as SlowMove;
  const tied = done.some(
    (move, i) =>
      (ends[i] as number) <= soonest * (1 + 1e-9) && Math.abs(move.durationS / best.durationS - 1) > 1e-12,
  );
  return { ...best, tied };
}

/** The move of each axis after each frame. Moves alike are worked out once. */
export function axisMoves(plan: Plan, axis: Axis, ways: readonly number[][], quiet: boolean): SlowMove[] {
  const known = new Map<string, SlowMove>();
  return ways.map((pieces) => {
    const key = pieces.join();
    const move = known.get(key) ?? axisMove(plan, axis, pieces, quiet);
    known.set(key, move);
    return move;
  });
}

/** The moves of all axes after a frame, at once or one after another, and the settle after them. */
export function allTogether(plan: Plan, moves: readonly SlowMove[]): SlowMove & { settleS: number } {
  const inTurn = plan.move.order === 'inTurn';
  const decay = plan.ringing.dampingRatio * 2 * Math.PI * plan.ringing.frequencyHz;
  const endsS = moves.map(({ durationS }, i) =>
    inTurn ? moves.slice(0, i + 1).reduce((sum, move) => sum + move.durationS, 0) : durationS,
  );
  const durationS = Math.max(0, ...endsS);
  const total = (of: (move: SlowMove) => number) =>
    moves.reduce((sum, move, i) => sum + of(move) * Math.exp(decay * ((endsS[i] as number) - durationS)), 0);
  const ringPx = total((move) => move.ringPx);
  const summedPx = total((move) => move.summedPx);
  const tied = moves.some((move) => move.tied);
  return { durationS, ringPx, summedPx, tied, settleS: settleOf(plan, durationS, ringPx) };
}

function settleOf(plan: Plan, durationS: number, ringPx: number): number {
  if (durationS === 0) return 0;
  if (plan.move.settleBy === 'time') return plan.move.settleS;
  return plan.ringing.measuredSettleS ?? settlesIn(ringPx, plan);
}

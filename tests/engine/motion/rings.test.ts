/**
 * Moves of several axes and their rings put together: against every axis worked out by itself, added up as they are
 * defined to be, and against the oscillators integrated step by step.
 */
import { describe, expect, test, vi } from 'vitest';
import { type Motion, motionOf } from '../../../src/engine/motion/motion.ts';
import { type LanesAsTheyAre, quietComparison } from '../../../src/engine/motion/quiet.ts';
import { newKeyframe } from '../../../src/engine/plan/parse.ts';
import type { Axis, Plan } from '../../../src/engine/plan/schema.ts';
import { pixelsPerUnit } from '../../../src/engine/ringing/pixels.ts';
import { type Ringing, ringAfter, settleS } from '../../../src/engine/ringing/ring.ts';
import { Room } from '../../../src/engine/room.ts';
import { close } from '../../property/close.ts';
import { motorWays } from '../../property/slow/moves.ts';
import { axisOf, plainPlan, type Some } from '../../reference/plans.ts';
import { driven, free, piecesOf } from '../../reference/ringing/integrate.ts';
import { fastestMove, type Limits, moveAt } from '../../reference/ringing/moves.ts';
import { dice } from '../../reference/sky/ephemeris.ts';

// Slow on purpose, and slower yet on a busy machine.
vi.setConfig({ testTimeout: 60_000 });

type Shape = ReturnType<typeof moveAt>;

const oscillator = ({ ringing }: Plan): Ringing => ({
  omega: 2 * Math.PI * ringing.frequencyHz,
  damping: ringing.dampingRatio,
});
const rateOf = (plan: Plan) => oscillator(plan).omega * oscillator(plan).damping;

const limitsOf = ({ move }: Plan, axis: Axis): Limits => ({
  speed: axis.maxSpeed,
  accel: axis.maxAccel,
  jerk: move.profile === 'jerkLimited' ? axis.maxJerk : Number.POSITIVE_INFINITY,
});

/** What an axis may do over a way: its fastest move, or, if that is asked for and it shakes the camera, its quiet one. */
function shapes(plan: Plan, axis: Axis, way: number, quiet: boolean): Shape[] {
  const limits = limitsOf(plan, axis);
  const fastest = fastestMove(way, limits);
  if (!quiet || pixelsPerUnit(plan, axis) === 0) return [fastest];
  const { omega, damping } = oscillator(plan);
  const periodS = (2 * Math.PI) / (omega * Math.sqrt(1 - damping ** 2));
  const periods = Math.max(1, Math.ceil(way / fastest.peakSpeed / periodS - 1e-9));
  return [fastest, moveAt(way, Math.min(fastest.peakSpeed, way / (periods * periodS)), limits)];
}

/** The moves of an axis one after another, and when each has ended. */
type Chain = { shape: Shape; endS: number; px: number }[];

const endOf = (chain: Chain): number => chain.at(-1)?.endS ?? 0;

/** Ring of moves at a moment after all of them, px. */
const ringAt = (plan: Plan, moves: Chain, atS: number): number =>
  moves.reduce(
    (sum, { shape, endS, px }) =>
      sum + px * ringAfter(shape, oscillator(plan)) * Math.exp(-rateOf(plan) * (atS - endS)),
    0,
  );

/** Seconds after a moment until the ring is down to the tolerance, by halving. */
function settleAfter(plan: Plan, moves: Chain, atS: number): number {
  const { tolerancePx } = plan.ringing;
  if (ringAt(plan, moves, atS) <= tolerancePx) return 0;
  let [low, high] = [0, 1e5];
  for (let round = 0; round < 200; round += 1) {
    const middle = (low + high) / 2;
    if (ringAt(plan, moves, atS + middle) > tolerancePx) low = middle;
    else high = middle;
  }
  return high;
}

/** The ways of going over all of an axis's ways; of them the one that is still soonest. */
function chainOf(plan: Plan, axis: Axis, ways: readonly number[], quiet: boolean): Chain {
  const px = pixelsPerUnit(plan, axis);
  let chains: Chain[] = [[]];
  for (const way of ways)
    chains = chains.flatMap((chain) =>
      shapes(plan, axis, way, quiet).map((shape) => [
        ...chain,
        { shape, px, endS: endOf(chain) + shape.durationS },
      ]),
    );
  const stillS = (chain: Chain) => endOf(chain) + settleAfter(plan, chain, endOf(chain));
  return chains.reduce((best, chain) => (stillS(chain) < stillS(best) - 1e-12 ? chain : best));
}

/** Each frame's moves on one clock. */
function chainsOf(plan: Plan, steps: readonly Int32Array[], perUnit: readonly number[], quiet: boolean) {
  const ways = plan.rig.axes.map((axis, i) => motorWays(axis, steps[i] ?? [], perUnit[i] ?? 1));
  return Array.from(steps[0] ?? [], (_, k) => {
    let startS = 0;
    let arrivedS = 0;
    const all = plan.rig.axes.flatMap((axis, i) => {
      const chain = chainOf(plan, axis, ways[i]?.[k] ?? [], quiet).map((move) => ({
        ...move,
        endS: startS + move.endS,
      }));
      arrivedS = Math.max(arrivedS, endOf(chain));
      if (plan.move.order === 'inTurn') startS = arrivedS;
      return chain;
    });
    return { all, arrivedS };
  });
}

const KINDS = ['boom', 'pan', 'slide', 'turntable', 'tilt', 'roll'] as const;
const FRAMES = 7;

/** A plan whose axes jump about, of every kind and order. */
function randomPlan(throwDie: () => number, change: Some<Plan['move']> = {}): Plan {
  const pick = <T>(...list: readonly T[]): T => list[Math.floor(throwDie() * list.length)] as T;
  const axes = KINDS.slice(0, 1 + Math.floor(throwDie() * KINDS.length)).map((kind) =>
    axisOf({
      name: kind,
      kind,
      unit: kind === 'slide' || kind === 'boom' ? 'mm' : 'deg',
      fullStepsPerTurn: pick(20, 200),
      unitsPerTurn: 8,
      travelMin: -1000,
      maxSpeed: pick(5, 40),
      maxAccel: pick(20, 80),
      maxJerk: pick(100, 1000),
      backlash: pick(0, 0, 0.1),
      arrive: pick('eitherWay', 'upwards', 'downwards'),
      overrun: pick(null, 0.5),
    }),
  );
  const places = () =>
    Array.from({ length: FRAMES }, (_, i) =>
      newKeyframe({
        at: 'frame',
        frame: i + 1,
        position: pick(0, 0, Math.round(200 * throwDie()) / 10),
        ease: { kind: 'hold' },
      }),
    );
  return plainPlan(FRAMES, 1000, {
    rig: { axes },
    camera: { imageWidthPx: 6000, focalLengthMm: 35, sensorWidthMm: 36 },
    subject: { used: true },
    ringing: {
      frequencyHz: pick(0.7, 3, 8),
      dampingRatio: pick(0.005, 0.03, 0.2),
      tolerancePx: pick(0.1, 0.5, 5),
      flexMm: 800,
    },
    move: {
      mode: 'moveShootMove',
      settleBy: 'ringing',
      order: pick('together', 'inTurn'),
      profile: pick('trapezoidal', 'jerkLimited'),
      quiet: pick(true, false),
      tracks: axes.map(({ name }) => ({ axis: name, thereAndBack: false, keyframes: places() })),
      ...change,
    },
  });
}

const intervals = () => new Float64Array(FRAMES).fill(1000);

function* randomCases(count: number, seed: number) {
  const throwDie = dice(seed);
  for (let n = 0; n < count; n += 1) {
    const plan = randomPlan(throwDie);
    const motion = motionOf(plan, intervals(), new Room());
    const steps = motion.axes.map((axis) => axis.steps);
    const perUnit = motion.axes.map((axis) => axis.stepsPerUnit);
    yield { n, plan, motion, chains: (quiet: boolean) => chainsOf(plan, steps, perUnit, quiet) };
  }
}

test('moves, rings and settles are those of the axes put together', () => {
  let settled = 0;
  for (const { n, plan, motion, chains } of randomCases(200, 4)) {
    for (const [k, { all, arrivedS }] of chains(plan.move.quiet).entries()) {
      const at = `plan ${n}, frame ${k + 1}`;
      close(motion.moveS[k], arrivedS, `${at}: moveS`);
      const ring = ringAt(plan, all, arrivedS);
      // The column has single precision.
      expect(Math.abs((motion.ringPx?.[k] ?? Number.NaN) - ring), at).toBeLessThanOrEqual(1e-6 * ring);
      const settle = settleAfter(plan, all, arrivedS);
      close(motion.settleS[k], settle, `${at}: settleS`, 1e-3 * (1 + arrivedS));
      if (settle > 0) settled += 1;
    }
    const busy = Array.from(motion.moveS, (s, k) => s + (motion.settleS[k] ?? Number.NaN));
    close(motion.longestBusyS, Math.max(...busy), `plan ${n}: longestBusyS`);
    expect(motion.longestSettleS).toBe(Math.max(...motion.settleS));
    expect(motion.worstPx).toBe(Math.max(...(motion.ringPx ?? [])));
  }
  expect(settled).toBeGreaterThan(300);
});

test('after its settle the picture moves by no more than the tolerance: integrated step by step', () => {
  let nearest = 0;
  for (const { plan, motion, chains } of randomCases(12, 5)) {
    const ringing = oscillator(plan);
    const { tolerancePx } = plan.ringing;
    for (const [k, { all, arrivedS }] of chains(plan.move.quiet).entries()) {
      const stillS = arrivedS + (motion.settleS[k] ?? Number.NaN);
      // Each move shakes by itself; what they do together is the sum of them.
      const shift = (atS: number) =>
        all.reduce((sum, { shape, endS, px }) => {
          const pieces = [...piecesOf(shape), free(atS - endS)];
          return sum + px * driven(pieces, ringing, 1e-4 * shape.distance).x;
        }, 0);
      for (let i = 0; i < 8 && all.length > 0; i += 1) {
        const px = Math.abs(shift(stillS + (i * Math.PI) / 4 / ringing.omega));
        expect(px).toBeLessThanOrEqual(tolerancePx * 1.02);
        nearest = Math.max(nearest, px / tolerancePx);
      }
    }
  }
  expect(nearest).toBeGreaterThan(0.7);
});

/** Lanes of a run whose every frame has settings of its own. */
const lanesOf = (
  { moveS, settleS: settles }: Motion,
  holdS: Float64Array,
  cameraS: Float64Array,
): LanesAsTheyAre => ({
  lanes: Array.from(holdS, (hold, k) => ({ holdS: hold, cameraS: cameraS[k] ?? 0 })),
  spells: Array.from(holdS, (_, k) => ({ begin: k, end: k + 1, rung: k, intervalS: 10 })),
  longestS: Math.max(...holdS.map((hold, k) => hold + (moveS[k] ?? 0) + (settles[k] ?? 0)), ...cameraS),
});

test('the comparison says the longest lanes with quiet moves and with none', () => {
  let shorter = 0;
  for (const { n, plan, motion, chains } of randomCases(100, 6)) {
    const holdS = Float64Array.from({ length: FRAMES }, (_, k) => 0.1 * k);
    const cameraS = holdS.map((s) => s + 0.3);
    const before = motion.axes.map(({ takeUps, takeUpS }) => ({ takeUps, takeUpS }));
    const compared = quietComparison(plan, motion, lanesOf(motion, holdS, cameraS));
    const longest = (quiet: boolean) =>
      Math.max(
        ...chains(quiet).flatMap(({ all, arrivedS }, k) => [
          (holdS[k] ?? 0) + arrivedS + settleAfter(plan, all, arrivedS),
          cameraS[k] ?? 0,
        ]),
      );
    close(compared?.withQuietS, longest(true), `plan ${n}: with`);
    close(compared?.withoutQuietS, longest(false), `plan ${n}: without`);
    if (longest(true) < longest(false) - 0.01) shorter += 1;
    // What is asked for on the side leaves the motion as it is.
    expect(motion.axes.map(({ takeUps, takeUpS }) => ({ takeUps, takeUpS }))).toEqual(before);
  }
  expect(shorter).toBeGreaterThan(20);
});

describe('settles that do not go by the ring', () => {
  const settlesOf = (change: Some<Plan['move']>, ringing: Some<Plan['ringing']> = {}) => {
    const plan = randomPlan(dice(7), change);
    const given: Plan = { ...plan, ringing: { ...plan.ringing, ...ringing } as Plan['ringing'] };
    const motion = motionOf(given, intervals(), new Room());
    const none = new Float64Array(FRAMES);
    return { ...motion, comparison: quietComparison(given, motion, lanesOf(motion, none, none)) };
  };

  test('a measured one is that of every move', () => {
    const { moveS, settleS: settles, ringPx, comparison } = settlesOf({}, { measuredSettleS: 2.5 });
    expect([...settles]).toEqual(Array.from(moveS, (s) => (s > 0 ? 2.5 : 0)));
    expect(Math.max(...(ringPx ?? []))).toBeGreaterThan(0);
    expect(comparison).toBeNull();
  });

  test('a typed time is too', () => {
    const timed = settlesOf({ settleBy: 'time', settleS: 1.5 });
    const { moveS, settleS: settles, ringPx, longestSettleS, longestBusyS } = timed;
    expect([...settles]).toEqual(Array.from(moveS, (s) => (s > 0 ? 1.5 : 0)));
    expect(ringPx).toBeNull();
    expect([longestSettleS, longestBusyS]).toEqual([1.5, Math.max(...moveS) + 1.5]);
  });

  test('a rig that moves all the time never settles', () => {
    const { settleS: settles, ringPx, longestSettleS, longestBusyS } = settlesOf({ mode: 'continuous' });
    expect([...settles].every((s) => s === 0)).toBe(true);
    expect([ringPx, longestSettleS, longestBusyS]).toEqual([null, 0, 0]);
  });

  test('a fixed time to move leaves nothing to slow down, and still rings', () => {
    const { ringPx, comparison } = settlesOf({ moveS: 4, quiet: true });
    expect(comparison).toBeNull();
    expect(Math.max(...(ringPx ?? []))).toBeGreaterThan(0);
  });
});

test('a ring that has long died does not spoil the sum, however long the moves are', () => {
  // 1000 Hz at a damping ratio of 0.9: of a ring before a move of 1 s nothing is left that a double could hold.
  const stiff = { frequencyHz: 1000, dampingRatio: 0.9, tolerancePx: 1e-9 };
  const plan = randomPlan(dice(8), { order: 'together' });
  const given: Plan = { ...plan, ringing: { ...plan.ringing, ...stiff } };
  const motion = motionOf(given, intervals(), new Room());
  const steps = motion.axes.map((axis) => axis.steps);
  const perUnit = motion.axes.map((axis) => axis.stepsPerUnit);
  for (const [k, { all, arrivedS }] of chainsOf(given, steps, perUnit, given.move.quiet).entries()) {
    const ring = ringAt(given, all, arrivedS);
    expect(Math.abs((motion.ringPx?.[k] ?? Number.NaN) - ring)).toBeLessThanOrEqual(1e-6 * ring);
    close(motion.settleS[k], settleS(ring, 1e-9, oscillator(given)), `frame ${k + 1}`, 1e-6);
  }
});

test('runs of which no two frames have the same moves', () => {
  const throwDie = dice(9);
  const frames = 800;
  const plan = randomPlan(dice(8), { quiet: false });
  const tracks = plan.rig.axes.map(({ name }) => ({
    axis: name,
    thereAndBack: false,
    keyframes: Array.from({ length: frames }, (_, i) =>
      newKeyframe({ at: 'frame', frame: i + 1, position: 80 * throwDie(), ease: { kind: 'hold' } }),
    ),
  }));
  const wild: Plan = {
    ...plan,
    pacing: { ...plan.pacing, clipLengthS: frames },
    move: { ...plan.move, tracks },
  };
  const motion = motionOf(wild, new Float64Array(frames).fill(1000), new Room());
  const steps = motion.axes.map((axis) => axis.steps);
  const perUnit = motion.axes.map((axis) => axis.stepsPerUnit);
  // More steps than frames, so that some moves are met once and not kept.
  expect(Math.max(...motion.axes.map((axis) => axis.largestMoveSteps))).toBeGreaterThan(frames);
  for (const [k, { all, arrivedS }] of chainsOf(wild, steps, perUnit, false).entries()) {
    close(motion.moveS[k], arrivedS, `frame ${k + 1}: moveS`);
    close(motion.settleS[k], settleAfter(wild, all, arrivedS), `frame ${k + 1}: settleS`, 1e-3 * arrivedS);
  }
});

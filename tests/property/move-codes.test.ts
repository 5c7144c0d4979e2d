/**
 * Small moves, which are put into codes: facts and columns are those of the same run worked out axis by axis, as it is
 * as soon as there are too many axes for codes.
 */
import fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import { cameraLane } from '../../src/engine/cycle/cycle.ts';
import { energyOf } from '../../src/engine/energy/energy.ts';
import { motionOf } from '../../src/engine/motion/motion.ts';
import { moveCodes } from '../../src/engine/motion/move-codes.ts';
import { stepFacts } from '../../src/engine/motion/step-facts.ts';
import type { Plan } from '../../src/engine/plan/schema.ts';
import { Room } from '../../src/engine/room.ts';
import { axisOf, plainPlan, sourceOf } from '../reference/plans.ts';
import { close, closeAll } from './close.ts';
import { PATIENCE_MS, settings } from './settings.ts';

vi.setConfig({ testTimeout: PATIENCE_MS });

const KINDS = ['boom', 'slide', 'pan', 'tilt', 'roll', 'focus'] as const;

/** Positions whose moves are of up to so many steps, up, down or either way. */
const positions = (frames: number, most: number) =>
  fc
    .record({
      start: fc.integer({ min: -1_000_000, max: 1_000_000 }),
      low: fc.constantFrom(-most, 0, 0),
      high: fc.constantFrom(0, most, most),
      dice: fc.array(fc.nat(1000), { minLength: frames - 1, maxLength: frames - 1 }),
    })
    .map(({ start, low, high, dice }) => {
      const steps = new Int32Array(frames);
      steps[0] = start;
      dice.forEach((n, k) => {
        steps[k + 1] = (steps[k] as number) + low + (n % (high - low + 1));
      });
      return steps;
    });

const runs = (most: number) =>
  fc
    .record({ axes: fc.integer({ min: 1, max: 6 }), frames: fc.integer({ min: 1, max: 200 }) })
    .chain(({ axes, frames }) => fc.array(positions(frames, most), { minLength: axes, maxLength: axes }));

test('the facts of an axis are those of its positions', () => {
  fc.assert(
    fc.property(runs(3), (all) => {
      const codes = moveCodes(
        all.map((steps) => ({ steps })),
        new Room(),
      );
      expect(codes?.facts).toEqual(all.map(stepFacts));
    }),
    settings(),
  );
});

test('a move of more than three steps, wherever it is, has no code', () => {
  const at = (k: number) => Int32Array.from({ length: 3000 }, (_, i) => i + (i > k ? 3 : 0));
  for (const k of [0, 70, 1500, 2998]) {
    const axes = [{ steps: new Int32Array(3000) }, { steps: at(k) }];
    expect(moveCodes(axes, new Room())).toBeNull();
  }
  expect(moveCodes([{ steps: at(3000) }], new Room())).not.toBeNull();
});

/** A plan of so many frames with an axis for each of some positions, and as many that stand still besides. */
function planOf(frames: number, moving: number, still: number, move: Partial<Plan['move']>): Plan {
  const kinds = [...KINDS.slice(0, moving), ...Array.from({ length: still }, () => 'focus' as const)];
  const axes = kinds.map((kind, i) => {
    const unit = kind === 'slide' || kind === 'boom' ? 'mm' : 'deg';
    return axisOf({ name: `${kind} ${i}`, kind, unit, maxSpeed: 10 + i, maxAccel: 5 + 3 * i });
  });
  return plainPlan(frames, 10, {
    rig: { axes },
    move: { mode: 'moveShootMove', ...move, tracks: [] },
    ringing: { tolerancePx: 0.01 },
  });
}

test('moves, settling and rings are those of the axes one by one', () => {
  const moves: fc.Arbitrary<Partial<Plan['move']>> = fc.record({
    order: fc.constantFrom('together', 'inTurn'),
    settleBy: fc.constantFrom('time', 'ringing'),
    profile: fc.constantFrom('trapezoidal', 'jerkLimited'),
    moveS: fc.constantFrom(null, null, 0.7),
    quiet: fc.boolean(),
  });
  fc.assert(
    fc.property(runs(3), moves, (all, move) => {
      const frames = all[0]?.length ?? 0;
      const [coded, alone] = [0, 7].map((still) => {
        const plan = planOf(frames, all.length, still, move);
        return motionOf(plan, new Float64Array(frames).fill(10), new Room(), (axes) => {
          for (const [i, steps] of all.entries()) axes[i]?.steps.set(steps);
        });
      });
      const { moveS, settleS, ringPx, worstPx, longestSettleS, longestBusyS, axes } = coded ?? {};
      expect({ moveS, settleS, ringPx, worstPx, longestSettleS, longestBusyS }).toEqual({
        moveS: alone?.moveS,
        settleS: alone?.settleS,
        ringPx: alone?.ringPx,
        worstPx: alone?.worstPx,
        longestSettleS: alone?.longestSettleS,
        longestBusyS: alone?.longestBusyS,
      });
      expect(axes).toEqual(alone?.axes.slice(0, all.length));
      const busy = (motion: typeof coded) =>
        motion?.otherwise && Array.from(motion.otherwise.of, (i) => motion.otherwise?.busyS[i]);
      expect(busy(coded)).toEqual(busy(alone));
    }),
    settings(),
  );
});

test('what is drawn by the code of a frame is what its moves draw', () => {
  const watts = fc.double({ min: 0, max: 30, noNaN: true });
  fc.assert(
    fc.property(
      runs(3),
      watts,
      watts,
      fc.double({ min: 0.001, max: 2, noNaN: true }),
      (all, moveW, holdW, energyWh) => {
        const frames = all[0]?.length ?? 0;
        const still = planOf(frames, all.length, 0, {});
        const axes = still.rig.axes.map((axis, i) => ({ ...axis, source: 'Pack', moveW: moveW + i, holdW }));
        const sources = [sourceOf({ name: 'Pack', energyWh, count: 3 })];
        const plan: Plan = {
          ...still,
          rig: { ...still.rig, axes },
          power: { ...still.power, sources },
        };
        const motion = motionOf(plan, new Float64Array(frames).fill(10), new Room(), (columns) => {
          for (const [i, steps] of all.entries()) columns[i]?.steps.set(steps);
        });
        const spells = [{ begin: 0, end: frames, rung: 0, intervalS: 10 }];
        const periods = { spells, periodS: null, runS: 10 * frames };
        const uses = { periods, lanes: [cameraLane(plan)], moveS: motion.moveS, axes: motion.axes };
        const [coded] = energyOf(plan, { ...uses, coded: motion.coded }, new Room());
        const [summed] = energyOf(plan, { ...uses, coded: null }, new Room());
        expect(motion.coded).not.toBeNull();
        close(coded?.summary.drawnWh ?? Number.NaN, summed?.summary.drawnWh ?? 0, 'drawnWh', 1e-9);
        closeAll(coded?.columns.leftWh, [...(summed?.columns.leftWh ?? [])], 'leftWh', () => energyWh);
        expect(coded?.summary.swapFrames).toEqual(summed?.summary.swapFrames);
      },
    ),
    settings(),
  );
});

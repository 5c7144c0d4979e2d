/** Rigs to be balanced: worked ones by their figures, random ones from a seed. */
import fc from 'fast-check';
import { type BalanceRun, balanceOf } from '../../../src/engine/balance/balance.ts';
import type { Axis, Plan } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import type { AxisColumns } from '../../../src/engine/schedule-types.ts';
import { axisOf, plainPlan, type Some, straight } from '../plans.ts';

/** Where an axis begins and ends, in its unit. */
export type Stretch = readonly [number, number];

/** A rig with a boom and a slide, as far as they are given a stretch; eleven frames. */
export function rigOf(
  { boom, slide, axis = {} }: { boom?: Stretch; slide?: Stretch; axis?: Some<Axis> },
  change: Some<Plan>,
): Plan {
  const free = { travelMin: -1e5, travelMax: 1e5, maxSpeed: 1e4, maxAccel: 1e4 };
  const turning = { name: 'Boom', kind: 'boom', unit: 'deg', unitsPerTurn: 360, gearRatio: 50 } as const;
  const axes = [
    ...(boom ? [axisOf({ ...free, ...turning, ...axis })] : []),
    ...(slide ? [axisOf({ ...free, name: 'Slide', kind: 'slide' })] : []),
  ];
  const tracks = [
    ...(boom ? [straight('Boom', ...boom)] : []),
    ...(slide ? [straight('Slide', ...slide)] : []),
  ];
  return plainPlan(11, 1000, {
    ...change,
    rig: { ...change.rig, axes },
    balance: { used: true, ...change.balance },
    move: { mode: 'moveShootMove', settleS: 0, tracks, ...change.move },
  });
}

/** Balance of a plan, which must have one, and the columns that it comes from. */
export function balanced(plan: Plan): BalanceRun & { axes: AxisColumns[] } {
  const { axes } = schedule(plan).columns;
  const balance = balanceOf(plan, axes);
  if (!balance) throw new RangeError('the plan asks for no balance');
  return { ...balance, axes };
}

/** The arm of such a balance. */
export function armOf(plan: Plan) {
  const { arm } = balanced(plan);
  if (!arm) throw new RangeError('the rig has no boom');
  return arm;
}

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Random rigs: arcs of any lean, arms heavy at either end, slides of any bearing and incline, three to eight legs. */
const RANDOM = fc
  .record({
    boom: fc.tuple(between(-170, 170), between(-170, 170)),
    slide: fc.tuple(between(-800, 800), between(-800, 800)),
    arm: fc.record({
      lengthMm: between(300, 3000),
      planeTiltDeg: between(0, 89),
      zeroDeg: between(-60, 60),
    }),
    rail: fc.record({ bearingDeg: between(-180, 180), inclineDeg: between(-60, 60) }),
    balance: fc.record({
      workedOut: fc.constantFrom('place' as const, 'mass' as const, 'residual' as const),
      payloadKg: between(0.5, 8),
      armKg: between(0.2, 6),
      armCentreMm: between(-300, 900),
      counterweightKg: between(0.5, 20),
      counterweightMm: between(50, 900),
      counterweightMaxMm: between(100, 900),
      baseKg: between(0, 5),
      supportKg: between(1, 10),
      ballastKg: between(0, 20),
      feetRadiusMm: between(300, 900),
      legs: fc.integer({ min: 3, max: 8 }),
    }),
  })
  .map(({ boom, slide, arm, rail, balance }) =>
    rigOf({ boom, slide }, { rig: { arm, slide: rail }, balance: { ...balance } }),
  );

/** The same random rigs every time. */
export const randomRigs = (count: number): Plan[] => fc.sample(RANDOM, { seed: 20260704, numRuns: count });

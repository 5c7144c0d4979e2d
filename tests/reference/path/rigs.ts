/** Random rigs on the move. */
import fc from 'fast-check';
import { motionOf } from '../../../src/engine/motion/motion.ts';
import type { Axis, Plan } from '../../../src/engine/plan/schema.ts';
import { Room } from '../../../src/engine/room.ts';
import type { AxisColumns } from '../../../src/engine/schedule-types.ts';
import { axisOf, plainPlan, type Some, straight } from '../plans.ts';

/** An axis in degrees with 533 1/3 steps each, and all the travel that it may want. */
export const turning = (kind: Axis['kind'], change: Some<Axis> = {}): Axis =>
  axisOf({
    name: kind,
    kind,
    unit: 'deg',
    gearRatio: 60,
    unitsPerTurn: 360,
    travelMin: -1e5,
    travelMax: 1e5,
    ...change,
  });

export const sliding = (change: Some<Axis> = {}): Axis =>
  axisOf({ name: 'slide', kind: 'slide', unit: 'mm', travelMin: -1e5, travelMax: 1e5, ...change });

/** Steps of all axes as their tracks have them. */
export const stepsOf = (plan: Plan, frames: number): AxisColumns[] =>
  motionOf(plan, new Float64Array(frames).fill(10), new Room()).axes;

// Even over the range: the doubles of fast-check are even over their bits, so that most of them are next to nothing.
const PARTS = 1_000_000;
const between = (min: number, max: number) =>
  fc.integer({ min: 0, max: PARTS }).map((part) => min + ((max - min) * part) / PARTS);
const ends = (reach: number) => fc.tuple(between(-reach, reach), between(-reach, reach));

/** A plan of some hundred frames whose rig has any of the axes, moving by any amounts. */
export const rigs = fc
  .record({
    frames: fc.integer({ min: 1, max: 400 }),
    has: fc.tuple(fc.boolean(), fc.boolean(), fc.boolean(), fc.boolean(), fc.boolean(), fc.boolean()),
    millimetres: fc.boolean(),
    boom: ends(60),
    slide: ends(900),
    pan: ends(90),
    tilt: ends(40),
    roll: ends(45),
    turntable: ends(180),
    rig: fc.record({
      pivotHeightMm: between(0, 2500),
      lensBearingDeg: between(-180, 180),
      lensTiltDeg: between(-60, 60),
      arm: fc.record({
        lengthMm: between(100, 3000),
        planeTiltDeg: between(0, 90),
        zeroDeg: between(-90, 90),
        keepsLevel: fc.boolean(),
      }),
      slide: fc.record({ bearingDeg: between(-180, 180), inclineDeg: between(-90, 90) }),
      turntable: fc.record({ rightMm: between(-2000, 2000), forwardMm: between(-2000, 2000) }),
    }),
    subject: fc.record({
      rightMm: between(-5000, 5000),
      forwardMm: between(-5000, 5000),
      heightMm: between(0, 4000),
      onTurntable: fc.boolean(),
      backgroundM: between(1, 1000),
    }),
  })
  .map(({ frames, has, millimetres, rig, subject, ...moves }) => {
    const boom = millimetres
      ? axisOf({ name: 'boom', kind: 'boom', unit: 'mm', microsteps: 64 })
      : turning('boom');
    const all = [boom, sliding(), turning('pan'), turning('tilt'), turning('roll'), turning('turntable')];
    const axes = all.filter((_, i) => has[i]);
    const tracks = axes.map(({ name, kind }) => straight(name, ...moves[kind as keyof typeof moves]));
    const plan = plainPlan(frames, 10, {
      rig: { ...rig, axes },
      subject: { ...subject, used: true },
      move: { mode: 'continuous', tracks },
    });
    return { plan, frames };
  });

import { describe, expect, test } from 'vitest';
import type { Axis, Plan } from '../../../src/engine/plan/schema.ts';
import { pixelsPerUnit } from '../../../src/engine/ringing/pixels.ts';
import { axisOf, plainPlan, type Some } from '../../reference/plans.ts';

/** A focal length of 10,000 px; the arm bends over 1500 mm, so that a millimetre nods by 1/1000. */
const planOf = (change: Some<Plan> = {}): Plan =>
  plainPlan(2, 10, {
    camera: { focalLengthMm: 60, sensorWidthMm: 36, imageWidthPx: 6000 },
    ringing: { flexMm: 1500 },
    subject: { used: false, rightMm: 0, forwardMm: 2000, heightMm: 1200 },
    rig: { pivotHeightMm: 1200 },
    ...change,
  });

const pixels = (kind: Axis['kind'], unit: Axis['unit'], plan = planOf()): number =>
  pixelsPerUnit(plan, axisOf({ kind, unit }));

const DEG = Math.PI / 180;

describe('pixels for a unit of ring', () => {
  test('pan and tilt: the focal length times a degree', () => {
    expect(pixels('pan', 'deg')).toBeCloseTo(10_000 * DEG, 9);
    expect(pixels('tilt', 'deg')).toBeCloseTo(10_000 * DEG, 9);
  });

  test('roll: at the edge of the picture', () => {
    expect(pixels('roll', 'deg')).toBeCloseTo(3000 * DEG, 9);
  });

  test('a slide that sways by a millimetre nods by 1.5 / 1500', () => {
    expect(pixels('slide', 'mm')).toBeCloseTo(10, 9);
  });

  test('a boom in degrees sways by its arm', () => {
    const plan = planOf({ rig: { arm: { lengthMm: 800 } } });
    expect(pixels('boom', 'mm', plan)).toBeCloseTo(10, 9);
    expect(pixels('boom', 'deg', plan)).toBeCloseTo(10 * 800 * DEG, 9);
  });

  test('turntable and focus do not shake the camera', () => {
    expect(pixels('turntable', 'deg')).toBe(0);
    expect(pixels('focus', 'deg')).toBe(0);
  });

  test('a subject adds its parallax: 10,000 px over 2000 mm', () => {
    expect(
      pixels('slide', 'mm', planOf({ subject: { used: true, forwardMm: 2000, heightMm: 1200 } })),
    ).toBeCloseTo(15, 9);
  });

  test('seen from the end of the arm, its axis at 0', () => {
    const away = (arm: Some<Plan['rig']['arm']>, subject: Some<Plan['subject']>) => {
      const axis = axisOf({ kind: 'boom', unit: 'mm' });
      const plan = planOf({
        rig: { pivotHeightMm: 1200, axes: [axis], arm },
        subject: { used: true, ...subject },
      });
      return 10_000 / (pixelsPerUnit(plan, axis) - 10);
    };
    // Upright: 30 degrees up, the lens is 866.025 mm forward and 500 mm above the pivot.
    const upright = { lengthMm: 1000, zeroDeg: 30, planeTiltDeg: 0 };
    expect(away(upright, { rightMm: 0, forwardMm: 1866.025, heightMm: 1700 })).toBeCloseTo(1000, 2);
    // Flat: 500 mm to the right instead.
    const flat = { lengthMm: 1000, zeroDeg: 30, planeTiltDeg: 90 };
    expect(away(flat, { rightMm: 500, forwardMm: 866.025, heightMm: 1600 })).toBeCloseTo(400, 2);
  });

  test('a subject in the lens is taken to be a focal length away', () => {
    const subject = { used: true, rightMm: 0, forwardMm: 0, heightMm: 1200 };
    expect(pixels('slide', 'mm', planOf({ subject }))).toBeCloseTo(10 + 10_000 / 60, 9);
  });
});

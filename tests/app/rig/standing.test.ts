/** Where the drawing puts the rig: worked by hand, by right-angled triangles. */
import { describe, expect, test } from 'vitest';
import { distance } from '../../../src/app/rig/standing.ts';
import { boomPlan, drawnOf, slidePlan } from './rigs.ts';

const near = (point: { x: number; y: number; z: number }, [x, y, z]: readonly number[]) => {
  expect(point.x).toBeCloseTo(x as number, 0);
  expect(point.y).toBeCloseTo(y as number, 0);
  expect(point.z).toBeCloseTo(z as number, 0);
};

describe('a boom', () => {
  const { rig } = drawnOf(boomPlan(), 400);

  test('stands at its first, middle and last frame where its arm points', () => {
    near(rig.first.pose.position, [0, 866, 700]);
    near(rig.at(30).pose.position, [0, 1000, 1200]);
    near(rig.last.pose.position, [0, 866, 1700]);
  });

  test('has its counterweight behind the pivot, in line with the arm', () => {
    near(rig.first.rear ?? { x: 9, y: 9, z: 9 }, [0, -346, 1400]);
    near(rig.at(30).rear ?? { x: 9, y: 9, z: 9 }, [0, -400, 1200]);
  });

  test('has no counterweight that nobody asked for', () => {
    expect(drawnOf(boomPlan()).rig.first.rear).toBeNull();
  });

  test('keeps the ends of its path, however many frames it has', () => {
    const long = drawnOf(boomPlan({}, 5000)).rig;
    expect(long.path.length).toBeLessThan(1000);
    near(long.path[0] ?? long.first.base, [0, 866, 700]);
    near(long.path.at(-1) ?? long.first.base, [0, 866, 1700]);
  });
});

test('a slide has its rail from end to end, and its lens on it', () => {
  const { rig } = drawnOf(slidePlan());
  expect(rig.hasArm).toBe(false);
  near(rig.rail?.[0] ?? rig.first.base, [0, 0, 1200]);
  near(rig.rail?.[1] ?? rig.first.base, [800, 0, 1200]);
  near(rig.last.pose.position, [800, 0, 1200]);
});

describe('what the camera sees', () => {
  test.each([
    // Angles of view of 36 mm across, as lens makers' tables have them (from memory), degrees.
    [24, 73.7],
    [35, 54.4],
    [50, 39.6],
    [85, 23.9],
  ])('is as wide as a lens of %d mm takes in', (focalLengthMm, degrees) => {
    const { rig } = drawnOf(boomPlan({ camera: { focalLengthMm, sensorWidthMm: 36, sensorHeightMm: 24 } }));
    const { across, pose } = rig.first;
    const [left, right] = across;
    const half = distance(left, right) / 2;
    const middle = { x: (left.x + right.x) / 2, y: (left.y + right.y) / 2, z: (left.z + right.z) / 2 };
    const angle = (2 * Math.atan(half / distance(middle, pose.position)) * 180) / Math.PI;
    expect(angle).toBeCloseTo(degrees, 1);
  });

  test('ends at a subject that is near, and says how far that is', () => {
    const subject = { used: true, rightMm: 0, forwardMm: 2366, heightMm: 700 };
    const { rig } = drawnOf(boomPlan({ subject }));
    expect(rig.first.subjectMm).toBeCloseTo(1500, 0);
    near(rig.first.ahead, [0, 2366, 700]);
    expect(rig.first.subject).not.toBeNull();
  });

  test('leaves a subject out that is too far off to be drawn to scale', () => {
    const { rig } = drawnOf(boomPlan({ subject: { used: true, forwardMm: 50_000 } }));
    expect(rig.first.subject).toBeNull();
    expect(rig.first.subjectMm).toBeGreaterThan(40_000);
  });
});

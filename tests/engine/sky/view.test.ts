import { describe, expect, test } from 'vitest';
import { motionOf } from '../../../src/engine/motion/motion.ts';
import { Room } from '../../../src/engine/room.ts';
import { leastDeclinationDeg, lensOver, starTrailPx, sunFinder } from '../../../src/engine/sky/view.ts';
import { axisOf, plainPlan, straight } from '../../reference/plans.ts';

const { camera } = plainPlan(2, 10, { camera: { focalLengthMm: 50, sensorWidthMm: 36, sensorHeightMm: 24 } });
const find = sunFinder(camera);
const level = { azimuthDeg: 180, altitudeDeg: 0, rollDeg: 0 };

// 50 mm on 36 x 24 mm: half angles 19.80 and 13.50 deg (OPT-01, V1), and 0.27 deg more for the sun's own radius.
describe('the sun in the picture of 50 mm on 36 x 24 mm', () => {
  test.each([
    [0, 180, true],
    [0, 199.7, true],
    [0, 200.0, true],
    [0, 200.2, false],
    [0, 160.0, true],
    [0, 159.8, false],
    [13.7, 180, true],
    [13.9, 180, false],
    [-13.7, 180, true],
    [0, 0, false],
    [0, 90, false],
    [90, 180, false],
  ])('at %d deg, azimuth %d: %s', (altitude, azimuth, inside) =>
    expect(find(level, altitude, azimuth).inside).toBe(inside),
  );

  test('counts azimuth round north', () => {
    const north = { ...level, azimuthDeg: 359 };
    expect(find(north, 0, 15).inside).toBe(true);
    expect(find(north, 0, 25).inside).toBe(false);
    expect(find(north, 0, 15).fromAxisDeg).toBeCloseTo(16, 9);
  });

  test('lies above a lens that looks up where the azimuth matters little', () => {
    const up = { azimuthDeg: 0, altitudeDeg: 80, rollDeg: 0 };
    // Across the zenith: 10 + 3 deg from the axis.
    expect(find(up, 87, 180).inside).toBe(true);
    expect(find(up, 87, 180).fromAxisDeg).toBeCloseTo(13, 6);
    expect(find(up, 84, 180).inside).toBe(false);
  });

  test('turns with the roll: upright, the long side stands', () => {
    expect(find({ ...level, rollDeg: 90 }, 19, 180).inside).toBe(true);
    expect(find({ ...level, rollDeg: 90 }, 0, 195).inside).toBe(false);
    // Rolled clockwise by 30 deg the right end of the long side sinks.
    expect(find({ ...level, rollDeg: 30 }, -10, 196).inside).toBe(true);
    expect(find({ ...level, rollDeg: 30 }, 10, 196).inside).toBe(false);
    // Rolled by 45 deg it points down to the right: 18 deg along it is inside, 22 deg is not.
    expect(find({ ...level, rollDeg: 45 }, -12.6, 193).inside).toBe(true);
    expect(find({ ...level, rollDeg: 45 }, -15.4, 196).inside).toBe(false);
  });

  test('is not behind a very long lens', () => {
    const long = { ...camera, focalLengthMm: 5000 };
    expect(sunFinder(long)(level, 0, 180).inside).toBe(true);
    expect(sunFinder(long)(level, 0, 0).inside).toBe(false);
  });
});

test('the lens looks where view, pan, tilt and roll point it', () => {
  const plan = plainPlan(5, 10, {
    view: { azimuthDeg: 350, altitudeDeg: 5 },
    rig: {
      axes: [
        axisOf({ name: 'Slide', kind: 'slide' }),
        axisOf({ name: 'Pan', kind: 'pan', unit: 'deg', unitsPerTurn: 360, gearRatio: 100 }),
        axisOf({ name: 'Tilt', kind: 'tilt', unit: 'deg', unitsPerTurn: 360, gearRatio: 100 }),
      ],
    },
    move: {
      mode: 'moveShootMove',
      tracks: [straight('Pan', 0, 40), straight('Tilt', 0, -8), straight('Slide', 0, 100)],
    },
  });
  const { axes } = motionOf(plan, new Float64Array(5).fill(10), new Room());
  const lensAt = lensOver(plan, axes);
  expect(lensAt(0)).toEqual({ azimuthDeg: 350, altitudeDeg: 5, rollDeg: 0 });
  const middle = lensAt(2);
  expect(middle.azimuthDeg).toBeCloseTo(370, 3);
  expect(middle.altitudeDeg).toBeCloseTo(1, 3);
  const still = motionOf(
    { ...plan, move: { ...plan.move, tracks: [] } },
    new Float64Array(5).fill(10),
    new Room(),
  );
  const stillAt = lensOver(plan, still.axes);
  expect(stillAt(4)).toBe(stillAt(0));
  expect(stillAt(4)).toEqual({ azimuthDeg: 350, altitudeDeg: 5, rollDeg: 0 });
});

describe('stars', () => {
  test('trail twice as far in twice the time, half as far at 60 deg', () => {
    const one = starTrailPx(10, 0, 24, 0.006);
    expect(starTrailPx(20, 0, 24, 0.006)).toBeCloseTo(2 * one, 12);
    expect(starTrailPx(10, 60, 24, 0.006)).toBeCloseTo(one / 2, 12);
    expect(starTrailPx(10, -60, 24, 0.006)).toBeCloseTo(one / 2, 12);
  });

  test.each([
    // Looking at the pole: its declination is 90, the corner of 50 mm on 36 x 24 mm is 23.4 deg away (OPT-01).
    [0, 45, 45, 66.6],
    [180, 45, -45, 66.6],
    // The celestial equator in the south at 45 deg of latitude stands 45 deg high.
    [180, 45, 45, 0],
    [180, 10, 45, 11.6],
    // East and west the equator meets the horizon.
    [90, 0, 45, 0],
    [270, 0, -30, 0],
  ])(
    'in a view to %d, up %d, at latitude %d come down to a declination of %d',
    (azimuthDeg, altitudeDeg, latitude, least) =>
      expect(leastDeclinationDeg({ azimuthDeg, altitudeDeg, rollDeg: 0 }, latitude, camera)).toBeCloseTo(
        least,
        1,
      ),
  );
});

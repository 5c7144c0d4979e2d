import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { horizonOf } from '../../../src/engine/sky/horizon.ts';
import { hitsSet, patchOn, profileAngleDeg } from '../../../src/engine/sky/pane.ts';
import { cornersOf, creepMm } from '../../../src/engine/sky/patch.ts';
import { settings } from '../../property/settings.ts';
import { plainPlan } from '../../reference/plans.ts';

const paneOf = (change: object) => plainPlan(2, 10, { pane: { used: true, ...change } }).pane;

describe('the own horizon', () => {
  test('without points is flat', () => expect(horizonOf([])(123)).toBe(0));

  test('with one point has its height all round', () =>
    expect([0, 90, 359].map(horizonOf([{ azimuthDeg: 90, altitudeDeg: 7 }]))).toEqual([7, 7, 7]));

  test('runs straight between points, around north as well', () => {
    const horizon = horizonOf([
      { azimuthDeg: 30, altitudeDeg: 6 },
      { azimuthDeg: 90, altitudeDeg: 0 },
      { azimuthDeg: 270, altitudeDeg: 3 },
    ]);
    // From 270 at 3 to 390 at 6: 0.025 a degree.
    const azimuths = [30, 60, 90, 180, 270, 345, 0, 15, 360];
    const heights = [6, 3, 0, 1.5, 3, 4.875, 5.25, 5.625, 5.25];
    for (const [i, azimuth] of azimuths.entries())
      expect(horizon(azimuth)).toBeCloseTo(heights[i] as number, 9);
  });

  test('goes through points at 0 and 360 both', () => {
    const horizon = horizonOf([
      { azimuthDeg: 0, altitudeDeg: 1 },
      { azimuthDeg: 180, altitudeDeg: 5 },
      { azimuthDeg: 360, altitudeDeg: 3 },
    ]);
    expect([horizon(0), horizon(90), horizon(270)]).toEqual([1, 3, 4]);
    expect(horizon(359.999)).toBeCloseTo(3, 3);
  });
});

describe('the patch of sun', () => {
  test('is none where the sun is behind the wall, along it, under the horizon, or the pane is under the plane', () => {
    const pane = paneOf({ facingDeg: 0, sillMm: 900, headMm: 2100 });
    expect(patchOn(pane, 0, 30, 180)).toBe(null);
    expect(patchOn(pane, 0, 30, 90)).toBe(null);
    expect(patchOn(pane, 0, -1, 0)).toBe(null);
    expect(patchOn(pane, 2100, 30, 0)).toBe(null);
    expect(profileAngleDeg(0, 30, 270)).toBe(null);
  });

  test('wraps at north: a pane to the north takes a sun at 350 and at 10 alike', () => {
    const pane = paneOf({ facingDeg: 0 });
    const [left, right] = [patchOn(pane, 0, 30, 350), patchOn(pane, 0, 30, 10)];
    expect(left?.farMm).toBeCloseTo(right?.farMm ?? 0, 9);
    expect(left?.skew).toBeCloseTo(-(right?.skew ?? 0), 9);
  });

  test('lies where the plan says: a sun in the west of a pane to the south throws it to the east', () => {
    // 45 deg high, 45 deg to the right (looking out): tan P = 1 / cos 45 = 1.4142; head 2000, sill 1000 over the floor.
    const pane = paneOf({ facingDeg: 180, sillMm: 1000, headMm: 2000, widthMm: 600 });
    const patch = patchOn(pane, 0, 45, 225);
    if (patch === null) throw new Error('no patch');
    expect(patch.nearMm).toBeCloseTo(707.107, 3);
    expect(patch.farMm).toBeCloseTo(1414.214, 3);
    const corners = cornersOf(pane, patch).map(({ intoMm, alongMm }) => [
      Math.round(intoMm),
      Math.round(alongMm),
    ]);
    expect(corners).toEqual([
      [707, -1007],
      [707, -407],
      [1414, -1114],
      [1414, -1714],
    ]);
  });

  test('on a table begins at the pane if the sill is lower than the table', () =>
    expect(patchOn(paneOf({ facingDeg: 180, sillMm: 300, headMm: 2000 }), 750, 40, 180)?.nearMm).toBe(0));

  test('creeps', () => {
    const pane = paneOf({ facingDeg: 180, sillMm: 1000, headMm: 2000 });
    expect(creepMm(patchOn(pane, 0, 45, 180), null)).toBe(null);
    // Middle at 1500 / tan 45 = 1500 and at 1500 / tan 40 = 1787.6.
    expect(creepMm(patchOn(pane, 0, 45, 180), patchOn(pane, 0, 40, 180))).toBeCloseTo(287.63, 2);
  });
});

describe('the set', () => {
  test('is hit if and only if a ray through the pane ends on it', () => {
    const rooms = fc.record({
      facingDeg: fc.integer({ min: 0, max: 360 }),
      sillMm: fc.integer({ min: 0, max: 1000 }),
      headMm: fc.integer({ min: 1001, max: 3000 }),
      widthMm: fc.integer({ min: 100, max: 3000 }),
      roomDepthMm: fc.integer({ min: 500, max: 6000 }),
      setHeightMm: fc.integer({ min: 0, max: 1200 }),
      setNearMm: fc.integer({ min: 0, max: 2000 }),
      setFarMm: fc.integer({ min: 2001, max: 5000 }),
      setLeftMm: fc.integer({ min: -3000, max: 0 }),
      setRightMm: fc.integer({ min: 1, max: 3000 }),
    });
    const sun = fc.record({
      altitude: fc.integer({ min: -2, max: 89 }),
      azimuth: fc.integer({ min: 0, max: 359 }),
    });
    let hits = 0;
    fc.assert(
      fc.property(rooms, sun, (room, { altitude, azimuth }) => {
        const pane = paneOf(room);
        const hit = hitsSet(pane, altitude, azimuth);
        if (hit) hits += 1;
        const { inside, gapMm } = raysOnSet(pane, altitude, azimuth);
        // A ray that ends within the set is a hit; where none ends within a mesh of it there is none.
        if (inside > 0) expect(hit).toBe(true);
        if (inside < -gapMm) expect(hit).toBe(false);
      }),
      settings(),
    );
    expect(hits).toBeGreaterThan(15);
  });
});

type Pane = ReturnType<typeof paneOf>;

const MESHES = 30;

/**
 * Rays through a grid of points of the pane.
 * @returns how far inside the set, millimetres, the best of them ends (negative is outside), and the mesh of the
 *   grid where it ends
 */
function raysOnSet(pane: Pane, altitudeDeg: number, azimuthDeg: number): { inside: number; gapMm: number } {
  const [h, a] = [(altitudeDeg * Math.PI) / 180, ((azimuthDeg - pane.facingDeg) * Math.PI) / 180];
  // From the sun: into the room, to the right looking out, down.
  const [into, right, down] = [Math.cos(h) * Math.cos(a), -Math.cos(h) * Math.sin(a), Math.sin(h)];
  let inside = Number.NEGATIVE_INFINITY;
  if (into <= 1e-9 || down <= 0) return { inside, gapMm: 0 };
  const farMm = Math.min(pane.setFarMm, pane.roomDepthMm);
  const step = (pane.headMm - pane.sillMm) / MESHES;
  for (let i = 0; i <= MESHES; i += 1) {
    const way = (pane.sillMm + step * i - pane.setHeightMm) / down;
    if (way < 0) continue;
    const x = way * into;
    for (let j = 0; j <= MESHES; j += 1) {
      const y = pane.widthMm * (j / MESHES - 0.5) + way * right;
      inside = Math.max(
        inside,
        Math.min(x - pane.setNearMm, farMm - x, y - pane.setLeftMm, pane.setRightMm - y),
      );
    }
  }
  return { inside, gapMm: (step / down) * (into + Math.abs(right)) + pane.widthMm / MESHES };
}

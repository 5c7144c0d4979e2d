/** The room from above: everything to one scale and inside the drawing. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  patchLine,
  rayLines,
  roomOf,
  scaleBarMm,
  setRectangle,
} from '../../../src/app/sections/paneDrawing.ts';
import { settings } from '../../property/settings.ts';
import { plainPlan } from '../../reference/plans.ts';

const paneOf = (change: object = {}) => plainPlan(2, 10, { pane: { used: true, ...change } }).pane;
const points = (line: string) => (line.match(/-?[\d.]+/g) ?? []).map(Number);

test('pane, set and opposite wall lie to one scale', () => {
  const pane = paneOf({
    roomDepthMm: 4000,
    setLeftMm: -500,
    setRightMm: 500,
    setNearMm: 800,
    setFarMm: 1600,
  });
  const room = roomOf(pane);
  const set = setRectangle(room, pane);
  expect(set.width / set.height).toBeCloseTo(1000 / 800);
  expect((room.y(4000) - room.y(0)) / (room.x(4000) - room.x(0))).toBeCloseTo(1);
  expect(room.backY).toBeCloseTo(room.y(4000));
  // To the right for somebody who looks out, up the page.
  expect(room.x(100)).toBeGreaterThan(room.x(-100));
});

test('whatever the room, set and pane stay in the drawing', () => {
  const size = fc.integer({ min: 1, max: 100_000 });
  fc.assert(
    fc.property(
      size,
      size,
      size,
      size,
      fc.integer({ min: -100_000, max: 99_000 }),
      (width, depth, far, head, left) => {
        const pane = paneOf({
          widthMm: width,
          roomDepthMm: depth,
          setNearMm: 0,
          setFarMm: Math.min(far, depth),
          headMm: head,
          setLeftMm: left,
          setRightMm: left + 1000,
        });
        const room = roomOf(pane);
        const set = setRectangle(room, pane);
        expect(room.x(-width / 2)).toBeGreaterThanOrEqual(0);
        expect(set.x).toBeGreaterThanOrEqual(0);
        expect(set.x + set.width).toBeLessThanOrEqual(room.width);
        expect(set.y + set.height).toBeLessThanOrEqual(room.height);
        expect(room.height).toBeLessThanOrEqual(251);
        expect(scaleBarMm(room) * room.unitsPerMm).toBeLessThanOrEqual(room.width / 4);
      },
    ),
    settings(),
  );
});

test('the way of the sun goes from the sides of the pane to the near corners of the patch', () => {
  const pane = paneOf({ widthMm: 1000 });
  const room = roomOf(pane);
  const patch = { nearMm: 500, farMm: 1500, skew: 0.5 };
  const [x1, y1, x2, y2] = points(rayLines(room, pane, patch));
  expect([x1, y1]).toEqual([room.x(-500), room.y(0)].map((value) => Number(value.toFixed(1))));
  expect([x2, y2]).toEqual(points(patchLine(room, pane, patch)).slice(0, 2));
});

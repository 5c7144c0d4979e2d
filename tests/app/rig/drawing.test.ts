/** The two views: to one scale, everything on the layout, every figure that of what it measures. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boxOf, overlap, textWidth } from '../../../src/app/charts/names.ts';
import { rigDrawing } from '../../../src/app/rig/drawing.ts';
import { layoutOf } from '../../../src/app/rig/layout.ts';
import { cameraAngle, fieldOf, wayOf } from '../../../src/app/rig/shapes.ts';
import { drawnRig } from '../../../src/app/rig/standing.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { settings } from '../../property/settings.ts';
import type { Some } from '../../reference/plans.ts';
import { boomPlan, drawnOf, slidePlan } from './rigs.ts';

const drawing = (plan: Plan, width = 680, rearMm: number | null = null) => {
  const { rig, made } = drawnOf(plan, rearMm);
  return { rig, made, ...rigDrawing(rig, made.rig.path, width) };
};

const numbers = (line: string) => (line.match(/-?[\d.]+/g) ?? []).map(Number);

describe('the layout', () => {
  const { rig, layout } = drawing(boomPlan());

  test('has one scale in both views, forward to the right', () => {
    for (const { at } of [layout.side, layout.top]) {
      const [from, to] = [at({ x: 0, y: 0, z: 0 }), at({ x: 0, y: 1000, z: 0 })];
      expect(to.x - from.x).toBeCloseTo(1000 * layout.pxPerMm);
      expect(to.y).toBeCloseTo(from.y);
    }
  });

  test('has up at the top from the side, and the rig’s right at the foot from above', () => {
    const origin = { x: 0, y: 0, z: 0 };
    const up = layout.side.at({ x: 0, y: 0, z: 100 }).y - layout.side.at(origin).y;
    const right = layout.top.at({ x: 100, y: 0, z: 0 }).y - layout.top.at(origin).y;
    expect(up).toBeCloseTo(-100 * layout.pxPerMm);
    expect(right).toBeCloseTo(100 * layout.pxPerMm);
  });

  test('puts the views beside each other only where they come out larger', () => {
    expect(layoutOf(rig, 680).top.left).toBeGreaterThan(0);
    expect(layoutOf(rig, 360).top).toMatchObject({ left: 0, width: 360 });
  });
});

test('whatever the rig, its path, its ends and its feet are on the layout', () => {
  const mm = (min: number, max: number) => fc.integer({ min, max });
  const { axes } = drawnOf(boomPlan()).made.columns;
  fc.assert(
    fc.property(
      fc.record({ pivot: mm(0, 5000), length: mm(100, 9000), lean: mm(0, 90), feet: mm(100, 3000) }),
      fc.record({ rightMm: mm(-9000, 9000), forwardMm: mm(-9000, 9000), heightMm: mm(0, 5000) }),
      mm(250, 1600),
      ({ pivot, length, lean, feet }, place, width) => {
        const plan = boomPlan({
          subject: { used: true, ...place },
          balance: { used: true, feetRadiusMm: feet },
        });
        const rig = drawnRig(
          {
            ...plan,
            rig: {
              ...plan.rig,
              pivotHeightMm: pivot,
              arm: { ...plan.rig.arm, lengthMm: length, planeTiltDeg: lean },
            },
          },
          axes,
          length / 2,
        );
        const layout = layoutOf(rig, width);
        expect(layout.height).toBeLessThanOrEqual(541);
        expect(layout.pxPerMm).toBeGreaterThan(0);
        const points = [
          ...rig.path,
          rig.first.rear,
          rig.last.rear,
          rig.first.subject,
          { x: 0, y: feet, z: 0 },
        ];
        for (const view of [layout.side, layout.top]) {
          for (const point of points) {
            if (!point) continue;
            const { x, y } = view.at(point);
            expect(x).toBeGreaterThanOrEqual(view.left);
            expect(x).toBeLessThanOrEqual(view.left + view.width);
            expect(y).toBeGreaterThanOrEqual(view.top);
            expect(y).toBeLessThanOrEqual(view.top + view.height);
          }
        }
      },
    ),
    settings(0.2),
  );
});

describe('dimension lines', () => {
  const { plates, layout, made } = drawing(boomPlan(), 900);
  const [side] = plates;

  test('say rise, reach and how far the arc is off a straight line', () => {
    // A swing of 60 degrees on a radius of 1 m: chord 1 m, sagitta R (1 - cos 30 deg) = 134 mm.
    const texts = [...side.measures, ...side.names].map(({ text }) => text.replaceAll('\u00a0', ' '));
    expect(texts).toContain('Rise 1000 mm');
    expect(texts).toContain('Reach 1000 mm');
    expect(texts).toContain('134 mm off straight');
    expect(made.rig.path?.deviationMm).toBeCloseTo(1000 * (1 - Math.cos(Math.PI / 6)), 1);
  });

  test('are as long as what they measure', () => {
    const lengths = side.dimensions.map((line) => {
      const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = numbers(line);
      return Math.hypot(x2 - x1, y2 - y1) / layout.pxPerMm;
    });
    expect(lengths[0]).toBeCloseTo(1000, -1);
    expect(lengths[1]).toBeCloseTo(1000, -1);
    expect(Math.abs((lengths[2] ?? 0) - 134)).toBeLessThan(2);
  });

  test('are left out where there is nothing to measure', () => {
    const still = boomPlan({ move: { mode: 'still' } });
    expect(drawing(still).plates[0].dimensions).toHaveLength(1);
    const straightPlan = slidePlan();
    expect(drawing(straightPlan).plates.flatMap(({ dimensions }) => dimensions)).toHaveLength(1);
  });
});

describe('names', () => {
  const plans: Some<Plan>[] = [
    {},
    { balance: { used: true } },
    { subject: { used: true, forwardMm: 1800, heightMm: 900 } },
    { balance: { used: true }, subject: { used: true, rightMm: 400, forwardMm: 2500 } },
  ];
  test.each(plans)('stay in their view and off each other: %j', (change) => {
    for (const width of [326, 420, 680, 900]) {
      for (const { names, measures, view } of drawing(boomPlan(change), width, 400).plates) {
        const boxes = [...measures, ...names].map(({ text, x, y }) => boxOf(x, y, textWidth(text)));
        for (const [n, box] of boxes.entries()) {
          expect(box.left).toBeGreaterThanOrEqual(view.left);
          expect(box.right).toBeLessThanOrEqual(view.left + view.width);
          expect(boxes.slice(n + 1).some((other) => overlap(box, other))).toBe(false);
        }
      }
    }
  });

  test('say first and last once where the rig comes back', () => {
    const plan = boomPlan();
    const tracks = plan.move.tracks.map((track) => ({ ...track, thereAndBack: true }));
    const { plates } = drawing({ ...plan, move: { ...plan.move, tracks } });
    expect(plates[0].last).toBeNull();
    expect(plates[0].names.map(({ text }) => text)).toContain('First and last');
    expect(drawing(plan).plates[0].names.map(({ text }) => text)).toEqual(
      expect.arrayContaining(['First', 'Last']),
    );
  });
});

describe('the camera', () => {
  const look = (lensBearingDeg: number, lensTiltDeg: number) => {
    const plan = slidePlan();
    const { rig } = drawnOf({ ...plan, rig: { ...plan.rig, lensBearingDeg, lensTiltDeg } });
    const { side, top } = layoutOf(rig, 700);
    return [cameraAngle(side, rig.first), cameraAngle(top, rig.first)];
  };

  test.each([
    ['forward', 0, 0, [0, 0]],
    ['to the right', 90, 0, [null, 90]],
    ['to the left', -90, 0, [null, -90]],
    ['up', 0, 90, [-90, null]],
    ['forward and up', 0, 45, [-45, 0]],
  ])('lies as it looks %s', (_, bearing, tilt, angles) => {
    const found = look(bearing, tilt);
    for (const [n, angle] of angles.entries()) {
      if (angle === null) expect(found[n]).toBeNull();
      else expect(found[n]).toBeCloseTo(angle);
    }
  });

  test('sees a triangle from its lens on', () => {
    const { rig, layout } = drawing(slidePlan());
    const outline = numbers(fieldOf(layout.top, rig.first));
    const { x, y } = layout.top.at(rig.first.pose.position);
    expect(outline).toHaveLength(6);
    expect(outline[0]).toBeCloseTo(x, 0);
    expect(outline[1]).toBeCloseTo(y, 0);
  });
});

test('a path is drawn without the points that nobody could tell apart', () => {
  const { rig, layout } = drawing(boomPlan({}, 400));
  const drawn = numbers(wayOf(layout.side, rig.path)).length / 2;
  expect(drawn).toBeLessThan(300);
  expect(drawn).toBeGreaterThan(50);
});

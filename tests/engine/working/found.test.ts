/** Where along a run something holds, as workings name it. */
import { expect, test } from 'vitest';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { countWhere, whereRemark } from '../../../src/engine/working/found.ts';
import { planOf } from '../../outputs/plans.ts';
import { judgeWorking } from './judge.ts';

const oneOf =
  (...frames: number[]) =>
  (k: number) =>
    frames.includes(k + 1);

test('stretches are named from first to last, the first four of them', () => {
  const where = (...frames: number[]) => whereRemark(9, oneOf(...frames));
  expect(where()).toBe('Counted through all 9 frames.');
  expect(where(9)).toBe('Counted through all 9 frames: 9.');
  expect(where(1, 2, 3, 9)).toBe('Counted through all 9 frames: 1 to 3, 9.');
  expect(where(1, 3, 5, 7)).toBe('Counted through all 9 frames: 1, 3, 5, 7.');
  expect(where(1, 3, 5, 7, 9)).toBe('Counted through all 9 frames: 1, 3, 5, 7 and more.');
  expect(countWhere(9, oneOf(1, 2, 3, 9))).toBe(4);
});

/** A lens that pans from forward to 90 degrees past something straight ahead. */
function panned(): Plan {
  const keyframes = [
    { share: 0, position: 0, ease: { kind: 'linear' } },
    { share: 1, position: 90 },
  ];
  return planOf({
    pacing: { workedOut: 'event', intervalS: 20, clipLengthS: 4 },
    rig: { axes: [{ name: 'Pan', kind: 'pan', unit: 'deg', travelMin: -180, travelMax: 180 }] },
    move: { mode: 'moveShootMove', tracks: [{ axis: 'Pan', keyframes }] },
    subject: { used: true, forwardMm: 2000, heightMm: 1200 },
  });
}

// 36 mm of sensor behind 24 mm show arctan(18 / 24), 36.87 degrees, to either side.
test('the subject leaves the picture where half the angle of view says', () => {
  const plan = panned();
  const made = schedule(plan);
  const { frames } = made.totals;
  const first = Math.floor((36.8699 / 90) * (frames - 1)) + 2;
  const working = judgeWorking(plan, made, 'image.outOfSightFrames');
  expect(working.value).toBe(frames - first + 1);
  expect(working.remarks).toContain(`Counted through all ${frames} frames: ${first} to ${frames}.`);
});

// A slide carries the lens 800 mm to the right past something 2000 mm ahead; the pan turns 10 degrees at most.
test('the aim is lost where a right-angled triangle says', () => {
  const keyframes = [
    { share: 0, position: 0, ease: { kind: 'linear' } },
    { share: 1, position: 800 },
  ];
  const plan = planOf({
    pacing: { workedOut: 'event', intervalS: 20, clipLengthS: 4 },
    rig: {
      axes: [
        { name: 'Slide', kind: 'slide', unit: 'mm', travelMin: 0, travelMax: 900 },
        { name: 'Pan', kind: 'pan', unit: 'deg', travelMin: -10, travelMax: 10, gearRatio: 100 },
      ],
    },
    move: { mode: 'moveShootMove', tracks: [{ axis: 'Slide', keyframes }] },
    subject: { used: true, aimed: true, forwardMm: 2000, heightMm: 1200 },
  });
  const made = schedule(plan);
  const { frames } = made.totals;
  // A pixel off is none: 4000 px of focal length.
  const lostDeg = 10 + (Math.atan(1 / 4000) * 180) / Math.PI;
  const lostMm = 2000 * Math.tan((lostDeg * Math.PI) / 180);
  const first = Math.floor((lostMm / 800) * (frames - 1)) + 2;
  const working = judgeWorking(plan, made, 'aim.missFrames');
  expect(working.value).toBe(frames - first + 1);
  expect(working.remarks).toContain(`Counted through all ${frames} frames: ${first} to ${frames}.`);
  expect(judgeWorking(plan, made, 'aim.firstMissFrame').value).toBe(first);
  expect(judgeWorking(plan, made, 'aim.worstFrame').value).toBe(frames);
  expect(judgeWorking(plan, made, 'aim.panFromDeg').value).toBe(-10);
});

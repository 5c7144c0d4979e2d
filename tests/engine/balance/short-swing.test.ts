import { expect, test } from 'vitest';
import { newKeyframe } from '../../../src/engine/plan/parse.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { axisOf, plainPlan, straight } from '../../reference/plans.ts';

test('a swing of four frames in a run of 3000 does not escape', () => {
  const linear = { kind: 'linear' as const };
  const at = (frame: number, position: number) => newKeyframe({ at: 'frame', frame, position, ease: linear });
  const turning = { unit: 'deg' as const, unitsPerTurn: 360, maxSpeed: 1000, maxAccel: 1000 };
  const plan = plainPlan(3000, 10, {
    rig: {
      axes: [
        axisOf({ name: 'boom', kind: 'boom', travelMin: -360, travelMax: 360, ...turning }),
        axisOf({ name: 'slide', kind: 'slide' }),
      ],
      arm: { lengthMm: 1000, planeTiltDeg: 90 },
      slide: { bearingDeg: 90 },
    },
    move: {
      mode: 'moveShootMove',
      tracks: [
        { axis: 'boom', thereAndBack: false, keyframes: [at(1501, 0), at(1505, 180)] },
        straight('slide', 400, 400),
      ],
    },
    balance: {
      used: true,
      workedOut: 'residual',
      payloadKg: 3,
      armKg: 0,
      counterweightKg: 0,
      baseKg: 1,
      supportKg: 4,
      feetRadiusMm: 1000,
    },
  });
  const { findings, rig } = schedule(plan);
  // 3 of 8 kg, 1400 mm from the middle, on feet that allow 500 mm: levers.
  expect(rig.balance?.tip.farthestMm).toBeCloseTo((3 * 1400) / 8, 6);
  expect(findings.find(({ id }) => id === 'tips-over')).toMatchObject({ severity: 'stop' });
});

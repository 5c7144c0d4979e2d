import { describe, expect, test } from 'vitest';
import { cameraLane, cameraPhases } from '../../../src/engine/cycle/cycle.ts';
import { newKeyframe } from '../../../src/engine/plan/parse.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { axisOf, plainPlan, type Some, straight } from '../../reference/plans.ts';

const lane = (change: Some<Plan>) => cameraLane(plainPlan(3, 60, change));

describe('camera lane', () => {
  test('lag, exposure, write', () => {
    const got = lane({ camera: { shutterLagS: 0.25, writeS: 1.5 }, exposure: { shutterS: 4 } });
    expect(got).toMatchObject({ cameraS: 5.75, holdS: 4.25, exposureS: 4, busyS: 1.5 });
  });

  test('noise reduction adds as much again, and the rig need not wait for it', () => {
    const got = lane({
      camera: { writeS: 1, noiseReduction: true, noiseReductionFromS: 1 },
      exposure: { shutterS: 4 },
    });
    expect(got).toMatchObject({ cameraS: 9, holdS: 4, exposureS: 4, busyS: 5 });
  });

  test('a bracket adds lag, exposure and write of each; the rig waits for the last to close', () => {
    const got = lane({
      camera: { shutterLagS: 0.5, writeS: 1, noiseReduction: true, noiseReductionFromS: 3 },
      exposure: { shutterS: 2, bracketCount: 3, bracketStops: 1 },
    });
    // 1, 2 and 4 s, a dark frame of 4 s: 3 x 0.5 + 7 + 4 + 3 x 1 = 15.5; the last dark and write follow the hold.
    expect(got).toMatchObject({ cameraS: 15.5, holdS: 10.5, exposureS: 7, busyS: 7 });
  });

  test('a bracket of two lies half a step to each side', () => {
    const opens = cameraPhases(
      plainPlan(3, 60, { exposure: { shutterS: 2, bracketCount: 2, bracketStops: 2 } }),
    )
      .filter(({ kind }) => kind === 'exposure')
      .map(({ durationS }) => durationS);
    expect(opens).toEqual([1, 4]);
  });

  test('phases follow one another without gaps', () => {
    const phases = cameraPhases(
      plainPlan(3, 60, {
        camera: { shutterLagS: 0.1, writeS: 0.7, noiseReduction: true, noiseReductionFromS: 1 },
        exposure: { shutterS: 1.3, bracketCount: 5 },
      }),
    );
    let atS = 0;
    for (const phase of phases) {
      expect(phase.startS).toBeCloseTo(atS, 12);
      atS += phase.durationS;
    }
    expect(phases.map(({ kind }) => kind).filter((kind) => kind === 'dark')).toHaveLength(3);
  });
});

describe('what the shutter really does', () => {
  const openS = (change: Some<Plan>) => lane(change).exposureS;
  const camera = { exactStops: true };

  test('a camera that keeps the time exposes the exact stop, times its correction', () => {
    expect(openS({ camera, exposure: { shutterS: 30, timedBy: 'camera' } })).toBe(32);
    expect(
      openS({ camera: { ...camera, shutterCorrection: 1.03 }, exposure: { shutterS: 1, timedBy: 'camera' } }),
    ).toBe(1.03);
    expect(openS({ camera: { exactStops: false }, exposure: { shutterS: 30, timedBy: 'camera' } })).toBe(30);
  });

  test('a trigger that keeps the time exposes what it is set to', () => {
    expect(
      openS({
        camera: { ...camera, shutterCorrection: 1.03 },
        exposure: { shutterS: 30, timedBy: 'trigger' },
      }),
    ).toBe(30);
  });

  test.each([0.3, 0.8, 1.3, 1.6, 3.2, 13, 15, 30])(
    'noise reduction from a marked %d s holds at that mark, whatever the exact time',
    (shutterS) => {
      const noise = { ...camera, noiseReduction: true, noiseReductionFromS: shutterS };
      const at = (correction: number) =>
        lane({
          camera: { ...noise, shutterCorrection: correction },
          exposure: { shutterS, timedBy: 'camera' },
        });
      for (const correction of [1, 0.97, 1.03]) {
        const { busyS, exposureS } = at(correction);
        expect(busyS, `correction ${correction}`).toBeCloseTo(exposureS, 12);
      }
      const below = lane({
        camera: { ...noise, noiseReductionFromS: shutterS * 1.2 },
        exposure: { shutterS, timedBy: 'camera' },
      });
      expect(below.busyS).toBe(0);
    },
  );
});

describe('the two lanes of a run', () => {
  /** 4 frames every 10 s; lag 0.5, open 2, write 3; moves of 10, 0 and 40 mm at 5 mm/s, 5 mm/s2: 3, 0 and 9 s. */
  const rig = (change: Some<Plan['move']> = {}, cycle = { guardS: 0.5 }) =>
    schedule(
      plainPlan(4, 10, {
        camera: { shutterLagS: 0.5, writeS: 3 },
        exposure: { shutterS: 2 },
        cycle,
        rig: { axes: [axisOf({ name: 'S', maxSpeed: 5, maxAccel: 5 })] },
        move: {
          mode: 'moveShootMove',
          settleS: 1,
          tracks: [
            {
              axis: 'S',
              thereAndBack: false,
              keyframes: [0, 10, 10, 50].map((position, i) =>
                newKeyframe({ share: i / 3, position, ease: { kind: 'linear' } }),
              ),
            },
          ],
          ...change,
        },
      }),
    );

  test('move-shoot-move: hold, move, settle; no settling where nothing moved', () => {
    const { columns } = rig();
    expect([...columns.moveS]).toEqual([3, 0, 9, 0]);
    expect([...columns.settleS]).toEqual([1, 0, 1, 0]);
    expect([...columns.rigS]).toEqual([6.5, 2.5, 12.5, 2.5]);
    expect([...columns.cameraS]).toEqual([5.5, 5.5, 5.5, 5.5]);
    expect([...columns.spareS]).toEqual([3, 4, -3, 4]);
  });

  test('the longest interval decides', () => {
    const { totals, findings } = rig();
    expect(totals).toMatchObject({
      shortestIntervalS: 13,
      longestCycleFrame: 3,
      tightestSpareS: -3,
      tightestFrame: 3,
    });
    expect(findings.find(({ id }) => id === 'cycle-overrun')).toMatchObject({
      severity: 'stop',
      frame: 3,
      elapsedS: 20,
      values: { needsS: 12.5, intervalS: 10, shortS: 2.5 },
    });
  });

  test('continuous: moves all the time, and only the camera can overrun', () => {
    const { columns } = rig({ mode: 'continuous' });
    expect([...columns.moveS]).toEqual([10, 0, 10, 0]);
    expect([...columns.rigS]).toEqual([0, 0, 0, 0]);
    expect([...columns.spareS]).toEqual([4, 4, 4, 4]);
  });

  test('still: stays where its track begins', () => {
    const { columns } = rig({ mode: 'still' });
    expect([...columns.moveS]).toEqual([0, 0, 0, 0]);
    expect(new Set(columns.axes[0]?.steps)).toEqual(new Set([0]));
  });

  test('a fixed time to move holds for every move', () => {
    expect([...rig({ moveS: 4 }).columns.moveS]).toEqual([4, 0, 4, 0]);
  });

  test('axes together take as long as the longest, in turn their sum', () => {
    const both = (order: 'together' | 'inTurn') =>
      schedule(
        plainPlan(2, 60, {
          rig: {
            axes: [
              axisOf({ name: 'A', maxSpeed: 5, maxAccel: 5 }),
              axisOf({ name: 'B', maxSpeed: 5, maxAccel: 5 }),
            ],
          },
          move: {
            mode: 'moveShootMove',
            order,
            settleS: 0,
            tracks: [straight('A', 0, 10), straight('B', 0, 40)],
          },
        }),
      ).columns;
    expect(both('together').moveS[0]).toBe(9);
    expect(both('inTurn').moveS[0]).toBe(12);
    expect(both('inTurn').axes.map(({ moveS }) => moveS[0])).toEqual([3, 9]);
  });
});

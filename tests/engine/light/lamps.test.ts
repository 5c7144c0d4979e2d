import { describe, expect, test } from 'vitest';
import {
  flickerFreeShutters,
  lampShutters,
  rippleLeftShare,
  worstChangeShare,
} from '../../../src/engine/light/lamps.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { plainPlan, type Some } from '../../reference/plans.ts';

const lit = (lamps: Some<Plan['lamps']>, timedBy: 'camera' | 'trigger' = 'camera') =>
  plainPlan(10, 10, { lamps, exposure: { timedBy }, camera: { exactStops: true } });

const marks = (plan: Plan) => flickerFreeShutters(plan).map(({ mark }) => mark);

/** Mean light of 1 + depth x cos over an exposure that begins anywhere: the spread, by adding up slices. */
function spread(depth: number, hz: number, openS: number): number {
  const slices = 500;
  const means = Array.from({ length: 256 }, (_, phase) => {
    let sum = 0;
    for (let i = 0; i < slices; i += 1)
      sum += 1 + depth * Math.cos(2 * Math.PI * (2 * hz * openS * ((i + 0.5) / slices) + phase / 256));
    return sum / slices;
  });
  return Math.max(...means) - Math.min(...means);
}

test('two frames differ by as much as an exposure added up slice by slice says', () => {
  for (const openS of [1 / 40, 1 / 64, 1 / 90, 1 / 500])
    expect(worstChangeShare(rippleLeftShare(0.6, 50, openS))).toBeCloseTo(spread(0.6, 50, openS), 3);
});

describe('shutter times under lamps', () => {
  test('without mains there is nothing to cancel', () => {
    expect(lampShutters(lit({ mainsHz: 'none' }))).toEqual([]);
    expect(flickerFreeShutters(lit({ mainsHz: 'none' }))).toEqual([]);
  });

  test('a mark is judged by the time behind it: 1/50 leaves something, and only within the limit it passes', () => {
    const strict = lit({ mainsHz: '50', depthShare: 1, limitShare: 0.01 });
    const fifty = lampShutters(strict).find(({ mark }) => mark === '1/50');
    expect(fifty?.openS).toBeCloseTo(1 / 50.797, 6);
    expect(fifty?.leftShare).toBeCloseTo(0.016, 3);
    expect(marks(strict)).not.toContain('1/50');
    expect(marks(lit({ mainsHz: '50', depthShare: 0.3, limitShare: 0.01 }))).toContain('1/50');
  });

  test('1/60 is 1/64 and does not pass under 60 Hz; a trigger that keeps the time itself does', () => {
    const lamps = { mainsHz: '60', depthShare: 1, limitShare: 0.01 } as const;
    expect(marks(lit(lamps))).not.toContain('1/60');
    expect(marks(lit(lamps, 'trigger'))).toContain('1/60');
    expect(marks(lit({ ...lamps, limitShare: 0 }, 'trigger'))).toContain('1/60');
  });

  test('each mains has its own times', () => {
    const limits = { depthShare: 0.3, limitShare: 0.011 };
    expect(marks(lit({ mainsHz: '50', ...limits }))).toContain('1/100');
    expect(marks(lit({ mainsHz: '60', ...limits }))).not.toContain('1/100');
  });
});

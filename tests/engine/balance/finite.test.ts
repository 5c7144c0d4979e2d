/** Rigs at the ends of what the plan allows: every figure is a number, and the findings agree with the figures. */
import fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import { balanceOf } from '../../../src/engine/balance/balance.ts';
import { balanceCautions } from '../../../src/engine/balance/cautions.ts';
import { judgeBalance } from '../../../src/engine/balance/findings.ts';
import type { FindingId } from '../../../src/engine/findings/types.ts';
import type { Run } from '../../../src/engine/run.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { PATIENCE_MS } from '../../property/settings.ts';
import { rigOf } from '../../reference/balance/rigs.ts';

vi.setConfig({ testTimeout: PATIENCE_MS });

const oneOf = fc.constantFrom<number[]>;
const kg = oneOf(0, 0.001, 1.5, 40, 1000);
const mm = oneOf(-1e6, -300, 0, 200, 1e6);
const nullable = (value: fc.Arbitrary<number>) => fc.option(value, { nil: null });
const ends = fc.tuple(oneOf(-720, -90, -1, 0), oneOf(0, 45, 90, 361));

const rigs = fc
  .record({
    boom: fc.option(ends, { nil: undefined }),
    slide: fc.option(ends, { nil: undefined }),
    axis: fc.record({ driveEfficiencyShare: oneOf(0.01, 0.8, 1), torqueNm: nullable(oneOf(0.001, 1, 1000)) }),
    arm: fc.record({
      lengthMm: oneOf(10, 1000, 1e6),
      planeTiltDeg: oneOf(0, 45, 90),
      zeroDeg: oneOf(-180, 0, 90),
    }),
    balance: fc.record({
      workedOut: fc.constantFrom('place' as const, 'mass' as const, 'residual' as const),
      payloadKg: kg,
      armKg: kg,
      armCentreMm: mm,
      counterweightKg: kg,
      counterweightMm: oneOf(0, 200, 1e6),
      counterweightMaxMm: oneOf(1, 500, 1e6),
      ratedKg: nullable(oneOf(0.01, 3, 1000)),
      baseKg: kg,
      supportKg: kg,
      ballastKg: kg,
      supportRatedKg: nullable(oneOf(0.01, 20, 10_000)),
      feetRadiusMm: oneOf(10, 500, 1e6),
      legs: fc.integer({ min: 3, max: 8 }),
    }),
  })
  .map(({ boom, slide, axis, arm, balance }) =>
    rigOf({ ...(boom && { boom }), ...(slide && { slide }), axis }, { rig: { arm }, balance }),
  );

/** Every number within a value, with its path. */
function numbersIn(value: unknown, path: string): [string, number][] {
  if (typeof value === 'number') return [[path, value]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => numbersIn(inner, `${path}.${key}`));
}

test('every figure is finite, every sentence readable, and stops stand where figures say so', () => {
  fc.assert(
    fc.property(rigs, (plan) => {
      const { columns } = schedule(plan);
      const balance = balanceOf(plan, columns.axes);
      if (!balance) throw new RangeError('no balance');
      const run = { plan, columns, pace: { frames: 11 } } as unknown as Run;
      const { findings, margins } = judgeBalance(run, balance);
      const numbers = numbersIn({ balance, findings, margins }, '');
      expect(numbers.filter(([, value]) => !Number.isFinite(value))).toEqual([]);
      const texts = [
        ...findings.map(({ message }) => message),
        ...balanceCautions(balance).map(({ text }) => text),
      ];
      for (const text of texts) expect(text).not.toMatch(/NaN|Infinity|undefined|null/);

      const { arm, support, tip } = balance;
      const limits: [FindingId, number, number | null | undefined][] = [
        ['tips-over', tip.farthestMm, tip.safeMm],
        ['support-overloaded', support.loadKg, support.ratedKg],
        ['motor-cannot-hold', arm?.motor.neededNm ?? 0, arm?.motor.torqueNm],
        ['arm-overloaded', plan.balance.payloadKg, arm?.payloadAllowedKg],
      ];
      for (const [id, used, limit] of limits) {
        const stops = findings.some((finding) => finding.id === id && finding.severity === 'stop');
        if (limit == null || used < limit) expect(stops, id).toBe(false);
        else if (used > limit * 1.000001) expect(stops, id).toBe(true);
      }
      for (const margin of margins) expect(margin.frame).toBeGreaterThanOrEqual(1);
    }),
    { seed: 11, numRuns: 500 },
  );
});

/** Each finding of the balance: a rig that has it, with its numbers, and the same rig changed so that it has it no more. */
import { describe, expect, test } from 'vitest';
import { balanceOf } from '../../../src/engine/balance/balance.ts';
import { judgeBalance } from '../../../src/engine/balance/findings.ts';
import type { FindingId, Severity } from '../../../src/engine/findings/types.ts';
import type { Axis, Plan } from '../../../src/engine/plan/schema.ts';
import type { Run } from '../../../src/engine/run.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { rigOf, type Stretch } from '../../reference/balance/rigs.ts';
import type { Some } from '../../reference/plans.ts';

/** What the judge says of a plan; it reads no more of a run than this. */
function judged(plan: Plan) {
  const { columns } = schedule(plan);
  const run = { plan, columns, pace: { frames: columns.elapsedS.length } } as unknown as Run;
  return judgeBalance(run, balanceOf(plan, columns.axes));
}

/** 2 kg at 1 m, 5 kg of counterweight on a rear arm of 500 mm, on three feet at 500 mm. */
const STANDARD: Some<Plan['balance']> = {
  payloadKg: 2,
  armKg: 0,
  counterweightKg: 5,
  counterweightMaxMm: 500,
  baseKg: 1,
  supportKg: 4,
};

interface Rig {
  boom?: Stretch;
  slide?: Stretch;
  axis?: Some<Axis>;
  balance?: Some<Plan['balance']>;
  lengthMm?: number;
  planeTiltDeg?: number;
}

const planOf = ({ balance, lengthMm = 1000, planeTiltDeg = 0, ...axes }: Rig): Plan =>
  rigOf(axes.boom || axes.slide ? axes : { ...axes, boom: [0, 0] }, {
    rig: { arm: { lengthMm, planeTiltDeg } },
    balance: { ...STANDARD, ...balance },
  });

/** 2 - 4.8 x 0.4 = 0.08 kg m: 4 % of the front; 0.785 N m, 0.0157 through 50:1 with nothing lost. */
const OUT = { workedOut: 'residual', counterweightKg: 4.8, counterweightMm: 400 } as const;

interface Trial {
  name: string;
  id: FindingId;
  severity: Severity;
  frame: number | null;
  has: Rig;
  hasNot: Rig;
  message: RegExp;
}

const TRIALS: Trial[] = [
  {
    name: 'typed, 4 % heavy in front; 2 % at most are in balance',
    id: 'out-of-balance',
    severity: 'warning',
    frame: null,
    has: { balance: OUT },
    hasNot: { balance: { ...OUT, counterweightKg: 4.901 } },
    message: /^The camera’s end of the arm is heavier by 0\.785 N m, 4 % .* at 416\.7 mm behind the pivot\.$/,
  },
  {
    name: 'heavy behind',
    id: 'out-of-balance',
    severity: 'warning',
    frame: null,
    has: { balance: { ...OUT, counterweightMm: 450 } },
    hasNot: { balance: { ...OUT, counterweightMm: 416 } },
    message: /^The counterweight’s end of the arm is heavier by/,
  },
  {
    name: 'too little mass on the rear arm',
    id: 'out-of-balance',
    severity: 'warning',
    frame: null,
    has: { balance: { ...OUT, counterweightKg: 3 } },
    hasNot: { balance: { ...OUT, counterweightKg: 5 } },
    message: /5 kg in place of the 3 kg would balance it\.$/,
  },
  {
    name: 'the rear arm is too short',
    id: 'out-of-balance',
    severity: 'warning',
    frame: null,
    has: { balance: { workedOut: 'place', counterweightKg: 3 } },
    hasNot: { balance: { workedOut: 'place', counterweightKg: 4 } },
    message: /have to sit at 666\.7 mm, and the rear arm ends at 500 mm: 4 kg there would balance it\.$/,
  },
  {
    name: 'a place typed beyond the rear arm, though its end would do',
    id: 'out-of-balance',
    severity: 'warning',
    frame: null,
    has: { balance: { workedOut: 'mass', counterweightMm: 600 } },
    hasNot: { balance: { workedOut: 'mass', counterweightMm: 500 } },
    message: /^The counterweight cannot sit at 600 mm: the rear arm ends at 500 mm\.$/,
  },
  {
    name: 'heavier behind without a counterweight',
    id: 'out-of-balance',
    severity: 'warning',
    frame: null,
    has: { balance: { armKg: 5, armCentreMm: -500 } },
    hasNot: { balance: { armKg: 3, armCentreMm: -500 } },
    message: /It needs no counterweight/,
  },
  {
    name: 'a flat arc lets an arm out of balance lie where it is',
    id: 'out-of-balance',
    severity: 'warning',
    frame: null,
    has: { balance: OUT, planeTiltDeg: 50 },
    hasNot: { balance: OUT, planeTiltDeg: 90 },
    message: /2\.6 %/,
  },
  {
    name: 'less torque than it takes',
    id: 'motor-cannot-hold',
    severity: 'stop',
    frame: 1,
    has: { balance: OUT, axis: { torqueNm: 0.015, driveEfficiencyShare: 1 } },
    hasNot: { balance: { workedOut: 'place' }, axis: { torqueNm: 0.015 } },
    message: /^The motor of Boom needs 0\.016 N m .* has 0\.015 N m, from frame 1\.$/,
  },
  {
    name: 'enough torque, less than half again',
    id: 'motor-cannot-hold',
    severity: 'warning',
    frame: 1,
    has: { balance: OUT, axis: { torqueNm: 0.02, driveEfficiencyShare: 1 } },
    hasNot: { balance: OUT, axis: { torqueNm: 0.024, driveEfficiencyShare: 1 } },
    message: /27 % in hand.*50 %/,
  },
  {
    name: 'only from where the arm is low enough',
    id: 'motor-cannot-hold',
    severity: 'stop',
    // 0.0157 cos(angle) passes 0.01 below 50.4 degrees: 80, 72, 64, 56, 48.
    frame: 5,
    has: { balance: OUT, boom: [80, 0], axis: { torqueNm: 0.01, driveEfficiencyShare: 1 } },
    hasNot: { balance: OUT, boom: [80, 0], axis: { driveEfficiencyShare: 1 } },
    message: /from frame 5\.$/,
  },
  {
    name: 'losses of the gearing count against the motor',
    id: 'motor-cannot-hold',
    severity: 'stop',
    frame: 1,
    has: { balance: OUT, axis: { torqueNm: 0.024, driveEfficiencyShare: 0.5 } },
    hasNot: { balance: OUT, axis: { torqueNm: 0.024, driveEfficiencyShare: 1 } },
    message: /needs 0\.031 N m/,
  },
  {
    name: 'a heavier camera wants a shorter arm',
    id: 'arm-overloaded',
    severity: 'stop',
    frame: null,
    has: { balance: { ratedKg: 3, ratedMm: 600 } },
    hasNot: { balance: { ratedKg: 3, ratedMm: 600 }, lengthMm: 900 },
    message: /^The payload is 2 kg, and an arm of 1000 mm carries 1\.8 kg.* at most 900 mm\.$/,
  },
  {
    name: 'more than the support carries',
    id: 'support-overloaded',
    severity: 'stop',
    frame: null,
    // 2 + 5 + 1 kg, without the support itself.
    has: { balance: { supportRatedKg: 7.9 } },
    hasNot: { balance: { supportRatedKg: 8 } },
    message: /^The support bears 8 kg and carries 7\.9 kg\.$/,
  },
  {
    name: 'out of the feet',
    id: 'tips-over',
    severity: 'stop',
    // 2 of 7 kg on a slide: 250 mm are passed at 875 mm; 100 mm a frame.
    frame: 10,
    has: { slide: [0, 1000] },
    hasNot: { slide: [0, 1000], balance: { ballastKg: 3.1 } },
    message: /285\.7 mm from .* 250 mm away, from frame 10\. 3 kg more/,
  },
  {
    name: 'less than a fifth of the radius left',
    id: 'tips-over',
    severity: 'warning',
    // 200 mm are passed at 700 mm.
    frame: 11,
    has: { slide: [0, 750] },
    hasNot: { slide: [0, 700] },
    message:
      /^The rig is 35\.71 mm from tipping over: on ground that leans by 1\.7\d*° it does, from frame 11\. 0\.5 kg more/,
  },
  {
    name: 'all but out of the feet is not out of them',
    id: 'tips-over',
    severity: 'warning',
    // 2 of 7 kg at 870 mm: 248.6 of 250 mm; the fifth is passed from 700 mm on, 87 mm a frame.
    frame: 10,
    has: { slide: [0, 870] },
    hasNot: { slide: [0, 870], balance: { feetRadiusMm: 650 } },
    message: /^The rig is 1\.43 mm from tipping over/,
  },
];

describe.each(TRIALS)('$id: $name', ({ id, severity, frame, has, hasNot, message }) => {
  test('is there, with its numbers', () => {
    const found = judged(planOf(has)).findings.filter((finding) => finding.id === id);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ severity, frame, subject: 'balance' });
    expect(found[0]?.message.replaceAll('\u00A0', ' ')).toMatch(message);
  });

  test('is gone', () => {
    expect(judged(planOf(hasNot)).findings.map((finding) => finding.id)).not.toContain(id);
  });
});

test('the weigh-down that is named leaves the fifth in hand, and a little less does not', () => {
  const findingsWith = (ballastKg: number) =>
    judged(planOf({ slide: [0, 1000], balance: { ballastKg } })).findings;
  const { moreKg } = { ...findingsWith(0)[0]?.values };
  expect(findingsWith(Number(moreKg))).toEqual([]);
  expect(findingsWith(Number(moreKg) - 0.1)).not.toEqual([]);
});

test('margins: support and footing of every rig, the motor where its torque is given', () => {
  const rated = { supportRatedKg: 20, ...OUT };
  const { margins } = judged(planOf({ balance: rated, axis: { torqueNm: 0.03, driveEfficiencyShare: 1 } }));
  expect(margins.map(({ id, unit }) => [id, unit])).toEqual([
    ['support', 'kg'],
    ['tip', 'mm'],
    ['motor', 'N m'],
  ]);
  const [support, tip, motor] = margins;
  expect(support).toMatchObject({ available: 20, reserve: 0 });
  expect(support?.used).toBeCloseTo(2 + 4.8 + 1, 12);
  expect(tip?.available).toBeCloseTo(250, 9);
  expect(tip?.reserve).toBeCloseTo(50, 9);
  expect(motor?.reserve).toBeCloseTo(0.01, 12);
  expect(motor?.left).toBeCloseTo(0.03 - (0.08 * 9.80665) / 50, 12);
  expect(judged(planOf({})).margins.map(({ id }) => id)).toEqual(['tip']);
});

test('a plan that does not ask for its balance is told nothing', () => {
  expect(judged(planOf({ balance: { used: false, ...OUT } }))).toEqual({ findings: [], margins: [] });
});

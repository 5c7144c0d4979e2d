import { describe, expect, test } from 'vitest';
import { intervalLadder } from '../../../src/engine/fixes/interval-ladder.ts';
import { withChanges } from '../../../src/engine/plan/changes.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { plainPlan, type Some } from '../../reference/plans.ts';

const ladder = (plan: Plan, each?: number) =>
  intervalLadder(plan, schedule(plan), each === undefined ? {} : { each });
const dials = (plan: Plan, each?: number) => ladder(plan, each).map(({ dialS }) => dialS);

const seconds = (change: Some<Plan> = {}) =>
  plainPlan(101, 14, { trigger: { stepS: 1, minS: 1, maxS: 60 }, ...change });

describe('the rows', () => {
  test('are the settings of the trigger around the present one', () => {
    expect(dials(seconds())).toEqual([8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20]);
    expect(dials(seconds(), 2)).toEqual([12, 13, 14, 15, 16]);
  });

  test('end where the trigger ends', () => {
    expect(
      dials(seconds({ pacing: { intervalS: 3, workedOut: 'event', clipLengthS: 10, eventS: 1 } })),
    ).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9]);
    expect(dials(seconds({ trigger: { stepS: 1, minS: 1, maxS: 15 } }), 2)).toEqual([12, 13, 14, 15]);
  });

  test('of a fine dial lie far enough apart to differ', () => {
    const fine = (intervalS: number, stepS: number) =>
      dials(plainPlan(101, intervalS, { trigger: { stepS, minS: stepS } }), 2);
    expect(fine(10, 0.001)).toEqual([9, 9.5, 10, 10.5, 11]);
    expect(fine(14, 0.1)).toEqual([12, 13, 14, 15, 16]);
  });

  test('have the present one among them, also if the trigger cannot be set to it', () => {
    const rows = ladder(plainPlan(101, 10.5, { trigger: { stepS: 1, minS: 1 } }), 2);
    expect(rows.map(({ dialS, present, worst }) => [dialS, present, worst?.id ?? null])).toEqual([
      [9, false, null],
      [10, false, null],
      [10.5, true, 'interval-not-settable'],
      [11, false, null],
      [12, false, null],
    ]);
  });

  test('leave out what no plan file could hold', () => {
    // 9,000 frames every 34,000 s last for 3541 days, every 36,000 s for 3750; ten years are 3650.
    const rows = dials(plainPlan(9000, 34_000, { trigger: { stepS: 1000, minS: 1000 } }), 3);
    expect(rows).toEqual([28_000, 30_000, 32_000, 34_000]);
  });
});

describe('taking a row', () => {
  const worked = (
    workedOut: Plan['pacing']['workedOut'],
    counts: Plan['trigger']['counts'] = 'startToStart',
  ) =>
    seconds({
      pacing: { workedOut, intervalS: 14, clipLengthS: 101, eventS: 1400 },
      trigger: { stepS: 1, minS: 1, maxS: 60, counts },
      clip: { frameRate: '1', handlesFrames: 0 },
    });

  test.each([
    // An interval that was worked out: the event is held, and the clip follows.
    ['interval', 'clip'],
    ['clip', 'clip'],
    ['event', 'event'],
  ] as const)('of a plan that works out the %s works out the %s', (from, to) => {
    for (const row of ladder(worked(from))) {
      const taken = withChanges(worked(from), row.changes);
      expect(taken.pacing.workedOut).toBe(row.present ? from : to);
      const { totals } = schedule(taken);
      expect([totals.dialS, totals.frames]).toEqual([row.dialS, row.frames]);
      if (to === 'clip') expect(totals.eventDurationS).toBeLessThanOrEqual(1400);
      else expect(totals.frames).toBe(101);
    }
  });

  test('sets a trigger that counts the gap to that gap', () => {
    const gap = worked('clip', 'endToStart');
    const rows = ladder({ ...gap, exposure: { ...gap.exposure, shutterS: 1.2 } }, 3);
    // 14 s less the 1.2 s of the exposure, to the nearest whole second.
    expect(rows.map(({ dialS }) => dialS)).toEqual([10, 11, 12, 13, 14, 15, 16]);
    for (const row of rows) expect(row.intervalS).toBeCloseTo(row.dialS + 1.2, 9);
  });

  test('changes nothing where it is the present one', () => {
    expect(ladder(worked('interval')).filter(({ present }) => present)).toMatchObject([{ changes: [] }]);
  });
});

test('a row says what the schedule says', () => {
  const plan = seconds({
    place: { zone: 'Etc/UTC', latitudeDeg: 45, longitudeDeg: 0 },
    start: { date: '2026-06-21', time: '19:00' },
    light: { kind: 'sky' },
    exposure: { shutterS: 1 / 60, apertureF: 8, iso: 100, ramp: { used: true } },
  });
  for (const row of ladder(plan)) {
    const made = schedule(withChanges(plan, row.changes));
    expect(row).toMatchObject({
      lastFrameAt: made.totals.lastFrameAt,
      clipLengthS: made.totals.clipLengthS,
      tightestSpareS: made.totals.tightestSpareS,
      worst: made.findings[0] ?? null,
      counts: made.counts,
      cards: 1,
      swaps: 0,
    });
    expect(row.exposureFirst).toMatch(/^.+, f\/8, ISO\u00A0100$/);
    expect(row.exposureLast).not.toBe(row.exposureFirst);
  }
});

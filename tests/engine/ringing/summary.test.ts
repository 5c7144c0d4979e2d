import { describe, expect, test } from 'vitest';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { judgeRinging } from '../../../src/engine/ringing/findings.ts';
import { type RingingSummary, type Rings, ringingOf } from '../../../src/engine/ringing/summary.ts';
import { plainPlan, type Some } from '../../reference/plans.ts';

const planOf = (move: Some<Plan['move']> = {}, ringing: Some<Plan['ringing']> = {}): Plan =>
  plainPlan(5, 20, {
    cycle: { guardS: 0.7 },
    move: { mode: 'moveShootMove', settleBy: 'ringing', ...move },
    ringing: { frequencyHz: 5, dampingRatio: 0.02, tolerancePx: 0.1, ...ringing },
  });

const RINGS: Rings = {
  worstPx: 2,
  longestSettleS: 4.77,
  ringPx: Float32Array.of(0.5, 0, 2, 1, 0),
};

const COMPARED = { withQuietS: 11.2, withoutQuietS: 12 };

const summaryOf = (plan: Plan, compared = COMPARED as typeof COMPARED | null): RingingSummary =>
  ringingOf(plan, RINGS, compared) as RingingSummary;

const findingsOf = (plan: Plan, summary: RingingSummary | null = summaryOf(plan)) =>
  judgeRinging({ plan, columns: RINGS }, summary).findings;

describe('summary', () => {
  test('the worst ring spoils the frame after its move', () => {
    const { worstPx, worstFrame, longestSettleS, frequencyHz, dampingRatio } = summaryOf(planOf());
    // The move after frame 3 leads to frame 4.
    expect({ worstPx, worstFrame, longestSettleS }).toEqual({
      worstPx: 2,
      worstFrame: 4,
      longestSettleS: 4.77,
    });
    expect({ frequencyHz, dampingRatio }).toEqual({ frequencyHz: 5, dampingRatio: 0.02 });
  });

  test('shortest intervals with the guard, which the saving is free of', () => {
    const { quiet } = summaryOf(planOf());
    expect(quiet?.shortestIntervalS).toBeCloseTo(11.9, 12);
    expect(quiet?.shortestIntervalWithoutS).toBeCloseTo(12.7, 12);
    expect(quiet?.savesS).toBeCloseTo(0.8, 12);
  });

  test('nothing that is not known', () => {
    const fixed = ringingOf(planOf({ settleBy: 'time' }), { ...RINGS, ringPx: null }, null);
    expect(fixed).toMatchObject({ worstPx: null, worstFrame: null, longestSettleS: 4.77, quiet: null });
  });

  test('a rig that moves but never rings', () => {
    const none = { worstPx: 0, longestSettleS: 0, ringPx: new Float32Array(3) };
    expect(ringingOf(planOf(), none, null)).toMatchObject({
      worstPx: 0,
      worstFrame: null,
      longestSettleS: 0,
    });
  });

  test('none unless the rig moves between exposures', () => {
    expect(ringingOf(planOf({ mode: 'continuous' }), RINGS, COMPARED)).toBeNull();
    expect(ringingOf(planOf({ mode: 'still' }), RINGS, COMPARED)).toBeNull();
  });
});

describe('measured settle', () => {
  test('shorter than the ring needs: both times, the first frame and the worst', () => {
    // ln(2 / 0.1) / (0.02 x 10 pi) = 4.768 s before frame 4, ln(1 / 0.1) / ... = 3.665 s before frame 5.
    const [finding, ...others] = findingsOf(planOf({ quiet: true }, { measuredSettleS: 3 }));
    expect(others).toEqual([]);
    expect(finding).toMatchObject({ id: 'not-settled', severity: 'warning', subject: 'move', frame: 4 });
    expect(finding?.values).toMatchObject({ measuredS: 3, worstPx: 2, tolerancePx: 0.1, worstFrame: 4 });
    expect(finding?.values).toHaveProperty('needsS', expect.closeTo(4.7679, 4));
    expect(finding?.message.replaceAll('\u00A0', ' ')).toBe(
      'From frame 4 the measured settle of 3 s is short: before frame 4 the ring of 2 px needs 4.77 s to die down to 0.1 px.',
    );
  });

  test('the first frame that is short need not be the worst', () => {
    const [finding] = findingsOf(planOf({}, { measuredSettleS: 2 }));
    expect(finding?.frame).toBe(2);
    expect(finding?.values).toHaveProperty('worstFrame', 4);
  });

  test('long enough, to the millisecond: nothing', () => {
    expect(findingsOf(planOf({}, { measuredSettleS: 4.768 }))).toEqual([]);
    expect(findingsOf(planOf({}, { measuredSettleS: 4.7675 }))).toEqual([]);
    expect(findingsOf(planOf({}, { measuredSettleS: 4.76 }))).toHaveLength(1);
  });
});

describe('quiet moves', () => {
  test('are offered with both intervals', () => {
    const [finding, ...others] = findingsOf(planOf());
    expect(others).toEqual([]);
    expect(finding).toMatchObject({ id: 'quiet-move', severity: 'note', subject: 'move', frame: null });
    expect(finding?.message.replaceAll('\u00A0', ' ')).toBe(
      'Quiet moves would shorten the shortest interval from 12.7 s to 11.9 s.',
    );
  });

  test('are not where they save less than 0.05 s', () => {
    const plan = planOf();
    expect(findingsOf(plan, summaryOf(plan, { withQuietS: 11.96, withoutQuietS: 12 }))).toEqual([]);
    expect(findingsOf(plan, summaryOf(plan, { withQuietS: 11.94, withoutQuietS: 12 }))).toHaveLength(1);
    expect(findingsOf(plan, summaryOf(plan, null))).toEqual([]);
  });

  test.each([
    ['they are on', planOf({ quiet: true })],
    ['each move has a fixed time', planOf({ moveS: 2 })],
    ['the settle was measured', planOf({}, { measuredSettleS: 10 })],
  ])('are not where %s', (_why, plan) => {
    expect(findingsOf(plan)).toEqual([]);
  });
});

test('a fixed settle says nothing, whatever was measured', () => {
  expect(findingsOf(planOf({ settleBy: 'time' }))).toEqual([]);
  expect(findingsOf(planOf({ settleBy: 'time' }, { measuredSettleS: 0.1 }))).toEqual([]);
});

test('nothing of a rig that does not move between exposures', () => {
  expect(judgeRinging({ plan: planOf(), columns: RINGS }, null)).toEqual({ findings: [], margins: [] });
});

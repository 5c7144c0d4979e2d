import { describe, expect, test } from 'vitest';
import { costOf } from '../../../src/engine/fixes/cost.ts';
import { type Outcome, outcomeOf } from '../../../src/engine/fixes/trial.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { plainPlan } from '../../reference/plans.ts';

const before = outcomeOf(
  schedule(plainPlan(385, 14, { clip: { frameRate: '25' }, pacing: { clipLengthS: 15.4 } })),
);
const HOUR_MS = 3_600_000;

/** A run that lasts so many hours longer. */
const lasting = (hours: number): Partial<Outcome['totals']> => ({
  eventDurationS: before.totals.eventDurationS + 3600 * hours,
});
const starting = (hours: number): Partial<Outcome> => ({ startMs: before.startMs + hours * HOUR_MS });

type Change = Omit<Partial<Outcome>, 'totals'> & { totals?: Partial<Outcome['totals']> };
const cost = (change: Change, ...needs: (string | null)[]) =>
  costOf(before, { ...before, ...change, totals: { ...before.totals, ...change.totals } }, needs);

describe('what a fix costs, in words', () => {
  test.each<[string, Change]>([
    ['nothing', {}],
    ['−48 frames: 13.48 s clip', { totals: { frames: 337, clipLengthS: 13.48 } }],
    ['−1 frame: 15.36 s clip', { totals: { frames: 384, clipLengthS: 15.36 } }],
    ['12 s clip', { totals: { clipLengthS: 12 } }],
    ['ends 0:30:00 later', { totals: lasting(0.5) }],
    ['ends 0:30:00 earlier', { totals: lasting(-0.5) }],
    ['starts 1:00:00 earlier', starting(-1)],
    ['starts 1 day later', starting(24)],
    ['starts 22 days earlier', starting(-527)],
    ['starts 9 days earlier', starting(-216)],
    ['starts 1:00:00 later, lasts 0:30:00 longer', { ...starting(1), totals: lasting(0.5) }],
    ['light 0.7 stops farther off', { lightStops: 0.7 }],
    ['light 1 stop farther off', { lightStops: 1 }],
    ['+8 Wh', { totals: { energyWh: before.totals.energyWh + 8 } }],
    ['+2.1 GB', { totals: { storageBytes: before.totals.storageBytes + 2.1e9 } }],
    // The last of other intervals ends a little sooner or later.
    ['nothing', { totals: { eventDurationS: before.totals.eventDurationS + 10 } }],
    // With fewer frames, less of the event goes without saying.
    ['−77 frames: 12.32 s clip', { totals: { frames: 308, clipLengthS: 12.32, ...lasting(-0.3) } }],
    // More of the clip, less light error, less energy: no loss.
    ['nothing', { totals: { frames: 400, clipLengthS: 16, storageBytes: 1 } }],
  ])('%s', (text, change) => expect(cost(change).text.replaceAll('\u00A0', ' ')).toBe(text));

  test('holds each number to its unit by a no-break space', () => {
    expect(cost({ totals: { frames: 337, clipLengthS: 13.48 } }).text).toBe(
      '\u221248\u00A0frames: 13.48\u00A0s clip',
    );
  });

  test('says the most telling loss first, and what no figure shows', () => {
    const half = { totals: { frames: 192, clipLengthS: 7.68 }, lightStops: 0.2 };
    expect(cost(half, '1 pack more to bring', null).text.replaceAll('\u00A0', ' ')).toBe(
      '−193 frames: 7.68 s clip, 1 pack more to bring, light 0.2 stops farther off',
    );
  });
});

describe('what a fix costs, in figures', () => {
  test('is the plan with it less the plan without', () => {
    const given: Change = {
      startMs: before.startMs + 60_000,
      lightStops: 0.3,
      totals: {
        frames: 380,
        eventDurationS: before.totals.eventDurationS - 150,
        clipLengthS: 15.2,
        energyWh: before.totals.energyWh - 1,
        storageBytes: 0,
      },
    };
    const { frames, clipS, startS, endS, lightStops, energyWh, storageBytes } = cost(given);
    expect([frames, startS, endS, lightStops]).toEqual([-5, 60, -90, 0.3]);
    expect(clipS).toBeCloseTo(-0.2, 12);
    expect(energyWh).toBeCloseTo(-1, 12);
    expect(storageBytes).toBe(-before.totals.storageBytes);
  });

  test('an hour of waiting, a stop of light, a tenth of clip or event and two things to see to weigh alike', () => {
    const ranks = [
      cost({ totals: lasting(1) }),
      cost({ totals: { eventDurationS: before.totals.eventDurationS * 0.9 } }),
      cost({ lightStops: 1 }),
      cost({ totals: { clipLengthS: before.totals.clipLengthS * 0.9 } }),
      cost({}, 'one', 'two'),
    ].map(({ rank }) => rank);
    for (const rank of ranks) expect(rank).toBeCloseTo(1, 12);
    expect(cost({}).rank).toBe(0);
  });

  test('another day weighs no more than three hours', () => {
    const later = (days: number) => cost(starting(24 * days)).rank;
    expect([later(1), later(30)]).toEqual([3, 3]);
  });
});

test('a rounding of sums is no cost, and a little more is one', () => {
  const { energyWh } = before.totals;
  expect(cost({ totals: { energyWh: energyWh - 3e-14 } }).energyWh).toBe(0);
  expect(cost({ totals: { energyWh: energyWh - 0.001 } }).energyWh).toBeCloseTo(-0.001, 9);
});

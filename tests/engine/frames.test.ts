import { describe, expect, test } from 'vitest';
import { nightAllowanceStops, sceneEv } from '../../src/engine/light/scene.ts';
import type { Plan } from '../../src/engine/plan/schema.ts';
import { schedule } from '../../src/engine/schedule.ts';
import type { Schedule } from '../../src/engine/schedule-types.ts';
import { moonAt, moonLitShare, sunAt } from '../../src/engine/sky/position.ts';
import { planOf } from '../outputs/plans.ts';

const STEPS = [
  { setting: 'shutter', to: 8 },
  { setting: 'iso', to: 3200 },
];

/** A dusk on the coast, shutter from 1/60 to 8 s and then ISO to 3200; two hours from half an hour before sunset. */
const duskPlan = (pacing: object, counts: Plan['trigger']['counts'], rest: object = {}): Plan =>
  planOf({
    pacing: { eventS: 7200, intervalS: 15, clipLengthS: 16, ...pacing },
    start: { date: '2026-05-02', tiedTo: 'sky', event: 'sunset', offsetMin: -30 },
    place: { zone: 'Europe/Lisbon', latitudeDeg: 38.7, longitudeDeg: -9.4 },
    light: { kind: 'sky' },
    trigger: { stepS: 1, minS: 1, counts },
    exposure: { shutterS: 1 / 60, apertureF: 5.6, ramp: { used: true, steps: STEPS } },
    ...rest,
  });

const openAt = ({ exposure, columns }: Schedule, k: number): number =>
  exposure?.rungs[columns.rung?.[k] ?? -1]?.openS ?? Number.NaN;

const last = (values: ArrayLike<number>): number => values[values.length - 1] as number;

/** Frames one after another: each opens when the interval of the one before is over. */
function expectChain({ columns, totals }: Schedule): void {
  const { elapsedS, intervalS } = columns;
  let elapsed = 0;
  for (let k = 0; k < totals.frames; k += 1) {
    expect(elapsedS[k]).toBeCloseTo(elapsed, 6);
    elapsed += intervalS[k] as number;
  }
}

describe('a trigger that counts from closing to opening, in a falling light', () => {
  const grown = schedule(duskPlan({ workedOut: 'clip' }, 'endToStart'));

  test('makes each interval the gap and that frame’s own exposure', () => {
    const { columns, totals } = grown;
    expect(totals.dialS).toBe(15);
    columns.intervalS.forEach((interval, k) => {
      expect(interval).toBeCloseTo(15 + openAt(grown, k), 9);
    });
    expect(last(columns.intervalS)).toBeCloseTo(23, 6);
    expectChain(grown);
  });

  test('shoots as many frames as open within the event, and no more', () => {
    const { columns, totals } = grown;
    expect(totals.frames).toBe(columns.elapsedS.length);
    expect(totals.eventDurationS).toBe(last(columns.elapsedS));
    expect(totals.eventDurationS).toBeLessThanOrEqual(7200);
    expect(totals.eventDurationS + last(columns.intervalS)).toBeGreaterThan(7200);
    expect(totals.frames).toBeLessThan(7200 / 15);
    expect(totals.clipLengthS).toBeCloseTo(totals.frames / 25, 9);
  });

  test('keeps the frames of a clip that is asked for, and ends later', () => {
    const plan = duskPlan({ workedOut: 'event' }, 'endToStart');
    const { totals, columns } = schedule(plan);
    expect(totals.frames).toBe(400);
    expect(totals.eventDurationS).toBe(last(columns.elapsedS));
    expect(totals.eventDurationS).toBeGreaterThan(399 * (15 + 1 / 64));
  });

  test('is set to the longest gap with which the clip still fits', () => {
    const { totals } = schedule(duskPlan({ workedOut: 'interval' }, 'endToStart'));
    expect(totals.frames).toBeGreaterThanOrEqual(400);
    const lengthAt = (dialS: number) =>
      schedule(duskPlan({ workedOut: 'event', intervalS: dialS }, 'endToStart')).totals.eventDurationS;
    expect(lengthAt(totals.dialS)).toBeLessThanOrEqual(7200);
    expect(lengthAt(totals.dialS + 1)).toBeGreaterThan(7200);
  });

  test('has its sky to the last frame, however long the exposures of a polar night make it', () => {
    const night = duskPlan({ workedOut: 'event', clipLengthS: 200, intervalS: 20 }, 'endToStart', {
      start: { date: '2026-12-10' },
      place: { zone: 'Etc/UTC', latitudeDeg: 78, longitudeDeg: 15 },
      exposure: {
        shutterS: 1 / 60,
        bracketCount: 7,
        ramp: { used: true, steps: [{ setting: 'shutter', to: 30 }] },
      },
    });
    const { columns, totals } = schedule(night);
    expect(totals.eventDurationS).toBeGreaterThan(20 * 86_400);
    for (const column of Object.values(columns.sky ?? {})) expect(column.every(Number.isFinite)).toBe(true);
    expect(columns.sky).not.toBeNull();
  });

  test('goes by the clock again while the light stays', () => {
    const studio = duskPlan({ workedOut: 'clip' }, 'endToStart', { light: { kind: 'studio', studioEv: 11 } });
    const { totals, columns } = schedule(studio);
    // EV 11 at f/5.6 (5.66) is exactly 1/64.
    expect([...new Set(columns.intervalS)]).toEqual([15 + 1 / 64]);
    expect(totals.frames).toBe(Math.floor(7200 / (15 + 1 / 64)) + 1);
  });
});

describe('the light of a frame', () => {
  test.each(['startToStart', 'endToStart'] as const)('is that of its own instant, %s', (counts) => {
    const plan = duskPlan({ workedOut: 'clip' }, counts);
    const { columns, startMs, exposure } = schedule(plan);
    const { latitudeDeg, longitudeDeg } = plan.place as { latitudeDeg: number; longitudeDeg: number };
    for (let k = 0; k < columns.elapsedS.length; k += 17) {
      const ms = startMs + (columns.elapsedS[k] as number) * 1000;
      const sunDeg = sunAt(ms, latitudeDeg, longitudeDeg).geometricAltitudeDeg;
      const moon = moonAt(ms, latitudeDeg, longitudeDeg);
      const scene = sceneEv(plan, {
        sunAltitudeDeg: sunDeg,
        moonAltitudeDeg: moon.geometricAltitudeDeg,
        moonDistanceKm: moon.distanceKm,
        moonLitShare: moonLitShare(ms),
      });
      expect(Math.abs((columns.evScene?.[k] as number) - scene)).toBeLessThan(0.03);
      const settings = exposure?.rungs[columns.rung?.[k] as number]?.ev100 as number;
      const error = scene + nightAllowanceStops(plan, sunDeg) - settings;
      expect(Math.abs((columns.evError?.[k] as number) - error)).toBeLessThan(0.03);
    }
  });

  test('within the ladder is met to half a step and the hysteresis', () => {
    const plan = duskPlan({ workedOut: 'clip' }, 'startToStart');
    const { columns, exposure } = schedule(plan);
    const rungs = exposure?.rungs ?? [];
    columns.rung?.forEach((rung, k) => {
      if (rung === 0 || rung === rungs.length - 1) return;
      expect(Math.abs(columns.evError?.[k] as number)).toBeLessThan(
        1 / 6 + plan.exposure.ramp.hysteresisStops + 0.01,
      );
    });
  });
});

describe('a start that goes by the sky', () => {
  test('stays true when the date changes', () => {
    // Sunset in Lisbon by the Portuguese observatory's rule of the sun's upper limb: about a minute earlier a day
    // in October; here only that the start moves with it, to the second.
    const starts = ['2026-10-01', '2026-10-31'].map((date) => {
      const plan = duskPlan({ workedOut: 'clip' }, 'startToStart');
      return schedule({ ...plan, start: { ...plan.start, date } });
    });
    for (const { startMs } of starts) {
      const halfHourOn = sunAt(startMs + 30 * 60_000, 38.7, -9.4).geometricAltitudeDeg;
      expect(halfHourOn).toBeCloseTo(-0.8333, 2);
    }
    const [first, second] = starts as [Schedule, Schedule];
    expect(second.startMs - first.startMs).toBeLessThan(30 * 86_400_000 - 30 * 60_000);
  });

  test('is said to fail where the event does not happen, and the clock stands in', () => {
    const plan = duskPlan({ workedOut: 'clip' }, 'startToStart');
    const north = { ...plan.place, zone: 'Europe/Oslo', latitudeDeg: 69.65, longitudeDeg: 18.96 };
    const start = { ...plan.start, date: '2026-06-20', time: '23:15:00' };
    const { findings, totals } = schedule({ ...plan, place: north, start });
    expect(findings.find(({ id }) => id === 'no-start-event')).toMatchObject({ severity: 'stop' });
    expect(totals.firstFrameAt).toBe('2026-06-20T23:15:00+02:00');
  });
});

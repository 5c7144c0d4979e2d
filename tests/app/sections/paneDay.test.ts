/** The sun through the pane over a day: what is shown, and how it is said. */
import { describe, expect, test } from 'vitest';
import {
  firstShown,
  hitShares,
  hitsPieces,
  instantNear,
  momentPieces,
  type PaneDay,
  type PaneMoment,
  paneDay,
  paneMoment,
} from '../../../src/app/sections/paneDay.ts';
import { plainText } from '../../../src/app/working/sentence.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { plainPlan, type Some } from '../../reference/plans.ts';

const SITE = { latitudeDeg: 40, longitudeDeg: 0 };
const HOUR_MS = 3_600_000;

const planOf = (pane: Some<Plan['pane']> = {}, date = '2026-03-20', place: Some<Plan['place']> = {}) =>
  plainPlan(10, 10, {
    place: { ...SITE, zone: 'UTC', ...place },
    start: { date },
    pane: { used: true, facingDeg: 180, sillMm: 1000, headMm: 2000, setHeightMm: 0, ...pane },
  });

const momentAt = (plan: Plan, hours: number, intervalS = 60): PaneMoment => {
  const day = paneDay(plan, SITE);
  return paneMoment(plan, SITE, day, day.startMs + hours * HOUR_MS, intervalS);
};

describe('the day', () => {
  test('has daylight of twelve hours at the equinox', () => {
    // Definition of the equinox; refraction and the disk add some minutes (common practice, no source).
    const { instants } = paneDay(planOf(), SITE);
    expect((instants.length * 5) / 60).toBeGreaterThan(11.8);
    expect((instants.length * 5) / 60).toBeLessThan(12.4);
  });

  test('has none in polar night', () => {
    const north = { latitudeDeg: 75, longitudeDeg: 0 };
    expect(paneDay(planOf({}, '2026-12-21', north), north).instants).toEqual([]);
  });

  test('begins with the middle of the time on the set, else with a patch', () => {
    const hit = planOf({ setNearMm: 500, setFarMm: 2000 });
    const day = paneDay(hit, SITE);
    const [first] = day.hits;
    expect(first).toBeDefined();
    const middle = ((first?.fromMs ?? 0) + (first?.toMs ?? 0)) / 2;
    expect(Math.abs((day.instants[firstShown(hit, SITE, day)] ?? 0) - middle)).toBeLessThanOrEqual(150_000);
    // Straight in front of the pane the sun stands high: it never reaches that deep.
    const missed = planOf({ setNearMm: 3800, setFarMm: 3900, setLeftMm: -50, setRightMm: 50 });
    const other = paneDay(missed, SITE);
    const ms = other.instants[firstShown(missed, SITE, other)] ?? 0;
    expect(paneMoment(missed, SITE, other, ms, 60).patch).not.toBeNull();
    expect(hitShares(other)).toEqual([]);
  });

  test('finds the nearest instant, and puts the time on the set between the ends', () => {
    const day = paneDay(planOf(), SITE);
    expect(instantNear(day, 0)).toBe(0);
    expect(instantNear(day, 24 * HOUR_MS)).toBe(day.instants.length - 1);
    for (const [from, to] of hitShares(day)) {
      expect(from).toBeGreaterThanOrEqual(0);
      expect(to).toBeGreaterThan(from);
      expect(to).toBeLessThanOrEqual(1);
    }
  });
});

describe('a moment', () => {
  test('throws the patch by similar triangles: at noon of the equinox the sun stands 90° less the latitude high', () => {
    // Solar noon at longitude 0 is at 12:07 on 20 March. Source: equation of time, from memory.
    const { patch } = momentAt(planOf(), 12 + 7 / 60);
    const away = 1 / Math.tan((50 * Math.PI) / 180);
    expect(Math.abs((patch?.nearMm ?? 0) / (1000 * away) - 1)).toBeLessThan(0.01);
    expect(Math.abs((patch?.farMm ?? 0) / (2000 * away) - 1)).toBeLessThan(0.01);
  });

  test('ends the patch at the opposite wall, and says where the sun is without one', () => {
    expect(momentAt(planOf({ roomDepthMm: 1200 }), 12).patch?.farMm).toBe(1200);
    expect(momentAt(planOf({ roomDepthMm: 500 }), 12)).toMatchObject({
      patch: null,
      why: 'wall',
      onSet: false,
    });
    expect(momentAt(planOf({ facingDeg: 0 }), 12)).toMatchObject({ patch: null, why: 'sun', creepMm: null });
    const covered = planOf({}, '2026-03-20', { horizon: [{ azimuthDeg: 0, altitudeDeg: 60 }] });
    expect(momentAt(covered, 12)).toMatchObject({ patch: null, why: 'horizon' });
  });

  test('creeps as fast as the sun: a minute is a quarter of a degree', () => {
    // 15 degrees an hour along the equator; across the wall at noon the skew is tan(azimuth), so that the middle
    // moves by its depth x 0.25 deg / cos(altitude) x cos(declination), from memory of the diurnal motion.
    const { patch, creepMm } = momentAt(planOf(), 12 + 7 / 60);
    const intoMm = ((patch?.nearMm ?? 0) + (patch?.farMm ?? 0)) / 2;
    const turn = (0.25 * Math.PI) / 180 / Math.cos((50 * Math.PI) / 180);
    expect(Math.abs((creepMm ?? 0) / (intoMm * turn) - 1)).toBeLessThan(0.02);
  });
});

const momentText = (...of: Parameters<typeof momentPieces>) => plainText(momentPieces(...of));
const hitsText = (day: PaneDay, called: string, blackOut: boolean) =>
  plainText(hitsPieces(day, '2026-03-20', called, blackOut));

describe('words', () => {
  const { pane } = planOf({ widthMm: 1200 });
  const moment: PaneMoment = {
    ms: Date.UTC(2026, 2, 20, 10, 55),
    clock: '10:55',
    patch: { nearMm: 900, farMm: 1600, skew: -1 },
    why: null,
    onSet: true,
    creepMm: 14.4,
  };

  test('say where the patch lies and how it creeps', () => {
    expect(momentText(pane, moment).replaceAll('\u00a0', ' ')).toBe(
      'At 10:55 the patch, at the height of the set, reaches from 0.9 to 1.6 m into the room, 0.3 to 2.2 m ' +
        'left of the pane’s middle, looking out, and lies on the set; it creeps 14 mm an interval.',
    );
    const right = momentText(pane, { ...moment, patch: { nearMm: 900, farMm: 1600, skew: 1 }, onSet: false });
    expect(right.replaceAll('\u00a0', ' ')).toContain('0.3 to 2.2 m right of');
    expect(right).toContain('misses the set');
    const across = momentText(pane, {
      ...moment,
      patch: { nearMm: 900, farMm: 1600, skew: 0 },
      creepMm: null,
    });
    expect(across.replaceAll('\u00a0', ' ')).toContain('from 0.6 m left to 0.6 m right of');
    expect(across).toContain('gone an interval later');
  });

  test('say why there is no patch', () => {
    const none = { ...moment, patch: null, onSet: false, creepMm: null };
    expect(momentText(pane, { ...none, why: 'sun' })).toBe(
      'At 10:55 no sun comes through the pane onto the height of the set.',
    );
    expect(momentText(pane, { ...none, why: 'horizon' })).toContain('behind the own horizon');
  });

  test('say when the set is hit by the local clock, and to black out in stop-motion', () => {
    const day = {
      startMs: 0,
      offsets: [{ fromMs: 0, offsetMin: 60 }],
      instants: [],
      hits: [{ fromMs: 9.9 * HOUR_MS, toMs: 11.2 * HOUR_MS }],
    };
    expect(hitsText(day, 'Friday', true)).toBe(
      'On Friday the sun reaches the set from 10:54 to 12:12, if the sky is clear; black out then.',
    );
    expect(hitsText(day, 'Friday', false)).not.toContain('black out');
    expect(hitsText({ ...day, hits: [] }, 'Friday', true)).toBe('The sun does not reach the set on Friday.');
  });
});

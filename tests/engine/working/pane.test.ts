/**
 * The figures of the sun through the pane: the patch against rays that are followed in space, the moments against the
 * spans that were searched for, and the sun's place then against the hour angle worked the other way.
 */
import { describe, expect, test } from 'vitest';
import { hitsPieces, momentPieces, paneDay, paneMoment } from '../../../src/app/sections/paneDay.ts';
import { sunOver, sunPieces } from '../../../src/app/sections/panorama.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { sunAt } from '../../../src/engine/sky/position.ts';
import { setHitSpans } from '../../../src/engine/sky/windows.ts';
import { ofSun } from '../../../src/engine/working/names.ts';
import { workingOf } from '../../../src/engine/working/working.ts';
import { plainPlan } from '../../reference/plans.ts';
import { clockS } from './besides.ts';
import { judgeWorking } from './judge.ts';

const SITE = { latitudeDeg: 40, longitudeDeg: -3.7 };
const RAD = Math.PI / 180;
const DATE = '2026-03-20';

const plan = plainPlan(10, 600, {
  place: { ...SITE, zone: 'Europe/Madrid' },
  start: { date: DATE, time: '11:00:00' },
  pane: { used: true, facingDeg: 200, widthMm: 1200, sillMm: 900, headMm: 2100, setHeightMm: 400 },
});
const made = schedule(plan);
const value = (figure: string) => judgeWorking(plan, made, figure).value;

/** Where a ray of the sun from a point of the pane meets the plane of the set: into the room, and along the wall. */
function landing(ms: number, alongMm: number, heightMm: number): { into: number; along: number } {
  const { apparentAltitudeDeg: h, azimuthDeg } = sunAt(ms, SITE.latitudeDeg, SITE.longitudeDeg);
  // East, north, up; the ray goes away from the sun.
  const [east, north, up] = [
    -Math.sin(azimuthDeg * RAD) * Math.cos(h * RAD),
    -Math.cos(azimuthDeg * RAD) * Math.cos(h * RAD),
    -Math.sin(h * RAD),
  ] as const;
  const facing = plan.pane.facingDeg * RAD;
  const outward = [Math.sin(facing), Math.cos(facing)] as const;
  // To the right of somebody who looks out.
  const right = [Math.cos(facing), -Math.sin(facing)] as const;
  const way = (plan.pane.setHeightMm - heightMm) / up;
  return {
    into: -way * (east * outward[0] + north * outward[1]),
    along: alongMm + way * (east * right[0] + north * right[1]),
  };
}

describe('the patch at an instant', () => {
  test.each(['11:00', '12:30', '14:45'])('at %s UTC, by its rays', (clock) => {
    const ms = Date.parse(`${DATE}T${clock}:00Z`);
    const { sillMm, headMm, widthMm } = plan.pane;
    const corners = [-widthMm / 2, widthMm / 2].flatMap((along) =>
      [sillMm, headMm].map((height) => landing(ms, along, height)),
    );
    const [into, along] = [corners.map((corner) => corner.into), corners.map((corner) => corner.along)];
    expect(value(ofSun(ms, 'patch.nearMm'))).toBeCloseTo(Math.min(...into), 6);
    expect(value(ofSun(ms, 'patch.farMm'))).toBeCloseTo(Math.max(...into), 6);
    expect(value(ofSun(ms, 'patch.leftMm'))).toBeCloseTo(Math.min(...along), 6);
    expect(value(ofSun(ms, 'patch.rightMm'))).toBeCloseTo(Math.max(...along), 6);
    const middle = (atMs: number) => {
      const ends = [landing(atMs, 0, sillMm), landing(atMs, 0, headMm)];
      return ends.reduce(
        (sum, end) => ({ into: sum.into + end.into / 2, along: sum.along + end.along / 2 }),
        {
          into: 0,
          along: 0,
        },
      );
    };
    const [now, next] = [middle(ms), middle(ms + 600_000)];
    expect(value(ofSun(ms, 'patch.creepMm'))).toBeCloseTo(
      Math.hypot(next.into - now.into, next.along - now.along),
      6,
    );
  });

  test('ends at the opposite wall; there is none at night, with the pane away from the sun, or without a place', () => {
    const shallow = { ...plan, pane: { ...plan.pane, roomDepthMm: 700 } };
    const noon = Date.parse(`${DATE}T12:30:00Z`);
    expect(judgeWorking(shallow, schedule(shallow), ofSun(noon, 'patch.farMm')).value).toBe(700);
    expect(workingOf(plan, made, ofSun(noon - 12 * 3_600_000, 'patch.farMm'))).toBe(null);
    const away = { ...plan, pane: { ...plan.pane, facingDeg: 20 } };
    expect(workingOf(away, schedule(away), ofSun(noon, 'patch.nearMm'))).toBe(null);
    const nowhere = { ...plan, place: { ...plan.place, latitudeDeg: null } };
    expect(workingOf(nowhere, schedule(nowhere), ofSun(noon, 'altitudeDeg'))).toBe(null);
    expect(workingOf(plan, made, 'sun.2026-13-40T12:00:00Z.altitudeDeg')).toBe(null);
  });
});

test('the sketches say nothing that cannot be asked for', () => {
  const day = paneDay(plan, SITE);
  for (const [index, ms] of day.instants.entries()) {
    const moment = paneMoment(plan, SITE, day, ms, made.totals.intervalS);
    for (const piece of momentPieces(plan.pane, moment)) {
      if (typeof piece === 'string') continue;
      const mm = value(piece.of);
      const [shown = '', unit] = piece.text.split('\u00A0');
      // One of two metres leaves its unit to the other.
      const shownMm = Number(shown) * (unit === 'mm' ? 1 : 1000);
      expect(Math.abs(shownMm - Math.abs(mm)), `${index}: ${piece.text}, ${piece.of}`).toBeLessThan(51);
    }
  }
  const hits = hitsPieces(day, DATE, 'Friday', true).filter((piece) => typeof piece !== 'string');
  expect(hits.length).toBe(2 * day.hits.length);
  expect(hits.length).toBeGreaterThan(0);
  for (const { text, of } of hits) expect(judgeWorking(plan, made, of).label?.slice(11, 16)).toBe(text);

  const sun = sunOver(DATE, plan.place.zone, null, SITE);
  const [, highest] = sunPieces(sun, 'Friday');
  if (typeof highest !== 'object') throw new Error('Nothing is said of how high the sun gets.');
  // 90° less the latitude at the equinox, within a sun's way of one day (definition of the equinox).
  expect(Math.abs(value(highest.of) - 50)).toBeLessThan(0.3);
  expect(highest.text).toBe(`${Math.round(Math.max(...sun.map(({ altitudeDeg }) => altitudeDeg)))}°`);
});

test('the sun comes onto the set and leaves it when the search says; the hour angle is where it stands', () => {
  const { startMs, endMs } = {
    startMs: Date.parse(`${DATE}T00:00:00+01:00`),
    endMs: Date.parse('2026-03-21T00:00:00+01:00'),
  };
  const spans = setHitSpans(plan, startMs, endMs);
  expect(spans.length).toBeGreaterThan(0);
  spans.forEach((span, h) => {
    for (const [what, ms] of [
      ['from', span.fromMs],
      ['to', span.toMs],
    ] as const) {
      const name = (part: string) => `days.${DATE}.pane.${h + 1}.${what}${part}`;
      expect(value(name(''))).toBeCloseTo(clockS(plan.place, ms), 3);
      // Mean noon at the longitude is at 12 h less 4 min a degree; the equation of time is 7 min 33 s then (almanac, from memory).
      const solarS = value(name('.utcS')) + 240 * SITE.longitudeDeg - 453;
      expect(Math.abs(value(name('.hourAngleDeg')) - (solarS - 43_200) / 240)).toBeLessThan(0.1);
      // Back from the hour angle, at the equinox with a declination of nearly nought: the altitude.
      const sine = Math.cos(SITE.latitudeDeg * RAD) * Math.cos(value(name('.hourAngleDeg')) * RAD);
      expect(Math.abs(value(name('.altitudeDeg')) - Math.asin(sine) / RAD)).toBeLessThan(0.3);
    }
  });
});

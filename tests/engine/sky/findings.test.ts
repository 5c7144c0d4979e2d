import { describe, expect, test } from 'vitest';
import type { Finding, FindingId } from '../../../src/engine/findings/types.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { sunAt } from '../../../src/engine/sky/position.ts';
import { sunFinder } from '../../../src/engine/sky/view.ts';
import { plainPlan, type Some } from '../../reference/plans.ts';

const LISBON = { zone: 'Europe/Lisbon', latitudeDeg: 38.7, longitudeDeg: -9.14 };

/** 541 frames every 10 s are an hour and a half. */
const planOf = (change: Some<Plan>) =>
  plainPlan(541, 10, { place: LISBON, start: { date: '2026-08-08', time: '20:00:00' }, ...change });

const found = (plan: Plan, id: FindingId) => schedule(plan).findings.find((finding) => finding.id === id);

const value = (finding: Finding | undefined, name: string) => Number(finding?.values[name]);

const DUSK = { used: true, sunAltitudeMinDeg: -18, sunAltitudeMaxDeg: 6 } as const;

describe('windows', () => {
  // Sunset in Lisbon is at about 20:41; the sun stands at 6 deg at about 20:03 and at -18 deg at about 22:18.
  test('a run inside its window says nothing', () => {
    const plan = planOf({ window: DUSK, start: { date: '2026-08-08', time: '20:10:00' } });
    expect(found(plan, 'outside-window')).toBeUndefined();
    expect(found(plan, 'no-window')).toBeUndefined();
  });

  test('one that begins too early names its first frame, and a start that fits', () => {
    const plan = planOf({ window: DUSK, start: { date: '2026-08-08', time: '19:50:00' } });
    const finding = found(plan, 'outside-window');
    expect(finding).toMatchObject({ severity: 'warning', frame: 1 });
    const { sky } = schedule(plan);
    const frames = value(finding, 'frames');
    const elapsedS = frames * 10;
    const at = (s: number) =>
      sunAt(Date.parse('2026-08-08T19:50:00+01:00') + s * 1000, 38.7, -9.14).geometricAltitudeDeg;
    expect(at(elapsedS - 10)).toBeGreaterThan(6);
    expect(at(elapsedS)).toBeLessThanOrEqual(6);
    expect(finding?.message).toContain('would fit');
    const bestMs = sky?.best?.startMs ?? 0;
    const moved = planOf({
      window: DUSK,
      start: { date: '2026-08-08', time: new Date(bestMs + 3_600_000).toISOString().slice(11, 19) },
    });
    expect(found(moved, 'outside-window')).toBeUndefined();
  });

  test('one that goes on too long names the first frame after it', () => {
    const plan = planOf({ window: DUSK, start: { date: '2026-08-08', time: '21:30:00' } });
    const finding = found(plan, 'outside-window');
    const frame = finding?.frame ?? 0;
    expect(frame).toBeGreaterThan(1);
    const at = (k: number) =>
      sunAt(Date.parse('2026-08-08T21:30:00+01:00') + k * 10_000, 38.7, -9.14).geometricAltitudeDeg;
    expect(at(frame - 2)).toBeGreaterThanOrEqual(-18);
    expect(at(frame - 1)).toBeLessThan(-18);
    expect(value(finding, 'frames')).toBe(541 - frame + 1);
  });

  test('none that holds the run', () => {
    const plan = planOf({
      window: { ...DUSK, sunAltitudeMaxDeg: -6 },
      start: { date: '2026-08-08', time: '21:10:00' },
    });
    const finding = found(plan, 'no-window');
    expect(finding).toMatchObject({ severity: 'warning', frame: null });
    expect(finding?.message).toMatch(/the longest lasts 1:\d\d:\d\d, the run 1:30:00/);
    const never = planOf({ window: { used: true, sunAltitudeMinDeg: 80 } });
    expect(found(never, 'no-window')?.message).toMatch(/there is none/);
    expect(found(never, 'outside-window')).toMatchObject({ frame: 1, values: { frames: 541 } });
  });

  test('cannot be found without a place', () =>
    expect(found(planOf({ place: { latitudeDeg: null }, window: DUSK }), 'no-window')?.message).toMatch(
      /no latitude/,
    ));

  test('of a run of months are followed for its first month', () => {
    const long = plainPlan(200, 86_400, {
      place: LISBON,
      trigger: { maxS: 90_000 },
      window: { used: true, sunAltitudeMinDeg: 0 },
    });
    const night = { ...long, start: { ...long.start, date: '2026-08-08', time: '02:00:00' } };
    expect(found(night, 'outside-window')?.message).toMatch(
      /^32.frames of the run lie outside the window within 31.days/,
    );
  });
});

describe('a start that goes by the sky', () => {
  const tromso = { zone: 'Europe/Oslo', latitudeDeg: 69.65, longitudeDeg: 18.96 };

  test('stops where the event does not happen, and says why', () => {
    const plan = planOf({ place: tromso, start: { tiedTo: 'sky', event: 'sunset', date: '2026-06-21' } });
    expect(found(plan, 'no-start-event')).toMatchObject({ severity: 'stop', frame: null });
    expect(found(plan, 'no-start-event')?.message).toMatch(/sunset.*2026-06-21.*stays above/);
    expect(
      found({ ...plan, start: { ...plan.start, date: '2026-09-21' } }, 'no-start-event'),
    ).toBeUndefined();
    expect(found({ ...plan, start: { ...plan.start, tiedTo: 'clock' } }, 'no-start-event')).toBeUndefined();
  });

  test('stops without a place', () => {
    const plan = planOf({ place: { latitudeDeg: null, longitudeDeg: null }, start: { tiedTo: 'sky' } });
    expect(found(plan, 'no-start-event')?.message).toMatch(/no latitude and longitude/);
  });
});

describe('the sun in the picture', () => {
  const plan = planOf({
    view: { used: true, azimuthDeg: 290, altitudeDeg: 5 },
    camera: { focalLengthMm: 24, shutterLagS: 0, writeS: 0, exactStops: false },
  });

  test('warns of the first frame, the nearest, and the eye', () => {
    const finding = found(plan, 'sun-in-frame');
    expect(finding).toMatchObject({ severity: 'warning', frame: 1 });
    expect(finding?.message).toMatch(/optical finder/);
    const startMs = Date.parse('2026-08-08T20:00:00+01:00');
    const inside = (k: number) => {
      const sun = sunAt(startMs + k * 10_000, 38.7, -9.14);
      // Down to where its upper limb is level with the flat horizon.
      const up = sun.apparentAltitudeDeg + 0.26667 > 0;
      return (
        up &&
        sunFinder(plan.camera)(
          { azimuthDeg: 290, altitudeDeg: 5, rollDeg: 0 },
          sun.apparentAltitudeDeg,
          sun.azimuthDeg,
        ).inside
      );
    };
    const frames = Array.from({ length: 541 }, (_, k) => inside(k)).filter(Boolean).length;
    expect(value(finding, 'frames')).toBe(frames);
  });

  test('is no matter if the lens looks away, the sun is behind a hill, or nobody asks', () => {
    expect(found({ ...plan, view: { ...plan.view, azimuthDeg: 110 } }, 'sun-in-frame')).toBeUndefined();
    expect(found({ ...plan, view: { ...plan.view, used: false } }, 'sun-in-frame')).toBeUndefined();
    const hill = { ...plan, place: { ...plan.place, horizon: [{ azimuthDeg: 290, altitudeDeg: 25 }] } };
    expect(found(hill, 'sun-in-frame')).toBeUndefined();
  });
});

describe('the sun on the set', () => {
  const plan = planOf({
    technique: 'stopMotion',
    start: { date: '2026-11-14', time: '11:30:00' },
    pane: { used: true, facingDeg: 180, sillMm: 900, headMm: 1750, setHeightMm: 750 },
  });

  test('is a warning in stop-motion, with the times to black out', () => {
    const finding = found(plan, 'sun-on-set');
    expect(finding).toMatchObject({ severity: 'warning', frame: 1 });
    expect(finding?.message).toMatch(/From 11:30:00 to \d\d:\d\d:\d\d .*Black out/);
  });

  test('is a note in time-lapse, and gone where the pane looks north', () => {
    const timeLapse = { ...plan, technique: 'timeLapse' as const };
    expect(found(timeLapse, 'sun-on-set')).toMatchObject({ severity: 'note' });
    expect(found({ ...timeLapse, pane: { ...plan.pane, facingDeg: 0 } }, 'sun-on-set')).toBeUndefined();
  });
});

describe('stars', () => {
  // 24 mm, 36 mm over 6000 px, 30 s: 8.75 px on the celestial equator (OPT-11).
  const plan = planOf({
    view: { stars: true, starTrailMaxPx: 3 },
    camera: { focalLengthMm: 24, exactStops: false, shutterLagS: 0, writeS: 0 },
    exposure: { shutterS: 30, timedBy: 'trigger' },
    pacing: { workedOut: 'event', intervalS: 35, clipLengthS: 541 },
    start: { date: '2026-08-08', time: '20:00:00' },
  });

  test('trail too far in the frames after civil dusk', () => {
    const finding = found(plan, 'star-trails');
    expect(finding).toMatchObject({ severity: 'warning' });
    expect(value(finding, 'worstPx')).toBeCloseTo(8.751, 3);
    const at = (frame: number) =>
      sunAt(Date.parse('2026-08-08T20:00:00+01:00') + (frame - 1) * 35_000, 38.7, -9.14).geometricAltitudeDeg;
    expect(at(finding?.frame ?? 0)).toBeLessThan(-6);
    expect(at((finding?.frame ?? 0) - 1)).toBeGreaterThanOrEqual(-6);
  });

  test('stay points in a third of the time, by day, and where nobody asks', () => {
    expect(found({ ...plan, exposure: { ...plan.exposure, shutterS: 10 } }, 'star-trails')).toBeUndefined();
    expect(found({ ...plan, start: { ...plan.start, time: '08:00:00' } }, 'star-trails')).toBeUndefined();
    expect(found({ ...plan, view: { ...plan.view, stars: false } }, 'star-trails')).toBeUndefined();
  });

  test('without a place every frame counts as night', () => {
    const nowhere = { ...plan, place: { ...plan.place, latitudeDeg: null, longitudeDeg: null } };
    expect(found(nowhere, 'star-trails')).toMatchObject({ frame: 1, values: { frames: 541 } });
  });

  test('trail less around the pole: a lens that looks there may stay open longer', () => {
    const north = { used: true, azimuthDeg: 0, altitudeDeg: 38.7, stars: true, starTrailMaxPx: 8 };
    expect(found({ ...plan, view: north }, 'star-trails')).toBeUndefined();
    expect(found({ ...plan, view: { ...north, azimuthDeg: 180 } }, 'star-trails')).toBeDefined();
  });
});

/** How the figures of the sky came about, against published ones. */
import { expect, test } from 'vitest';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import type { Schedule } from '../../../src/engine/schedule-types.ts';
import { type Working, workingOf } from '../../../src/engine/working/working.ts';
import { planOf } from '../../outputs/plans.ts';
import { harbour } from '../onset/demo.ts';
import { judgeAll } from './judge.ts';

const working = (plan: Plan, made: Schedule, figure: string): Working => {
  const found = workingOf(plan, made, figure);
  if (!found) throw new Error(`${figure} has no working`);
  return found;
};
const given = ({ terms }: Working, symbol: string): number =>
  terms.find((term) => term.symbol === symbol)?.value ?? Number.NaN;

// The worked example of NREL/TP-560-34302, App. A.5, Table A5.1: Golden, Colorado, at UTC-7. Of 19:30:30 UT it has a
// declination of -9.31434° and an equation of time of 14.641503 min; sunrise at 06:12:43.46, transit at 11:46:04.97; its
// sunset at 17:20:19.19 is that of the UT day, the evening before by the local calendar.
const golden = planOf({
  place: { latitudeDeg: 39.742476, longitudeDeg: -105.1786, zone: 'America/Denver', utcOffsetMin: -420 },
  start: { date: '2003-10-17', time: '12:30' },
});
const goldenMade = schedule(golden);

test('sunrise and sunset are the published ones', () => {
  const [rise, noon, set] = ['sky.sunrise', 'sky.solarNoon', 'days.2003-10-16.sunset'].map((name) =>
    working(golden, goldenMade, name),
  );
  // suncalc is a low-precision theory: within a few seconds of it.
  expect(Math.abs((rise?.value ?? 0) - (6 * 3600 + 12 * 60 + 43.46))).toBeLessThan(5);
  expect(Math.abs((noon?.value ?? 0) - (11 * 3600 + 46 * 60 + 4.97))).toBeLessThan(5);
  expect(Math.abs((set?.value ?? 0) - (17 * 3600 + 20 * 60 + 19.19))).toBeLessThan(5);
  expect(set?.label).toMatch(/^2003-10-16T17:20:\d\d(\.\d+)?-07:00$/);
  expect(set?.remarks.join(' ')).toContain('\u22120.8333°');
});

test('equation of time and declination are the published ones, as they change over the day', () => {
  const noon = working(golden, goldenMade, 'sky.solarNoon.utcS');
  // 18:46 UT, 45 min before: it grows by 13 s a day about then (from memory).
  expect(given(noon, 'equationS')).toBeGreaterThan(60 * 14.641503 - 3);
  expect(given(noon, 'equationS')).toBeLessThan(60 * 14.641503 + 3);
  const [rise, set] = ['sunrise', 'sunset'].map((name) =>
    working(golden, goldenMade, `sky.${name}.declinationDeg`),
  );
  // Of 13:13 UT and of 00:20 UT; between them it falls evenly to a hundredth of a degree.
  const riseMs = 13.2121;
  const setMs = 24.3387;
  const between = ((19.5083 - riseMs) / (setMs - riseMs)) * ((set?.value ?? 0) - (rise?.value ?? 0));
  expect((rise?.value ?? 0) + between).toBeCloseTo(-9.31434, 2);
});

test('the hour angle of an equinox at the equator is 90° and the refraction’s share more', () => {
  const plan = planOf({
    place: { latitudeDeg: 0, longitudeDeg: 0, zone: 'UTC' },
    start: { date: '2026-03-20', time: '12:00' },
  });
  const made = schedule(plan);
  // At the equator with a declination near 0 the altitude is 90° less the hour angle.
  expect(working(plan, made, 'sky.sunset.hourAngleDeg').value).toBeCloseTo(90.8333, 3);
  expect(working(plan, made, 'sky.sunrise.hourAngleDeg').value).toBeCloseTo(-90.8333, 3);
});

test('the moon’s altitude at moonrise goes by its distance', () => {
  const plan = harbour();
  const made = schedule(plan);
  const altitude = working(plan, made, 'sky.moonrise.altitudeDeg');
  // Radius of 14.7' to 16.8', refraction of 34' (Meeus, ch. 55 and 15: extremes of the distance from memory).
  expect(-altitude.value * 60).toBeGreaterThan(34 + 14.6);
  expect(-altitude.value * 60).toBeLessThan(34 + 16.9);
  expect(given(altitude, 'distanceKm')).toBeGreaterThan(356_000);
  expect(given(altitude, 'distanceKm')).toBeLessThan(407_000);
});

test('a date that is another than the plan’s has its own, and so has a year', () => {
  const plan = harbour();
  const made = schedule(plan);
  expect(working(plan, made, 'days.2026-06-21.sunset').label).toMatch(/^2026-06-21T21:/);
  expect(working(plan, made, 'days.2026-08-08.sunset').value).toBe(working(plan, made, 'sky.sunset').value);
  const kinds = ['fits', 'tooShort', 'brightMoon', 'noWindow'];
  const days = (year: number) =>
    kinds.reduce((sum, kind) => sum + working(plan, made, `days.${year}.${kind}`).value, 0);
  expect(days(2026)).toBe(365);
  expect(days(2028)).toBe(366);
});

test('what there is no date for has none', () => {
  const plan = harbour();
  const made = schedule(plan);
  for (const name of [
    'days.2026-02-30.sunset',
    'days.2026-13-01.sunset',
    'days.2026.sunset',
    'days.x.fits',
    'sky.',
  ])
    expect(workingOf(plan, made, name), name).toBe(null);
  const nowhere = { ...plan, place: { ...plan.place, latitudeDeg: null } };
  expect(workingOf(nowhere, schedule(nowhere), 'days.2026-08-08.sunset')).toBe(null);
});

test('the planned start lies in its window as the clock says', () => {
  const plan = harbour();
  const made = schedule(plan);
  const [latest, start, left] = ['window.1.latest', 'start', 'start.leftS'].map((what) =>
    working(plan, made, `sky.${what}`),
  );
  const ms = (one?: Working) => Date.parse(one?.label ?? '');
  expect(left?.value).toBeCloseTo((ms(latest) - ms(start)) / 1000, 2);
  const late = { ...plan, start: { ...plan.start, offsetMin: 30 } };
  const missed = working(late, schedule(late), 'sky.start.missS');
  expect(missed.title).toBe('Planned start: too late');
  expect(missed.value).toBeCloseTo(45 * 60 - (left?.value ?? 0), 0);
});

test.each([
  ['the clock goes back in the night', '2026-10-24', 'Europe/Paris', 48.85, 2.35],
  ['the clock goes forward in the night', '2026-03-28', 'Europe/Paris', 48.85, 2.35],
  ['the sun does not set', '2026-06-21', 'Europe/Oslo', 69.65, 18.96],
  ['at a pole', '2026-03-20', 'UTC', 90, 0],
  ['the date line', '2026-06-21', 'Pacific/Kiritimati', 1.87, -157.4],
])('%s: every formula gives its figure', (_, date, zone, latitudeDeg, longitudeDeg) => {
  const plan = planOf({
    pacing: { workedOut: 'event', intervalS: 60, clipLengthS: 4 },
    place: { latitudeDeg, longitudeDeg, zone },
    start: { date, time: '20:00' },
    window: { used: true, sunAltitudeMaxDeg: 4, sunAltitudeMinDeg: -60 },
  });
  const made = schedule(plan);
  const figures = judgeAll(plan, made, [1]);
  expect(figures.length).toBeGreaterThan(50);
  for (const figure of figures.filter((name) => /^sky\.window\.\d+\.lengthS$/.test(name))) {
    const [from, to] = ['from', 'to'].map((what) =>
      Date.parse(working(plan, made, figure.replace('lengthS', what)).label ?? ''),
    );
    expect(working(plan, made, figure).value, figure).toBeCloseTo(((to ?? 0) - (from ?? 0)) / 1000, 2);
  }
});

/** The carpet as shapes: measured by their areas, which the length of a day gives. */
import { expect, test } from 'vitest';
import { calendarOf, monthStarts } from '../../../src/app/days/calendar.ts';
import type { Picture } from '../../../src/app/days/paint.ts';
import { plotOf } from '../../../src/app/days/plot.ts';
import { pathsOf } from '../../../src/app/days/shapes.ts';
import { dayOfYear } from '../../../src/engine/sky/year.ts';
import { planOf } from '../../outputs/plans.ts';

const RUN_S = 5400;
const PLAN = planOf({
  start: { date: '2026-06-21', time: '12:00' },
  place: { latitudeDeg: 43.3, longitudeDeg: 6.4, zone: 'UTC' },
  window: { used: true, sunAltitudeMinDeg: -6, sunAltitudeMaxDeg: 60 },
});

function pictureOf(runS: number | null): Picture {
  const { days, offsets } = calendarOf(PLAN.place, 2026);
  const plot = plotOf({
    widthPx: 1000,
    devicePx: 1,
    starts: monthStarts(2026),
    season: 0,
    profile: runS !== null,
  });
  return {
    plot,
    days: days.map(({ date }) => dayOfYear(PLAN, date, RUN_S) ?? undefined),
    offsets,
    windowsTo: 365,
    runS,
    profileS: 86_400,
    devicePx: 1,
  };
}

/** Area of the rectangles of a path. */
const areaOf = (path: string): number =>
  [...path.matchAll(/M([\d.]+) ([\d.]+)H([\d.]+)V([\d.]+)/g)].reduce((sum, [, left, top, right, foot]) => {
    return sum + (Number(right) - Number(left)) * (Number(foot) - Number(top));
  }, 0);

const sum = (values: Iterable<number>): number => [...values].reduce((all, one) => all + one, 0);

test('the light of a year covers 24 hours of each day once, one path a colour', () => {
  const picture = pictureOf(null);
  const paths = pathsOf(picture);
  // Day, golden and blue hour, nautical and astronomical twilight, night: nowhere else is there civil twilight but in these.
  expect(paths.size).toBeGreaterThanOrEqual(5);
  const { rows, clockPx } = picture.plot;
  const whole = 365 * rows.rowPx * clockPx;
  expect(Math.abs(sum([...paths.values()].map(areaOf)) / whole - 1)).toBeLessThan(1e-4);
});

test('ink and lengths lie over it, in colours of their own', () => {
  const light = [...pathsOf(pictureOf(null)).keys()];
  const picture = pictureOf(RUN_S);
  const paths = pathsOf(picture);
  const over = [...paths].slice(light.length);
  expect([...paths.keys()].slice(0, light.length)).toEqual(light);
  expect(over.map(([fill]) => fill)).toContain('var(--used)');
  // Each day's longest window as a bar: a full scale is a day.
  const hours = sum(
    picture.days.map((day) => (day?.longest ? (day.longest.toMs - day.longest.fromMs) / 3_600_000 : 0)),
  );
  const { rows, profilePx } = picture.plot;
  const bars = areaOf(paths.get('var(--used)') ?? '');
  expect(Math.abs(bars / ((hours / 24) * profilePx * rows.rowPx) - 1)).toBeLessThan(1e-3);
});

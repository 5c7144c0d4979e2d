import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { daysIn, monthStarts } from '../../../src/app/days/calendar.ts';
import { namePlaces } from '../../../src/app/days/marks.tsx';
import { boxAt, dayAtPx, middleOf, type Plot, plotOf } from '../../../src/app/days/plot.ts';

const plot = (widthPx: number, { year = 2026, season = 0, devicePx = 1, profile = true } = {}): Plot =>
  plotOf({ widthPx, devicePx, starts: monthStarts(year), season, profile });

const box = (widthPx: number, season = 0) => boxAt(plot(widthPx, { season }), 10, 2, 100, 50);

describe('the whole year down the page', () => {
  const { rows } = plot(944);

  test('every day has its line, months apart from one another', () => {
    expect(rows.count).toBe(365);
    const gaps = rows.at.slice(1).map((at, i) => at - (rows.at[i] as number) - rows.rowPx);
    expect(gaps.filter((gap) => gap !== 0)).toHaveLength(11);
    expect(Math.min(...gaps)).toBe(0);
    expect(rows.months.map(({ first }) => first)).toEqual(monthStarts(2026).slice(0, 12));
  });

  test('hours go across, days down', () => {
    expect(plot(944).turned).toBe(false);
    expect(box(944)).toEqual({ x: 158, y: 40, width: 50, height: 2 });
  });

  test('carpet and profile end within the width', () => {
    fc.assert(
      fc.property(fc.integer({ min: 600, max: 3000 }), fc.boolean(), (widthPx, profile) => {
        const { left, profileAtPx, profilePx, clockPx } = plot(widthPx, { profile });
        expect(clockPx).toBeGreaterThan(300);
        expect(left + (profile ? profileAtPx + profilePx : clockPx)).toBeLessThanOrEqual(widthPx);
      }),
    );
  });
});

describe('on a phone', () => {
  test('days go across, hours down, three months at a time', () => {
    const { rows, turned } = plot(330, { season: 2 });
    expect(turned).toBe(true);
    expect(rows.months.map(({ month }) => month)).toEqual([6, 7, 8]);
    expect([rows.first, rows.count]).toEqual([181, 92]);
    expect(box(330, 2)).toEqual({ x: 40, y: 126, width: 2, height: 50 });
  });

  test('every season ends within the width, its lines on whole pixels of the screen', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 280, max: 599 }),
        fc.constantFrom(1, 2, 3),
        fc.integer({ min: 0, max: 3 }),
        fc.constantFrom(2026, 2028),
        (widthPx, devicePx, season, year) => {
          const { rows, left } = plot(widthPx, { devicePx, season, year });
          expect(left + (rows.at.at(-1) as number)).toBeLessThanOrEqual(widthPx);
          expect(rows.rowPx * devicePx).toBeCloseTo(Math.round(rows.rowPx * devicePx), 9);
          expect(rows.rowPx).toBeGreaterThanOrEqual(1);
        },
      ),
    );
  });
});

test('the day at a pixel is the day whose line is there, or the nearest', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(944, 1600, 330),
      fc.integer({ min: 0, max: 3 }),
      fc.constantFrom(2026, 2028),
      fc.nat(),
      (widthPx, season, year, n) => {
        const { rows } = plot(widthPx, { season, year });
        const day = rows.first + (n % rows.count);
        expect(dayAtPx(rows, middleOf(rows, day) ?? Number.NaN)).toBe(day);
      },
    ),
  );
  const { rows } = plot(944);
  expect(dayAtPx(rows, -50)).toBe(0);
  expect(dayAtPx(rows, 1e6)).toBe(daysIn(2026) - 1);
  expect(middleOf(rows, 365)).toBeNull();
});

describe('the name of a month', () => {
  const march = { month: 2, first: 59, end: 90, atPx: 100, lengthPx: 62 };
  const at = (day: number) => namePlaces(march, [{ day, byMin: 60 }], 2, 16);

  test('stands in its middle, beside a clock change at its end', () => {
    expect(at(87)).toEqual({ name: 131, changes: [{ atPx: 156, byMin: 60 }] });
    expect(namePlaces(march, [{ day: 200, byMin: 60 }], 2, 16)).toEqual({ name: 131, changes: [] });
  });

  test('makes room for one in the middle', () => {
    for (let day = march.first; day < march.end; day += 1) {
      const { name, changes } = at(day);
      expect(Math.abs(name - (changes[0]?.atPx ?? Number.NaN))).toBeGreaterThanOrEqual(16);
      expect(name).toBeGreaterThanOrEqual(march.atPx);
      expect(name).toBeLessThanOrEqual(march.atPx + march.lengthPx);
    }
  });
});

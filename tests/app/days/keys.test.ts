import { describe, expect, test } from 'vitest';
import { dayOf, monthStarts } from '../../../src/app/days/calendar.ts';
import { afterKey, dayInMonth } from '../../../src/app/days/keys.ts';
import { nextDate } from '../../../src/engine/time/day.ts';

const press = (key: string, altKey = false) => ({ key, altKey, ctrlKey: false, metaKey: false });
const leadsTo = (date: string, key: string): string | null => {
  const year = date.slice(0, 4);
  const day = afterKey(press(key), dayOf(date), monthStarts(Number(year)));
  return day === null ? null : nextDate(`${year}-01-01`, day);
};

describe('keys in the carpet', () => {
  test.each([
    ['2026-08-08', 'ArrowLeft', '2026-08-07'],
    ['2026-08-08', 'ArrowRight', '2026-08-09'],
    ['2026-08-08', 'ArrowUp', '2026-08-01'],
    ['2026-08-08', 'ArrowDown', '2026-08-15'],
    ['2026-08-08', 'PageUp', '2026-07-08'],
    ['2026-08-08', 'PageDown', '2026-09-08'],
    ['2026-08-08', 'Home', '2026-01-01'],
    ['2026-08-08', 'End', '2026-12-31'],
    ['2026-03-31', 'PageUp', '2026-02-28'],
    ['2028-03-31', 'PageUp', '2028-02-29'],
    ['2026-02-28', 'ArrowRight', '2026-03-01'],
  ])('from %s, %s leads to %s', (from, key, to) => {
    expect(leadsTo(from, key)).toBe(to);
  });

  test.each([
    ['2026-01-03', 'ArrowUp', '2026-01-01'],
    ['2026-12-31', 'ArrowRight', '2026-12-31'],
    ['2026-01-15', 'PageUp', '2026-01-15'],
    ['2026-12-15', 'PageDown', '2026-12-15'],
  ])('the year ends: from %s, %s stays at %s', (from, key, to) => {
    expect(leadsTo(from, key)).toBe(to);
  });

  test('others lead nowhere, nor do these with Alt', () => {
    expect(leadsTo('2026-08-08', 'a')).toBeNull();
    expect(afterKey(press('ArrowLeft', true), 10, monthStarts(2026))).toBeNull();
  });

  test('a month and back is the same day, if both have it', () => {
    const starts = monthStarts(2026);
    expect(dayInMonth(starts, dayInMonth(starts, 100, 1), -1)).toBe(100);
  });
});

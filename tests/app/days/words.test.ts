import { describe, expect, test } from 'vitest';
import { fullScaleS } from '../../../src/app/days/Carpet.tsx';
import { calendarOf } from '../../../src/app/days/calendar.ts';
import {
  carpetSummary,
  countPieces,
  countsOf,
  haveText,
  jumpText,
  longDate,
  needText,
  verdictText,
  windowsText,
  yearPieces,
} from '../../../src/app/days/words.ts';
import { plainText } from '../../../src/app/working/sentence.ts';
import { type DayOfYear, yearOfDays } from '../../../src/engine/sky/year.ts';
import { nextDate } from '../../../src/engine/time/day.ts';
import { plain } from '../../browser/parts.ts';
import { planOf } from '../../outputs/plans.ts';

const DAY_MS = 86_400_000;
const MINUTE_MS = 60_000;

/** A day of 2026 in UTC with one window of so many minutes from 20:00; the run takes an hour. */
function dayWith(i: number, windowMin: number, changed: Partial<DayOfYear> = {}): DayOfYear {
  const date = nextDate('2026-01-01', i);
  const startMs = Date.parse(`${date}T00:00Z`);
  const fromMs = startMs + 20 * 60 * MINUTE_MS;
  const span = { fromMs, toMs: fromMs + windowMin * MINUTE_MS };
  const latestMs = span.toMs - 60 * MINUTE_MS;
  const fits = windowMin >= 60;
  return {
    date,
    startMs,
    endMs: startMs + DAY_MS,
    events: [],
    bands: [],
    windows: windowMin > 0 ? [span] : [],
    longest: windowMin > 0 ? span : null,
    verdict: fits ? 'fits' : windowMin > 0 ? 'too short' : 'no window',
    best: fits ? { startMs: fromMs, earliestMs: fromMs, latestMs, span } : null,
    moonLitShare: 0.28,
    ...changed,
  };
}

const offsets = [{ fromMs: 0, offsetMin: 0 }];

describe('the verdict on a day', () => {
  test.each([
    [dayWith(0, 66.5), 'Fits, 6 min to spare'],
    [dayWith(0, 60.5), 'Fits, 30 s to spare'],
    [dayWith(0, 40), 'Too short by 20 min'],
    [dayWith(0, 0), 'No window'],
    [dayWith(0, 0, { verdict: 'moon' }), 'Moon is up, 28 % lit'],
    [dayWith(0, 90, { endMs: 0 }), 'No such day here'],
  ])('%#: %s', (day, text) => {
    expect(plain(verdictText(day, 3600))).toBe(text);
  });

  test('what there is is rounded down, what is needed up', () => {
    expect(plain(haveText(3659))).toBe('1 h');
    expect(plain(needText(3601))).toBe('1 h 1 min');
    expect(plain(haveText(59.9))).toBe('59 s');
    expect(plain(jumpText(-30))).toBe('-30 min');
    expect(plain(jumpText(60))).toBe('+1 h');
    expect(longDate('2026-08-08')).toBe('Saturday 8 August 2026');
  });

  test('windows are told as far as the day goes', () => {
    expect(windowsText(dayWith(0, 40), offsets)).toBe('20:00 to 20:40');
    expect(windowsText(dayWith(0, 300), offsets)).toBe('20:00 to 24:00');
  });
});

describe('the year in a sentence', () => {
  const days = [dayWith(0, 70), dayWith(1, 70), dayWith(2, 40), dayWith(3, 0), dayWith(4, 61)];

  test('counts, the day, and the next that fits', () => {
    expect(countPieces(countsOf(days), 2026).map(({ text }) => plain(text))).toEqual([
      '3 fit',
      '1 too short',
      '1 no window',
    ]);
    expect(plain(plainText(yearPieces(days, days[2] as DayOfYear, 3600)))).toBe(
      '3 days fit. 3 January: too short by 20 min; the next that fits is 5 January.',
    );
    expect(plain(plainText(yearPieces(days, days[4] as DayOfYear, 3600, '2 min too late')))).toBe(
      '3 days fit. 5 January: fits, 1 min to spare, but the planned start is 2 min too late.',
    );
    expect(plain(plainText(yearPieces([days[3] as DayOfYear], days[3] as DayOfYear, 3600)))).toBe(
      'No day fits. 4 January: no window.',
    );
  });

  test('a day that the calendar leaves out counts nowhere', () => {
    const skipped = dayWith(5, 90, { endMs: 0 });
    expect(countsOf([...days, skipped])).toEqual(countsOf(days));
    expect(plain(carpetSummary(2026, [...days, skipped], true))).toBe(
      'The light of 2026, one line a day, midnight to midnight. The run fits on 3 days: 1 January to 2 January, 5 January.',
    );
  });

  test('is heard without a window, and with none that fits', () => {
    expect(carpetSummary(2026, days, false)).toMatch(/No window is asked for\.$/);
    expect(carpetSummary(2026, [dayWith(0, 0)], true)).toMatch(/fits on no day\.$/);
  });
});

test('the scale of lengths has room for the run and the longest window', () => {
  expect(fullScaleS([], 5400)).toBe(2 * 3600);
  expect(fullScaleS([dayWith(0, 200), undefined], 5400)).toBe(4 * 3600);
});

test('every day of a year with its windows has a verdict in words', () => {
  const plan = planOf({
    place: { zone: 'Pacific/Apia', latitudeDeg: -13.8, longitudeDeg: -171.8 },
    window: { used: true, sunAltitudeMaxDeg: -18, moon: 'downOrDim' },
  });
  const days = [...yearOfDays(plan, 2011, 3600)];
  const calendar = calendarOf(plan.place, 2011);
  expect(days.map(({ date, startMs, endMs }) => ({ date, startMs, endMs }))).toEqual(calendar.days);
  const said = new Set(days.map((day) => verdictText(day, 3600).split(/[ ,]/)[0]));
  expect([...said].every((word) => ['Fits', 'Too', 'Moon', 'No'].includes(word ?? ''))).toBe(true);
  expect(verdictText(days[363] as DayOfYear, 3600)).toBe('No such day here');
  expect(Object.values(countsOf(days)).reduce((a, b) => a + b)).toBe(364);
});

import { describe, expect, test } from 'vitest';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { sheetOf } from '../../../src/engine/sheet/sheet.ts';
import { isoIn } from '../../../src/engine/time/clock.ts';
import { BARE, production, shotOf } from './plans.ts';

/** Local date and minute at which each exposure begins. */
const begins = (plan: Plan, nowMs?: number): string[] =>
  Array.from(sheetOf(plan, nowMs === undefined ? {} : { nowMs }).columns.startMs, (ms) => minuteOf(plan, ms));

const minuteOf = (plan: Plan, ms: number): string => isoIn(Math.round(ms), plan.place).slice(0, 16);

/** Without the hundred-thousandths of a second that the shutter is open. */
const rounded = <T>(value: T): T =>
  JSON.parse(JSON.stringify(value), (_, part) =>
    typeof part === 'number' ? Math.round(part * 1e5) / 1e5 : part,
  );

const hour = { ...BARE, minutesPerExposure: 60 };
const exposures = (count: number) => ({ shots: [shotOf({ frames: 2 * count })] });

describe('the working day', () => {
  test('an exposure is begun only where it also ends before a break', () => {
    const plan = production({
      ...hour,
      workFrom: '09:30',
      workTo: '13:30',
      breaks: [{ from: '11:00', to: '11:15' }],
      ...exposures(4),
    });
    expect(begins(plan)).toEqual([
      '2026-03-02T09:30',
      '2026-03-02T11:15',
      '2026-03-02T12:15',
      '2026-03-03T09:30',
    ]);
  });

  test('one that ends with the day to the minute still belongs to it', () => {
    const plan = production({ ...hour, workFrom: '09:00', workTo: '11:00', ...exposures(3) });
    expect(begins(plan)).toEqual(['2026-03-02T09:00', '2026-03-02T10:00', '2026-03-03T09:00']);
  });

  // 2026-03-06 is a Friday.
  test('days off and closed dates are passed over', () => {
    const plan = production(
      {
        ...hour,
        workTo: '10:00',
        daysOff: ['saturday', 'sunday'],
        closedDates: ['2026-03-10'],
        ...exposures(4),
      },
      { start: { date: '2026-03-06', time: '09:00' } },
    );
    expect(begins(plan).map((iso) => iso.slice(0, 10))).toEqual([
      '2026-03-06',
      '2026-03-09',
      '2026-03-11',
      '2026-03-12',
    ]);
  });

  test('a start outside the working hours waits for them, and that is said', () => {
    const plan = production({ ...hour, ...exposures(1) }, { start: { date: '2026-03-02', time: '19:30' } });
    expect(begins(plan)).toEqual(['2026-03-03T09:00']);
    expect(sheetOf(plan).totals.findings).toMatchObject([{ id: 'start-outside-hours' }]);
  });

  test('a start within them begins at once', () => {
    const plan = production({ ...hour, ...exposures(1) }, { start: { date: '2026-03-02', time: '10:20' } });
    expect(begins(plan)).toEqual(['2026-03-02T10:20']);
    expect(sheetOf(plan).totals.findings).toEqual([]);
  });

  test('where each day ends', () => {
    const { days } = sheetOf(production({ ...hour, workTo: '11:00', ...exposures(3) }));
    expect(rounded(days)).toMatchObject([
      { date: '2026-03-02', firstExposure: 1, lastExposure: 2, frame: 4, shot: 0, workMin: 120 },
      { date: '2026-03-03', firstExposure: 3, lastExposure: 3, frame: 6, shot: 0, workMin: 60 },
    ]);
  });

  test('96 exposures of 3.5 min from 10:00 with half an hour’s break end at 16:06', () => {
    const plan = production(
      {
        ...BARE,
        minutesPerExposure: 3.5,
        breaks: [{ from: '12:48', to: '13:18' }],
        ...exposures(96),
      },
      { start: { date: '2026-08-22', time: '10:00' } },
    );
    expect(minuteOf(plan, sheetOf(plan).totals.finishMs)).toBe('2026-08-22T16:06');
  });
});

describe('what comes before', () => {
  test('set-up goes on over breaks and days, before the first exposure of each shot', () => {
    const plan = production({
      ...hour,
      setUpMin: 90,
      workTo: '11:00',
      shots: [shotOf({ frames: 2 }), { ...shotOf({ frames: 2 }), setUpMin: 150 }],
    });
    // Day 1: 1:30 of set-up, half an hour is too short. Day 2: the exposure, 1:00 of set-up. Day 3: 1:30, not enough left.
    expect(begins(plan)).toEqual(['2026-03-03T09:00', '2026-03-05T09:00']);
    const { days } = sheetOf(plan);
    expect(rounded(days.map(({ firstExposure, workMin }) => [firstExposure, workMin]))).toEqual([
      [null, 90],
      [1, 120],
      [null, 90],
      [2, 60],
    ]);
  });

  test('a test frame takes the passes of the first exposure, without animating', () => {
    const plan = production(
      {
        ...hour,
        testFrames: 3,
        passes: [
          { name: 'Key', changeMin: 2 },
          { name: 'Rim', changeMin: 1, shutterS: 8 },
        ],
        shots: [shotOf({ frames: 2 })],
      },
      { exposure: { shutterS: 4 }, camera: { shutterLagS: 1, writeS: 2 } },
    );
    const sheet = sheetOf(plan);
    // A pass takes lag, shutter, write: 1 + 4 + 2 and 1 + 8 + 2 seconds.
    expect(sheet.columns.rigS[0]).toBeCloseTo(18, 9);
    expect(sheet.columns.minutes[0]).toBe(63);
    expect(sheet.totals.workMin).toBeCloseTo(63 + 18 / 60 + 3 * (3 + 18 / 60), 9);
  });
});

describe('an exposure longer than any stretch of work', () => {
  const long = { ...BARE, workFrom: '09:00', workTo: '17:00', breaks: [{ from: '12:00', to: '13:00' }] };

  test('begins with a day, runs on through the break, and is said', () => {
    const plan = production(
      { ...long, minutesPerExposure: 300, ...exposures(2) },
      { start: { date: '2026-03-02', time: '10:00' } },
    );
    expect(begins(plan)).toEqual(['2026-03-03T09:00', '2026-03-04T09:00']);
    expect(sheetOf(plan).totals.findings).toMatchObject([{ id: 'exposure-too-long', exposure: 1 }]);
  });

  test('of several days goes through them', () => {
    const plan = production({ ...long, minutesPerExposure: 10_000, ...exposures(2) });
    // 10 000 minutes are 6 days, 22 hours and 40 minutes: until 2026-03-09 07:40.
    expect(begins(plan)).toEqual(['2026-03-02T09:00', '2026-03-09T09:00']);
  });

  test('work without end comes to an end, and is said', () => {
    const { totals, columns } = sheetOf(
      production({ ...long, minutesPerExposure: 10_000, ...exposures(3000) }),
    );
    expect(totals.findings.map(({ id }) => id)).toContain('calendar-too-long');
    expect(Number.isFinite(totals.finishMs)).toBe(true);
    expect(columns.startMs.every((ms) => Number.isFinite(ms))).toBe(true);
  });
});

// tz database: Europe/Dublin goes from 01:00 to 02:00 on 2026-03-29, and back from 02:00 to 01:00 on 2026-10-25.
describe('the clocks change', () => {
  const nights = { ...hour, workFrom: '00:00', workTo: '04:00' };
  const dublin = (date: string) => ({ place: { zone: 'Europe/Dublin' }, start: { date, time: '00:00' } });

  test('in spring: an hour less of work', () => {
    expect(begins(production({ ...nights, ...exposures(4) }, dublin('2026-03-29')))).toEqual([
      '2026-03-29T00:00',
      '2026-03-29T02:00',
      '2026-03-29T03:00',
      '2026-03-30T00:00',
    ]);
  });

  test('in autumn: an hour more', () => {
    expect(begins(production({ ...nights, ...exposures(6) }, dublin('2026-10-25')))).toEqual([
      '2026-10-25T00:00',
      '2026-10-25T01:00',
      '2026-10-25T01:00',
      '2026-10-25T02:00',
      '2026-10-25T03:00',
      '2026-10-26T00:00',
    ]);
  });

  test('overnight: work goes on at the same local time', () => {
    const plan = production({ ...hour, workTo: '10:00', ...exposures(2) }, dublin('2026-03-28'));
    expect(begins(plan)).toEqual(['2026-03-28T09:00', '2026-03-29T09:00']);
  });

  // Samoa skipped 2011-12-30.
  test('a day that the calendar skips is no working day', () => {
    const plan = production(
      { ...hour, workTo: '10:00', ...exposures(2) },
      { place: { zone: 'Pacific/Apia' }, start: { date: '2011-12-29', time: '09:00' } },
    );
    expect(begins(plan)).toEqual(['2011-12-29T09:00', '2011-12-31T09:00']);
  });
});

describe('done and left', () => {
  const atMs = (clock: string) => Date.parse(`2026-03-02T${clock}:00Z`);
  const ticks = (...clocks: string[]) =>
    clocks.map((clock, i) => ({ shot: 1, exposure: i + 1, atMs: atMs(clock) }));
  const twenty = { ...BARE, minutesPerExposure: 20, breaks: [{ from: '12:00', to: '13:00' }] };

  test('what is ticked shows when it was, what is left goes on from the last tick', () => {
    const plan = production({ ...twenty, ticks: ticks('09:25', '09:50'), ...exposures(4) });
    expect(begins(plan).map((iso) => iso.slice(11))).toEqual(['09:25', '09:50', '09:50', '10:10']);
    const { totals, columns } = sheetOf(plan);
    expect(totals).toMatchObject({ done: 2, left: 2 });
    expect(Number.isNaN(columns.doneMs[2])).toBe(true);
    expect(minuteOf(plan, totals.finishMs)).toBe('2026-03-02T10:30');
  });

  test('the pace is that from the first tick to the last', () => {
    const plan = production({ ...twenty, ticks: ticks('09:25', '09:50', '10:20'), ...exposures(5) });
    const { pace, finishMs, finishAtPaceMs } = sheetOf(plan).totals;
    // Two exposures planned for 40 min took 55.
    expect(rounded(pace)).toEqual({ plannedMin: 40, realMin: 55, factor: 1.375 });
    expect(minuteOf(plan, finishMs)).toBe('2026-03-02T11:00');
    expect(minuteOf(plan, finishAtPaceMs)).toBe('2026-03-02T11:15');
  });

  test('breaks and nights are no work', () => {
    const lunch = production({ ...twenty, ticks: ticks('11:50', '13:10'), ...exposures(3) });
    expect(rounded(sheetOf(lunch).totals.pace)).toEqual({ plannedMin: 20, realMin: 20, factor: 1 });
    const night = production({
      ...twenty,
      ticks: [
        { shot: 1, exposure: 1, atMs: atMs('17:50') },
        { shot: 1, exposure: 2, atMs: atMs('09:20') + 86_400_000 },
      ],
      ...exposures(3),
    });
    expect(rounded(sheetOf(night).totals.pace)).toEqual({ plannedMin: 20, realMin: 30, factor: 1.5 });
  });

  test('ticks of one moment say nothing of the pace', () => {
    const plan = production({ ...twenty, ticks: ticks('09:25', '09:25', '09:25'), ...exposures(5) });
    const { pace, finishMs, finishAtPaceMs } = sheetOf(plan).totals;
    expect(rounded(pace)).toEqual({ plannedMin: 40, realMin: 0, factor: 1 });
    expect(finishAtPaceMs).toBe(finishMs);
  });

  test('a retake costs an exposure’s time and its bytes', () => {
    const retaken = ticks('09:25', '09:50', '10:50').map((tick, i) => ({
      ...tick,
      retakes: i === 2 ? 2 : 0,
    }));
    const [with2, without] = [retaken, ticks('09:25', '09:50', '10:50')].map(
      (list) => sheetOf(production({ ...twenty, ticks: list, ...exposures(5) })).totals,
    );
    expect((with2?.workMin ?? 0) - (without?.workMin ?? 0)).toBeCloseTo(40, 6);
    expect(with2?.storageBytes).toBe(7 * 42_000_000);
    // Planned for 20 + 3 x 20, took 85; without retakes planned for 40.
    expect(with2?.pace.factor).toBeCloseTo(85 / 80, 6);
    expect(without?.pace.factor).toBeCloseTo(85 / 40, 6);
  });

  test('set-up of a shot that has been begun is not done again; that of the next one is to come', () => {
    const plan = production({
      ...twenty,
      setUpMin: 30,
      ticks: ticks('10:00'),
      shots: [shotOf({ frames: 4 }), shotOf({ frames: 2 })],
    });
    expect(begins(plan).map((iso) => iso.slice(11))).toEqual(['10:00', '10:00', '10:50']);
  });

  test('the present, if it is said and later', () => {
    const plan = production({ ...twenty, ticks: ticks('09:25'), ...exposures(2) });
    expect(begins(plan, atMs('10:05'))[1]).toBe('2026-03-02T10:05');
    expect(begins(plan, atMs('09:05'))[1]).toBe('2026-03-02T09:25');
    const untouched = production({ ...twenty, ...exposures(1) });
    expect(begins(untouched, atMs('07:00'))).toEqual(['2026-03-02T09:00']);
    expect(begins(untouched, atMs('11:50'))).toEqual(['2026-03-02T13:00']);
  });

  test('ticks of what is not there are left out, and said', () => {
    const plan = production({
      ...twenty,
      ticks: [...ticks('09:25'), { shot: 1, exposure: 9, atMs: 0 }, { shot: 7, exposure: 1, atMs: 0 }],
      ...exposures(2),
    });
    const { totals } = sheetOf(plan);
    expect(totals).toMatchObject({ done: 1, left: 1 });
    expect(totals.findings).toMatchObject([{ id: 'ticks-ignored', values: { ticks: 2 } }]);
  });

  test('a day with both: real time for what is done, planned for what is left', () => {
    const plan = production({ ...twenty, ticks: ticks('09:25', '09:50'), ...exposures(4) });
    expect(rounded(sheetOf(plan).days)).toMatchObject([
      { date: '2026-03-02', firstExposure: 1, lastExposure: 4, workMin: 50 + 40, frame: 8 },
    ]);
  });

  test('all done: it ended with the last tick', () => {
    const plan = production({ ...twenty, ticks: ticks('09:25', '09:50'), ...exposures(2) });
    const { totals } = sheetOf(plan);
    expect(totals).toMatchObject({
      done: 2,
      left: 0,
      finishMs: atMs('09:50'),
      finishAtPaceMs: atMs('09:50'),
    });
  });

  test('ticks of another century are done, and no clock goes by them', () => {
    const plan = production({ ...twenty, ticks: [{ shot: 1, exposure: 1, atMs: 0 }], ...exposures(2) });
    expect(begins(plan)).toEqual(['1970-01-01T00:00', '2026-03-02T09:00']);
    expect(sheetOf(plan).days).toHaveLength(1);
  });
});

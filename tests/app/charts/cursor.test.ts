import { describe, expect, it } from 'vitest';
import { tableRows } from '../../../src/app/charts/ChartTable.tsx';
import {
  afterKey,
  clipReading,
  clockChanges,
  cursorIndex,
  frameClock,
  frameMoment,
} from '../../../src/app/charts/cursor.ts';
import { defaultPlan } from '../../../src/engine/plan/parse.ts';
import { columnsOf, eventAt, START_MS, scheduleOf } from './handMade.ts';

const events = [eventAt(1, 'firstFrame'), eventAt(40), eventAt(101, 'lastFrame')];
const schedule = scheduleOf(columnsOf(101), { events });
const press = (index: number, key: string, held: { shiftKey?: boolean; altKey?: boolean } = {}) =>
  afterKey(schedule, index, { key, shiftKey: false, altKey: false, ...held });

describe('the cursor of the run', () => {
  it('stands at the tightest frame until it is moved, and stays within the run', () => {
    const tight = { ...schedule, totals: { ...schedule.totals, tightestFrame: 30 } };
    expect(cursorIndex(tight, null)).toBe(29);
    expect(cursorIndex(tight, 5)).toBe(5);
    expect(cursorIndex(tight, 5000)).toBe(100);
  });

  it('goes by keys', () => {
    expect(press(50, 'ArrowRight')).toBe(51);
    expect(press(50, 'ArrowLeft', { shiftKey: true })).toBe(40);
    expect(press(3, 'ArrowLeft', { shiftKey: true })).toBe(0);
    expect(press(100, 'ArrowRight')).toBe(100);
    expect(press(50, 'Home')).toBe(0);
    expect(press(50, 'End')).toBe(100);
    expect(press(50, 'ArrowLeft', { altKey: true })).toBe(39);
    expect(press(50, 'ArrowRight', { altKey: true })).toBe(100);
    expect(press(50, 'x')).toBeNull();
  });

  it('says the local clock', () => {
    expect(frameClock(schedule, 0)).toBe('20:31:10');
    expect(frameMoment(schedule, 100)).toBe('20:47:50');
  });

  it('adds tenths where frames come faster than seconds', () => {
    const fast = scheduleOf(columnsOf(5, { elapsedS: Float64Array.of(0, 0.25, 0.5, 0.75, 1) }));
    const quick = { ...fast, totals: { ...fast.totals, intervalS: 0.25 } };
    expect([0, 2, 4].map((index) => frameClock(quick, index))).toEqual([
      '20:31:10.0',
      '20:31:10.5',
      '20:31:11.0',
    ]);
  });

  it('adds date and offset where they change', () => {
    const offsets = [
      { fromMs: START_MS, offsetMin: 120 },
      { fromMs: START_MS + 500_000, offsetMin: 60 },
    ];
    const changing = scheduleOf(columnsOf(2001), { offsets });
    expect(frameMoment(changing, 49)).toBe('8 Aug 20:39:20 +02:00');
    expect(frameMoment(changing, 50)).toBe('8 Aug 19:39:30 +01:00');
    expect(frameMoment(changing, 2000)).toBe('9 Aug 01:04:30 +01:00');
    expect(clockChanges(changing)).toEqual([{ elapsedS: 500, words: 'Clocks go back 1\u00A0h' }]);
  });

  it('says where the frame is in the clip', () => {
    const plan = defaultPlan();
    expect(clipReading(schedule, plan, 50)).toMatchObject({ value: '2.00', unit: 's' });
    const withHandles = { ...plan, clip: { ...plan.clip, handlesFrames: 10 } };
    const short = { ...schedule, totals: { ...schedule.totals, clipLengthS: 81 / 25 } };
    expect(clipReading(short, withHandles, 9)).toMatchObject({ name: 'Head handle', value: '\u22120.04' });
    expect(clipReading(short, withHandles, 10)).toMatchObject({ name: 'In the clip', value: '0.00' });
    expect(clipReading(short, withHandles, 91)).toMatchObject({ name: 'Tail handle', value: '3.24' });
    const onTwos = { ...plan, clip: { ...plan.clip, holdFrames: 2 } };
    const twos = { ...schedule, totals: { ...schedule.totals, clipLengthS: 202 / 25 } };
    expect(clipReading(twos, onTwos, 50).value).toBe('4.00');
  });
});

describe('the rows of a table', () => {
  it('are all frames of a short run, and spread over a long one', () => {
    expect(tableRows(3)).toEqual([0, 1, 2]);
    const rows = tableRows(86_400);
    expect(rows).toHaveLength(200);
    expect(rows[0]).toBe(0);
    expect(rows.at(-1)).toBe(86_399);
    expect(new Set(rows).size).toBe(200);
  });
});

import ICAL from 'ical.js';
import { describe, expect, test } from 'vitest';
import { schedule } from '../../../src/engine/schedule.ts';
import { planOf } from '../../outputs/plans.ts';
import { checkRows } from '../check-rows.ts';
import { calendarOf, eventsIn, measureCalendar, STAMP_MS } from './measure.ts';
import { CALENDAR_PLANS, STOP_MOTION, TITLE } from './plans.ts';

checkRows(measureCalendar());

const lapse = CALENDAR_PLANS['clocks go back'];
if (!lapse) throw new Error('no plan');

describe('a calendar', () => {
  test('has a title with commas, semicolons, line feeds and all letters as it was typed', () => {
    for (const { summary } of eventsIn(calendarOf(lapse)))
      expect(summary.startsWith(`${TITLE}: `)).toBe(true);
    expect(eventsIn(calendarOf(lapse)).length).toBeGreaterThan(10);
  });

  test('has its ids once, the same when it is written again, others for another date', () => {
    const ids = eventsIn(calendarOf(lapse)).map(({ uid }) => uid);
    expect(new Set(ids).size).toBe(ids.length);
    expect(eventsIn(calendarOf(lapse)).map(({ uid }) => uid)).toEqual(ids);
    const later = { ...lapse, start: { ...lapse.start, date: '2026-10-26' } };
    expect(eventsIn(calendarOf(later)).filter(({ uid }) => ids.includes(uid))).toEqual([]);
  });

  test('is stamped with the time that it is given, and ends after it begins', () => {
    const calendar = new ICAL.Component(ICAL.parse(calendarOf(lapse)));
    for (const event of calendar.getAllSubcomponents('vevent')) {
      const stamp = event.getFirstPropertyValue('dtstamp') as InstanceType<typeof ICAL.Time>;
      expect(stamp.toUnixTime() * 1000).toBe(STAMP_MS);
    }
    for (const { fromS, toS } of eventsIn(calendarOf(lapse))) expect(toS).toBeGreaterThan(fromS);
  });

  test('has moments of all kinds', () => {
    const text = calendarOf(lapse);
    for (const kind of ['swap-1', 'cardChange-1', 'exposureChange-1']) expect(text).toContain(`-${kind}@`);
  });

  test('says when to black out the pane', () => {
    const pane = eventsIn(calendarOf(STOP_MOTION)).filter(({ uid }) => uid.includes('-pane-'));
    expect(pane.length).toBeGreaterThan(0);
    for (const { summary, alarmsS } of pane) {
      expect(summary).toContain('black out the pane');
      expect(alarmsS).toHaveLength(1);
    }
  });

  test('leaves out steps that take no time', () => {
    const none = {
      travelMin: 0,
      setUpMin: 0,
      balanceMin: 0,
      rehearsalMin: 0,
      testFramesMin: 0,
      packUpMin: 0,
    };
    const plan = planOf({ title: '', day: none });
    expect(eventsIn(calendarOf(plan)).map(({ fromS }) => fromS * 1000)).toEqual([schedule(plan).startMs]);
  });
});

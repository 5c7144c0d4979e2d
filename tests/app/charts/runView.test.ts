import { describe, expect, it } from 'vitest';
import {
  clockAxis,
  EDGE_PX,
  frameAtPx,
  frameAxis,
  neighbouringEvent,
  runView,
} from '../../../src/app/charts/runView.ts';
import { columnsOf, eventAt, scheduleOf } from './handMade.ts';

const schedule = scheduleOf(columnsOf(101));
const view = runView(schedule, 1020);

describe('the view of a run', () => {
  it('has the first and the last frame a little inside the plot', () => {
    expect(view.x(0)).toBeCloseTo(EDGE_PX, 9);
    expect(view.x(1000)).toBeCloseTo(1020 - EDGE_PX, 9);
  });

  it('finds the nearest frame at every pixel', () => {
    expect(frameAtPx(view, EDGE_PX)).toBe(0);
    expect(frameAtPx(view, EDGE_PX + 14)).toBe(1);
    expect(frameAtPx(view, EDGE_PX + 16)).toBe(2);
    expect(frameAtPx(view, -500)).toBe(0);
    expect(frameAtPx(view, 5000)).toBe(100);
  });

  it('draws a single frame', () => {
    const single = runView(scheduleOf(columnsOf(1)), 300);
    expect(single.x(0)).toBeCloseTo(EDGE_PX, 9);
    expect(frameAtPx(single, 299)).toBe(0);
    expect(frameAxis(single).map((tick) => tick.label)).toEqual(['1']);
  });
});

describe('its axes', () => {
  it('give local clock times in their places', () => {
    const ticks = clockAxis(schedule, view);
    expect(ticks.map((tick) => tick.label).slice(0, 3)).toEqual(['20:32', '20:34', '20:36']);
    // 20:32:00 is 50 s after 20:31:10.
    expect(ticks[0]?.x).toBeCloseTo(view.x(50), 9);
  });

  it('give the first, round and the last frame, apart from each other', () => {
    const ticks = frameAxis(view);
    expect(ticks[0]?.label).toBe('1');
    expect(ticks.at(-1)?.label).toBe('101');
    expect(ticks.map((tick) => tick.label)).toContain('50');
    expect(ticks.every((tick, i) => i === 0 || tick.x - Number(ticks[i - 1]?.x) >= 30)).toBe(true);
  });
});

describe('the events beside a frame', () => {
  const events = [eventAt(1, 'firstFrame'), eventAt(40), eventAt(101, 'lastFrame')];
  it('are the nearest ones', () => {
    expect(neighbouringEvent(events, 0, 1)).toBe(39);
    expect(neighbouringEvent(events, 39, 1)).toBe(100);
    expect(neighbouringEvent(events, 39, -1)).toBe(0);
  });
  it('are the frame itself where there is none', () => {
    expect(neighbouringEvent(events, 100, 1)).toBe(100);
    expect(neighbouringEvent([], 7, -1)).toBe(7);
  });
});

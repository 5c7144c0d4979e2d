/** The frames of a time-lapse for paper. */
import { describe, expect, test } from 'vitest';
import { frameDocument, printedFrames } from '../../../src/app/print/frameDocument.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { planOf } from '../../outputs/plans.ts';

const lapse = (frames: number) =>
  planOf({
    title: 'Tide',
    clip: { frameRate: '25' },
    pacing: { workedOut: 'clip', eventS: (frames - 1) * 10, intervalS: 10 },
  });

describe('frames', () => {
  test.each([1999, 2000])('%i are all printed', (frames) => {
    const plan = lapse(frames);
    const { indices, every } = printedFrames(schedule(plan));
    expect(every).toBe(1);
    expect(indices).toEqual(Array.from({ length: frames }, (_, i) => i));
    expect(frameDocument(plan, schedule(plan)).remarks.join()).not.toContain('Every');
  });

  test('more are thinned, and the sheet says so; first, last and events stay', () => {
    const plan = lapse(9001);
    const worked = schedule(plan);
    const { indices, every } = printedFrames(worked);
    expect(every).toBe(5);
    expect(indices.length).toBeLessThanOrEqual(2000 + worked.events.length + 1);
    expect(indices).toEqual([...new Set(indices)].sort((a, b) => a - b));
    expect(indices[0]).toBe(0);
    expect(indices.at(-1)).toBe(worked.totals.frames - 1);
    for (const { frame } of worked.events) expect(indices).toContain(frame - 1);
    expect(frameDocument(plan, worked).remarks[0]).toMatch(/^Every 5th of 9001\sframes, .*CSV\.$/);
  });

  test('with an event have a box to tick, others none', () => {
    const plan = lapse(50);
    const worked = schedule(plan);
    const { rows } = frameDocument(plan, worked);
    const boxes = Array.from({ length: rows.count }, (_, row) => rows.at(row)).flatMap((row) =>
      row.kind === 'line' && row.done === false ? [row.index] : [],
    );
    expect(boxes).toEqual([...new Set(worked.events.map(({ frame }) => frame - 1))].sort((a, b) => a - b));
  });
});

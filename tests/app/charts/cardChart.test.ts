import { describe, expect, it } from 'vitest';
import { cardChart } from '../../../src/app/charts/cardChart.ts';
import { runView } from '../../../src/app/charts/runView.ts';
import { columnsOf, scheduleOf } from './handMade.ts';

// 4 GB a frame on cards that take 12 and 20 GB: three frames on A, then B.
const columns = columnsOf(6, {
  cardIndex: Uint8Array.from([0, 0, 0, 1, 1, 1]),
  cardBytes: Float64Array.from([4e9, 8e9, 12e9, 4e9, 8e9, 12e9]),
});
const cards = [
  { name: 'Card A', usableBytes: 12e9, usedBytes: 12e9, firstFrame: 1, lastFrame: 3 },
  { name: 'Card B', usableBytes: 20e9, usedBytes: 12e9, firstFrame: 4, lastFrame: 6 },
  { name: 'Card C', usableBytes: 99e9, usedBytes: 0, firstFrame: null, lastFrame: null },
];

describe('the chart of the cards', () => {
  const chart = cardChart(runView(scheduleOf(columns, { cards }), 520));

  it('fills one card after the other', () => {
    expect(chart?.traces[0]?.path.match(/M/g)).toHaveLength(2);
    expect(chart?.traces[0]?.area.match(/Z/g)).toHaveLength(2);
    expect(chart?.marks).toMatchObject([{ kind: 'change', label: 'Card B, frame 4' }]);
    expect(chart?.marks[0]?.x).toBeCloseTo(310, 6);
  });

  it('shows what each card takes while it is in use', () => {
    expect(chart?.levels).toMatchObject([
      { value: 12, fromX: null, kind: 'limit' },
      { value: 20, toX: null, kind: 'limit' },
    ]);
    expect(chart?.domain[1]).toBeGreaterThan(20);
    expect(chart?.domain[1]).toBeLessThan(30);
  });

  it('reads the card in use', () => {
    expect(chart?.read(2)).toMatchObject([
      { name: 'Card A', value: '12.00', unit: 'GB' },
      { name: 'Of', value: '12', unit: 'GB' },
    ]);
    expect(chart?.read(3)).toMatchObject([
      { name: 'Card B', value: '4.00' },
      { name: 'Of', value: '20' },
    ]);
    expect(chart?.summary).toBe(
      'Card A takes frames 1 to 3, 12 of 12 GB. Card B takes frames 4 to 6, 12 of 20 GB.',
    );
  });

  it('marks where there is no room left', () => {
    const only = cards.slice(0, 1);
    const full = cardChart(runView(scheduleOf(columns, { cards: only }), 520));
    expect(full?.marks).toMatchObject([{ kind: 'end', label: 'No room, frame 4' }]);
  });

  it('is left out if no frame fits on any card', () => {
    expect(cardChart(runView(scheduleOf(columns, { cards: cards.slice(2) }), 520))).toBeNull();
  });
});

import { describe, expect, it } from 'vitest';
import { runView } from '../../../src/app/charts/runView.ts';
import { spareChart } from '../../../src/app/charts/spareChart.ts';
import { defaultPlan } from '../../../src/engine/plan/parse.ts';
import { columnsOf, scheduleOf } from './handMade.ts';

/** A schedule of three frames with those spare times. */
function chartOf(spareS: number[], guardS: number) {
  const plan = defaultPlan();
  const schedule = scheduleOf(columnsOf(spareS.length, { spareS: Float64Array.from(spareS) }));
  const tightestSpareS = Math.min(...spareS);
  const tightestFrame = spareS.indexOf(tightestSpareS) + 1;
  const totals = { ...schedule.totals, tightestSpareS, tightestFrame };
  return spareChart(runView({ ...schedule, totals }, 400), { ...plan, cycle: { ...plan.cycle, guardS } });
}

describe('the chart of the spare time', () => {
  it('reaches from the guard to the most that is free', () => {
    const chart = chartOf([6, 4, 5], 0.5);
    expect(chart.bands).toEqual([{ from: -0.5, to: 0, kind: 'guard', style: null }]);
    expect(chart.domain[0]).toBeLessThan(-0.5);
    expect(chart.domain[1]).toBeGreaterThan(6);
    expect(chart.levels).toMatchObject([{ value: 0, kind: 'zero' }]);
  });

  it('marks the tightest frame', () => {
    const chart = chartOf([6, 4, 5], 0.5);
    expect(chart.marks).toMatchObject([{ label: 'Tightest 4 s', kind: 'value' }]);
    expect(chart.marks[0]?.x).toBeCloseTo(200, 6);
    expect(chart.summary).toBe(
      'At least 4 s are spare in every cycle beside the guard of 0.5 s, least at frame 2.',
    );
  });

  it('says how much of the guard is used', () => {
    expect(chartOf([1, -0.2, 1], 0.5).summary).toBe(
      'The cycle of frame 2 takes 0.2 s of the guard of 0.5 s.',
    );
  });

  it('says by how much the cycle overruns', () => {
    const chart = chartOf([1, -2.5, 1], 0.5);
    expect(chart.summary).toBe('The cycle of frame 2 is 2 s longer than the interval.');
    expect(chart.domain[0]).toBeLessThan(-2.5);
    expect(chart.names.map((name) => name.text)).toEqual([]);
  });

  it('names the guard where its band is high enough', () => {
    expect(chartOf([1, 1, 1], 4).names.map((name) => name.text)).toEqual(['Guard']);
    expect(chartOf([1, 1, 1], 0).bands).toEqual([]);
  });

  it('reads spare time and interval', () => {
    expect(chartOf([6, 4, 5], 0.5).read(1)).toMatchObject([
      { name: 'Spare', value: '4.00', unit: 's' },
      { name: 'Of', value: '10.00', unit: 's' },
    ]);
  });
});

import { describe, expect, it } from 'vitest';
import { energyChart } from '../../../src/app/charts/energyChart.ts';
import { runView } from '../../../src/app/charts/runView.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { judgeWorking } from '../../engine/working/judge.ts';
import { battery, columnsOf, planWithSource, scheduleOf } from './handMade.ts';

// 20 Wh a pack, 1 Wh a frame, swapped before frame 11: 20, 19 ... 11, 20, 19 ... Wh.
const leftWh = Float64Array.from({ length: 21 }, (_, k) => 20 - (k % 10));
const columns = columnsOf(21, { sources: [{ name: 'Pack', leftWh }] });
const swapped = battery({ swapFrames: [11, 21] });

describe('the chart of the energy', () => {
  const chart = energyChart(runView(scheduleOf(columns, { sources: [swapped] }), 420), planWithSource());

  it('shows per cent of a full pack, starting anew at every swap', () => {
    expect(chart?.read(5)).toMatchObject([
      { name: 'Pack', value: '75', unit: '%' },
      { name: 'Swap in', value: '5', unit: 'fr' },
    ]);
    expect(chart?.read(10)[0]).toMatchObject({ value: '100' });
    expect(chart?.traces[0]?.path.match(/M/g)).toHaveLength(3);
    expect(chart?.marks.map((mark) => mark.x)).toEqual([210, 410]);
    expect(chart?.marks.every((mark) => mark.kind === 'change')).toBe(true);
  });

  it('hatches the reserve, and marks its end on the axis', () => {
    // Nothing but these few values: they are compared as text before recharts is asked to draw again.
    expect(chart?.bands).toEqual([{ from: 0, to: 20, kind: 'reserve', style: { tone: 'blue', dash: '' } }]);
    expect(chart?.ticks.map((tick) => tick.label)).toEqual(['100', '50', '20']);
  });

  it('says it in words', () => {
    expect(chart?.summary).toBe('Pack ends at 100 % of the pack in use, swapped at frame 11, 21.');
  });

  it('marks where a source runs out', () => {
    const schedule = scheduleOf(columns, { sources: [battery({ shortAtFrame: 15 })] });
    const short = energyChart(runView(schedule, 420), planWithSource());
    expect(short?.marks).toMatchObject([{ kind: 'end', label: 'Pack runs out, frame 15' }]);
    expect(short?.summary).toContain('It runs out at frame 15.');
  });

  it('is a line of words on mains alone', () => {
    const mains = { name: 'Wall', leftWh: new Float64Array(21).fill(Number.POSITIVE_INFINITY) };
    const schedule = scheduleOf(columnsOf(21, { sources: [mains] }), {
      sources: [battery({ name: 'Wall', kind: 'mains', ratedWh: null, usableWh: null })],
    });
    const wall = energyChart(runView(schedule, 420), planWithSource('Wall', 'mains'));
    expect(wall?.note).toBe('Mains only: nothing runs down.');
    expect(wall?.traces).toEqual([]);
    expect(wall?.read(0)).toMatchObject([{ name: 'Wall', value: 'mains' }]);
    expect(wall?.dots(0)).toEqual([]);
  });

  it('is empty where a full pack gives nothing in the cold, and so says its working', () => {
    const base = planWithSource();
    const capacityCurve = [{ temperatureC: -20, share: 0 }];
    const sources = base.power.sources.map((source) => ({ ...source, capacityCurve }));
    const plan = { ...base, power: { ...base.power, temperatureC: -30, sources } };
    const made = schedule(plan);
    const chart = energyChart(runView(made, 420), plan);
    expect(chart?.read(0)[0]).toMatchObject({ value: '0', unit: '%' });
    expect(judgeWorking(plan, made, 'frame.1.sources.Pack.leftPercent').value).toBe(0);
  });

  it('is left out without sources', () => {
    expect(energyChart(runView(scheduleOf(columnsOf(3)), 420), planWithSource())).toBeNull();
  });
});

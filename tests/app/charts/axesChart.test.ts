import { describe, expect, it } from 'vitest';
import { axesCharts } from '../../../src/app/charts/axesChart.ts';
import { runView } from '../../../src/app/charts/runView.ts';
import { axisFrom, columnsOf, planWithAxes, scheduleOf } from './handMade.ts';

const frames = 11;
// 100 steps a millimetre, 50 mm a frame: 0 to 500 mm; 10 steps a degree, -20 to 20 and back.
const boom = axisFrom({
  name: 'Boom',
  unit: 'mm' as const,
  stepsPerUnit: 100,
  steps: Int32Array.from({ length: frames }, (_, k) => k * 5000),
  moveS: new Float64Array(frames),
});
const pan = axisFrom({
  name: 'Pan',
  unit: 'deg' as const,
  stepsPerUnit: 10,
  steps: Int32Array.from([-200, -100, 0, 100, 200, 200, 200, 100, 0, -100, -200]),
  moveS: new Float64Array(frames),
});

describe('the charts of the axes', () => {
  const charts = axesCharts(
    runView(scheduleOf(columnsOf(frames, { axes: [boom, pan] })), 520),
    planWithAxes(),
  );
  const [mm, deg] = charts;

  it('keep millimetres and degrees apart', () => {
    expect(charts.map((chart) => chart.id)).toEqual(['axes-mm', 'axes-deg']);
    expect(mm?.traces.map((trace) => trace.name)).toEqual(['Boom']);
    expect(deg?.traces.map((trace) => trace.name)).toEqual(['Pan']);
    expect(mm?.traces[0]?.dash).not.toBe(deg?.traces[0]?.dash);
  });

  it('read position and step at a frame', () => {
    expect(mm?.read(4)).toMatchObject([
      { name: 'Boom', value: '200.0', unit: 'mm' },
      { name: 'Step', value: '+50.00', unit: 'mm' },
    ]);
    expect(deg?.read(8)).toMatchObject([
      { name: 'Pan', value: '0.0', unit: '°' },
      { name: 'Step', value: '\u221210.00', unit: '°' },
    ]);
    expect(mm?.read(0)[1]).toMatchObject({ name: 'Step', value: '\u2013' });
  });

  it('draw highest positions highest', () => {
    const trace = mm?.traces[0];
    expect(Number(trace?.ys[0])).toBeGreaterThan(Number(trace?.ys.at(-1)));
    expect(mm?.dots(10)[0]?.y).toBeCloseTo(Number(trace?.ys.at(-1)), 1);
    expect(mm?.ticks.map((tick) => tick.label)).toEqual(['0', '100', '200', '300', '400', '500']);
  });

  it('say it in words', () => {
    expect(mm?.summary).toBe('Boom goes from 0 to 500 mm, between 0 and 500.');
    expect(deg?.summary).toBe('Pan goes from \u221220 to \u221220 deg, between \u221220 and 20.');
    expect(deg?.table[0]).toMatchObject({ heading: 'Pan, deg' });
    expect(deg?.table[0]?.cell(3)).toBe('10.0');
  });

  it('draw an end stop only when it is passed', () => {
    expect(mm?.levels).toEqual([]);
    const plan = planWithAxes();
    plan.rig.axes[0] = { ...plan.rig.axes[0], travelMax: 450 } as (typeof plan.rig.axes)[number];
    const [passed] = axesCharts(runView(scheduleOf(columnsOf(frames, { axes: [boom] })), 520), plan);
    expect(passed?.levels).toMatchObject([{ value: 450, kind: 'exceeded' }]);
    expect(passed?.names.map((name) => name.text)).toContain('Boom ends at 450');
  });

  it('are none without axes, and draw an axis that stands', () => {
    expect(axesCharts(runView(scheduleOf(columnsOf(frames)), 520), planWithAxes())).toEqual([]);
    const still = axisFrom({ ...boom, steps: new Int32Array(frames).fill(1000) });
    const [chart] = axesCharts(
      runView(scheduleOf(columnsOf(frames, { axes: [still] })), 520),
      planWithAxes(),
    );
    expect(chart?.summary).toBe('Boom stays at 10 mm.');
    expect(chart?.domain.every(Number.isFinite)).toBe(true);
  });
});

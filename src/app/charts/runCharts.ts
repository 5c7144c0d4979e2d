/** All charts of the run, top to bottom. */
import type { Plan } from '../../engine/plan/schema.ts';
import { axesCharts } from './axesChart.ts';
import { cardChart } from './cardChart.ts';
import type { ChartModel } from './chart.ts';
import { energyChart } from './energyChart.ts';
import type { RunView } from './runView.ts';
import { spareChart } from './spareChart.ts';

/** The charts that this plan has, worked out for a view of its schedule. */
export function runCharts(view: RunView, plan: Plan): ChartModel[] {
  return [...axesCharts(view, plan), spareChart(view, plan), energyChart(view, plan), cardChart(view)].filter(
    (chart) => chart !== null,
  );
}

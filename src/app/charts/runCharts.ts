/** All charts of the run, top to bottom. */
import type { Plan } from '../../engine/plan/schema.ts';
import type { Schedule } from '../../engine/schedule-types.ts';
import { axesCharts } from './axesChart.ts';
import { cardChart } from './cardChart.ts';
import type { ChartModel } from './chart.ts';
import { energyChart } from './energyChart.ts';
import { spareChart } from './spareChart.ts';

/** The charts that this plan has, worked out for a plot of that width. */
export function runCharts(schedule: Schedule, plan: Plan, widthPx: number): ChartModel[] {
  return [
    ...axesCharts(schedule, plan, widthPx),
    spareChart(schedule, plan, widthPx),
    energyChart(schedule, plan, widthPx),
    cardChart(schedule, widthPx),
  ].filter((chart) => chart !== null);
}

/** All charts of the run, top to bottom. */
import type { Plan } from '../../engine/plan/schema.ts';
import { type AxesAsked, axesCharts } from './axesChart.ts';
import { cardChart } from './cardChart.ts';
import type { ChartModel } from './chart.ts';
import { energyChart } from './energyChart.ts';
import { errorChart } from './errorChart.ts';
import { exposureChart } from './exposureChart.ts';
import type { RunView } from './runView.ts';
import type { SkyBand } from './skyBand.ts';
import { skyChart } from './skyChart.ts';
import { spareChart } from './spareChart.ts';

/** The charts that this plan has, worked out for a view of its schedule; `asked` of its axes. */
export function runCharts(view: RunView, plan: Plan, sky: SkyBand | null, asked: AxesAsked): ChartModel[] {
  return [
    skyChart(view, sky),
    exposureChart(view, plan),
    errorChart(view, plan),
    ...axesCharts(view, plan, asked),
    spareChart(view, plan),
    energyChart(view, plan),
    cardChart(view),
  ].filter((chart) => chart !== null);
}

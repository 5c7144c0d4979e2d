/** Spare time of every cycle: above zero it is free, down to the guard it is used, below that the cycle overruns. */
import type { Plan } from '../../engine/plan/schema.ts';
import type { Schedule } from '../../engine/schedule-types.ts';
import { ofFrame } from '../../engine/working/names.ts';
import { shortNumber } from '../format/numbers.ts';
import { type ChartModel, dotsOf, paddedDomain, xOfFrame, yScale } from './chart.ts';
import { fixed } from './format.ts';
import { placeMarks } from './marks.ts';
import type { PlacedName } from './names.ts';
import type { RunView } from './runView.ts';
import { type Domain, extent, labelledTicks, niceStep } from './scale.ts';
import { type Series, traceOf, valueAt } from './trace.ts';

const HEIGHT_PX = 80;

/** The chart of the spare time. */
export function spareChart(view: RunView, plan: Plan): ChartModel {
  const { schedule, widthPx } = view;
  const { guardS } = plan.cycle;
  const series: Series = {
    name: 'Spare',
    values: schedule.columns.spareS,
    factor: 1,
    breaks: [],
    filled: false,
    tone: 'blue',
    dash: '',
  };
  const domain = spareDomain(extent(series.values) ?? [0, 0], guardS);
  const y = yScale(domain, HEIGHT_PX);
  const { tightestFrame, tightestSpareS } = schedule.totals;
  const label = `Tightest ${shortNumber(tightestSpareS)} s`;
  const trace = traceOf(view, series, y, HEIGHT_PX);
  const tightest = { x: xOfFrame(view, tightestFrame), y: y(tightestSpareS), kind: 'value', label } as const;
  return {
    id: 'spare',
    title: 'Spare',
    unit: 's a cycle',
    heightPx: HEIGHT_PX,
    domain: paddedDomain(domain, HEIGHT_PX),
    ticks: labelledTicks(domain, 3, 3),
    traces: [trace],
    names: guardName(y(0), y(-guardS)),
    bands: guardS > 0 ? [{ from: -guardS, to: 0, kind: 'guard', style: null }] : [],
    levels: [{ value: 0, fromX: null, toX: null, kind: 'zero' }],
    marks: placeMarks([tightest], { traces: [trace], widthPx, heightPx: HEIGHT_PX }),
    summary: spareInWords(schedule, guardS),
    note: null,
    read: (index) => [
      {
        style: series,
        name: 'Spare',
        value: fixed(valueAt(series, index), 2),
        unit: 's',
        of: ofFrame(index, 'spareS'),
      },
      {
        style: null,
        name: 'Of',
        value: fixed(Number(schedule.columns.intervalS[index]), 2),
        unit: 's',
        of: ofFrame(index, 'intervalS'),
      },
    ],
    dots: (index) => dotsOf([series], y, index),
    table: [
      {
        heading: 'Spare, s',
        cell: (index) => fixed(valueAt(series, index), 2),
        of: (index) => ofFrame(index, 'spareS'),
      },
    ],
  };
}

/**
 * From the end of the guard, or the worst overrun, to the most that is free: that is rounded up, so that the axis
 * does not change with every edit.
 */
function spareDomain([low, high]: Domain, guardS: number): Domain {
  const bottom = Math.min(low, -guardS);
  const top = Math.max(high, 0);
  if (top <= bottom) return [bottom - 1, top + 1];
  const step = niceStep((top - bottom) / 5);
  return [bottom, Math.ceil(top / step - 1e-9) * step];
}

/** In the band of the guard, if it is high enough to be read. */
function guardName(top: number, bottom: number): PlacedName[] {
  return bottom - top < 14 ? [] : [{ text: 'Guard', x: 40, y: (top + bottom) / 2 + 4 }];
}

function spareInWords({ totals }: Schedule, guardS: number): string {
  const { tightestSpareS, tightestFrame } = totals;
  const guard = guardS > 0 ? ` beside the guard of ${shortNumber(guardS)} s` : '';
  if (tightestSpareS >= 0) {
    return `At least ${shortNumber(tightestSpareS)} s are spare in every cycle${guard}, least at frame ${tightestFrame}.`;
  }
  const over = -tightestSpareS - guardS;
  return over > 0
    ? `The cycle of frame ${tightestFrame} is ${shortNumber(over)} s longer than the interval.`
    : `The cycle of frame ${tightestFrame} takes ${shortNumber(-tightestSpareS)} s of the guard of ${shortNumber(guardS)} s.`;
}

/** How far each frame comes out from what was wanted, in stops: above zero brighter, below it darker. */
import type { Plan } from '../../engine/plan/schema.ts';
import { ofFrame } from '../../engine/working/names.ts';
import { type ChartModel, dotsOf, type Level, paddedDomain, type Reading, yScale } from './chart.ts';
import { exposedRun, outOfRange } from './exposed.ts';
import { fixed, signed } from './format.ts';
import type { RunView } from './runView.ts';
import { type Domain, extent, labelledTicks } from './scale.ts';
import { keptOf, type Series, traceOf, valueAt } from './trace.ts';

const HEIGHT_PX = 72;

/** The chart of the error; null if the light is not planned. */
export function errorChart(view: RunView, plan: Plan): ChartModel | null {
  const run = exposedRun(view.schedule);
  if (run === null) return null;
  const series: Series = {
    name: 'Error',
    values: run.evError,
    factor: 1,
    breaks: [],
    filled: false,
    tone: 'verm',
    dash: '',
  };
  const kept = keptOf(view, series);
  const span = extent(kept.map((i) => valueAt(series, i))) ?? [0, 0];
  const { toleranceStops } = plan.exposure.ramp;
  const domain = errorDomain(span, toleranceStops);
  const y = yScale(domain, HEIGHT_PX);
  return {
    id: 'error',
    title: 'Error',
    unit: 'stops',
    heightPx: HEIGHT_PX,
    domain: paddedDomain(domain, HEIGHT_PX),
    ticks: labelledTicks(domain, 2, 1),
    traces: [traceOf(view, series, y, HEIGHT_PX, kept)],
    names: [],
    bands: [],
    levels: [zero, ...[toleranceStops, -toleranceStops].map(allowed)],
    marks: [],
    // How far it is off is said on the chart above, and can be read off this one.
    stretches: outOfRange(view, run, plan).map((stretch) => ({ ...stretch, label: '' })),
    summary: errorInWords(span),
    note: null,
    read: (index) => [readError(series, index)],
    dots: (index) => dotsOf([series], y, index),
    table: [
      {
        heading: 'Too bright, stops',
        cell: (index) => signed(valueAt(series, index), 2),
        of: (index) => ofFrame(index, 'evError'),
      },
    ],
  };
}

const zero: Level = { value: 0, fromX: null, toX: null, kind: 'zero' };
const allowed = (value: number): Level => ({ value, fromX: null, toX: null, kind: 'limit' });

/** By half stops, or by whole pairs where it is far off, so that the axis does not change with every edit. */
function errorDomain([low, high]: Domain, toleranceStops: number): Domain {
  const end = (most: number) => {
    const step = most > 2 ? 2 : 0.5;
    return Math.ceil(most / step - 1e-9) * step;
  };
  return [-end(Math.max(-low, toleranceStops)), end(Math.max(high, toleranceStops))];
}

function readError(series: Series, index: number): Reading {
  const error = valueAt(series, index);
  return {
    style: series,
    name: error < 0 ? 'Too dark' : 'Too bright',
    value: fixed(Math.abs(error), 2),
    unit: 'stops',
    of: ofFrame(index, 'evError'),
  };
}

function errorInWords([low, high]: Domain): string {
  return `The picture comes out at most ${fixed(Math.max(0, high), 1)} stops brighter and ${fixed(Math.max(0, -low), 1)} stops darker than wanted.`;
}

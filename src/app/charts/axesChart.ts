/** Positions of the rig's axes over the run; millimetres and degrees do not share a scale. */
import type { Plan } from '../../engine/plan/schema.ts';
import type { AxisColumns, Schedule } from '../../engine/schedule-types.ts';
import { numberText } from '../format/numbers.ts';
import {
  type ChartModel,
  dotsOf,
  frameCount,
  heightFor,
  type Level,
  paddedDomain,
  type Reading,
  yScale,
} from './chart.ts';
import { digitsFor, fixed, signed } from './format.ts';
import { type PlacedName, placeNames, textWidth } from './names.ts';
import { EDGE_PX, type RunView } from './runView.ts';
import { type Domain, extent, labelledTicks, padded } from './scale.ts';
import { lineStyle, type Series, traceOf, valueAt } from './trace.ts';

const USUAL_HEIGHT_PX = 104;
const UNITS = ['mm', 'deg'] as const;

/** The first frame follows none. */
const NO_STEP = '\u2013';

/** The sign behind a figure. */
const SIGNS = { mm: 'mm', deg: '°' } as const;

interface DrawnAxis {
  series: Series;
  columns: AxisColumns;
  /** Lowest and highest position. */
  span: Domain;
  /** Decimals of a position, and of a step from one frame to the next. */
  digits: number;
  stepDigits: number;
}

/** One chart for the axes in millimetres and one for those in degrees, each only if there are any. */
export function axesCharts(view: RunView, plan: Plan): ChartModel[] {
  const { schedule } = view;
  const drawn = schedule.columns.axes.map(drawnAxis);
  return UNITS.flatMap((unit) => {
    const own = drawn.filter((axis) => axis.columns.unit === unit);
    return own.length > 0 ? [axesChart(schedule, plan, view, unit, own)] : [];
  });
}

function drawnAxis(columns: AxisColumns, n: number): DrawnAxis {
  const factor = 1 / columns.stepsPerUnit;
  const span: Domain = [columns.lowestSteps * factor, columns.highestSteps * factor];
  const digits = Math.max(1, digitsFor(span[1] - span[0]));
  const series = {
    name: columns.name,
    values: columns.steps,
    factor,
    breaks: [],
    filled: false,
    ...lineStyle(n),
  };
  const usualStep = (span[1] - span[0]) / Math.max(1, columns.steps.length - 1);
  return { series, columns, span, digits, stepDigits: Math.max(digits + 1, digitsFor(usualStep)) };
}

function axesChart(
  schedule: Schedule,
  plan: Plan,
  view: RunView,
  unit: 'mm' | 'deg',
  axes: readonly DrawnAxis[],
): ChartModel {
  const series = axes.map((axis) => axis.series);
  const stops = axes.flatMap((axis) => passedStops(axis, plan));
  const domain = spanOf(axes, stops);
  const heightPx = heightFor(USUAL_HEIGHT_PX, 2 * axes.length);
  const y = yScale(domain, heightPx);
  const traces = series.map((one) => traceOf(view, one, y, heightPx));
  const digits = digitsFor(domain[1] - domain[0]);
  const moves = axes.some((axis) => axis.span[0] !== axis.span[1]);
  const stopNames = stops.map((stop) => stopName(stop, y));
  return {
    id: `axes-${unit}`,
    title: 'Axes',
    unit: unit === 'mm' ? 'mm' : 'degrees',
    heightPx,
    domain: paddedDomain(domain, heightPx),
    ticks: labelledTicks(domain, moves ? 5 : 2, digits + 1),
    traces,
    names: [...placeNames(traces, [], { widthPx: view.widthPx, heightPx }), ...stopNames],
    bands: [],
    levels: stops.map(stopLevel),
    marks: [],
    summary: axes.map((axis) => axisInWords(axis, frameCount(schedule))).join(' '),
    note: null,
    read: (index) => axes.flatMap((axis) => readAxis(axis, index)),
    dots: (index) => dotsOf(series, y, index),
    table: axes.map((axis) => ({
      heading: `${axis.series.name}, ${unit}`,
      cell: (index) => fixed(valueAt(axis.series, index), axis.digits),
    })),
  };
}

function spanOf(axes: readonly DrawnAxis[], stops: readonly EndStop[]): Domain {
  const span = extent([...axes.flatMap((axis) => axis.span), ...stops.map((stop) => stop.value)]) ?? [0, 0];
  return span[0] === span[1] ? padded(span, 0) : span;
}

/** An end stop that the track runs past. */
interface EndStop {
  axis: string;
  value: number;
}

function passedStops({ series, span }: DrawnAxis, plan: Plan): EndStop[] {
  const axis = plan.rig.axes.find((one) => one.name === series.name);
  if (!axis) return [];
  const stops = [
    ...(axis.travelMin > span[0] ? [axis.travelMin] : []),
    ...(axis.travelMax < span[1] ? [axis.travelMax] : []),
  ];
  return stops.map((value) => ({ axis: series.name, value }));
}

const stopLevel = ({ value }: EndStop): Level => ({ value, fromX: null, toX: null, kind: 'exceeded' });

function stopName({ axis, value }: EndStop, y: (value: number) => number): PlacedName {
  const text = `${axis} ends at ${numberText(value, 2)}`;
  return { text, x: textWidth(text) / 2 + EDGE_PX + 4, y: y(value) - 4 };
}

function readAxis({ series, columns, digits, stepDigits }: DrawnAxis, index: number): Reading[] {
  const unit = SIGNS[columns.unit];
  const position = {
    style: series,
    name: series.name,
    value: (columns.unit === 'deg' ? signed : fixed)(valueAt(series, index), digits),
    unit,
  };
  const step = index > 0 ? signed(valueAt(series, index) - valueAt(series, index - 1), stepDigits) : NO_STEP;
  return [position, { style: null, name: 'Step', value: step, unit }];
}

function axisInWords({ series, columns, span, digits }: DrawnAxis, frames: number): string {
  const [low, high] = span;
  const say = (value: number) => numberText(value, digits);
  if (low === high) return `${series.name} stays at ${say(low)} ${columns.unit}.`;
  const ends = `from ${say(valueAt(series, 0))} to ${say(valueAt(series, frames - 1))} ${columns.unit}`;
  return `${series.name} goes ${ends}, between ${say(low)} and ${say(high)}.`;
}

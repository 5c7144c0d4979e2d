/** The rig's axes over the run: positions, speeds or microsteps. Millimetres and degrees do not share a scale. */
import type { Plan } from '../../engine/plan/schema.ts';
import type { Schedule } from '../../engine/schedule-types.ts';
import { aimedAxes } from '../store/keyframes.ts';
import type { HeldScale, Quantity } from '../tracks/shown.ts';
import { type DrawnAxis, drawnAxis } from './axisSeries.ts';
import {
  type ChartModel,
  dotsOf,
  type Editable,
  heightFor,
  type Level,
  paddedDomain,
  type Reading,
  yScale,
} from './chart.ts';
import { digitsFor } from './format.ts';
import { type PlacedName, placeNames, textWidth } from './names.ts';
import { EDGE_PX, type RunView } from './runView.ts';
import { type Domain, extent, labelledTicks, padded } from './scale.ts';
import { traceOf } from './trace.ts';

/** Title of these charts. */
export const AXES_TITLE = 'Axes';

const USUAL_HEIGHT_PX = 104;
const UNITS = ['mm', 'deg'] as const;
type Unit = (typeof UNITS)[number];

/** What stands beside the title. */
const UNIT_TEXTS: Readonly<Record<Quantity, Readonly<Record<Unit, string>>>> = {
  position: { mm: 'mm', deg: 'degrees' },
  speed: { mm: 'mm/s', deg: 'degrees/s' },
  steps: { mm: 'steps, mm', deg: 'steps, °' },
};

/** What the charts of the axes are asked to show. */
export interface AxesAsked {
  quantity: Quantity;
  held: HeldScale | null;
}

const POSITIONS: AxesAsked = { quantity: 'position', held: null };

/** One chart for the axes in millimetres and one for those in degrees, each only if there are any. */
export function axesCharts(view: RunView, plan: Plan, asked = POSITIONS): ChartModel[] {
  const drawn = view.schedule.columns.axes.map((columns, n) =>
    drawnAxis(columns, n, { plan, schedule: view.schedule, quantity: asked.quantity }),
  );
  return UNITS.flatMap((unit) => {
    const own = drawn.filter((axis) => axis.columns.unit === unit);
    return own.length > 0 ? [{ unit, own }] : [];
  }).map(({ unit, own }, n) => {
    // Beside the first one stands their switch.
    const lines = 2 * own.length + (n === 0 ? 3 : 1);
    return axesChart(plan, view, unit, own, asked, heightFor(USUAL_HEIGHT_PX, lines));
  });
}

function axesChart(
  plan: Plan,
  view: RunView,
  unit: Unit,
  axes: readonly DrawnAxis[],
  { quantity, held }: AxesAsked,
  heightPx: number,
): ChartModel {
  const id = `axes-${unit}`;
  const { schedule, widthPx } = view;
  const series = axes.map((axis) => axis.series);
  const domain = holding(spanOf(axes, quantity), held?.chart === id ? held : null);
  const y = yScale(domain, heightPx);
  const traces = series.map((one) => traceOf(view, one, y, heightPx));
  const moves = domain[0] !== domain[1] && axes.some((axis) => axis.span[0] !== axis.span[1]);
  const editable = quantity === 'position' ? editableOf(plan, schedule, axes, domain, unit) : null;
  return {
    id,
    title: AXES_TITLE,
    unit: UNIT_TEXTS[quantity][unit],
    heightPx,
    domain: paddedDomain(domain, heightPx),
    ticks: labelledTicks(domain, moves ? 5 : 2, digitsFor(domain[1] - domain[0]) + 1),
    traces,
    names: [...placeNames(traces, [], { widthPx, heightPx }), ...limitNames(axes, y)],
    bands: [],
    levels: levelsOf(axes, domain, quantity),
    marks: [],
    ...(editable && { editable }),
    summary: axes.map((axis) => axis.inWords).join(' '),
    note: null,
    read: (index) => axes.flatMap((axis): Reading[] => axis.read(index)),
    dots: (index) => dotsOf(series, y, index),
    table: axes.map(({ heading, cell, of }) => ({ heading, cell, ...(of && { of }) })),
  };
}

/** From the lowest to the highest of all lines and limits; what goes both ways, or neither, shows its zero. */
function spanOf(axes: readonly DrawnAxis[], quantity: Quantity): Domain {
  const limits = axes.flatMap((axis) => axis.limits.map(({ value }) => value));
  const zero = quantity === 'position' ? [] : [0];
  const span = extent([...axes.flatMap((axis) => axis.span), ...limits, ...zero]) ?? [0, 0];
  return span[0] === span[1] ? padded(span, 0) : span;
}

const holding = ([low, high]: Domain, held: HeldScale | null): Domain =>
  held ? [Math.min(low, held.low), Math.max(high, held.high)] : [low, high];

/** The tracks that can be edited where they are drawn: not while the rig stands still, nor where they are aimed. */
function editableOf(
  plan: Plan,
  { columns }: Schedule,
  axes: readonly DrawnAxis[],
  [low, high]: Domain,
  unit: Unit,
): Editable | null {
  if (plan.move.mode === 'still' || columns.elapsedS.length < 2) return null;
  const aimed = aimedAxes(plan);
  const names = axes.map(({ columns: { name } }) => name).filter((name) => !aimed.includes(name));
  return names.length > 0 ? { axes: names, unit, low, high } : null;
}

function levelsOf(axes: readonly DrawnAxis[], [low, high]: Domain, quantity: Quantity): Level[] {
  const whole = { fromX: null, toX: null };
  const limits = axes.flatMap((axis) =>
    axis.limits.map(({ value, passed }): Level => ({ value, ...whole, kind: passed ? 'exceeded' : 'limit' })),
  );
  const bothWays = quantity !== 'position' && low < 0 && high > 0;
  return bothWays ? [{ value: 0, ...whole, kind: 'zero' }, ...limits] : limits;
}

function limitNames(axes: readonly DrawnAxis[], y: (value: number) => number): PlacedName[] {
  return axes.flatMap((axis) =>
    axis.limits.map(({ value, text, below }) => ({
      text,
      x: textWidth(text) / 2 + EDGE_PX + 4,
      y: y(value) + (below ? 13 : -4),
    })),
  );
}

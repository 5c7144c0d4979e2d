/** One axis as it is drawn, read and said: its position, its speed, or its microsteps from frame to frame. */

import { movesOf, speedsOf } from '../../engine/motion/speeds.ts';
import type { Axis, Plan } from '../../engine/plan/schema.ts';
import type { AxisColumns, Schedule } from '../../engine/schedule-types.ts';
import { ofFrame } from '../../engine/working/names.ts';
import { numberText, withUnit } from '../format/numbers.ts';
import type { Quantity } from '../tracks/shown.ts';
import type { Reading } from './chart.ts';
import { digitsFor, fixed, signed } from './format.ts';
import { type Domain, extent } from './scale.ts';
import { lineStyle, type Series, valueAt } from './trace.ts';

/** No move: the first frame follows none, and none follows the last. */
const NONE = '\u2013';

/** The sign behind a figure. */
const SIGNS = { mm: 'mm', deg: '°' } as const;

/** A value that the axis must not pass, or does. */
interface Limit {
  value: number;
  passed: boolean;
  text: string;
  /** Whether its words stand below it. */
  below: boolean;
}

export interface DrawnAxis {
  columns: AxisColumns;
  series: Series;
  /** Lowest and highest value. */
  span: Domain;
  limits: readonly Limit[];
  inWords: string;
  read(index: number): Reading[];
  /** Of its column in the table. */
  heading: string;
  cell(index: number): string;
  /** Name of the working of that. */
  of?: (index: number) => string | null;
}

interface Asked {
  plan: Plan;
  schedule: Schedule;
  quantity: Quantity;
}

/** The n-th axis of the rig, counted from 0. */
export function drawnAxis(columns: AxisColumns, n: number, { plan, schedule, quantity }: Asked): DrawnAxis {
  const axis = plan.rig.axes.find(({ name }) => name === columns.name);
  const line = (values: ArrayLike<number>, factor = 1): Series => ({
    name: columns.name,
    values,
    factor,
    breaks: [],
    filled: false,
    ...lineStyle(n),
  });
  if (quantity === 'position') return positions(columns, line(columns.steps, 1 / columns.stepsPerUnit), axis);
  return quantity === 'speed'
    ? speeds(columns, line(speedsOf(columns, plan, schedule)), axis)
    : microsteps(columns, line(movesOf(columns)));
}

function positions(columns: AxisColumns, series: Series, axis: Axis | undefined): DrawnAxis {
  const { name, unit, lowestSteps, highestSteps } = columns;
  const span: Domain = [lowestSteps * series.factor, highestSteps * series.factor];
  const digits = Math.max(1, digitsFor(span[1] - span[0]));
  const frames = columns.steps.length;
  const stepDigits = Math.max(digits + 1, digitsFor((span[1] - span[0]) / Math.max(1, frames - 1)));
  const at = (index: number) => valueAt(series, index);
  return {
    columns,
    series,
    span,
    limits: axis ? passedStops(axis, span) : [],
    inWords: positionInWords(columns, at, span, digits),
    read: (index) => [
      {
        style: series,
        name,
        value: (unit === 'deg' ? signed : fixed)(at(index), digits),
        unit: SIGNS[unit],
        of: ofFrame(index, `axes.${name}.position`),
      },
      {
        style: null,
        name: 'Step',
        value: index > 0 ? signed(at(index) - at(index - 1), stepDigits) : NONE,
        unit: SIGNS[unit],
        ...(index > 0 && { of: ofFrame(index, `axes.${name}.by`) }),
      },
    ],
    heading: `${name}, ${unit}`,
    cell: (index) => fixed(at(index), digits),
    of: (index) => ofFrame(index, `axes.${name}.position`),
  };
}

/** The ends of its travel that a track runs past. */
function passedStops({ name, travelMin, travelMax }: Axis, [low, high]: Domain): Limit[] {
  const stop = (value: number, below: boolean): Limit => ({
    value,
    passed: true,
    text: `${name} ends at ${numberText(value, 2)}`,
    below,
  });
  return [
    ...(travelMin > low ? [stop(travelMin, false)] : []),
    ...(travelMax < high ? [stop(travelMax, false)] : []),
  ];
}

function positionInWords(
  { name, unit, steps }: AxisColumns,
  at: (index: number) => number,
  [low, high]: Domain,
  digits: number,
): string {
  const say = (value: number) => numberText(value, digits);
  if (low === high) return `${name} stays at ${say(low)} ${unit}.`;
  const ends = `from ${say(at(0))} to ${say(at(steps.length - 1))} ${unit}`;
  return `${name} goes ${ends}, between ${say(low)} and ${say(high)}.`;
}

/** From this share of its top speed on, the top speed is drawn: lower down it would flatten the line. */
const LIMIT_IN_SIGHT = 0.4;

function speeds(columns: AxisColumns, series: Series, axis: Axis | undefined): DrawnAxis {
  const { name } = columns;
  const unit = columns.unit === 'deg' ? '°/s' : 'mm/s';
  const span = extent(series.values) ?? [0, 0];
  const digits = digitsFor(Math.max(-span[0], span[1])) + 1;
  // None follows the last.
  const how = (index: number): { of?: string } =>
    index < columns.steps.length - 1 ? { of: ofFrame(index, `axes.${name}.speed`) } : {};
  const most = axis ? withUnit(numberText(axis.maxSpeed, 4), unit) : NONE;
  return {
    columns,
    series,
    span,
    limits: axis ? topSpeeds(axis, span, most) : [],
    inWords: `${name} runs at up to ${withUnit(numberText(peak(span), digits), unit)}, and can do ${most}.`,
    read: (index) => [
      { style: series, name, value: read(series, index, digits), unit, ...how(index) },
      { style: null, name: 'At most', value: axis ? numberText(axis.maxSpeed, 4) : NONE, unit },
    ],
    heading: `${name}, ${unit}`,
    cell: (index) => read(series, index, digits),
    of: (index) => how(index).of ?? null,
  };
}

const peak = ([low, high]: Domain): number => Math.max(-low, high);

const read = (series: Series, index: number, digits: number): string => {
  const value = valueAt(series, index);
  return Number.isFinite(value) ? signed(value, digits) : NONE;
};

/** Its top speed in the directions in which it comes near. */
function topSpeeds({ name, maxSpeed }: Axis, [low, high]: Domain, most: string): Limit[] {
  const over = maxSpeed * (1 + 1e-6);
  const text = `${name} at most ${most}`;
  const up = { value: maxSpeed, passed: high > over, text, below: true };
  const down = { value: -maxSpeed, passed: -low > over, text, below: false };
  const near = maxSpeed * LIMIT_IN_SIGHT;
  return [...(high >= near ? [up] : []), ...(-low >= near ? [down] : [])];
}

function microsteps(columns: AxisColumns, series: Series): DrawnAxis {
  const { name, unit, stepsPerUnit } = columns;
  const span = extent(series.values) ?? [0, 0];
  const digits = digitsFor(peak(span) / stepsPerUnit) + 1;
  const last = columns.steps.length - 1;
  // None follows the last.
  const how = (index: number, what: string): { of?: string } =>
    index < last ? { of: ofFrame(index, `axes.${name}.${what}`) } : {};
  const inUnit = (index: number) => {
    const moved = valueAt(series, index) / stepsPerUnit;
    return Number.isFinite(moved) ? signed(moved, digits) : NONE;
  };
  return {
    columns,
    series,
    span,
    limits: [],
    inWords: `${name} makes up to ${numberText(peak(span))} microsteps from one frame to the next.`,
    read: (index) => [
      { style: series, name, value: read(series, index, 0), unit: '', ...how(index, 'moveSteps') },
      { style: null, name: 'Move', value: inUnit(index), unit: SIGNS[unit], ...how(index, 'moveBy') },
    ],
    heading: `${name}, microsteps`,
    cell: (index) => read(series, index, 0),
    of: (index) => how(index, 'moveSteps').of ?? null,
  };
}

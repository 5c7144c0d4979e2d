/** Altitudes of sun and moon over the run, drawn over the light that they make. */
import { SUNRISE_ALTITUDE_DEG } from '../../engine/sky/day.ts';
import { moonLitShare } from '../../engine/sky/position.ts';
import type { SkyColumns } from '../../engine/sky/track.ts';
import { ofFrame } from '../../engine/working/names.ts';
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
import { momentOf } from './cursor.ts';
import { fixed, signed } from './format.ts';
import type { RunView } from './runView.ts';
import { type Domain, extent } from './scale.ts';
import type { SkyBand } from './skyBand.ts';
import { skyDrawing } from './skyLabels.ts';
import { lanesHeight, lanesInWords, sunLanes } from './sunLanes.ts';
import { keptOf, type Series, traceOf, valueAt } from './trace.ts';

const USUAL_HEIGHT_PX = 128;
/** The moon counts as up from its rising on. */
const UP_DEG = SUNRISE_ALTITUDE_DEG;
const TWILIGHTS = [-6, -12, -18];
/** Figures of the axis are no nearer to each other. */
const TICKS_APART_PX = 15;

/** The chart of the sky; null without a place. */
export function skyChart(view: RunView, band: SkyBand | null): ChartModel | null {
  const { sky: columns, evScene } = view.schedule.columns;
  if (columns === null || band === null) return null;
  const sun = seriesOf('Sun', columns.sunAltitudeDeg, '');
  const moon = { ...seriesOf('Moon', columns.moonAltitudeDeg, '3 4'), from: UP_DEG };
  const keptSun = keptOf(view, sun);
  const keptMoon = keptOf(view, moon);
  const sunSpan = spanOf(sun, keptSun);
  const moonSpan = spanOf(moon, keptMoon);
  const moonUp = moonSpan[1] > UP_DEG;
  const domain = altitudeDomain(sunSpan, moonUp ? [0, moonSpan[1]] : sunSpan);
  const heightPx = heightFor(USUAL_HEIGHT_PX, evScene ? 5 : 4);
  const lanesPx = lanesHeight(band);
  const y = yScale(domain, heightPx);
  const traces = [
    traceOf(view, sun, y, heightPx, keptSun),
    ...(moonUp ? [traceOf(view, moon, y, heightPx, keptMoon)] : []),
  ];
  const series = moonUp ? [sun, moon] : [sun];
  return {
    id: 'sky',
    title: 'Sky',
    unit: 'degrees',
    heightPx: heightPx + lanesPx,
    domain: paddedDomain(domain, heightPx, lanesPx),
    ticks: ticksOf(domain, y),
    traces,
    names: [],
    bands: [],
    levels: levelsOf(domain),
    marks: [],
    overSky: skyDrawing(band, { widthPx: view.widthPx, heightPx, traces, y }),
    lanes: sunLanes(band, heightPx, view.widthPx),
    summary: skyInWords(view, columns, moonSpan, band),
    note: null,
    read: (index) => [
      ...readSun(sun, columns, index),
      ...readMoon(moon, momentOf(view.schedule, index), index),
      ...(evScene
        ? [
            {
              style: null,
              name: 'Scene',
              value: fixed(Number(evScene[index]), 1),
              unit: 'EV',
              of: ofFrame(index, 'evScene'),
            },
          ]
        : []),
    ],
    dots: (index) => dotsOf(series, y, index),
    table: [
      {
        heading: 'Sun altitude, deg',
        cell: (index) => fixed(valueAt(sun, index), 1),
        of: (index) => ofFrame(index, 'sunAltitudeDeg'),
      },
      {
        heading: 'Sun azimuth, deg',
        cell: (index) => fixed(Number(columns.sunAzimuthDeg[index]), 0),
        of: (index) => ofFrame(index, 'sunAzimuthDeg'),
      },
      {
        heading: 'Moon altitude, deg',
        cell: (index) => fixed(valueAt(moon, index), 1),
        of: (index) => ofFrame(index, 'moonAltitudeDeg'),
      },
    ],
  };
}

const seriesOf = (name: string, values: Float32Array, dash: string): Series => ({
  name,
  values,
  factor: 1,
  breaks: [],
  filled: false,
  tone: 'curve',
  dash,
});

const spanOf = (series: Series, kept: readonly number[]): Domain =>
  extent(kept.map((i) => valueAt(series, i))) ?? [0, 0];

/** From twilight to twilight, so that the axis does not change with every edit. */
function altitudeDomain(...spans: readonly Domain[]): Domain {
  const low = Math.floor(Math.min(...spans.map(([from]) => from)) / 6) * 6;
  const high = Math.ceil(Math.max(...spans.map(([, to]) => to)) / 6) * 6;
  return low === high ? [low, low + 6] : [low, high];
}

const within = ([low, high]: Domain, value: number): boolean => value >= low && value <= high;

/** Horizon and twilights first, then round figures. */
function ticksOf(domain: Domain, y: (value: number) => number): ChartModel['ticks'] {
  const values: number[] = [];
  for (const value of [0, ...TWILIGHTS, 30, 60, 90, -30, -60, -90, 15, 45, 75, -45, -75, 6, 12, ...domain]) {
    const clear = values.every((other) => Math.abs(y(other) - y(value)) >= TICKS_APART_PX);
    if (within(domain, value) && clear) values.push(value);
  }
  return values.map((value) => ({ value, label: numberText(value, 0) }));
}

const levelsOf = (domain: Domain): Level[] =>
  [0, ...TWILIGHTS]
    .filter((value) => within(domain, value))
    .map((value) => ({ value, fromX: null, toX: null, kind: value === 0 ? 'horizon' : 'twilight' }));

const readSun = (sun: Series, { sunAzimuthDeg }: SkyColumns, index: number): Reading[] => [
  {
    style: sun,
    name: 'Sun altitude',
    value: signed(valueAt(sun, index), 1),
    unit: '°',
    of: ofFrame(index, 'sunAltitudeDeg'),
  },
  {
    style: null,
    name: 'Azimuth',
    value: fixed(Number(sunAzimuthDeg[index]), 0),
    unit: '°',
    of: ofFrame(index, 'sunAzimuthDeg'),
  },
];

function readMoon(moon: Series, ms: number, index: number): Reading[] {
  const altitude = valueAt(moon, index);
  if (altitude < UP_DEG) return [{ style: null, name: 'Moon', value: 'down', unit: '' }];
  return [
    {
      style: moon,
      name: 'Moon',
      value: signed(altitude, 1),
      unit: '°',
      of: ofFrame(index, 'moonAltitudeDeg'),
    },
    {
      style: null,
      name: 'Moon lit',
      value: fixed(moonLitShare(ms) * 100, 0),
      unit: '%',
      of: ofFrame(index, 'moonLitShare'),
    },
  ];
}

function skyInWords(view: RunView, columns: SkyColumns, [, moonHigh]: Domain, band: SkyBand): string {
  const last = frameCount(view.schedule) - 1;
  const sunAt = (index: number) =>
    `${fixed(Number(columns.sunAltitudeDeg[index]), 1)}° at azimuth ${fixed(Number(columns.sunAzimuthDeg[index]), 0)}°`;
  const moon = moonHigh > UP_DEG ? `The moon stands up to ${fixed(moonHigh, 0)}° high.` : 'The moon is down.';
  const light = band.bands.map(({ name }) => name.toLowerCase()).join(', ');
  const events = band.events.map(({ name, clock }) => `${name} ${clock}.`);
  const windows =
    band.windows?.length === 0
      ? ['No window during the run.']
      : (band.windows ?? []).map(({ words }) => `${words}.`);
  return [
    `The sun goes from ${sunAt(0)} to ${sunAt(last)}.`,
    ...(light === '' ? [] : [`Light: ${light}.`]),
    ...events,
    moon,
    ...windows,
    ...lanesInWords(band),
  ].join(' ');
}

/** The sky's columns against suncalc at every frame, and a year of days with their windows. */
import { getMoonPosition, getPosition } from 'suncalc';
import type { Plan } from '../../src/engine/plan/schema.ts';
import { sunAt } from '../../src/engine/sky/position.ts';
import { skyStart } from '../../src/engine/sky/start.ts';
import { fillSky, type SkyColumns, skyTrack } from '../../src/engine/sky/track.ts';
import { yearOfDays } from '../../src/engine/sky/year.ts';
import { plainPlan, type Some } from '../reference/plans.ts';
import { type Figure, median, quantile } from './report.ts';

const FRAMES = 86_400;
const START_MS = Date.UTC(2026, 7, 8, 4);

/** Two places: one where the sun never stands high, one where it goes through the zenith. */
const PLACES: readonly (readonly [string, number, number])[] = [
  ['latitude 51°', 51.5, 0],
  ['latitude 16°', 16, 0],
];

function timed(work: () => unknown): number {
  const started = performance.now();
  work();
  return performance.now() - started;
}

const elapsedS = Float64Array.from({ length: FRAMES }, (_, k) => k);
const column = () => new Float32Array(FRAMES);
const out: SkyColumns = { sunAltitudeDeg: column(), sunAzimuthDeg: column(), moonAltitudeDeg: column() };

function columnsOnce(latitude: number, longitude: number): void {
  fillSky(skyTrack(START_MS, START_MS + FRAMES * 1000, latitude, longitude), START_MS, elapsedS, out);
}

/** What suncalc takes for as many frames, the sun alone. */
function sunOnce(latitude: number, longitude: number): void {
  for (let k = 0; k < FRAMES; k += 1) {
    const { altitude, azimuth } = getPosition(new Date(START_MS + k * 1000), latitude, longitude);
    out.sunAltitudeDeg[k] = altitude;
    out.sunAzimuthDeg[k] = azimuth;
  }
}

function moonOnce(latitude: number, longitude: number): void {
  for (let k = 0; k < FRAMES; k += 1)
    out.moonAltitudeDeg[k] = getMoonPosition(new Date(START_MS + k * 1000), latitude, longitude).altitude;
}

/** Largest error of the sun's altitude in the columns that were filled last. */
function worstDeg(latitude: number, longitude: number): number {
  let worst = 0;
  for (let k = 0; k < FRAMES; k += 7) {
    const { geometricAltitudeDeg } = sunAt(START_MS + k * 1000, latitude, longitude);
    worst = Math.max(worst, Math.abs(geometricAltitudeDeg - (out.sunAltitudeDeg[k] as number)));
  }
  return worst;
}

function columnFigures([name, latitude, longitude]: readonly [string, number, number]): Figure[] {
  const [filledMs, sunMs, moonMs]: number[][] = [[], [], []];
  for (let round = 0; round < 25; round += 1) {
    filledMs?.push(timed(() => columnsOnce(latitude, longitude)));
    sunMs?.push(timed(() => sunOnce(latitude, longitude)));
    if (round % 5 === 0) moonMs?.push(timed(() => moonOnce(latitude, longitude)));
  }
  columnsOnce(latitude, longitude);
  const ms = median(filledMs ?? []);
  return [
    { what: `sun and moon for 86,400 frames, ${name}: median`, value: ms, unit: 'ms' },
    {
      what: '  suncalc’s sun alone at every frame / that (at least 10)',
      value: median(sunMs ?? []) / ms,
      unit: '×',
    },
    // Turned round, so that more than the budget is worse.
    { what: '  that / suncalc’s sun alone', value: ms / median(sunMs ?? []), unit: '×', budget: 0.1 },
    {
      what: '  suncalc’s sun and moon at every frame / that',
      value: (median(sunMs ?? []) + median(moonMs ?? [])) / ms,
      unit: '×',
    },
    {
      what: '  worst error of the sun’s altitude',
      value: worstDeg(latitude, longitude),
      unit: '°',
      budget: 0.001,
    },
  ];
}

const LISBON = { zone: 'Europe/Lisbon', latitudeDeg: 38.7, longitudeDeg: -9.14 };
const HILLS = Array.from({ length: 36 }, (_, i) => ({
  azimuthDeg: 10 * i,
  altitudeDeg: 3 + 2 * Math.sin(i),
}));

/** What a year is asked for, from little to everything. */
const YEARS: readonly (readonly [string, Some<Plan>])[] = [
  ['light only', {}],
  [
    'dusk with the moon down or dim',
    { window: { used: true, sunAltitudeMinDeg: -12.5, sunAltitudeMaxDeg: 3, moon: 'downOrDim' } },
  ],
  [
    'every condition, 36 points of horizon, pane',
    {
      place: { horizon: HILLS },
      pane: { used: true, facingDeg: 270 },
      window: {
        used: true,
        sunAltitudeMinDeg: 0,
        sunAltitudeMaxDeg: 60,
        sunAzimuthFromDeg: 180,
        sunAzimuthToDeg: 300,
        clockFrom: '09:00',
        clockTo: '21:00',
        sunAndHorizon: 'above',
        sunOnPane: 'onSet',
        moon: 'downOrDim',
      },
    },
  ],
];

function yearFigures(): Figure[] {
  return YEARS.map(([name, change]) => {
    const plan = plainPlan(541, 10, { place: { ...LISBON, ...change.place }, ...dropPlace(change) });
    const ms = Array.from({ length: 15 }, () => timed(() => [...yearOfDays(plan, 2026, 5400)]));
    return { what: `a year of days, ${name}: median`, value: median(ms.slice(3)), unit: 'ms', budget: 100 };
  });
}

const dropPlace = ({ place: _place, ...rest }: Some<Plan>): Some<Plan> => rest;

function startFigure(): Figure {
  const plan = plainPlan(2, 10, { place: LISBON, start: { tiedTo: 'sky', event: 'sunset', offsetMin: -50 } });
  const ms = Array.from({ length: 500 }, () => timed(() => skyStart(plan)));
  return {
    what: 'a start that goes by the sunset: 95th percentile',
    value: quantile(ms.slice(100), 0.95),
    unit: 'ms',
    budget: 1,
  };
}

export const skyFigures = (): Figure[] => [...PLACES.flatMap(columnFigures), ...yearFigures(), startFigure()];

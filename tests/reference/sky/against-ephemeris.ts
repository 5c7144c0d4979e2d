/** Positions and events against astronomy-engine, an independent ephemeris, over places and instants all over. */
import { moonEvents, type SkyEvent, SUNRISE_ALTITUDE_DEG, sunEvents } from '../../../src/engine/sky/day.ts';
import type { SunEventName } from '../../../src/engine/sky/names.ts';
import { moonAt, moonLitShare, type SkyPosition, sunAt } from '../../../src/engine/sky/position.ts';
import { fillSky, type SkyColumns, skyTrack } from '../../../src/engine/sky/track.ts';
import { type NumberCase, numberRow, type Row, type TextCase, textRow } from '../rows.ts';
import {
  found,
  litShare,
  moonPasses,
  type Sample,
  samples,
  seen,
  seenApparent,
  sunPasses,
  sunTransits,
} from './ephemeris.ts';

const EPHEMERIS = 'astronomy-engine 2.1.19, 1990 to 2060, all latitudes (computed)';
const SUNCALC = 'suncalc 2.0.2 at every frame (computed)';
const RAD = Math.PI / 180;

const nameOf = ({ ms, latitudeDeg, longitudeDeg }: Sample): string =>
  `${new Date(ms).toISOString()} at ${latitudeDeg.toFixed(3)}, ${longitudeDeg.toFixed(3)}`;

/** Difference of two azimuths by the shorter way, as it shows in the sky. */
function azimuthCase(at: string, gotDeg: number, wantDeg: number, altitudeDeg: number): NumberCase {
  const off = gotDeg - wantDeg;
  return { at, got: (off - 360 * Math.round(off / 360)) * Math.cos(altitudeDeg * RAD), want: 0 };
}

/** Where the sun stands by the ephemeris. */
const REGIMES: readonly (readonly [string, (altitudeDeg: number) => boolean])[] = [
  ['sun above 5°', (deg) => deg > 5],
  ['sun from -1° to 5°', (deg) => deg > -1 && deg <= 5],
  ['sun below -1°', (deg) => deg <= -1],
];

function sunRows(): Row[] {
  const all = [...samples(6000, 1)].map((sample) => {
    const { ms, latitudeDeg, longitudeDeg } = sample;
    return { sample, want: seen('Sun', sample), got: sunAt(ms, latitudeDeg, longitudeDeg) };
  });
  const head = { reference: EPHEMERIS, bound: 0.02, unit: '°' };
  const rows = REGIMES.flatMap(([regime, holds]): Row[] => {
    const some = all.filter(({ want }) => holds(want.altitudeDeg));
    return [
      numberRow(
        { ...head, quantity: 'geometric altitude of the sun', regime },
        some.map(({ sample, got, want }) => ({
          at: nameOf(sample),
          got: got.geometricAltitudeDeg,
          want: want.altitudeDeg,
        })),
      ),
      numberRow(
        { ...head, quantity: 'azimuth of the sun x cos(altitude)', regime },
        some.map(({ sample, got, want }) =>
          azimuthCase(nameOf(sample), got.azimuthDeg, want.azimuthDeg, want.altitudeDeg),
        ),
      ),
    ];
  });
  const apparent = numberRow(
    { ...head, quantity: 'apparent altitude of the sun', regime: 'sun above -1°' },
    all
      .filter(({ want }) => want.altitudeDeg > -1)
      .map(({ sample, got }) => ({
        at: nameOf(sample),
        got: got.apparentAltitudeDeg,
        want: seenApparent('Sun', sample),
      })),
  );
  return [...rows, apparent];
}

function moonRows(): Row[] {
  const all = [...samples(3000, 2)].map((sample) => {
    const { ms, latitudeDeg, longitudeDeg } = sample;
    return { sample, want: seen('Moon', sample), got: moonAt(ms, latitudeDeg, longitudeDeg) };
  });
  const head = { reference: EPHEMERIS, regime: 'any altitude', bound: 0.02, unit: '°' };
  return [
    numberRow(
      { ...head, quantity: 'geometric altitude of the moon' },
      all.map(({ sample, got, want }) => ({
        at: nameOf(sample),
        got: got.geometricAltitudeDeg,
        want: want.altitudeDeg,
      })),
    ),
    numberRow(
      { ...head, quantity: 'azimuth of the moon x cos(altitude)' },
      all.map(({ sample, got, want }) =>
        azimuthCase(nameOf(sample), got.azimuthDeg, want.azimuthDeg, want.altitudeDeg),
      ),
    ),
    numberRow(
      { ...head, quantity: 'lit share of the moon', regime: 'any phase', bound: 0.001, unit: 'share' },
      all.map(({ sample }) => ({
        at: nameOf(sample),
        got: moonLitShare(sample.ms),
        want: litShare(sample.ms),
      })),
    ),
  ];
}

/** An event as both have it. */
interface Met {
  at: string;
  gotMs: number;
  wantMs: number;
  /** How fast the body rises or sinks then, degrees a minute: a slow one grazes its altitude. */
  speedDegPerMin: number;
}

type Body = (ms: number, latitudeDeg: number, longitudeDeg: number) => SkyPosition;

function speedOf(body: Body, ms: number, { latitudeDeg, longitudeDeg }: Sample): number {
  const altitude = (at: number) => body(at, latitudeDeg, longitudeDeg).geometricAltitudeDeg;
  return Math.abs(altitude(ms + 30_000) - altitude(ms - 30_000));
}

type Searched = Exclude<SunEventName, 'solarNoon'>;

const LEVELS: Readonly<Record<Searched, number>> = {
  astronomicalDawn: -18,
  nauticalDawn: -12,
  civilDawn: -6,
  sunrise: SUNRISE_ALTITUDE_DEG,
  sunset: SUNRISE_ALTITUDE_DEG,
  civilDusk: -6,
  nauticalDusk: -12,
  astronomicalDusk: -18,
};

const isRise = (name: string): boolean => /Dawn$|rise$/.test(name);

interface Compared {
  sun: Met[];
  noon: Met[];
  moon: Met[];
  counts: TextCase[];
}

/** All events of some days of 24 hours, each by both. */
function compared(days: number): Compared {
  const all: Compared = { sun: [], noon: [], moon: [], counts: [] };
  for (const sample of samples(days, 3)) {
    const { ms, latitudeDeg, longitudeDeg } = sample;
    const day = { date: '', startMs: ms, endMs: ms + 86_400_000 };
    const sun = sunEvents(day, latitudeDeg, longitudeDeg);
    const moon = moonEvents(day, latitudeDeg, longitudeDeg);
    const meet = (list: Met[], body: Body, name: string, ours: SkyEvent[], theirs: number[]) => {
      const got = ours.flatMap((event) => (event.name === name && event.ms !== null ? [event.ms] : []));
      const at = `${name} ${nameOf(sample)}`;
      all.counts.push({ at, got: `${got.length}`, want: `${theirs.length}` });
      if (got.length !== theirs.length) return;
      for (const [i, wantMs] of theirs.entries())
        list.push({ at, gotMs: got[i] as number, wantMs, speedDegPerMin: speedOf(body, wantMs, sample) });
    };
    for (const [name, levelDeg] of Object.entries(LEVELS))
      meet(all.sun, sunAt, name, sun, found(sunPasses(levelDeg, isRise(name)), sample, ms, day.endMs));
    // The poles have no meridian of their own.
    if (Math.abs(latitudeDeg) < 89.9)
      meet(all.noon, sunAt, 'solarNoon', sun, found(sunTransits, sample, ms, day.endMs));
    for (const name of ['moonrise', 'moonset'])
      meet(all.moon, moonAt, name, moon, found(moonPasses(isRise(name)), sample, ms, day.endMs));
  }
  return all;
}

/** Slower than this an event grazes: an error of 0.0167 deg of altitude is then 20 s or more. */
const GRAZING_DEG_PER_MIN = 0.05;

const timeCase = ({ at, gotMs, wantMs }: Met): NumberCase => ({ at, got: (gotMs - wantMs) / 1000, want: 0 });

function eventRows(): Row[] {
  const { sun, noon, moon, counts } = compared(360);
  const head = { reference: EPHEMERIS, unit: 's' };
  const away = (met: Met) => met.speedDegPerMin >= GRAZING_DEG_PER_MIN;
  const near = (met: Met) => met.speedDegPerMin < GRAZING_DEG_PER_MIN && met.speedDegPerMin >= 0.02;
  const regime = 'body rises or sinks by 0.05° a minute or more';
  const grazing = 'grazing: by 0.02° to 0.05° a minute';
  return [
    numberRow(
      { ...head, quantity: 'sunrise, sunset and twilights', regime, bound: 20 },
      sun.filter(away).map(timeCase),
    ),
    numberRow(
      { ...head, quantity: 'sunrise, sunset and twilights', regime: grazing, bound: 45 },
      sun.filter(near).map(timeCase),
    ),
    numberRow(
      { ...head, quantity: 'solar noon', regime: 'away from the poles', bound: 5 },
      noon.map(timeCase),
    ),
    numberRow(
      { ...head, quantity: 'moonrise and moonset', regime, bound: 20 },
      moon.filter(away).map(timeCase),
    ),
    numberRow(
      { ...head, quantity: 'moonrise and moonset', regime: grazing, bound: 45 },
      moon.filter(near).map(timeCase),
    ),
    textRow(
      {
        reference: EPHEMERIS,
        quantity: 'how often an event comes in 24 hours',
        regime: 'all events, grazing ones too',
      },
      counts,
    ),
  ];
}

/** Places that are hard to interpolate, with an instant: zenith, nadir, poles, north. */
const HARD: readonly (readonly [number, number, string])[] = [
  [0, 0, '2026-03-20T00:00Z'],
  [-0.18, -78.47, '2026-03-20T00:00Z'],
  [23.44, 100, '2026-06-21T00:00Z'],
  [28.6, 20, '2025-01-13T00:00Z'],
  [51.5, 0, '2026-08-12T03:00Z'],
  [-33.87, 151.2, '2026-12-21T00:00Z'],
  [69.65, 18.96, '2026-06-21T00:00Z'],
  [90, 0, '2026-03-20T00:00Z'],
  [-90, 40, '2026-12-01T00:00Z'],
];

/** Frames and the seconds between them: a day a frame a second, twenty days, a year and a half. */
const RUNS: readonly (readonly [number, number])[] = [
  [86_400, 1],
  [86_400, 20],
  [20_000, 2400],
];

function* columnCases(): Generator<{ altitude: NumberCase; azimuth: NumberCase; moon: NumberCase }> {
  for (const [latitudeDeg, longitudeDeg, from] of HARD) {
    for (const [frames, intervalS] of RUNS) {
      const startMs = Date.parse(from) + 61_234;
      const elapsedS = Float64Array.from({ length: frames }, (_, k) => k * intervalS);
      const column = () => new Float32Array(frames);
      const out: SkyColumns = {
        sunAltitudeDeg: column(),
        sunAzimuthDeg: column(),
        moonAltitudeDeg: column(),
      };
      fillSky(
        skyTrack(startMs, startMs + frames * intervalS * 1000, latitudeDeg, longitudeDeg),
        startMs,
        elapsedS,
        out,
      );
      for (let k = 0; k < frames; k += 97) {
        const ms = startMs + k * intervalS * 1000;
        const sun = sunAt(ms, latitudeDeg, longitudeDeg);
        const at = nameOf({ ms, latitudeDeg, longitudeDeg });
        const got = out.sunAzimuthDeg[k] as number;
        yield {
          altitude: { at, got: out.sunAltitudeDeg[k] as number, want: sun.geometricAltitudeDeg },
          azimuth: azimuthCase(at, got, sun.azimuthDeg, sun.geometricAltitudeDeg),
          moon: {
            at,
            got: out.moonAltitudeDeg[k] as number,
            want: moonAt(ms, latitudeDeg, longitudeDeg).geometricAltitudeDeg,
          },
        };
      }
    }
  }
}

function columnRows(): Row[] {
  const all = [...columnCases()];
  const head = {
    reference: SUNCALC,
    regime: '9 places, frames 1 s, 20 s, 40 min apart',
    bound: 0.001,
    unit: '°',
  };
  return [
    numberRow(
      { ...head, quantity: 'column of the sun’s altitude' },
      all.map((c) => c.altitude),
    ),
    numberRow(
      { ...head, quantity: 'column of the sun’s azimuth x cos(altitude)' },
      all.map((c) => c.azimuth),
    ),
    numberRow(
      { ...head, quantity: 'column of the moon’s altitude' },
      all.map((c) => c.moon),
    ),
  ];
}

export const measureAgainstEphemeris = (): Row[] => [
  ...sunRows(),
  ...moonRows(),
  ...eventRows(),
  ...columnRows(),
];

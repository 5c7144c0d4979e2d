/**
 * What sun and moon do on a local calendar day.
 *
 * Sources: rise and set by the upper limb with standard refraction, centre at -0.8333 deg geometric (NREL/TP-560-
 * 34302, App. A.2); twilights at -6, -12 and -18 deg, geometric (Hong Kong Observatory). Solar noon, the sun on the
 * meridian, is suncalc's.
 */
import { getTimes } from 'suncalc';
import type { LocalDay } from '../time/day.ts';
import { type Crossing, type Curve, crossings, turningPoints } from './crossings.ts';
import { moonAt, sunAt } from './position.ts';

/** Geometric altitude of the sun's centre at sunrise and sunset. */
export const SUNRISE_ALTITUDE_DEG = -0.8333;

/** Names of the sun's events, in the order of an ordinary day. */
export const SUN_EVENTS = [
  'astronomicalDawn',
  'nauticalDawn',
  'civilDawn',
  'sunrise',
  'solarNoon',
  'sunset',
  'civilDusk',
  'nauticalDusk',
  'astronomicalDusk',
] as const;

export type SunEventName = (typeof SUN_EVENTS)[number];

/** Altitude of each event, and whether the sun rises through it. */
const LEVELS: Readonly<Record<Exclude<SunEventName, 'solarNoon'>, { levelDeg: number; rising: boolean }>> = {
  astronomicalDawn: { levelDeg: -18, rising: true },
  nauticalDawn: { levelDeg: -12, rising: true },
  civilDawn: { levelDeg: -6, rising: true },
  sunrise: { levelDeg: SUNRISE_ALTITUDE_DEG, rising: true },
  sunset: { levelDeg: SUNRISE_ALTITUDE_DEG, rising: false },
  civilDusk: { levelDeg: -6, rising: false },
  nauticalDusk: { levelDeg: -12, rising: false },
  astronomicalDusk: { levelDeg: -18, rising: false },
};

/** Why an event does not happen on a day: the body stays above or below its altitude, or crosses it the other way. */
export type NoEvent = 'above all day' | 'below all day' | 'not on this day';

/** An event, at an instant or not at all. A day may have two of a kind. */
export interface SkyEvent<Name extends string = string> {
  name: Name;
  /** Milliseconds of the epoch; null if it does not happen. */
  ms: number | null;
  /** Why not; null if it happens. */
  noEvent: NoEvent | null;
}

// The sun turns twice a day, near noon and midnight; the moon likewise.
const LOOK_EVERY_MS = 30 * 60_000;

/** The altitude of a body over one day, ready to be asked for crossings. */
export interface AltitudeDay {
  curve: Curve;
  turns: number[];
}

/** The sun's geometric altitude over a day. */
export function sunDay(day: LocalDay, latitudeDeg: number, longitudeDeg: number): AltitudeDay {
  const curve = (ms: number) => sunAt(ms, latitudeDeg, longitudeDeg).geometricAltitudeDeg;
  return { curve, turns: turningPoints(curve, day.startMs, day.endMs, LOOK_EVERY_MS) };
}

/** Crossings of an altitude in one direction, as events; one event that does not happen if there are none. */
function eventsAt<Name extends string>(
  name: Name,
  { curve, turns }: AltitudeDay,
  levelDeg: number,
  rising: boolean,
): SkyEvent<Name>[] {
  const all = crossings(curve, turns, levelDeg);
  const wanted = all.filter((crossing: Crossing) => crossing.rising === rising);
  if (wanted.length > 0) return wanted.map(({ ms }) => ({ name, ms, noEvent: null }));
  const noEvent = all.length > 0 ? 'not on this day' : sideOf(curve, turns, levelDeg);
  return [{ name, ms: null, noEvent }];
}

const sideOf = (curve: Curve, turns: readonly number[], levelDeg: number): NoEvent =>
  curve(turns[0] as number) < levelDeg ? 'below all day' : 'above all day';

/** Solar noons within a day: one, rarely none or two where the clock is far from the sun or changes. */
function solarNoons(day: LocalDay, latitudeDeg: number, longitudeDeg: number): SkyEvent<'solarNoon'>[] {
  const found = new Set<number>();
  for (let ms = day.startMs - 86_400_000; ms <= day.endMs + 86_400_000; ms += 43_200_000) {
    found.add(Math.round(getTimes(new Date(ms), latitudeDeg, longitudeDeg).solarNoon.getTime()));
  }
  // Reckoned from neighbouring days the same noon may differ by milliseconds.
  const noons = [...found]
    .sort((a, b) => a - b)
    .filter((ms, i, all) => i === 0 || ms - (all[i - 1] ?? 0) > 60_000);
  const inside = noons.filter((ms) => ms >= day.startMs && ms < day.endMs);
  if (inside.length === 0) return [{ name: 'solarNoon', ms: null, noEvent: 'not on this day' }];
  return inside.map((ms) => ({ name: 'solarNoon', ms, noEvent: null }));
}

/**
 * The sun's events on a local calendar day.
 * @param latitudeDeg - north positive, -90 to 90
 * @param longitudeDeg - east positive, -180 to 180
 * @returns what happens in order of time, then what does not
 */
export function sunEvents(
  day: LocalDay,
  latitudeDeg: number,
  longitudeDeg: number,
): SkyEvent<SunEventName>[] {
  const altitude = sunDay(day, latitudeDeg, longitudeDeg);
  const events = SUN_EVENTS.flatMap((name): SkyEvent<SunEventName>[] => {
    if (name === 'solarNoon') return solarNoons(day, latitudeDeg, longitudeDeg);
    return eventsAt(name, altitude, LEVELS[name].levelDeg, LEVELS[name].rising);
  });
  return events.sort((a, b) => (a.ms ?? Number.POSITIVE_INFINITY) - (b.ms ?? Number.POSITIVE_INFINITY));
}

const EARTH_RADIUS_KM = 6378.14;

/** Height of the moon's upper limb over the horizon, refraction included, degrees; 0 at moonrise and moonset. */
function moonHeightDeg(ms: number, latitudeDeg: number, longitudeDeg: number): number {
  const { geometricAltitudeDeg, distanceKm } = moonAt(ms, latitudeDeg, longitudeDeg);
  const semidiameterDeg = (0.2725 * Math.asin(EARTH_RADIUS_KM / distanceKm) * 180) / Math.PI;
  // 34' of refraction at the horizon, as for the sun.
  return geometricAltitudeDeg + semidiameterDeg + 34 / 60;
}

/** Moonrise and moonset on a local calendar day: upper limb, standard refraction. */
export function moonEvents(
  day: LocalDay,
  latitudeDeg: number,
  longitudeDeg: number,
): SkyEvent<'moonrise' | 'moonset'>[] {
  const curve = (ms: number) => moonHeightDeg(ms, latitudeDeg, longitudeDeg);
  const moon = { curve, turns: turningPoints(curve, day.startMs, day.endMs, LOOK_EVERY_MS) };
  const events = [
    ...eventsAt<'moonrise' | 'moonset'>('moonrise', moon, 0, true),
    ...eventsAt<'moonrise' | 'moonset'>('moonset', moon, 0, false),
  ];
  return events.sort((a, b) => (a.ms ?? Number.POSITIVE_INFINITY) - (b.ms ?? Number.POSITIVE_INFINITY));
}

/**
 * What sun and moon do on a local calendar day.
 *
 * Sources: rise and set by the upper limb with standard refraction, centre at -0.8333 deg geometric (NREL/TP-560-
 * 34302, App. A.2); twilights at -6, -12 and -18 deg, geometric (Hong Kong Observatory). Solar noon is the upper
 * transit: the sun on the meridian of the longitude.
 */
import type { LocalDay } from '../time/day.ts';
import { type Curve, crossings, turningPoints } from './crossings.ts';
import { MOON_EVENTS, type MoonEventName, SUN_EVENTS, type SunEventName } from './names.ts';
import { type BodyPath, type MoonPath, moonPath, sunPath } from './path.ts';
import { valueAt } from './series.ts';

/** Geometric altitude of the sun's centre at sunrise and sunset. */
export const SUNRISE_ALTITUDE_DEG = -0.8333;

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

/**
 * Why an event does not happen on a day: the body stays above or below its altitude, the event falls on the day
 * before or after, or the calendar skips the day.
 */
export type NoEvent = 'above all day' | 'below all day' | 'not on this day' | 'no such day';

/** An event, at an instant or not at all. A day may have two of a kind. */
export interface SkyEvent<Name extends string = string> {
  name: Name;
  /** Milliseconds of the epoch; null if it does not happen. */
  ms: number | null;
  /** Why not; null if it happens. */
  noEvent: NoEvent | null;
}

/** Which event of a curve over a day: a level, and whether it is risen through. */
interface Level {
  level: number;
  rising: boolean;
}

// Sun and moon turn twice a day.
const LOOK_EVERY_MS = 30 * 60_000;

/** Geometric altitude of the sun's centre at an event, degrees; null for noon, which has none of its own. */
export const levelDegOf = (name: SunEventName): number | null =>
  name === 'solarNoon' ? null : LEVELS[name].levelDeg;

/** Whether a body goes up at an event: the sun's, or the moon's. */
export const isRising = (name: SunEventName | MoonEventName): boolean =>
  name === 'moonrise' || (name !== 'moonset' && name !== 'solarNoon' && LEVELS[name].rising);

const RAD = Math.PI / 180;

/** Where a curve of a body turns between two instants of its path. */
export const turnsOf = (curve: Curve, fromMs: number, toMs: number): number[] =>
  turningPoints(curve, fromMs, toMs, LOOK_EVERY_MS);

/** Height of a body as the sine of its geometric altitude: goes up and down with it, and is cheaper. */
export const sineOf = (path: BodyPath): Curve => {
  const { up } = path;
  return (ms) => valueAt(up, ms);
};

/** The sine of an altitude in degrees, to compare with {@link sineOf}. */
export const sineDeg = (altitudeDeg: number): number => Math.sin(altitudeDeg * RAD);

/** A curve over a day, ready to be asked for its crossings. */
interface DayCurve {
  day: LocalDay;
  curve: Curve;
  turns: readonly number[];
}

const dayCurve = (day: LocalDay, curve: Curve): DayCurve => ({
  day,
  curve,
  turns: turnsOf(curve, day.startMs, day.endMs),
});

/** Crossings of a level in one direction, as events; one event that does not happen if there are none. */
function eventsAt<Name extends string>(
  name: Name,
  { day, curve, turns }: DayCurve,
  { level, rising }: Level,
): SkyEvent<Name>[] {
  if (day.endMs <= day.startMs) return [{ name, ms: null, noEvent: 'no such day' }];
  const all = crossings(curve, turns, level);
  const wanted = all.filter((crossing) => crossing.rising === rising);
  if (wanted.length > 0) return wanted.map(({ ms }) => ({ name, ms, noEvent: null }));
  const side = curve(day.startMs) < level ? 'below all day' : 'above all day';
  return [{ name, ms: null, noEvent: all.length > 0 ? 'not on this day' : side }];
}

/**
 * Upper transits. East of the meridian the sun's eastern component is positive, west of it negative: it falls
 * through nought at noon and rises through it at midnight.
 */
function solarNoons(day: LocalDay, { east }: BodyPath): SkyEvent<'solarNoon'>[] {
  const found = eventsAt(
    'solarNoon',
    dayCurve(day, (ms) => valueAt(east, ms)),
    { level: 0, rising: false },
  );
  return found.map((event) =>
    event.noEvent?.endsWith('all day') ? { ...event, noEvent: 'not on this day' } : event,
  );
}

const inTime = <Name extends string>(events: SkyEvent<Name>[]): SkyEvent<Name>[] =>
  events.sort((a, b) => (a.ms ?? Number.POSITIVE_INFINITY) - (b.ms ?? Number.POSITIVE_INFINITY));

/** The events of the given names on a day, from a path that covers it: those that happen in order of time, then the others. */
export function sunEventsOn<Name extends SunEventName>(
  path: BodyPath,
  day: LocalDay,
  names: readonly Name[],
): SkyEvent<Name>[] {
  const height = dayCurve(day, sineOf(path));
  const eventsOf = (name: SunEventName): SkyEvent<SunEventName>[] => {
    if (name === 'solarNoon') return solarNoons(day, path);
    const { levelDeg, rising } = LEVELS[name];
    return eventsAt(name, height, { level: sineDeg(levelDeg), rising });
  };
  return inTime(names.flatMap((name) => eventsOf(name) as SkyEvent<Name>[]));
}

/**
 * The sun's events on a local calendar day.
 * @param latitudeDeg - north positive, -90 to 90
 * @param longitudeDeg - east positive, -180 to 180
 * @returns what happens in order of time, then what does not
 */
export const sunEvents = (
  day: LocalDay,
  latitudeDeg: number,
  longitudeDeg: number,
): SkyEvent<SunEventName>[] =>
  sunEventsOn(sunPath(day.startMs, day.endMs, latitudeDeg, longitudeDeg), day, SUN_EVENTS);

const EARTH_RADIUS_KM = 6378.14;

/** What lifts the moon's upper limb over the horizon: 34' of refraction, as for the sun. */
const MOON_LIFT = (34 / 60) * RAD;

/**
 * How far the moon's upper limb is over the horizon, refraction included, as a difference of sines: 0 at moonrise
 * and moonset, positive while the moon is up. Its radius is 0.2725 of the earth's (Meeus, Astronomical
 * Algorithms, ch. 55).
 */
export const moonOver =
  ({ up, distanceKm }: MoonPath): Curve =>
  (ms) =>
    valueAt(up, ms) + Math.sin((0.2725 * EARTH_RADIUS_KM) / valueAt(distanceKm, ms) + MOON_LIFT);

/** Moonrise and moonset on a day, from a path that covers it. */
export function moonEventsOn(path: MoonPath, day: LocalDay): SkyEvent<MoonEventName>[] {
  const height = dayCurve(day, moonOver(path));
  return inTime(
    MOON_EVENTS.flatMap((name) => eventsAt(name, height, { level: 0, rising: name === 'moonrise' })),
  );
}

/** Moonrise and moonset on a local calendar day: upper limb, standard refraction. */
export const moonEvents = (
  day: LocalDay,
  latitudeDeg: number,
  longitudeDeg: number,
): SkyEvent<MoonEventName>[] =>
  moonEventsOn(moonPath(day.startMs, day.endMs, latitudeDeg, longitudeDeg), day);

/** One event of the sky in words: what was searched for, and by which definition. */
import type { LocalDay } from '../time/day.ts';
import type { Worked } from '../working/make.ts';
import { readable } from '../working/text.ts';
import { isRising, levelDegOf } from './day.ts';
import type { MoonEventName, SunEventName } from './names.ts';
import type { Site } from './windows.ts';

export type EventName = SunEventName | MoonEventName;

export const POSITIONS = 'positions by suncalc, refraction taken out';

/** One event that happens, and where. */
export interface Happening {
  name: EventName;
  /** Name of its figure, and of those behind it. */
  what: string;
  title: string;
  ms: number;
  day: LocalDay;
  site: Site;
  place: Worked['plan']['place'];
}

export const isMoon = (name: EventName): name is MoonEventName => name === 'moonrise' || name === 'moonset';

/** To all digits that a place is given with. */
const degrees = (value: number): string => readable(value, 'deg', 9);

/** What is searched for. */
export function searchText({ name, day, site, place }: Happening): string {
  const on = `on the path over ${day.date} in ${place.zone}, at latitude ${degrees(site.latitudeDeg)}, longitude ${degrees(site.longitudeDeg)}`;
  if (name === 'solarNoon') return `Searched for: the sun on the meridian, ${on}.`;
  const way = isRising(name) ? 'upwards' : 'downwards';
  if (isMoon(name)) return `Searched for: the moon’s upper limb through the horizon, ${way}, ${on}.`;
  const level = levelDegOf(name);
  const limb =
    name === 'sunrise' || name === 'sunset'
      ? ': the upper limb on the horizon, by 34′ of refraction and 16′ of radius'
      : '';
  return `Searched for: the sun’s centre through ${degrees(level ?? 0)}, geometric, ${way}${limb}, ${on}.`;
}

const SOURCES = {
  rise: `Altitude: NREL/TP-560-34302, App. A.2; ${POSITIONS}.`,
  twilight: `Altitude: Hong Kong Observatory’s definition of the twilights; ${POSITIONS}.`,
  noon: `Upper transit; ${POSITIONS}.`,
  moon: `Upper limb, 34′ of refraction; ${POSITIONS}.`,
} as const;

/** Where its definition comes from. */
export function sourceOf(name: EventName): string {
  if (isMoon(name)) return SOURCES.moon;
  if (name === 'solarNoon') return SOURCES.noon;
  return name === 'sunrise' || name === 'sunset' ? SOURCES.rise : SOURCES.twilight;
}

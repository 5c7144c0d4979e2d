/** What the events of the sky are called. */

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

export const MOON_EVENTS = ['moonrise', 'moonset'] as const;

export type MoonEventName = (typeof MOON_EVENTS)[number];

/** Events of the sky in words. */
export const EVENT_WORDS: Readonly<Record<SunEventName | MoonEventName, string>> = {
  astronomicalDawn: 'astronomical dawn',
  nauticalDawn: 'nautical dawn',
  civilDawn: 'civil dawn',
  sunrise: 'sunrise',
  solarNoon: 'solar noon',
  sunset: 'sunset',
  civilDusk: 'civil dusk',
  nauticalDusk: 'nautical dusk',
  astronomicalDusk: 'astronomical dusk',
  moonrise: 'moonrise',
  moonset: 'moonset',
};

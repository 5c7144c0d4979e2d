/**
 * How the events of a day came about: the clock from the true solar time, that from the hour angle, and that from the
 * altitude that was searched for.
 *
 * An event is searched for on the path of its body; its formula cannot be solved for the time, as declination and
 * equation of time go on meanwhile. With both as they are at the instant that was found, it gives that instant.
 */
import type { LocalDay } from '../time/day.ts';
import { clockSeconds, momentDraft, offsetMinAt } from '../time/moment-working.ts';
import { capital, type Draft, sameAs, term, type Worked, type Workings, worth } from '../working/make.ts';
import { eventFigure, ofDate } from '../working/names.ts';
import type { Term } from '../working/types.ts';
import { isRising, levelDegOf, type SkyEvent } from './day.ts';
import { type EventName, type Happening, isMoon, POSITIONS, searchText, sourceOf } from './happening.ts';
import { EVENT_WORDS } from './names.ts';
import { moonAt, sunAt } from './position.ts';
import type { Site } from './windows.ts';

const DAY_S = 86_400;
export const MEEUS = 'Meeus, Astronomical Algorithms, ch. 13 and 15';

/** Nearer to a pole than this the hour angle says nothing about the time. */
const POLAR_DEG = 89.9;

const named = ({ day, what }: Happening, part: string): string => ofDate(day.date, `${what}.${part}`);

const bodyAt = ({ name, ms, site }: Happening) =>
  (isMoon(name) ? moonAt : sunAt)(ms, site.latitudeDeg, site.longitudeDeg);

/** Altitude of the body's centre at the event, degrees. */
function altitude(of: Happening): Draft {
  const { name, title, ms, site } = of;
  const base = { title: `${title}: altitude`, unit: 'deg' };
  if (!isMoon(name)) {
    const found = levelDegOf(name) ?? sunAt(ms, site.latitudeDeg, site.longitudeDeg).geometricAltitudeDeg;
    return sameAs(base.title, 'of the sun’s centre, geometric', found, 'deg', null, {
      remarks: [searchText(of)],
      source: sourceOf(name),
    });
  }
  return {
    ...base,
    expression: '-(34 / 60 + 0.2725 * 6378.14 / distanceKm * 180 / pi)',
    terms: [
      term(
        'distanceKm',
        'distance of the moon',
        moonAt(ms, site.latitudeDeg, site.longitudeDeg).distanceKm,
        'km',
      ),
    ],
    remarks: ['Of its centre, geometric: 34′ of refraction, and its radius of 0.2725 that of the earth.'],
    source: 'Radius: Meeus, Astronomical Algorithms, ch. 55.',
  };
}

const azimuth = (of: Happening): Draft =>
  sameAs(`${of.title}: azimuth`, 'from the position then', bodyAt(of).azimuthDeg, 'deg', null, {
    remarks: ['From north, clockwise.'],
    source: `${capital(POSITIONS)}.`,
  });

const altitudeTerm = (of: Happening) =>
  term('altitudeDeg', 'altitude', worth(altitude(of)), 'deg', named(of, 'altitudeDeg'));
const latitudeTerm = ({ site }: Happening) => term('latitudeDeg', 'latitude', site.latitudeDeg, 'deg');

const declination = (of: Happening): Draft => ({
  title: `${of.title}: declination`,
  unit: 'deg',
  expression:
    'asin(sin(latitudeDeg * pi / 180) * sin(altitudeDeg * pi / 180) + cos(latitudeDeg * pi / 180) * cos(altitudeDeg * pi / 180) * cos(azimuthDeg * pi / 180)) * 180 / pi',
  terms: [
    latitudeTerm(of),
    altitudeTerm(of),
    term('azimuthDeg', 'azimuth', bodyAt(of).azimuthDeg, 'deg', named(of, 'azimuthDeg')),
  ],
  source: `${MEEUS}.`,
});

const hourAngle = (of: Happening): Draft => ({
  title: `${of.title}: hour angle`,
  unit: 'deg',
  expression: `${isRising(of.name) ? '-' : ''}acos(max(-1, min(1, (sin(altitudeDeg * pi / 180) - sin(latitudeDeg * pi / 180) * sin(declinationDeg * pi / 180)) / (cos(latitudeDeg * pi / 180) * cos(declinationDeg * pi / 180))))) * 180 / pi`,
  terms: [
    altitudeTerm(of),
    latitudeTerm(of),
    term('declinationDeg', 'declination', worth(declination(of)), 'deg', named(of, 'declinationDeg')),
  ],
  remarks: [
    `${isRising(of.name) ? 'Before' : 'After'} the meridian: 15° are an hour. Smallest and largest only keep roundings within −1 and 1.`,
  ],
  source: `${MEEUS}.`,
});

/** Seconds since midnight of the date, by UTC. */
const utcSeconds = ({ ms, place }: Happening): number =>
  clockSeconds(place, ms) - 60 * offsetMinAt(place, ms);

/** What a time by UTC is explained from. */
interface FromAngle {
  title: string;
  /** Seconds since midnight of the date, by UTC. */
  utcS: number;
  /** Nothing at noon. */
  angle: Term | null;
  longitudeDeg: number;
  moon?: boolean;
  remarks: readonly string[];
}

/** UTC from the hour angle: true solar time, less the equation of time and the longitude. */
export function utcFromAngle({ title, utcS, angle, longitudeDeg, moon = false, remarks }: FromAngle): Draft {
  const aheadS = DAY_S / 2 + 240 * (angle?.value ?? 0) - 240 * longitudeDeg - utcS;
  const days = Math.round(aheadS / DAY_S);
  const apartS = aheadS - DAY_S * days;
  return {
    title: `${title}, by UTC`,
    value: utcS,
    unit: 's',
    expression: `43200${angle ? ' + 240 * hourAngleDeg' : ''} - 240 * longitudeDeg - ${moon ? 'aheadS' : 'equationS'}${days === 0 ? '' : ' - 86400 * days'}`,
    terms: [
      ...(angle ? [angle] : []),
      term('longitudeDeg', 'longitude', longitudeDeg, 'deg'),
      moon
        ? term('aheadS', 'the moon ahead of the mean sun then', apartS, 's')
        : term('equationS', 'equation of time then', apartS, 's'),
      ...(days === 0 ? [] : [term('days', 'midnights between', days, 'days')]),
    ],
    remarks: [
      moon
        ? 'Noon of the mean sun is at 43200 s; the moon’s hour angle says when it is seen there, a degree in 240 s.'
        : 'True solar time is 43200 s at noon, and 240 s a degree; less the equation of time it is mean solar time, less the longitude UTC.',
      ...remarks,
    ],
    source: `${MEEUS} and 28.`,
  };
}

const utc = (of: Happening): Draft =>
  utcFromAngle({
    title: of.title,
    utcS: utcSeconds(of),
    angle:
      of.name === 'solarNoon'
        ? null
        : term('hourAngleDeg', 'hour angle', worth(hourAngle(of)), 'deg', named(of, 'hourAngleDeg')),
    longitudeDeg: of.site.longitudeDeg,
    moon: isMoon(of.name),
    remarks: [searchText(of)],
  });

const event = (of: Happening): Draft =>
  momentDraft(of.title, of.place, of.ms, {
    utcFigure: hasAngle(of) ? named(of, 'utcS') : null,
    remarks: [searchText(of)],
    source: sourceOf(of.name),
  });

/** Whether the hour angle says anything about the time. */
export const hasAngle = ({ site }: { site: Site }): boolean => Math.abs(site.latitudeDeg) < POLAR_DEG;

function happeningWorkings(of: Happening): Workings {
  const { what, name } = of;
  return {
    [what]: () => event(of),
    [`${what}.azimuthDeg`]: () => azimuth(of),
    [`${what}.altitudeDeg`]: () => altitude(of),
    ...(hasAngle(of) && {
      ...(name !== 'solarNoon' && {
        [`${what}.declinationDeg`]: () => declination(of),
        [`${what}.hourAngleDeg`]: () => hourAngle(of),
      }),
      [`${what}.utcS`]: () => utc(of),
    }),
  };
}

/** Workings of the events that happen on a day. @param events - sun's and moon's, in order of time */
export const eventWorkings = (
  { plan }: Worked,
  day: LocalDay,
  site: Site,
  events: readonly SkyEvent[],
): Workings =>
  Object.assign(
    {},
    ...events.flatMap((event) => {
      if (event.ms === null) return [];
      const name = event.name as EventName;
      const what = eventFigure(events, event);
      const title = capital(EVENT_WORDS[name]) + (what === name ? '' : ', the second');
      return [happeningWorkings({ name, what, title, ms: event.ms, day, site, place: plan.place })];
    }),
  );

/**
 * How a moment came about at which the sun comes onto the set, or leaves it: the clock from the true solar time, that
 * from where the sun then stands. Like the events of a day, it was searched for, and is explained backwards.
 */
import type { Plan } from '../plan/schema.ts';
import { clockSeconds, momentDraft, offsetMinAt } from '../time/moment-working.ts';
import { capital, type Draft, sameAs, term, worth } from '../working/make.ts';
import { hasAngle, MEEUS, utcFromAngle } from './day-working.ts';
import { POSITIONS } from './happening.ts';
import { sunAt } from './position.ts';
import type { Site } from './windows.ts';

/** What stands behind such a moment. */
export const SUN_PARTS = ['utcS', 'hourAngleDeg', 'altitudeDeg', 'azimuthDeg'] as const;
type SunPart = (typeof SUN_PARTS)[number];

interface SunMoment {
  place: Plan['place'];
  site: Site;
  title: string;
  ms: number;
  /** Name of the figure of a part. */
  named: (part: SunPart) => string;
  remarks?: readonly string[];
}

const PANE_SOURCE =
  'Sun through the pane, over the own horizon, under a clear sky: looked for every minute and halved; positions by suncalc.';

const standing = (title: string, part: string, valueDeg: number, remark: string): Draft =>
  sameAs(`${title}: ${part}`, 'of the sun’s centre then', valueDeg, 'deg', null, {
    remarks: [remark],
    source: `${capital(POSITIONS)}.`,
  });

function hourAngle({ site, title, named }: SunMoment, altitudeDeg: number, azimuthDeg: number): Draft {
  return {
    title: `${title}: hour angle`,
    unit: 'deg',
    expression:
      'atan2(-sin(azimuthDeg * pi / 180) * cos(altitudeDeg * pi / 180), cos(latitudeDeg * pi / 180) * sin(altitudeDeg * pi / 180) - sin(latitudeDeg * pi / 180) * cos(altitudeDeg * pi / 180) * cos(azimuthDeg * pi / 180)) * 180 / pi',
    terms: [
      term('azimuthDeg', 'azimuth', azimuthDeg, 'deg', named('azimuthDeg')),
      term('altitudeDeg', 'altitude', altitudeDeg, 'deg', named('altitudeDeg')),
      term('latitudeDeg', 'latitude', site.latitudeDeg, 'deg'),
    ],
    remarks: ['Negative before the meridian; 15° are an hour.'],
    source: `${MEEUS}.`,
  };
}

/** The moment itself, and what stands behind it. */
export function sunMomentDrafts(of: SunMoment): Record<'moment' | SunPart, () => Draft> {
  const { place, site, title, ms, named, remarks = [] } = of;
  const { geometricAltitudeDeg, azimuthDeg } = sunAt(ms, site.latitudeDeg, site.longitudeDeg);
  const angle = () => hourAngle(of, geometricAltitudeDeg, azimuthDeg);
  return {
    moment: () =>
      momentDraft(title, place, ms, {
        utcFigure: hasAngle(of) ? named('utcS') : null,
        remarks: [...remarks],
        source: PANE_SOURCE,
      }),
    utcS: () =>
      utcFromAngle({
        title,
        utcS: clockSeconds(place, ms) - 60 * offsetMinAt(place, ms),
        angle: term('hourAngleDeg', 'hour angle', worth(angle()), 'deg', named('hourAngleDeg')),
        longitudeDeg: site.longitudeDeg,
        remarks: [],
      }),
    hourAngleDeg: angle,
    altitudeDeg: () => standing(title, 'altitude', geometricAltitudeDeg, 'Geometric.'),
    azimuthDeg: () => standing(title, 'azimuth', azimuthDeg, 'From north, clockwise.'),
  };
}

/** The same as workings, by a name and what stands behind it: `from`, `from.utcS`. */
export function sunMomentWorkings(key: string, of: Omit<SunMoment, 'named'>, ofKey: (key: string) => string) {
  const drafts = sunMomentDrafts({ ...of, named: (part) => ofKey(`${key}.${part}`) });
  return {
    [key]: drafts.moment,
    ...Object.fromEntries(SUN_PARTS.map((part) => [`${key}.${part}`, drafts[part]])),
  };
}

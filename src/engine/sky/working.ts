/** Where the sky's figures of a frame come from. */
import { openAt } from '../cycle/working.ts';
import { bracketS } from '../exposure/shutter.ts';
import { type Draft, ofFrame, sameAs, term, type Worked, type Workings } from '../working/make.ts';
import { moonLitShare } from './position.ts';
import type { SkyColumns } from './track.ts';
import { leastDeclinationDeg, lensOver, starTrailPx } from './view.ts';

const SUNCALC =
  'Positions by suncalc, refraction taken out (Meeus, Astronomical Algorithms, 16.4); between its nodes a polynomial, good to 0.001°.';

const found =
  (columns: SkyColumns, k: number, column: keyof SkyColumns, title: string, remark: string) => (): Draft =>
    sameAs(title, 'from the path of the body', columns[column][k] as number, 'deg', null, {
      remarks: [remark],
      source: SUNCALC,
    });

/** Lit share of the moon's disk. @param when - in words */
export function litShare(ms: number, when: string): Draft {
  const value = moonLitShare(ms);
  return {
    title: 'Moon, lit share',
    value,
    unit: '',
    expression: '(1 + cos(phaseDeg * pi / 180)) / 2',
    terms: [term('phaseDeg', 'phase angle', (Math.acos(2 * value - 1) * 180) / Math.PI, 'deg')],
    remarks: [`Of its disk, ${when}. The phase angle is by suncalc: 0° at full moon, 180° at new.`],
    source: 'Meeus, Astronomical Algorithms, ch. 48.',
  };
}

/** An altitude as refraction lifts it. @param figure - name of the geometric one's working */
export function lifted(geometricDeg: number, figure: string): Draft {
  // Below a degree under the horizon the lift fades out to the end of civil twilight.
  const fades = geometricDeg < -1;
  const lift = (h: string) => `max(0, 1.02 / 60 / tan((${h} + 10.3 / (${h} + 5.11)) * pi / 180))`;
  return {
    title: 'Sun, apparent altitude',
    unit: 'deg',
    expression: fades
      ? `sunAltitudeDeg + ${lift('(-1)')} * max(0, (sunAltitudeDeg + 6) / 5)`
      : `sunAltitudeDeg + ${lift('sunAltitudeDeg')}`,
    terms: [term('sunAltitudeDeg', 'geometric altitude', geometricDeg, 'deg', figure)],
    remarks: ['At 1010 hPa and 10 °C.'],
    source: 'Refraction: Saemundsson’s formula, Meeus, Astronomical Algorithms, 16.4.',
  };
}

export const apparent = ({ sunAltitudeDeg }: SkyColumns, k: number): Draft =>
  lifted(sunAltitudeDeg[k] as number, ofFrame(k, 'sunAltitudeDeg'));

export function stars({ plan, made }: Worked, k: number): Draft {
  const { camera, view, place } = plan;
  const openS = bracketS(plan, openAt({ plan, made }, k)).at(-1) as number;
  const declinationDeg =
    view.used && place.latitudeDeg !== null
      ? leastDeclinationDeg(lensOver(plan, made.columns.axes)(k), place.latitudeDeg, camera)
      : 0;
  return {
    title: 'Stars trail',
    value: starTrailPx(
      openS,
      declinationDeg,
      camera.focalLengthMm,
      camera.sensorWidthMm / camera.imageWidthPx,
    ),
    unit: 'px',
    expression:
      '15.041067 / 3600 * pi / 180 * openS * cos(declinationDeg * pi / 180) * focalLengthMm * widthPx / sensorWidthMm',
    terms: [
      term('openS', 'longest exposure', openS, 's'),
      term('declinationDeg', 'declination that trails most', declinationDeg, 'deg'),
      term('focalLengthMm', 'focal length', camera.focalLengthMm, 'mm'),
      term('widthPx', 'width of the image', camera.imageWidthPx, 'px'),
      term('sensorWidthMm', 'width of the sensor', camera.sensorWidthMm, 'mm'),
    ],
    remarks: ['Near the middle of the picture; towards the corners of a wide lens more.'],
    source: 'Sidereal rate of 15.041067 arc seconds a second (IERS, from memory).',
  };
}

/** Workings of the sky at one frame. */
export function frameSkyWorkings(of: Worked, k: number): Workings {
  const { sky } = of.made.columns;
  return {
    ...(sky && {
      sunAltitudeDeg: found(
        sky,
        k,
        'sunAltitudeDeg',
        'Sun, altitude',
        'Geometric, of its centre: twilights are defined on it.',
      ),
      sunApparentDeg: () => apparent(sky, k),
      sunAzimuthDeg: found(sky, k, 'sunAzimuthDeg', 'Sun, azimuth', 'From north, clockwise.'),
      moonAltitudeDeg: found(
        sky,
        k,
        'moonAltitudeDeg',
        'Moon, altitude',
        'Geometric, of its centre, seen from the place.',
      ),
      moonLitShare: () =>
        litShare(of.made.startMs + (of.made.columns.elapsedS[k] as number) * 1000, 'as the shutter opens'),
    }),
    ...(of.plan.view.stars && { starTrailPx: () => stars(of, k) }),
  };
}

/** Light of the sky, exposure values of it, filters, shutter angles and the ripple of lamps against published values. */
import { shutterAngleDeg } from '../../../src/engine/exposure/ceiling.ts';
import {
  densityOfStops,
  factorName,
  filterStopsOfDensity,
  filterStopsOfFactor,
} from '../../../src/engine/exposure/filters.ts';
import { exactShutterS } from '../../../src/engine/exposure/stops.ts';
import { rippleLeftShare, worstChangeStops } from '../../../src/engine/light/lamps.ts';
import { ev100OfLux, luxOfEv100 } from '../../../src/engine/light/scene.ts';
import { moonTableLux, NIGHT_FLOOR_LUX, sunLux, sunTableLux } from '../../../src/engine/light/sky-light.ts';
import { moonAt, moonLitShare, sunAt } from '../../../src/engine/sky/position.ts';
import { plainPlan } from '../plans.ts';
import { type NumberCase, numberRow, type Row, relative, textRow } from '../rows.ts';
import { CIRCULAR_NIGHT_LUX, circularSunLux } from './circular.ts';

const TABLE =
  'CHECK-VALUES 2.1: Vallado, Fundamentals of Astrodynamics, Table 5-1, in three public codes (V2)';
const EXAMPLE = 'worked values of AstroPack sunlight.m and moonlight.m (V2)';
const CIRCULAR = 'USNO Circular 171 (Janiczek and DeYoung 1987), own port of its formulas (V2)';
const LEVELS = 'published levels: web tables (V2), Smith, Modern Optical Engineering, fig. 12.9 (V1)';
const INCIDENT = 'EXP-03: E = 2^EV C/S, C = 250; colour-hdri docstrings and an EV/lux table (V2)';
const SCENES = 'EXP-07: typical EV100, table from ANSI PH2.7 (V2)';
const FILTERS = 'EXP-10: camera-wiki.org, Neutral density filter; opticalglasscn.com (V2)';
const ANGLES = 'SHA-01: provideocoalition.com, Shutter speed vs shutter angle, first list (V2)';
const FLICKER = 'FLK-05 to 07: |sinc|, formula from memory, values by quadrature (computed)';

const stops = (got: number, want: number): number => Math.abs(Math.log2(got / want));
const SEMI_MAJOR_KM = 6378.14;
/** Distance of a moon of a given horizontal parallax. */
const distanceOf = (parallaxDeg: number) => SEMI_MAJOR_KM / Math.sin((parallaxDeg * Math.PI) / 180);
/** Lit share of a moon of a given elongation. */
const litOf = (elongationDeg: number) => (1 - Math.cos((elongationDeg * Math.PI) / 180)) / 2;

/** Altitude, lux. Where two pieces of the table meet, the mean of what both print. */
const SUN: readonly (readonly [number, number])[] = [
  [90, 128_820],
  [60, 103_120],
  [45, 77_848],
  [30, 46_297],
  [20, 27_347],
  [10, 11_121],
  [5, 4518.8],
  [2, 1920.8],
  [0, 758.58],
  [-0.8, 463.1],
  [-0.8333, 453.5],
  [-2, 189.36],
  [-4, 29.935],
  [-5, 10.425],
  [-6, 3.4116],
  [-8, 0.34806],
  [-10, 0.042106],
  [-12, 0.0080965],
  [-14, 0.0029165],
  [-15, 0.0020233],
  [-18, 0.0006447],
];

// At 5 deg the table prints its upper piece; the joint is its mean with the lower, 0.011 stop off.
const FULL_MOON: readonly (readonly [number, number])[] = [
  [90, 0.2692],
  [60, 0.216],
  [45, 0.1641],
  [30, 0.09772],
  [20, 0.05754],
  [10, 0.02361],
  [5, 0.00995],
  [0, 0.00162],
];

/** Elongation, share of the full moon's light. */
const ELONGATIONS: readonly (readonly [number, number])[] = [
  [180, 1],
  [150, 0.54679],
  [120, 0.28229],
  [90, 0.1187],
  [60, 0.03178],
  [30, 0.00384],
];

const tableMoon = (altitudeDeg: number, lit = 1) => moonTableLux(altitudeDeg, lit, distanceOf(0.951));

/** The Circular's own certification and figure, to hold the port to it. */
const CERTIFIED: readonly (readonly [number, number])[] = [
  // Sun at the zenith; the altitudes of C171-04 and C171-05.
  [90, 123_789],
  [60, 102_940],
  [30, 51_263],
  [10, 11_080],
  [5, 4085],
  [0, 757],
  [-2, 169],
  [-4, 24.44],
  [-6, 2.992],
  [-8, 0.3447],
  [-10, 0.03886],
  [-12, 0.004365],
];

function* againstCircular(fromDeg: number, toDeg: number): Generator<NumberCase> {
  for (let deg = fromDeg; deg <= toDeg; deg += 0.25) {
    // Below -12 deg the night sky counts in both.
    const want = circularSunLux(deg) + (deg < -10 ? CIRCULAR_NIGHT_LUX : 0);
    yield { at: `${deg} deg`, got: sunTableLux(deg), want };
  }
}

/** C171-03: fig. 3, 58 N 4 W, 1987-05-11 22:15 UT: total 0.0600 lx by sun, moon of 97 % and night sky. */
function figureThree(): NumberCase[] {
  const ms = Date.UTC(1987, 4, 11, 22, 15);
  const sun = sunAt(ms, 58, -4);
  const moon = moonAt(ms, 58, -4);
  const moonlight = moonTableLux(moon.apparentAltitudeDeg, moonLitShare(ms), moon.distanceKm);
  return [
    { at: 'lit share', got: 0.97 / moonLitShare(ms), want: 1 },
    { at: 'total', got: sunLux(sun.geometricAltitudeDeg) + moonlight, want: 0.06 },
  ];
}

/** Geometric altitude of the sun, published lux. */
const levels = (): NumberCase[] => [
  { at: 'sunrise and sunset, clear', got: sunLux(-0.8333), want: 400 },
  { at: 'end of civil twilight, clear', got: sunLux(-6), want: 3.4 },
  { at: 'brightest sunlight', got: sunLux(90), want: 120_000 },
  { at: 'direct sun, 10,000 fc', got: sunLux(70), want: 107_640 },
  { at: 'full moon', got: tableMoon(80), want: 0.25 },
  { at: 'full moon, 0.01 fc', got: tableMoon(30), want: 0.10764 },
  { at: 'quarter moon', got: tableMoon(30, 0.5), want: 0.01 },
];

const LUX: readonly (readonly [number, number])[] = [
  [-4, 0.15625],
  [0, 2.5],
  [5, 80],
  [6, 160],
  [10, 2560],
  [12, 10_240],
  [14, 40_960],
  [15, 81_920],
];

/** Mark, mains, ripple left of a swing down to dark. */
const RIPPLE: readonly (readonly [number, number, number])[] = [
  [1 / 25, 50, 0],
  [1 / 50, 50, 0],
  [1 / 100, 50, 0],
  [1 / 60, 50, 0.1654],
  [1 / 64, 50, 0.1998],
  [1 / 120, 50, 0.19099],
  [1 / 125, 50, 0.23387],
  [1 / 200, 50, 0.63662],
  [1 / 30, 50, 0.0827],
  [1 / 30, 60, 0],
  [1 / 60, 60, 0],
  [1 / 120, 60, 0],
  [1 / 50, 60, 0.12614],
  [1 / 100, 60, 0.15591],
  [1 / 64, 60, 0.06497],
  [1 / 125, 60, 0.04156],
  [1 / 50.8, 50, 0.01597],
  [1 / 101.6, 50, 0.01599],
];

/** Mark, mains, ripple left by the exact time behind it: published for 1/50.80 and 1/101.6, rounded. */
const MARKED: readonly (readonly [number, number, number])[] = [
  [1 / 50, 50, 0.01597],
  [1 / 100, 50, 0.01599],
  [1 / 60, 60, 0.06497],
];

/** Angle, shutter time at 24 frames a second. */
const SHUTTER_ANGLES: readonly (readonly [number, number])[] = [
  [270, 1 / 32],
  [180, 1 / 48],
  [172.8, 1 / 50],
  [144, 1 / 60],
  [90, 1 / 96],
  [72, 1 / 120],
];

const angleOf = (shutterS: number, intervalS: number) =>
  shutterAngleDeg(plainPlan(2, intervalS), { intervalS, dialS: intervalS }, shutterS);

const pairs = (
  table: readonly (readonly [number, number])[],
  name: (input: number) => string,
  gotOf: (input: number) => number,
): NumberCase[] => table.map(([input, want]) => ({ at: name(input), got: gotOf(input), want }));

const degrees = (deg: number) => `${deg} deg`;

function skyRows(): Row[] {
  return [
    numberRow(
      {
        quantity: 'sunlight and twilight',
        reference: TABLE,
        regime: '21 altitudes, -18 to 90 deg, joints smoothed',
        bound: 0.005,
        unit: 'stops',
      },
      pairs(SUN, degrees, sunTableLux),
      stops,
    ),
    numberRow(
      { quantity: 'twilight', reference: EXAMPLE, regime: '-0.1 rad', bound: 1e-5, unit: 'relative' },
      [{ at: '-0.1 rad', got: sunTableLux(-18 / Math.PI), want: 4.63276 }],
      relative,
    ),
    numberRow(
      {
        quantity: 'light of the full moon',
        reference: TABLE,
        regime: '8 altitudes, 0 to 90 deg',
        bound: 0.012,
        unit: 'stops',
      },
      pairs(FULL_MOON, degrees, tableMoon),
      stops,
    ),
    numberRow(
      {
        quantity: 'light of the moon by phase',
        reference: TABLE,
        regime: 'elongation 30 to 180 deg',
        bound: 2e-3,
        unit: 'relative',
      },
      pairs(ELONGATIONS, degrees, (deg) => tableMoon(45, litOf(deg)) / tableMoon(45)),
      relative,
    ),
    numberRow(
      {
        quantity: 'moonlight by altitude, parallax and elongation',
        reference: EXAMPLE,
        regime: '1 rad, 0.01 rad, 1 rad',
        bound: 1e-4,
        unit: 'relative',
      },
      [
        {
          at: 'moonlight',
          got: moonTableLux(180 / Math.PI, litOf(180 / Math.PI), SEMI_MAJOR_KM / Math.sin(0.01)),
          want: 0.00206469,
        },
      ],
      relative,
    ),
    ...circularRows(),
    numberRow(
      {
        quantity: 'levels of natural light',
        reference: LEVELS,
        regime: 'sun, twilight, moon; order of magnitude',
        bound: 0.5,
        unit: 'stops',
      },
      levels(),
      stops,
    ),
    numberRow(
      {
        quantity: 'moonless night',
        reference: LEVELS,
        regime: 'between 0.0002 and 0.002 lx',
        bound: Math.log2(Math.sqrt(10)),
        unit: 'stops',
      },
      [
        { at: '-18 deg', got: sunLux(-18), want: Math.sqrt(0.0002 * 0.002) },
        { at: '-60 deg', got: sunLux(-60), want: Math.sqrt(0.0002 * 0.002) },
        { at: 'floor', got: NIGHT_FLOOR_LUX, want: Math.sqrt(0.0002 * 0.002) },
      ],
      stops,
    ),
  ];
}

function circularRows(): Row[] {
  return [
    numberRow(
      {
        quantity: 'the second model against its own table',
        reference: CIRCULAR,
        regime: '12 altitudes, to 4 digits',
        bound: 2e-3,
        unit: 'relative',
      },
      pairs(CERTIFIED, degrees, circularSunLux),
      relative,
    ),
    numberRow(
      {
        quantity: 'sunlight',
        reference: CIRCULAR,
        regime: '0 to 90 deg apparent, every 0.25 deg',
        bound: 0.25,
        unit: 'stops',
      },
      againstCircular(0, 90),
      stops,
    ),
    numberRow(
      {
        quantity: 'twilight',
        reference: CIRCULAR,
        regime: '-10 to -1 deg, every 0.25 deg',
        bound: 0.5,
        unit: 'stops',
      },
      againstCircular(-10, -1),
      stops,
    ),
    numberRow(
      {
        quantity: 'deep twilight',
        reference: CIRCULAR,
        regime: '-18 to -10 deg, every 0.25 deg; sources disagree',
        bound: 1.7,
        unit: 'stops',
      },
      againstCircular(-18, -10),
      stops,
    ),
    numberRow(
      {
        quantity: 'sun, moon and night sky together',
        reference: 'C171-03: USNO Circular 171, fig. 3 (V2)',
        regime: '58 N 4 W, 1987-05-11 22:15 UT',
        bound: 0.5,
        unit: 'stops',
      },
      figureThree(),
      stops,
    ),
  ];
}

function exposureRows(): Row[] {
  return [
    numberRow(
      {
        quantity: 'lux of an exposure value',
        reference: INCIDENT,
        regime: 'EV -4 to 15',
        bound: 1e-12,
        unit: 'relative',
      },
      pairs(
        LUX,
        (value) => `EV ${value}`,
        (value) => luxOfEv100(value, 250),
      ),
      relative,
    ),
    numberRow(
      {
        quantity: 'exposure value of an illuminance',
        reference: INCIDENT,
        regime: 'EV -4 to 15, and sunny 16: 64,000 lx',
        bound: 5e-4,
        unit: 'EV',
      },
      [
        ...LUX.map(([want, lux]) => ({ at: `${lux} lx`, got: ev100OfLux(lux, 250), want })),
        { at: 'f/16, 1/100', got: ev100OfLux(64_000, 250), want: 14.644 },
      ],
    ),
    numberRow(
      {
        quantity: 'exposure value by another constant',
        reference: 'EXP-05: C of 320 and 340 for 250 (computed)',
        regime: '10,000 lx',
        bound: 5e-4,
        unit: 'EV',
      },
      [
        { at: 'C = 320', got: ev100OfLux(1e4, 320) - ev100OfLux(1e4, 250), want: -0.356 },
        { at: 'C = 340', got: ev100OfLux(1e4, 340) - ev100OfLux(1e4, 250), want: -0.444 },
      ],
    ),
    numberRow(
      {
        quantity: 'exposure value of open ground',
        reference: SCENES,
        regime: 'sun 15, full moon -3 to -2; rules of thumb, and moon sources half a stop apart',
        bound: 1,
        unit: 'EV',
      },
      [
        { at: 'sun at 45 deg', got: ev100OfLux(sunLux(45), 250), want: 15 },
        { at: 'sun at 60 deg', got: ev100OfLux(sunLux(60), 250), want: 15 },
        { at: 'full moon at 80 deg', got: ev100OfLux(tableMoon(80) + NIGHT_FLOOR_LUX, 250), want: -2.5 },
      ],
    ),
    numberRow(
      {
        quantity: 'stops of a filter',
        reference: FILTERS,
        regime: 'density 0.3 to 3, factor 8 to 1024',
        bound: 5e-5,
        unit: 'stops',
      },
      [
        ...(
          [
            [0.3, 0.9966],
            [0.6, 1.9932],
            [0.9, 2.9897],
            [1.8, 5.9795],
            [2, 6.6439],
            [3, 9.9658],
          ] as const
        ).map(([density, want]) => ({ at: `density ${density}`, got: filterStopsOfDensity(density), want })),
        ...(
          [
            [8, 3],
            [64, 6],
            [400, 8.6439],
            [1000, 9.9658],
            [1024, 10],
          ] as const
        ).map(([factor, want]) => ({
          at: `ND${factor}`,
          got: filterStopsOfFactor(factor),
          want,
        })),
        { at: 'density of 10 stops, back', got: filterStopsOfDensity(densityOfStops(10)), want: 10 },
      ],
    ),
    textRow({ quantity: 'name of a filter', reference: FILTERS, regime: 'by factor' }, [
      { at: '3 stops', got: factorName(3), want: 'ND8' },
      { at: 'density 3', got: factorName(filterStopsOfDensity(3)), want: 'ND1000' },
      { at: '8.6439 stops', got: factorName(8.6439), want: 'ND400' },
    ]),
    numberRow(
      {
        quantity: 'shutter angle',
        reference: ANGLES,
        regime: '24 fps, 6 angles; and 2 s of 4 s',
        bound: 1e-9,
        unit: 'deg',
      },
      [
        ...SHUTTER_ANGLES.map(([want, t]) => ({ at: `${t} s`, got: angleOf(t, 1 / 24), want })),
        { at: '2 s of 4 s', got: angleOf(2, 4), want: 180 },
      ],
    ),
  ];
}

function lampRows(): Row[] {
  return [
    numberRow(
      {
        quantity: 'ripple left',
        reference: FLICKER,
        regime: '18 times under 50 and 60 Hz, to 5 places',
        bound: 6e-6,
        unit: 'share',
      },
      RIPPLE.map(([openS, hz, want]) => ({
        at: `${openS} s, ${hz} Hz`,
        got: rippleLeftShare(1, hz, openS),
        want,
      })),
    ),
    numberRow(
      {
        quantity: 'ripple left at a marked shutter time',
        reference: FLICKER,
        regime: '1/50 is 1/50.8, 1/60 is 1/64; to 4 places',
        bound: 1e-4,
        unit: 'share',
      },
      MARKED.map(([markedS, hz, want]) => ({
        at: `1/${1 / markedS}, ${hz} Hz`,
        got: rippleLeftShare(1, hz, exactShutterS(markedS)),
        want,
      })),
    ),
    numberRow(
      {
        quantity: 'brightest by darkest frame',
        reference: FLICKER,
        regime: '1/200 under 50 Hz; 1/50 as marked',
        bound: 5e-4,
        unit: 'stops',
      },
      [
        { at: '1/200', got: worstChangeStops(rippleLeftShare(1, 50, 1 / 200)), want: 2.171 },
        { at: '1/50.8', got: worstChangeStops(rippleLeftShare(1, 50, exactShutterS(1 / 50))), want: 0.0461 },
      ],
    ),
  ];
}

export const measureLight = (): Row[] => [...skyRows(), ...exposureRows(), ...lampRows()];

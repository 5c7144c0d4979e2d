/**
 * Light of sun and moon on level open ground under a clear sky, from noon to night.
 *
 * Sources: for sun and full moon, log10 of the illuminance as polynomials of altitude/90 deg, piece by piece:
 * Vallado, Fundamentals of Astrodynamics, Table 5-1 (as coded in three public implementations; that the table
 * comes from the Explanatory Supplement of 1992 is from memory). Stated error 0.02 in log10, 0.07 stop. Another
 * model (USNO Circular 171) differs by up to a sixth of a stop with the sun up, a quarter to -10 deg, and 1.6 stops
 * below -12 deg: there is no truth to the tenth of a stop in deep twilight.
 *
 * The table is a fit by apparent altitude near the horizon, while twilight goes by the geometric one: refraction is
 * counted above geometric 0 and fades out smoothly to sunset, -0.83 deg, so that there is no jump (own choice).
 */
import { SUNRISE_ALTITUDE_DEG } from '../sky/day.ts';
import { refractionDeg } from '../sky/position.ts';

/** One piece of a table: from an altitude upwards, coefficients of log10 lux in altitude/90 deg. */
type Piece = readonly [fromDeg: number, c0: number, c1: number, c2: number, c3: number];

/** Highest piece first. */
const SUN: readonly Piece[] = [
  [20, 3.74, 3.97, -4.07, 1.47],
  [5, 3.05, 13.28, -45.98, 64.33],
  [-0.8, 2.88, 22.26, -207.64, 1034.3],
  [-5, 2.88, 21.81, -258.11, -858.36],
  [-12, 2.7, 12.17, -431.69, -1899.83],
  [-18, 13.84, 262.72, 1447.42, 2797.93],
];

/** The lowest piece is carried on below -0.8 deg, where even a full moon is no brighter than the night sky. */
const FULL_MOON: readonly Piece[] = [
  [20, -1.95, 4.06, -4.24, 1.56],
  [5, -2.58, 12.58, -42.58, 59.06],
  [Number.NEGATIVE_INFINITY, -2.79, 24.27, -252.95, 1321.29],
];

// The pieces meet to 0.014 stop, one of them the wrong way: they are blended over so many degrees to each side.
const BLEND_DEG = 0.25;

const pieceLog = (piece: Piece, altitudeDeg: number): number => {
  const x = altitudeDeg / 90;
  return piece[1] + x * (piece[2] + x * (piece[3] + x * piece[4]));
};

/** log10 lux by a table, rising with altitude without a jump. */
function tableLog(table: readonly Piece[], altitudeDeg: number): number {
  let i = 0;
  while (i < table.length - 1 && altitudeDeg < (table[i] as Piece)[0] - BLEND_DEG) i += 1;
  const piece = table[i] as Piece;
  const below = table[i + 1];
  const log = pieceLog(piece, altitudeDeg);
  const overJoint = (altitudeDeg - piece[0] + BLEND_DEG) / (2 * BLEND_DEG);
  if (!below || overJoint >= 1) return log;
  return log * overJoint + pieceLog(below, altitudeDeg) * (1 - overJoint);
}

/** Altitude by which the light goes: apparent above the horizon, geometric from sunset down. */
export function lightAltitudeDeg(geometricDeg: number): number {
  if (geometricDeg <= SUNRISE_ALTITUDE_DEG) return geometricDeg;
  const risen = Math.min(1, 1 - geometricDeg / SUNRISE_ALTITUDE_DEG);
  const counted = risen * risen * (3 - 2 * risen);
  return geometricDeg + counted * refractionDeg(geometricDeg);
}

const LOWEST_SUN_DEG = -18;

/**
 * Illuminance by sun and twilight, with the night sky that is left when they are gone.
 *
 * Below -18 deg it stays at the 0.0006 lux with which the table ends: published levels of a moonless night go from
 * 0.0002 to 0.002 lux.
 * @param altitudeDeg - as {@link lightAltitudeDeg} gives it
 * @returns lux; rises with the altitude
 */
export const sunTableLux = (altitudeDeg: number): number =>
  10 ** tableLog(SUN, Math.min(90, Math.max(LOWEST_SUN_DEG, altitudeDeg)));

/** What is left of light when sun and moon are gone, lux. */
export const NIGHT_FLOOR_LUX = sunTableLux(LOWEST_SUN_DEG);

/** Illuminance by sun, twilight and night sky at a geometric altitude of the sun, lux on level ground. */
export const sunLux = (geometricDeg: number): number => sunTableLux(lightAltitudeDeg(geometricDeg));

const EARTH_RADIUS_KM = 6378.14;

/** Horizontal parallax that the moon's table is made for; its mean distance to a thousandth. */
const TABLE_PARALLAX_DEG = 0.951;

/** Mean distance of the moon. Perigee and apogee are a fifth of a stop from it. */
export const MOON_DISTANCE_KM = 384_400;

/**
 * log10 of the share of the full moon's light at a lit share of its disk: a half moon gives a ninth, not half.
 *
 * Source: -8.68e-3 f - 2.2e-9 f^4, f the phase angle in degrees (Explanatory Supplement, as coded in a public
 * implementation, V2). f = arccos(2 x lit share - 1).
 */
function moonPhaseLog(litShare: number): number {
  const phaseDeg = (Math.acos(Math.min(1, Math.max(-1, 2 * litShare - 1))) * 180) / Math.PI;
  const square = phaseDeg * phaseDeg;
  return -8.68e-3 * phaseDeg - 2.2e-9 * square * square;
}

/**
 * Illuminance by the moon alone.
 * @param altitudeDeg - as {@link lightAltitudeDeg} gives it, seen from the place
 * @param litShare - lit share of its disk, 0 to 1
 * @returns lux on level ground; rises with altitude and lit share
 */
export function moonTableLux(altitudeDeg: number, litShare: number, distanceKm = MOON_DISTANCE_KM): number {
  const parallaxDeg = (Math.asin(EARTH_RADIUS_KM / distanceKm) * 180) / Math.PI;
  const log = tableLog(FULL_MOON, Math.min(90, altitudeDeg)) + moonPhaseLog(litShare);
  return 10 ** log * (parallaxDeg / TABLE_PARALLAX_DEG) ** 2;
}

/** Illuminance by the moon at its geometric altitude seen from the place, lux on level ground. */
export const moonLux = (geometricDeg: number, litShare: number, distanceKm = MOON_DISTANCE_KM): number =>
  moonTableLux(lightAltitudeDeg(geometricDeg), litShare, distanceKm);

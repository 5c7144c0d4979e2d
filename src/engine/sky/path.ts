/**
 * Where sun and moon go over a stretch of time: asked for once an hour, and smooth in between.
 *
 * Interpolated are the three components of the direction. They are smooth everywhere, also where azimuth and
 * altitude are not: through the zenith, past north, at the poles. Error against suncalc at the instant itself: at
 * most 0.0002 deg of direction.
 */
import { moonAt, moonLitShare, type SkyPosition, sunAt } from './position.ts';
import { nodesOver, type Series, valueAt } from './series.ts';

/** Direction to the centre of a body, without refraction, as a unit vector: east, north, up. */
export interface BodyPath {
  east: Series;
  north: Series;
  up: Series;
}

/** The moon's, with what its rising and its light depend on. */
export interface MoonPath extends BodyPath {
  distanceKm: Series;
  /** 0 to 1, at nodes a day apart. */
  litShare: Series;
}

const RAD = Math.PI / 180;
const HOUR_MS = 3_600_000;

interface Nodes extends BodyPath {
  firstMs: number;
  count: number;
}

function emptyNodes(fromMs: number, toMs: number): Nodes {
  // An hour to spare on either side, to look for turns just outside.
  const { firstMs, count } = nodesOver(fromMs - HOUR_MS, toMs + HOUR_MS, HOUR_MS);
  const series = (): Series => ({ firstMs, stepMs: HOUR_MS, values: new Float64Array(count) });
  return { firstMs, count, east: series(), north: series(), up: series() };
}

function setNode(
  { east, north, up }: BodyPath,
  i: number,
  { geometricAltitudeDeg, azimuthDeg }: SkyPosition,
) {
  const level = Math.cos(geometricAltitudeDeg * RAD);
  east.values[i] = level * Math.sin(azimuthDeg * RAD);
  north.values[i] = level * Math.cos(azimuthDeg * RAD);
  up.values[i] = Math.sin(geometricAltitudeDeg * RAD);
}

/**
 * The sun's path.
 * @param fromMs - milliseconds of the epoch; the path can be asked from an hour before
 * @param toMs - to an hour after
 */
export function sunPath(fromMs: number, toMs: number, latitudeDeg: number, longitudeDeg: number): BodyPath {
  const { firstMs, count, ...path } = emptyNodes(fromMs, toMs);
  for (let i = 0; i < count; i += 1)
    setNode(path, i, sunAt(firstMs + i * HOUR_MS, latitudeDeg, longitudeDeg));
  return path;
}

/**
 * The moon's path. See {@link sunPath}.
 * @param litShare - its light over all of it, if that is known already
 */
export function moonPath(
  fromMs: number,
  toMs: number,
  latitudeDeg: number,
  longitudeDeg: number,
  litShare = litShareSeries(fromMs, toMs),
): MoonPath {
  const { firstMs, count, ...path } = emptyNodes(fromMs, toMs);
  const distanceKm: Series = { firstMs, stepMs: HOUR_MS, values: new Float64Array(count) };
  for (let i = 0; i < count; i += 1) {
    const moon = moonAt(firstMs + i * HOUR_MS, latitudeDeg, longitudeDeg);
    setNode(path, i, moon);
    distanceKm.values[i] = moon.distanceKm;
  }
  return { ...path, distanceKm, litShare };
}

/** Lit share of the moon's disk over a stretch of time. */
export function litShareSeries(fromMs: number, toMs: number): Series {
  const stepMs = 24 * HOUR_MS;
  const { firstMs, count } = nodesOver(fromMs - HOUR_MS, toMs + HOUR_MS, stepMs);
  const values = Float64Array.from({ length: count }, (_, i) => moonLitShare(firstMs + i * stepMs));
  return { firstMs, stepMs, values };
}

/** Geometric altitude at an instant of the path, degrees. */
export function altitudeOn({ east, north, up }: BodyPath, ms: number): number {
  const e = valueAt(east, ms);
  const n = valueAt(north, ms);
  return Math.atan2(valueAt(up, ms), Math.sqrt(e * e + n * n)) / RAD;
}

/** Azimuth at an instant of the path, degrees from north, clockwise, from 0 up to 360. */
export function azimuthOn({ east, north }: BodyPath, ms: number): number {
  const deg = Math.atan2(valueAt(east, ms), valueAt(north, ms)) / RAD;
  return deg < 0 ? deg + 360 : deg;
}

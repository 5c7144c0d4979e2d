/** A panorama of the horizon in drawing units: azimuth across, altitude up. No DOM, so that it can be tested. */
import type { HorizonPoint } from '../../engine/plan/schema.ts';
import { horizonOf } from '../../engine/sky/horizon.ts';
import { sunAt } from '../../engine/sky/position.ts';
import { localDay } from '../../engine/time/day.ts';
import { ofSun } from '../../engine/working/names.ts';
import type { Position } from '../place/position.ts';
import type { Piece } from '../working/sentence.ts';

/** Where the drawing puts a direction. */
export interface Panorama {
  width: number;
  height: number;
  left: number;
  bottom: number;
  /** Azimuth at the left end. */
  fromDeg: number;
  /** Altitudes that are marked. */
  altitudes: readonly number[];
  x: (azimuthDeg: number) => number;
  y: (altitudeDeg: number) => number;
}

/** A direction in the sky. */
export interface Direction {
  azimuthDeg: number;
  altitudeDeg: number;
}

/** The sun at an instant, milliseconds of the epoch. */
export interface SunThen extends Direction {
  ms: number;
}

const WIDTH = 348;
const HEIGHT = 132;
const LEFT = 28;
const BOTTOM = 112;
const LOWEST_DEG = -4;

/** The strip for a horizon: as high as its highest point needs; the sun's side of the sky in the middle. */
export function panorama(points: readonly HorizonPoint[], position: Position | null): Panorama {
  const highest = Math.max(0, ...points.map(({ altitudeDeg }) => altitudeDeg));
  const top = highest > 50 ? 90 : highest > 25 ? 60 : 30;
  // North of the equator the sun stands in the south at noon, south of it in the north.
  const fromDeg = (position?.latitudeDeg ?? 0) < 0 ? 180 : 0;
  const span = WIDTH - LEFT;
  return {
    width: WIDTH,
    height: HEIGHT,
    left: LEFT,
    bottom: BOTTOM,
    fromDeg,
    altitudes: [0, top / 3, (2 * top) / 3],
    x: (azimuthDeg) => LEFT + (((azimuthDeg - fromDeg + 360) % 360) / 360) * span,
    y: (altitudeDeg) => 6 + ((top - altitudeDeg) / (top - LOWEST_DEG)) * (BOTTOM - 6),
  };
}

const STEP_MS = 10 * 60_000;

/** Where the sun stands over a local day, every ten minutes, as it is seen. */
export function sunOver(date: string, zone: string, offsetMin: number | null, at: Position): SunThen[] {
  const { startMs, endMs } = localDay(date, zone, offsetMin);
  const directions: SunThen[] = [];
  for (let ms = startMs; ms <= endMs; ms += STEP_MS) {
    const { azimuthDeg, apparentAltitudeDeg } = sunAt(ms, at.latitudeDeg, at.longitudeDeg);
    directions.push({ ms, azimuthDeg, altitudeDeg: apparentAltitudeDeg });
  }
  return directions;
}

const pen = (value: number): string => value.toFixed(1);

/** Lines of the sun's way; a new one begins where it leaves one end of the strip and comes in at the other. */
export function sunLines(view: Panorama, sun: readonly Direction[]): string[] {
  const lines: string[] = [];
  let line = '';
  let before = Number.NaN;
  for (const { azimuthDeg, altitudeDeg } of sun) {
    const x = view.x(azimuthDeg);
    const joined = Math.abs(x - before) < view.width / 2;
    if (!joined && line !== '') lines.push(line);
    line = `${joined ? `${line}L` : 'M'}${pen(x)} ${pen(view.y(altitudeDeg))}`;
    before = x;
  }
  if (line !== '') lines.push(line);
  return lines;
}

/** Outline of the ground, degree by degree, as the engine joins the points. */
export function groundLine(view: Panorama, points: readonly HorizonPoint[]): string {
  const horizon = horizonOf(points);
  const azimuths = new Set([...Array.from({ length: 361 }, (_, i) => i), ...points.map((p) => p.azimuthDeg)]);
  const around = [...azimuths]
    .map((azimuthDeg) => ({ from: (azimuthDeg - view.fromDeg + 360) % 360, azimuthDeg }))
    .sort((a, b) => a.from - b.from);
  const tops = around.map(
    ({ azimuthDeg }) => `L${pen(view.x(azimuthDeg))} ${pen(view.y(horizon(azimuthDeg)))}`,
  );
  const first = pen(view.y(horizon(view.fromDeg)));
  return `M${view.left} ${view.bottom}L${view.left} ${first}${tops.join('')}L${view.width} ${first}V${view.bottom}Z`;
}

/** The sun's way in words. @param day - what the date is called */
export function sunPieces(sun: readonly SunThen[], day: string): Piece[] {
  if (sun.length === 0) return ['With a place on the map the sun’s way shows too.'];
  const highest = sun.reduce((high, then) => (high.altitudeDeg >= then.altitudeDeg ? high : then));
  if (highest.altitudeDeg <= 0) return [`The sun stays down on ${day}.`];
  const text = `${Math.round(highest.altitudeDeg)}°`;
  return [`The sun’s way on ${day}, up to `, { text, of: ofSun(highest.ms, 'apparentDeg') }, '.'];
}

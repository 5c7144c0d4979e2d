/**
 * Columns of the sky for every frame of a run.
 *
 * The path of a body gives nodes every ten minutes. Between them run polynomials of third degree through the two
 * nodes on either side: of altitude and azimuth themselves, or near zenith and nadir, where these bend sharply, of
 * the direction. Errors against suncalc at every frame: below 0.001 deg of altitude, and of azimuth times the
 * cosine of the altitude.
 */
import { altitudeOn, azimuthOn, type BodyPath, type MoonPath, moonPath, sunPath } from './path.ts';
import { valueAt } from './series.ts';

/** Sun and moon over a stretch of time. */
export interface SkyTrack {
  fromMs: number;
  toMs: number;
  sun: BodyPath;
  moon: MoonPath;
}

/** Columns with one entry a frame; index 0 is frame 1. */
export interface SkyColumns {
  /** Geometric altitude of the sun's centre. */
  sunAltitudeDeg: Float32Array;
  /** From north, clockwise, 0 to 360. */
  sunAzimuthDeg: Float32Array;
  /** Geometric altitude of the moon's centre. */
  moonAltitudeDeg: Float32Array;
}

/**
 * Sun and moon from one instant to another.
 * @param fromMs - milliseconds of the epoch
 * @param latitudeDeg - north positive
 * @param longitudeDeg - east positive
 */
export const skyTrack = (
  fromMs: number,
  toMs: number,
  latitudeDeg: number,
  longitudeDeg: number,
): SkyTrack => ({
  fromMs,
  toMs,
  sun: sunPath(fromMs, toMs, latitudeDeg, longitudeDeg),
  moon: moonPath(fromMs, toMs, latitudeDeg, longitudeDeg),
});

const DAY_MS = 86_400_000;

let kept: { place: string; track: SkyTrack } | null = null;

/**
 * Sun and moon over a stretch of time and the days around it, perhaps some more. The last one is kept: as long as it
 * covers what the next edit of a plan asks for, that need not be worked out again. Nodes lie on whole hours, so that
 * the values are the same whatever the track covers.
 */
export function daysTrack(fromMs: number, toMs: number, latitudeDeg: number, longitudeDeg: number): SkyTrack {
  // A local day may begin and end more than a day of UTC away.
  const firstMs = (Math.floor(fromMs / DAY_MS) - 2) * DAY_MS;
  const lastMs = (Math.ceil(toMs / DAY_MS) + 2) * DAY_MS;
  const place = `${latitudeDeg} ${longitudeDeg}`;
  const covers = ({ fromMs: from, toMs: to }: SkyTrack) =>
    from <= firstMs && to >= lastMs && to - from <= 2 * (lastMs - firstMs);
  if (kept?.place !== place || !covers(kept.track))
    kept = { place, track: skyTrack(firstMs, lastMs, latitudeDeg, longitudeDeg) };
  return kept.track;
}

/** Lit share of the moon's disk at an instant of the track, 0 to 1. */
export const litShareOn = ({ moon }: SkyTrack, ms: number): number => valueAt(moon.litShare, ms);

const RAD = Math.PI / 180;
const STRETCH_MS = 600_000;
const STRETCH_S = STRETCH_MS / 1000;
/** Altitude above which, and below which negative, the polynomials run on the direction. */
const STEEP_DEG = 70;
// With fewer frames than this to a stretch its polynomials cost more than they save.
const WORTH_FRAMES = 4;

/**
 * Fills the columns of a run.
 * @param track - over the whole run
 * @param startMs - first shutter opening
 * @param elapsedS - seconds from it to each frame, rising
 * @param out - one entry a frame, to be filled
 */
export function fillSky(track: SkyTrack, startMs: number, elapsedS: Float64Array, out: SkyColumns): void {
  const sun: Body = { path: track.sun, altitudeDeg: out.sunAltitudeDeg, azimuthDeg: out.sunAzimuthDeg };
  const moon: Body = { path: track.moon, altitudeDeg: out.moonAltitudeDeg, azimuthDeg: null };
  const frames = elapsedS.length;
  const endMs = startMs + (elapsedS[frames - 1] ?? 0) * 1000;
  if ((endMs - startMs) / STRETCH_MS > frames / WORTH_FRAMES) {
    for (const body of [sun, moon]) fillExact(startMs, elapsedS, body);
    return;
  }
  const ofSun = nodesOf(track.sun, startMs, endMs);
  const ofMoon = nodesOf(track.moon, startMs, endMs);
  for (let begin = 0; begin < frames; ) {
    const ms = startMs + (elapsedS[begin] as number) * 1000;
    const i = Math.floor((ms - ofSun.firstMs) / STRETCH_MS);
    const firstS = (ofSun.firstMs + i * STRETCH_MS - startMs) / 1000;
    if (isSteep(ofSun, i) || isSteep(ofMoon, i)) {
      const stretch = { i, firstS, begin, end: endOf(elapsedS, begin, firstS) };
      fillApart(ofSun, elapsedS, stretch, sun);
      fillApart(ofMoon, elapsedS, stretch, moon);
      begin = stretch.end;
    } else begin = fillTogether(ofSun, ofMoon, elapsedS, i, firstS, begin, out);
  }
}

/** A body's path, and its columns. */
interface Body {
  path: BodyPath;
  altitudeDeg: Float32Array;
  azimuthDeg: Float32Array | null;
}

/** Frames from one node to the next. */
interface Stretch {
  /** The node before them, and when it is, seconds from the first frame. */
  i: number;
  firstS: number;
  /** Indices of the first frame, and of the one after the last. */
  begin: number;
  end: number;
}

/** Index of the first frame that is not on a stretch. */
function endOf(elapsedS: Float64Array, begin: number, firstS: number): number {
  const nextS = firstS + STRETCH_S;
  let end = begin + 1;
  while (end < elapsedS.length && (elapsedS[end] as number) < nextS) end += 1;
  return end;
}

/** A path at whole ten minutes, two nodes to spare on either side. */
interface Nodes {
  firstMs: number;
  east: Float64Array;
  north: Float64Array;
  up: Float64Array;
  altitude: Float64Array;
  /** Goes on past north without a jump. */
  azimuth: Float64Array;
}

/** The nodes of the run that was last asked for: most edits of a plan leave its times as they are. */
const known = new WeakMap<BodyPath, Nodes>();

function nodesOf(path: BodyPath, startMs: number, endMs: number): Nodes {
  const firstMs = (Math.floor(startMs / STRETCH_MS) - 2) * STRETCH_MS;
  const count = Math.ceil((endMs - firstMs) / STRETCH_MS) + 3;
  const before = known.get(path);
  if (before?.firstMs === firstMs && before.altitude.length === count) return before;
  const nodes = nodesFrom(path, firstMs, count);
  known.set(path, nodes);
  return nodes;
}

function nodesFrom(path: BodyPath, firstMs: number, count: number): Nodes {
  const room = () => new Float64Array(count);
  const nodes = { firstMs, east: room(), north: room(), up: room(), altitude: room(), azimuth: room() };
  let before = 0;
  for (let i = 0; i < count; i += 1) {
    const ms = firstMs + i * STRETCH_MS;
    const e = valueAt(path.east, ms);
    const n = valueAt(path.north, ms);
    const u = valueAt(path.up, ms);
    nodes.east[i] = e;
    nodes.north[i] = n;
    nodes.up[i] = u;
    nodes.altitude[i] = altitudeOf(e, n, u);
    const bearing = Math.atan2(e, n) / RAD;
    before = bearing - 360 * Math.round((bearing - before) / 360);
    nodes.azimuth[i] = before;
  }
  return nodes;
}

/** Whether the body stands so high or deep about a stretch that only its direction is smooth. */
function isSteep({ altitude }: Nodes, i: number): boolean {
  for (let node = i - 1; node <= i + 2; node += 1)
    if (Math.abs(altitude[node] as number) > STEEP_DEG) return true;
  return false;
}

/** A polynomial of third degree in the share of a stretch, lowest power first. */
interface Cubic {
  c0: number;
  c1: number;
  c2: number;
  c3: number;
}

const cubicAt = ({ c0, c1, c2, c3 }: Cubic, x: number): number => ((c3 * x + c2) * x + c1) * x + c0;

/** The one through nodes i - 1 to i + 2, for the stretch from i to i + 1. */
function cubicOver(values: Float64Array, i: number): Cubic {
  const a = values[i - 1] as number;
  const b = values[i] as number;
  const d = values[i + 1] as number;
  const e = values[i + 2] as number;
  return { c0: b, c1: d - a / 3 - b / 2 - e / 6, c2: (a + d) / 2 - b, c3: (e - a) / 6 + (b - d) / 2 };
}

const altitudeOf = (e: number, n: number, u: number): number => Math.atan2(u, Math.sqrt(e * e + n * n)) / RAD;

/** From 0 up to 360. */
const around = (deg: number): number => deg - 360 * Math.floor(deg / 360);

const PER_S = 1000 / STRETCH_MS;

/**
 * Fills a stretch where neither body is steep.
 * @returns index of the first frame that is not on it
 */
function fillTogether(
  sun: Nodes,
  moon: Nodes,
  elapsedS: Float64Array,
  i: number,
  firstS: number,
  begin: number,
  { sunAltitudeDeg, sunAzimuthDeg, moonAltitudeDeg }: SkyColumns,
): number {
  const altitude = cubicOver(sun.altitude, i);
  const azimuth = cubicOver(sun.azimuth, i);
  const ofMoon = cubicOver(moon.altitude, i);
  // Few stretches go past north: as a rule the same turns are taken off all over.
  const turnsDeg = 360 * Math.floor(azimuth.c0 / 360);
  const nextS = firstS + STRETCH_S;
  let k = begin;
  // The frame that the stretch was looked up for lies on it, whatever the last digits say.
  do {
    const x = ((elapsedS[k] as number) - firstS) * PER_S;
    sunAltitudeDeg[k] = cubicAt(altitude, x);
    moonAltitudeDeg[k] = cubicAt(ofMoon, x);
    const deg = cubicAt(azimuth, x);
    const left = deg - turnsDeg;
    sunAzimuthDeg[k] = left >= 0 && left < 360 ? left : around(deg);
    k += 1;
  } while (k < elapsedS.length && (elapsedS[k] as number) < nextS);
  return k;
}

function fillApart(nodes: Nodes, elapsedS: Float64Array, stretch: Stretch, body: Body): void {
  if (isSteep(nodes, stretch.i)) fillSteep(nodes, elapsedS, stretch, body);
  else fillSmooth(nodes, elapsedS, stretch, body);
}

function fillSmooth(
  nodes: Nodes,
  elapsedS: Float64Array,
  { i, firstS, begin, end }: Stretch,
  { altitudeDeg, azimuthDeg }: Body,
): void {
  const altitude = cubicOver(nodes.altitude, i);
  const azimuth = cubicOver(nodes.azimuth, i);
  for (let k = begin; k < end; k += 1) {
    const x = ((elapsedS[k] as number) - firstS) * PER_S;
    altitudeDeg[k] = cubicAt(altitude, x);
    if (azimuthDeg !== null) azimuthDeg[k] = around(cubicAt(azimuth, x));
  }
}

function fillSteep(
  nodes: Nodes,
  elapsedS: Float64Array,
  { i, firstS, begin, end }: Stretch,
  { altitudeDeg, azimuthDeg }: Body,
): void {
  const [east, north, up] = [cubicOver(nodes.east, i), cubicOver(nodes.north, i), cubicOver(nodes.up, i)];
  for (let k = begin; k < end; k += 1) {
    const x = ((elapsedS[k] as number) - firstS) * PER_S;
    const e = cubicAt(east, x);
    const n = cubicAt(north, x);
    altitudeDeg[k] = altitudeOf(e, n, cubicAt(up, x));
    if (azimuthDeg !== null) azimuthDeg[k] = around(Math.atan2(e, n) / RAD);
  }
}

function fillExact(startMs: number, elapsedS: Float64Array, { path, altitudeDeg, azimuthDeg }: Body): void {
  for (let k = 0; k < elapsedS.length; k += 1) {
    const ms = startMs + (elapsedS[k] as number) * 1000;
    altitudeDeg[k] = altitudeOn(path, ms);
    if (azimuthDeg !== null) azimuthDeg[k] = azimuthOn(path, ms);
  }
}

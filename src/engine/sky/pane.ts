/**
 * Sun through a pane: an upright opening in a wall, the room behind it, and a set in the room.
 *
 * The room's floor plan counts `intoMm` from the pane into the room and `alongMm` along the wall from the middle
 * of the pane, to the right of somebody who looks out. Heights are above the floor. The wall counts as thin and
 * the sun as a point: a deep reveal takes some of the patch away, the sun's own width blurs its edge by 9 mm a
 * metre of way. Altitudes are apparent ones.
 *
 * Sources: wall-solar azimuth and profile angle, tan P = tan(altitude) / cos(gamma), as in ASHRAE's Handbook of
 * Fundamentals, chapter on fenestration (from memory); patch by similar triangles.
 */
import type { Plan } from '../plan/schema.ts';

type Pane = Plan['pane'];

/** The patch of sun on a level plane: a parallelogram as wide along the wall as the pane. */
export interface Patch {
  /** Edge nearest the pane, and farthest, millimetres into the room. */
  nearMm: number;
  farMm: number;
  /** Millimetres to the right (looking out) for each millimetre into the room. */
  skew: number;
}

const RAD = Math.PI / 180;

/** Difference of two azimuths, from -180 up to 180 degrees. */
const turned = (deg: number): number => deg - 360 * Math.floor((deg + 180) / 360);

/**
 * Wall-solar azimuth: from the direction the pane looks out to, to the sun, clockwise.
 * @returns -180 up to 180 degrees; beyond 90 either way the sun is behind the wall
 */
export const wallSolarAzimuthDeg = (facingDeg: number, azimuthDeg: number): number =>
  turned(azimuthDeg - facingDeg);

/**
 * How far a ray through the pane falls for each millimetre into the room: the tangent of the profile angle.
 * @returns null if the sun is not in front of the wall
 */
function fallOf(facingDeg: number, altitudeDeg: number, azimuthDeg: number): number | null {
  const front = Math.cos(wallSolarAzimuthDeg(facingDeg, azimuthDeg) * RAD);
  // A sun along the wall is no sun on the pane; 1e-9 is less than a thousandth of an arc second.
  return front <= 1e-9 ? null : Math.tan(altitudeDeg * RAD) / front;
}

/**
 * Profile angle: the sun's altitude as it shows in a section across the wall.
 * @returns degrees; null if the sun is not in front of the wall
 */
export function profileAngleDeg(facingDeg: number, altitudeDeg: number, azimuthDeg: number): number | null {
  const fall = fallOf(facingDeg, altitudeDeg, azimuthDeg);
  return fall === null ? null : Math.atan(fall) / RAD;
}

/**
 * The patch of sun on a level plane in the room, walls apart from the pane's own left out of account.
 * @param planeMm - height of the plane above the floor
 * @returns null if no sun comes through onto it: behind the wall, not up, or the pane lies below the plane
 */
export function patchOn(pane: Pane, planeMm: number, altitudeDeg: number, azimuthDeg: number): Patch | null {
  const fall = fallOf(pane.facingDeg, altitudeDeg, azimuthDeg);
  if (fall === null || fall <= 0 || pane.headMm <= planeMm) return null;
  const nearMm = Math.max(0, pane.sillMm - planeMm) / fall;
  const farMm = (pane.headMm - planeMm) / fall;
  // The sun to the right of the pane's axis throws its patch to the left.
  return { nearMm, farMm, skew: -Math.tan(wallSolarAzimuthDeg(pane.facingDeg, azimuthDeg) * RAD) };
}

/**
 * Whether the patch at the set's height reaches the set.
 *
 * Both are convex. At a depth the patch runs from skew x depth - half the width to as much to the right: the
 * depths at which that overlaps the set are one stretch, which must overlap the depths that both share.
 */
export function hitsSet(pane: Pane, altitudeDeg: number, azimuthDeg: number): boolean {
  const patch = patchOn(pane, pane.setHeightMm, altitudeDeg, azimuthDeg);
  if (patch === null) return false;
  const half = pane.widthMm / 2;
  let from = Math.max(patch.nearMm, pane.setNearMm);
  let to = Math.min(patch.farMm, pane.setFarMm, pane.roomDepthMm);
  // skew x depth must lie between these two.
  const least = pane.setLeftMm - half;
  const most = pane.setRightMm + half;
  if (patch.skew === 0) return from < to && least < 0 && most > 0;
  from = Math.max(from, Math.min(least / patch.skew, most / patch.skew));
  to = Math.min(to, Math.max(least / patch.skew, most / patch.skew));
  return from < to;
}

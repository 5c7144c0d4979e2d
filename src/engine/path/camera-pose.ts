/**
 * Which way the camera looks, and what it sees, at one frame: for drawings and workings. A run goes its own, faster way
 * (`scene.ts`, `image.ts`).
 */
import { armRad, directionOf, type Geometry, lensAt, RAD, type Stance, sum, type Vector } from './pose.ts';

/** The camera in space. */
export interface Pose {
  /** Of the lens, mm. */
  position: Vector;
  /** Where the lens looks, and the right and the upper side of the image; unit vectors. */
  direction: Vector;
  right: Vector;
  up: Vector;
}

/** A direction turned with the arm: what looked forward at an angle of 0 looks along the arm. */
function turnedWithArm(v: Vector, rise: Vector, angle: number): Vector {
  const [sine, cosine] = [Math.sin(angle), Math.cos(angle)];
  const along = v.x * rise.x + v.z * rise.z;
  const more = v.y * sine + along * cosine - along;
  return { x: v.x + more * rise.x, y: v.y * cosine - along * sine, z: v.z + more * rise.z };
}

/** The camera with its axes at some positions. */
export function poseAt(geometry: Geometry, stance: Stance): Pose {
  const bearing = geometry.lensBearingRad + stance.pan * RAD;
  const elevation = geometry.lensTiltRad + stance.tilt * RAD;
  const roll = stance.roll * RAD;
  const level = directionOf(bearing + Math.PI / 2, 0);
  const upright = directionOf(bearing, elevation + Math.PI / 2);
  const right = sum(level, upright, Math.cos(roll), -Math.sin(roll));
  const up = sum(level, upright, Math.sin(roll), Math.cos(roll));
  const direction = directionOf(bearing, elevation);
  const position = lensAt(geometry, stance);
  const { boom } = geometry;
  if (!boom?.turnsHead) return { position, direction, right, up };
  const turn = (v: Vector) => turnedWithArm(v, boom.rise, armRad(geometry, stance));
  return { position, direction: turn(direction), right: turn(right), up: turn(up) };
}

/** A point as the camera sees it, mm: to the right of its axis, above it, and ahead. */
export function seenFrom({ position, direction, right, up }: Pose, point: Vector): Vector {
  const away = sum(point, position, 1, -1);
  const along = (v: Vector) => away.x * v.x + away.y * v.y + away.z * v.z;
  return { x: along(right), y: along(up), z: along(direction) };
}

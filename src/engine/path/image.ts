/**
 * How far things move across the image from frame to frame: the subject, and what is far behind.
 *
 * The image is a pinhole's. Whatever is measured is seen at two poses, that of a frame and that of the next, and its
 * two places in the image are so many pixels apart. The subject may turn on its turntable meanwhile. The background
 * is the point straight ahead of the lens at a frame, as far off as the plan says: it stands still until the next.
 */
import type { Plan } from '../plan/schema.ts';
import type { Room } from '../room.ts';
import { focalPx, hasPose, NEAREST_MM, type PoseKind, poseAxis, RAD, type StepColumns } from './pose.ts';
import { Scene } from './scene.ts';
import { BLOCK, Turning } from './turning.ts';

/** The largest of a column; its frame counts from 1. */
export interface Largest {
  px: number;
  frame: number;
}

/** Motion of the image. Index k is from frame k + 1 to the next; the last entry is 0. */
export interface ImageMotion {
  /** Pixels that the subject moves; 0 while it is not in the picture. */
  subjectPx: Float32Array;
  /** Pixels that the background moves. */
  backgroundPx: Float32Array;
  subject: Largest;
  background: Largest;
  /** Frames whose picture does not show the subject. */
  outOfSightFrames: number;
}

/** Whether the image's motion is worked out: there is a subject, and a rig that may move it in the picture. */
const hasImage = (plan: Plan): boolean => plan.subject.used && plan.move.mode !== 'still' && hasPose(plan);

/**
 * Pixels that subject and background move from every frame to the next.
 * @param axes - as the schedule has them, in the order of the plan's
 * @param room - memory for the columns
 * @returns null if there is no subject, or nothing that could move the image. What is behind the lens by the next
 *   frame has left the picture: it counts as one width of the image.
 */
export function imageMotion(plan: Plan, axes: readonly StepColumns[], room: Room): ImageMotion | null {
  if (!hasImage(plan)) return null;
  const frames = axes[0]?.steps.length ?? 0;
  const subjectPx = room.f32(frames);
  const backgroundPx = room.f32(frames);
  const outOfSightFrames = fillImage(plan, axes, { subjectPx, backgroundPx });
  return {
    subjectPx,
    backgroundPx,
    subject: largest(subjectPx),
    background: largest(backgroundPx),
    outOfSightFrames,
  };
}

function largest(column: Float32Array): Largest {
  let px = 0;
  let frame = 1;
  for (let k = 0; k < column.length; k += 1) {
    if ((column[k] as number) <= px) continue;
    px = column[k] as number;
    frame = k + 1;
  }
  return { px, frame };
}

/**
 * Fills the columns, and counts the frames that do not show the subject.
 *
 * One long loop: in two, each of half the length, it takes half as long again. The next lens looks past the point
 * that was ahead by an angle whose tangent is that of the cross and the dot product.
 */
function fillImage(
  plan: Plan,
  axes: readonly StepColumns[],
  { subjectPx, backgroundPx }: Pick<ImageMotion, 'subjectPx' | 'backgroundPx'>,
): number {
  const scene = new Scene(plan, axes);
  const { lensBearingRad, lensTiltRad, boom } = scene.geometry;
  const { lensX, lensY, lensZ, x, y, z, arm } = scene;
  const columns = (kind: PoseKind) => axes[poseAxis(plan, kind)];
  const pan = new Turning(columns('pan'), lensBearingRad, RAD);
  const tilt = new Turning(columns('tilt'), lensTiltRad, RAD);
  const roll = new Turning(columns('roll'), 0, RAD);
  const turnsHead = boom?.turnsHead ?? false;
  const { x: riseX, z: riseZ } = boom?.rise ?? { x: 0, z: 1 };
  const far = plan.subject.backgroundM * 1000;
  const focal = focalPx(plan.camera);
  const width = plan.camera.imageWidthPx;
  const halfWidth = width / 2;
  const halfHeight = plan.camera.imageHeightPx / 2;
  // Read within the loop it would cost a quarter of it.
  const nearest = NEAREST_MM;
  const frames = subjectPx.length;
  let outOfSight = 0;
  // Of the frame before: the subject in the image, and the point of the background, mm.
  let shownBefore = false;
  let xBefore = 0;
  let yBefore = 0;
  let pointX = 0;
  let pointY = 0;
  let pointZ = 0;
  for (let from = 0; from < frames; from += BLOCK) {
    const to = Math.min(from + BLOCK, frames);
    scene.fill(from, to);
    pan.fill(from, to);
    tilt.fill(from, to);
    roll.fill(from, to);
    for (let k = from; k < to; k += 1) {
      const i = k - from;
      const sinB = pan.sin[i] as number;
      const cosB = pan.cos[i] as number;
      const sinE = tilt.sin[i] as number;
      const cosE = tilt.cos[i] as number;
      const sinR = roll.sin[i] as number;
      const cosR = roll.cos[i] as number;

      // The subject: level towards the lens's bearing, then up or down to its elevation, then rolled.
      const right = x[i] as number;
      const forward = y[i] as number;
      const above = z[i] as number;
      const level = right * sinB + forward * cosB;
      const ahead = level * cosE + above * sinE;
      const scale = focal / ahead;
      const across = right * cosB - forward * sinB;
      const upright = above * cosE - level * sinE;
      const imageX = (across * cosR - upright * sinR) * scale;
      const imageY = (upright * cosR + across * sinR) * scale;
      const isAhead = ahead > nearest;
      const shown =
        isAhead &&
        imageX <= halfWidth &&
        imageX >= -halfWidth &&
        imageY <= halfHeight &&
        imageY >= -halfHeight;
      if (!shown) outOfSight += 1;

      // Where the lens looks, in the room.
      let lookX = sinB * cosE;
      let lookY = cosB * cosE;
      let lookZ = sinE;
      if (turnsHead) {
        const sinA = arm.sin[i] as number;
        const cosA = arm.cos[i] as number;
        const along = lookX * riseX + lookZ * riseZ;
        const more = along * cosA + lookY * sinA - along;
        lookY = lookY * cosA - along * sinA;
        lookX += more * riseX;
        lookZ += more * riseZ;
      }
      const atX = lensX[i] as number;
      const atY = lensY[i] as number;
      const atZ = lensZ[i] as number;
      if (k > 0) {
        const dx = imageX - xBefore;
        const dy = imageY - yBefore;
        const moved = isAhead ? Math.sqrt(dx * dx + dy * dy) : width;
        subjectPx[k - 1] = shownBefore ? moved : 0;
        const farX = pointX - atX;
        const farY = pointY - atY;
        const farZ = pointZ - atZ;
        const farAhead = farX * lookX + farY * lookY + farZ * lookZ;
        const crossX = farY * lookZ - farZ * lookY;
        const crossY = farZ * lookX - farX * lookZ;
        const crossZ = farX * lookY - farY * lookX;
        const off = Math.sqrt(crossX * crossX + crossY * crossY + crossZ * crossZ);
        backgroundPx[k - 1] = farAhead > nearest ? (focal / farAhead) * off : width;
      }
      shownBefore = shown;
      xBefore = imageX;
      yBefore = imageY;
      pointX = atX + far * lookX;
      pointY = atY + far * lookY;
      pointZ = atZ + far * lookZ;
    }
  }
  subjectPx.fill(0, -1);
  backgroundPx.fill(0, -1);
  return outOfSight;
}

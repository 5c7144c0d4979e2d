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
import { BLOCK, FIRST, type Range, type Turn, Turning } from './turning.ts';

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
 * @param ranges - of the same axes, where they are known: then nobody looks for them
 * @param known - scene of the plan and the axes, if it is known
 * @returns null if there is no subject, or nothing that could move the image. What is behind the lens by the next
 *   frame has left the picture: it counts as one width of the image.
 */
export function imageMotion(
  plan: Plan,
  axes: readonly StepColumns[],
  room: Room,
  ranges?: readonly Range[],
  known?: Scene,
): ImageMotion | null {
  if (!hasImage(plan)) return null;
  const frames = axes[0]?.steps.length ?? 0;
  const subjectPx = room.f32(frames);
  const backgroundPx = room.f32(frames);
  const motion: ImageMotion = {
    subjectPx,
    backgroundPx,
    subject: { px: 0, frame: 1 },
    background: { px: 0, frame: 1 },
    outOfSightFrames: 0,
  };
  const scene = known ?? new Scene(plan, axes, ranges);
  const { pan, tilt, roll, picture } = cameraOf(plan, axes, scene, ranges);
  const most = new Float64Array(2);
  const turnings = [scene.arm, scene.table, pan, tilt, roll];
  for (let from = 0; from < frames; from += BLOCK) {
    const to = Math.min(from + BLOCK, frames);
    for (const turning of turnings) turning.fill(from, to);
    motion.outOfSightFrames += fillBlock(
      scene.arm.turn,
      scene.table.turn,
      pan.turn,
      tilt.turn,
      roll.turn,
      scene.slide,
      scene.given,
      picture,
      subjectPx,
      backgroundPx,
      most,
      from,
      to,
    );
    raise(motion.subject, from, most[0] as number);
    raise(motion.background, from, most[1] as number);
  }
  find(motion.subject, subjectPx);
  find(motion.background, backgroundPx);
  subjectPx.fill(0, -1);
  backgroundPx.fill(0, -1);
  return motion;
}

/** Takes the largest so far if it is new. Until it is found its frame is the first that it may be at. */
function raise(largest: Largest, from: number, most: number): void {
  const px = Math.fround(most);
  if (px <= largest.px) return;
  largest.px = px;
  largest.frame = Math.max(1, from);
}

/** Looks for the largest of all. */
function find(largest: Largest, column: Float32Array): void {
  if (largest.px > 0) largest.frame = column.indexOf(largest.px, largest.frame - 1) + 1;
}

/** What the picture of a frame depends on. */
interface Camera {
  pan: Turning;
  tilt: Turning;
  roll: Turning;
  /** Focal length, px; distance of the background, mm; width and half the height of the image, px. */
  picture: Float64Array;
}

function cameraOf(
  plan: Plan,
  axes: readonly StepColumns[],
  { geometry }: Scene,
  ranges?: readonly Range[],
): Camera {
  const turnOf = (kind: PoseKind, zeroRad: number) => {
    const index = poseAxis(plan, kind);
    return new Turning(axes[index], zeroRad, RAD, ranges?.[index]);
  };
  const { lensBearingRad, lensTiltRad } = geometry;
  const { imageWidthPx, imageHeightPx } = plan.camera;
  const farMm = plan.subject.backgroundM * 1000;
  return {
    pan: turnOf('pan', lensBearingRad),
    tilt: turnOf('tilt', lensTiltRad),
    roll: turnOf('roll', 0),
    picture: Float64Array.of(focalPx(plan.camera), farMm, imageWidthPx, imageHeightPx / 2),
  };
}

/**
 * Fills a block of the columns, up to the motion that leads to its last frame.
 *
 * One loop that keeps to itself what belongs to a frame: what is written down in between takes longer than to work it
 * out. The next lens looks past the point that
 * was ahead by an angle whose tangent is that of the cross and the dot product.
 * @returns how many of its frames do not show the subject
 */
function fillBlock(
  [armOf, armWhole, arm]: Turn,
  [tableOf, tableWhole, table]: Turn,
  [panOf, panWhole, pan]: Turn,
  [tiltOf, tiltWhole, tilt]: Turn,
  [rollOf, rollWhole, roll]: Turn,
  slide: Int32Array,
  given: Float64Array,
  picture: Float64Array,
  subjectPx: Float32Array,
  backgroundPx: Float32Array,
  most: Float64Array,
  from: number,
  to: number,
): number {
  const armEvery = armWhole[0] as number;
  const armLow = armWhole[1] as number;
  const tableEvery = tableWhole[0] as number;
  const tableLow = tableWhole[1] as number;
  const tableTurns = tableEvery !== FIRST;
  let sinT = table[0] as number;
  let cosT = table[1] as number;
  const panEvery = panWhole[0] as number;
  const panLow = panWhole[1] as number;
  const tiltEvery = tiltWhole[0] as number;
  const tiltLow = tiltWhole[1] as number;
  const rollEvery = rollWhole[0] as number;
  const rollLow = rollWhole[1] as number;
  // In the order of `givenOf`.
  const slideX = given[0] as number;
  const slideY = given[1] as number;
  const slideZ = given[2] as number;
  const pivotZ = given[3] as number;
  const lengthMm = given[4] as number;
  const armX = given[5] as number;
  const armZ = given[6] as number;
  const riseX = given[7] as number;
  const riseZ = given[8] as number;
  const centreX = given[9] as number;
  const centreY = given[10] as number;
  const besideX = given[11] as number;
  const besideY = given[12] as number;
  const subjectZ = given[13] as number;
  const slideEvery = (given[14] as number) | 0;
  const turnsHead = given[15] === 1;
  const focal = picture[0] as number;
  const far = picture[1] as number;
  const width = picture[2] as number;
  const halfHeight = picture[3] as number;
  const halfWidth = width / 2;
  // Read within the loop it would cost a quarter of it.
  const nearest = NEAREST_MM;
  let outOfSight = 0;
  let mostSubject = most[0] as number;
  let mostBackground = most[1] as number;
  // Of the frame before: the subject in the image, and the point of the background, mm.
  let shownBefore = false;
  let xBefore = 0;
  let yBefore = 0;
  let pointX = 0;
  let pointY = 0;
  let pointZ = 0;
  const first = from > 0 ? from - 1 : 0;
  for (let k = first; k < to; k += 1) {
    const a = ((armOf[k & armEvery] as number) - armLow) << 1;
    const sinA = arm[a] as number;
    const cosA = arm[a + 1] as number;
    const p = ((panOf[k & panEvery] as number) - panLow) << 1;
    const sinB = pan[p] as number;
    const cosB = pan[p + 1] as number;
    const t = ((tiltOf[k & tiltEvery] as number) - tiltLow) << 1;
    const sinE = tilt[t] as number;
    const cosE = tilt[t + 1] as number;
    const r = ((rollOf[k & rollEvery] as number) - rollLow) << 1;
    const sinR = roll[r] as number;
    const cosR = roll[r + 1] as number;
    // Few subjects turn.
    if (tableTurns) {
      const turned = ((tableOf[k & tableEvery] as number) - tableLow) << 1;
      sinT = table[turned] as number;
      cosT = table[turned + 1] as number;
    }

    // The lens, and from it the subject.
    const slid = slide[k & slideEvery] as number;
    const atX = slid * slideX + armX * sinA;
    const atY = slid * slideY + lengthMm * cosA;
    const atZ = pivotZ + slid * slideZ + armZ * sinA;
    let right = centreX + besideX * cosT + besideY * sinT - atX;
    let forward = centreY + besideY * cosT - besideX * sinT - atY;
    let above = subjectZ - atZ;

    // Where the lens looks, in the room, and the subject as a head has it that turns with the arm.
    let lookX = sinB * cosE;
    let lookY = cosB * cosE;
    let lookZ = sinE;
    if (turnsHead) {
      const along = lookX * riseX + lookZ * riseZ;
      const more = along * cosA + lookY * sinA - along;
      lookY = lookY * cosA - along * sinA;
      lookX += more * riseX;
      lookZ += more * riseZ;
      const alongIt = right * riseX + above * riseZ;
      const less = alongIt * cosA - forward * sinA - alongIt;
      forward = forward * cosA + alongIt * sinA;
      right += less * riseX;
      above += less * riseZ;
    }

    // In the image: level towards the lens's bearing, then up or down to its elevation, then rolled.
    const level = right * sinB + forward * cosB;
    const ahead = level * cosE + above * sinE;
    const scale = focal / ahead;
    const across = right * cosB - forward * sinB;
    const upright = above * cosE - level * sinE;
    const imageX = (across * cosR - upright * sinR) * scale;
    const imageY = (upright * cosR + across * sinR) * scale;
    const isAhead = ahead > nearest;
    const shown =
      isAhead && imageX <= halfWidth && imageX >= -halfWidth && imageY <= halfHeight && imageY >= -halfHeight;
    if (!shown && k >= from) outOfSight += 1;

    if (k > first) {
      const dx = imageX - xBefore;
      const dy = imageY - yBefore;
      const moved = shownBefore ? (isAhead ? Math.sqrt(dx * dx + dy * dy) : width) : 0;
      if (moved > mostSubject) mostSubject = moved;
      subjectPx[k - 1] = moved;
      const farX = pointX - atX;
      const farY = pointY - atY;
      const farZ = pointZ - atZ;
      const farAhead = farX * lookX + farY * lookY + farZ * lookZ;
      const crossX = farY * lookZ - farZ * lookY;
      const crossY = farZ * lookX - farX * lookZ;
      const crossZ = farX * lookY - farY * lookX;
      const off = Math.sqrt(crossX * crossX + crossY * crossY + crossZ * crossZ);
      const passed = farAhead > nearest ? (focal / farAhead) * off : width;
      if (passed > mostBackground) mostBackground = passed;
      backgroundPx[k - 1] = passed;
    }
    shownBefore = shown;
    xBefore = imageX;
    yBefore = imageY;
    pointX = atX + far * lookX;
    pointY = atY + far * lookY;
    pointZ = atZ + far * lookZ;
  }
  most[0] = mostSubject;
  most[1] = mostBackground;
  return outOfSight;
}

/**
 * How far the picture shifts when an axis rings.
 *
 * Sources: pinhole projection; the slope at the tip of a cantilever loaded there is 1.5 times its deflection over its
 * length (Gere & Timoshenko, Mechanics of Materials, app. on beams: P L^2 / 2EI to P L^3 / 3EI; from memory).
 */
import { focalPx, geometryOf, lensAt, type Stance, subjectAt } from '../path/pose.ts';
import type { Axis, Plan } from '../plan/schema.ts';

const DEG = Math.PI / 180;
const AT_REST: Stance = { boom: 0, slide: 0, pan: 0, tilt: 0, roll: 0, turntable: 0 };

/** Millimetres from the lens, all axes at 0, to the subject. */
export function subjectMm(plan: Plan): number {
  const geometry = geometryOf(plan);
  const lens = lensAt(geometry, AT_REST);
  const { x, y, z } = subjectAt(geometry, AT_REST);
  const distance = Math.hypot(x - lens.x, y - lens.y, z - lens.z);
  // Nearer than its focal length no lens makes a picture of anything.
  return Math.max(distance, plan.camera.focalLengthMm);
}

/** Pixels for a millimetre by which the camera sways: it nods, and it is elsewhere. */
function swayPx(plan: Plan): number {
  const nod = 1.5 / plan.ringing.flexMm;
  const elsewhere = plan.subject.used ? 1 / subjectMm(plan) : 0;
  return focalPx(plan.camera) * (nod + elsewhere);
}

/**
 * Shift of the picture for each unit (mm or degree) that an axis goes.
 * @returns px a unit; null where nobody knows: of a turntable, and without a subject of an axis that carries the lens
 */
export function pixelsPassed(plan: Plan, axis: Axis): number | null {
  if (axis.kind === 'turntable' || axis.kind === 'focus') return null;
  if (axis.kind !== 'boom' && axis.kind !== 'slide') return pixelsPerUnit(plan, axis);
  if (!plan.subject.used) return null;
  const mmAUnit = axis.kind === 'boom' && axis.unit === 'deg' ? plan.rig.arm.lengthMm * DEG : 1;
  return (focalPx(plan.camera) / subjectMm(plan)) * mmAUnit;
}

/**
 * Shift of the picture for each unit (mm or degree) of an axis's ring.
 * @returns px a unit: at the centre for pan and tilt, at the edges of the width for roll; 0 for the axes that do not
 *   shake the camera
 */
export function pixelsPerUnit(plan: Plan, axis: Axis): number {
  switch (axis.kind) {
    case 'pan':
    case 'tilt':
      return focalPx(plan.camera) * DEG;
    case 'roll':
      return (plan.camera.imageWidthPx / 2) * DEG;
    case 'boom':
      return swayPx(plan) * (axis.unit === 'deg' ? plan.rig.arm.lengthMm * DEG : 1);
    case 'slide':
      return swayPx(plan);
    case 'turntable':
    case 'focus':
      return 0;
  }
}

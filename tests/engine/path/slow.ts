/** The slow way round: every frame by itself. */
import { type Pose, poseAt, seenFrom } from '../../../src/engine/path/camera-pose.ts';
import {
  focalPx,
  type Geometry,
  geometryOf,
  type StepColumns,
  stanceAt,
  subjectAt,
  type Vector,
} from '../../../src/engine/path/pose.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';

/** The camera and the subject at every frame. */
export function posesOf(plan: Plan, axes: readonly StepColumns[], frames: number) {
  const geometry: Geometry = geometryOf(plan);
  return Array.from({ length: frames }, (_, k) => {
    const stance = stanceAt(plan, axes, k);
    return { pose: poseAt(geometry, stance), subject: subjectAt(geometry, stance) };
  });
}

/** A point in the image, px from its centre to the right and up; null if it is not a millimetre ahead. */
export function inImage(plan: Plan, pose: Pose, point: Vector): { x: number; y: number } | null {
  const { x, y, z } = seenFrom(pose, point);
  const scale = focalPx(plan.camera) / z;
  return z > 1 ? { x: x * scale, y: y * scale } : null;
}

/** What the camera sees of subject and background at every frame, each projected by itself. */
import type { Judged } from '../judged.ts';
import {
  actingAxis,
  ahead,
  focalPxOf,
  type Kind,
  norm,
  positionsAt,
  type SlowPose,
  seen,
  slowPose,
  slowSubject,
  type Vector,
} from './camera.ts';

/** Nearer to the lens than this, mm, nothing is in the picture. */
const NEAREST = 1;

export interface SlowImage {
  pose: SlowPose;
  /** The subject as the camera has it, mm: right, ahead, up. */
  subject: Vector;
  /** Pixels until the next frame; null where it hangs on a rounding. */
  subjectPx: number | null;
  backgroundPx: number | null;
  /** Pixels from the middle of the picture; at most those of 89 degrees. */
  offPx: number;
}

const KINDS: readonly Kind[] = ['boom', 'slide', 'pan', 'tilt', 'roll', 'turntable'];

/** Whether the rig has an axis that moves or turns the lens, or the subject. */
export const takesPart = ({ plan }: Judged): boolean =>
  KINDS.some((kind) => actingAxis(plan, kind) !== undefined);

const pictureOf = ([right, forward, up]: Vector, focal: number): readonly [number, number] => [
  (focal * right) / forward,
  (focal * up) / forward,
];

function offPx([right, forward, up]: Vector, focal: number): number {
  const side = Math.hypot(right, up);
  const most = focal * Math.tan((89 * Math.PI) / 180);
  return forward > 0 ? Math.min(most, (focal * side) / forward) : most;
}

/** 'in' or 'out' of the picture, or on its edge. */
function whereIs(point: Vector, { plan }: Judged): 'in' | 'out' | 'edge' {
  const [x, y] = pictureOf(point, focalPxOf(plan));
  const share = Math.max(
    Math.abs(x) / (plan.camera.imageWidthPx / 2),
    Math.abs(y) / (plan.camera.imageHeightPx / 2),
  );
  const forward = point[1];
  if (Math.abs(forward - NEAREST) < 1e-6 * (1 + norm(point))) return 'edge';
  if (forward < NEAREST) return 'out';
  return Math.abs(share - 1) < 1e-6 ? 'edge' : share < 1 ? 'in' : 'out';
}

/** Pixels between a point before and after; one width if it has left for behind the lens. */
function movedPx(before: Vector, after: Vector, { plan }: Judged): number | null {
  if (Math.abs(after[1] - NEAREST) < 1e-6 * (1 + norm(after))) return null;
  if (after[1] < NEAREST) return plan.camera.imageWidthPx;
  const [a, b] = [pictureOf(before, focalPxOf(plan)), pictureOf(after, focalPxOf(plan))];
  return Math.hypot(b[0] - a[0], b[1] - a[1]);
}

export function slowImages(judged: Judged): SlowImage[] {
  const { plan, run } = judged;
  const far = plan.subject.backgroundM * 1000;
  const at = Array.from({ length: run.totals.frames }, (_, k) => {
    const positions = positionsAt(plan, run.columns.axes, k);
    const pose = slowPose(plan, positions);
    const place = slowSubject(plan, positions);
    return { pose, subject: seen(pose, place) };
  });
  return at.map(({ pose, subject }, k) => {
    const next = at[k + 1];
    const base = { pose, subject, offPx: offPx(subject, focalPxOf(plan)) };
    if (!next) return { ...base, subjectPx: 0, backgroundPx: 0 };
    const where = whereIs(subject, judged);
    const point = ahead(pose, far);
    const moved = movedPx(subject, next.subject, judged);
    return {
      ...base,
      subjectPx: where === 'edge' ? null : where === 'out' ? 0 : moved,
      backgroundPx: movedPx(seen(pose, point), seen(next.pose, point), judged),
    };
  });
}

/** Off the middle by no more than whole steps explain, or by less than a pixel. */
export function excusedPx({ plan, run }: Judged): number {
  const steps = (['pan', 'tilt'] as const).map((kind) => {
    const axis = actingAxis(plan, kind);
    const columns = run.columns.axes.find(({ name }) => name === axis?.name);
    return axis && columns ? Math.PI / 180 / columns.stepsPerUnit : 0;
  });
  return Math.max(1, focalPxOf(plan) * Math.tan(Math.min(1, Math.hypot(...steps))));
}

export const distanceTo = (image: SlowImage): number => norm(image.subject);

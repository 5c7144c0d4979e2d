/** Lines of the two views, as SVG paths. */
import type { Vector } from '../../engine/path/pose.ts';
import type { Spot } from '../charts/names.ts';
import type { View } from './layout.ts';
import type { Standing } from './standing.ts';

const pen = (value: number): string => value.toFixed(1);

export const lineOf = (spots: readonly Spot[]): string =>
  `M${spots.map(({ x, y }) => `${pen(x)} ${pen(y)}`).join('L')}`;

/** A line through points of the room. */
export const through = (view: View, points: readonly Vector[]): string =>
  lineOf(points.map((point) => view.at(point)));

/** Points nearer together than this are drawn as one. */
const FINE_PX = 0.7;

/** A long way through the room: without the points that nobody could tell apart. */
export function wayOf(view: View, points: readonly Vector[]): string {
  const spots = points.map((point) => view.at(point));
  let before: Spot | null = null;
  const kept = spots.filter((spot, n) => {
    const far = before === null || Math.hypot(spot.x - before.x, spot.y - before.y) >= FINE_PX;
    if (far) before = spot;
    return far || n === spots.length - 1;
  });
  return lineOf(kept);
}

/** What the camera sees across its image from above, and up and down from the side: a triangle. */
export const fieldOf = (view: View, { pose, across, upright }: Standing): string =>
  `${through(view, [pose.position, ...(view.id === 'side' ? upright : across)])}Z`;

/** Less of the lens's direction than this lies in the page: it looks at the reader, or away. */
const FORESHORTENED = 0.15;

/** How the camera lies on the page: degrees clockwise from the right; null if it looks at the reader or away. */
export function cameraAngle(view: View, { pose: { direction } }: Standing): number | null {
  const origin = view.at({ x: 0, y: 0, z: 0 });
  const [ahead, unit] = [view.at(direction), view.at({ x: 0, y: 1, z: 0 })];
  const [dx, dy] = [ahead.x - origin.x, ahead.y - origin.y];
  if (Math.hypot(dx, dy) < FORESHORTENED * (unit.x - origin.x)) return null;
  return (Math.atan2(dy, dx) * 180) / Math.PI;
}

/** Short strokes under a floor. */
export function floorStrokes(left: number, right: number, y: number): string {
  const strokes = Math.floor((right - left) / 9);
  return Array.from({ length: strokes }, (_, n) => `M${pen(left + 9 * n + 8)} ${pen(y)}l-6 6`).join('');
}

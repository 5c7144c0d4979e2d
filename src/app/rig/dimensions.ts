/** Dimension lines of the camera's path: what a legend would have to say, said in place. */
import type { PathSummary } from '../../engine/path/path.ts';
import type { Vector } from '../../engine/path/pose.ts';
import type { Spot } from '../charts/names.ts';
import type { Layout, View } from './layout.ts';
import { millimetres } from './rigText.ts';
import { lineOf } from './shapes.ts';
import { distance, plus } from './standing.ts';

/** A line with its ends marked, and what it measures. */
export interface Dimension {
  view: View['id'];
  line: string;
  text: string;
  /** Whether the text stands on its own line, and so interrupts it. */
  interrupts: boolean;
  /** Where the text may stand, the best place first: its middle, and its foot. */
  spots: readonly Spot[];
}

/** Shorter lines have no room for their ends. */
const SHORTEST_PX = 5;
/** Half of an end mark. */
const TICK_PX = 4;
/** Nearer together, two ends of a path are one. */
const BACK_MM = 1e-6;
/** From the path to the line beside it. */
const ASIDE_PX = 22;

const apart = (a: Spot, b: Spot): number => Math.hypot(b.x - a.x, b.y - a.y);

/** A line between two spots with a mark across each end. */
function measured(a: Spot, b: Spot): string {
  const length = apart(a, b);
  const [nx, ny] = [(-(b.y - a.y) / length) * TICK_PX, ((b.x - a.x) / length) * TICK_PX];
  const tick = ({ x, y }: Spot) =>
    lineOf([
      { x: x - nx, y: y - ny },
      { x: x + nx, y: y + ny },
    ]);
  return lineOf([a, b]) + tick(a) + tick(b);
}

const vector = ({ rightMm, forwardMm, heightMm }: PathSummary['first']): Vector => ({
  x: rightMm,
  y: forwardMm,
  z: heightMm,
});

const middleOf = (a: Spot, b: Spot): Spot => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });

/** From the lowest to the highest, upright beside the path. */
function rise(view: View, path: readonly Vector[], { lowest, highest, riseMm }: PathSummary): Dimension[] {
  const [low, high] = [view.at(vector(lowest)), view.at(vector(highest))];
  if (low.y - high.y < SHORTEST_PX) return [];
  const x = Math.max(...path.map((point) => view.at(point).x)) + ASIDE_PX;
  const [foot, head] = [
    { x, y: low.y },
    { x, y: high.y },
  ];
  const stems = lineOf([low, foot]) + lineOf([high, head]);
  const text = `Rise ${millimetres(riseMm)}`;
  const half = 3.3 * text.length;
  const y = (low.y + high.y) / 2 + 4;
  return [
    {
      view: view.id,
      line: measured(foot, head) + stems,
      text,
      interrupts: false,
      spots: [
        { x: x + half + 7, y },
        { x: x + half + 7, y: low.y + 14 },
        { x, y: high.y - 8 },
      ],
    },
  ];
}

/** The point of the path that is farthest from the upright through the pivot. */
const farthestOf = (path: readonly Vector[]): Vector =>
  path.reduce((a, b) => (Math.hypot(b.x, b.y) > Math.hypot(a.x, a.y) ? b : a));

/** From the pivot's upright to the farthest that the lens gets, where the view shows it in its true length. */
function reach(
  { side, top, pxPerMm }: Layout,
  path: readonly Vector[],
  { reachMm }: PathSummary,
): Dimension[] {
  if (reachMm * pxPerMm < SHORTEST_PX) return [];
  const tip = farthestOf(path);
  const inSide = Math.abs(tip.y) > 0.98 * reachMm;
  const view = inSide ? side : top;
  const level = inSide ? 0 : tip.z;
  const [from, to] = [view.at({ x: 0, y: 0, z: level }), view.at({ ...tip, z: level })];
  // From the side just under the floor; from above along the arm itself.
  const y = inSide ? 18 : 0;
  const [a, b] = [from, to].map((spot) => ({ x: spot.x, y: spot.y + y })) as [Spot, Spot];
  const middle = middleOf(a, b);
  return [
    {
      view: view.id,
      line: measured(a, b),
      text: `Reach ${millimetres(reachMm)}`,
      interrupts: true,
      spots: [0, 0.25, -0.25].map((by) => ({
        x: middle.x + by * (b.x - a.x),
        y: middle.y + by * (b.y - a.y) + 4,
      })),
    },
  ];
}

/** Foot of the upright from a point onto the line through two others. */
function footOn(point: Vector, from: Vector, to: Vector): Vector {
  const along = plus(to, from, -1);
  const away = plus(point, from, -1);
  const dot = along.x * away.x + along.y * away.y + along.z * away.z;
  return plus(from, along, dot / distance(from, to) ** 2);
}

/** The far end of the straight line that a path is held against: where it ends, or turns back. */
function chordEnd(path: readonly Vector[]): Vector {
  const [first, last] = [path[0] as Vector, path.at(-1) as Vector];
  if (distance(first, last) > BACK_MM) return last;
  return path.reduce((a, b) => (distance(first, b) > distance(first, a) ? b : a));
}

/** Where the path is farthest from the straight line between its ends. */
function deviation(
  { side, top }: Layout,
  path: readonly Vector[],
  { deviationMm }: PathSummary,
): Dimension[] {
  const [first, last] = [path[0] as Vector, chordEnd(path)];
  if (deviationMm < 0.5 || distance(first, last) < BACK_MM) return [];
  const uprights = path.map((point) => {
    const foot = footOn(point, first, last);
    return { point, foot, mm: distance(point, foot) };
  });
  const { point, foot } = uprights.reduce((a, b) => (b.mm > a.mm ? b : a));
  const lengthIn = (view: View) => apart(view.at(point), view.at(foot));
  const view = lengthIn(side) >= lengthIn(top) ? side : top;
  if (lengthIn(view) < SHORTEST_PX) return [];
  const [a, b] = [view.at(foot), view.at(point)];
  const text = `${millimetres(deviationMm)} off straight`;
  const half = 3.3 * text.length;
  return [
    {
      view: view.id,
      line: measured(a, b) + lineOf([view.at(first), view.at(last)]),
      text,
      interrupts: false,
      spots: [
        { x: a.x - half - 8, y: a.y + 4 },
        { x: a.x - half - 8, y: a.y + 22 },
        { x: a.x - half - 8, y: a.y - 14 },
        { x: b.x + half + 8, y: b.y + 4 },
      ],
    },
  ];
}

/** The dimension lines that there is room for. */
export const dimensionsOf = (layout: Layout, path: readonly Vector[], summary: PathSummary): Dimension[] => [
  ...rise(layout.side, path, summary),
  ...reach(layout, path, summary),
  ...deviation(layout, path, summary),
];

/** Where the side view and the top view lie: one scale, forward to the right in both. No DOM. */
import type { Vector } from '../../engine/path/pose.ts';
import type { Spot } from '../charts/names.ts';
import type { DrawnRig } from './standing.ts';

/** One view, pixels of the layout. */
export interface View {
  id: 'side' | 'top';
  left: number;
  top: number;
  width: number;
  height: number;
  /** Where a point of the room is drawn. */
  at: (point: Vector) => Spot;
}

export interface Layout {
  width: number;
  height: number;
  pxPerMm: number;
  /** From the right side of the rig. */
  side: View;
  /** From above: what is to the right of the rig lies lower. */
  top: View;
}

/** Lowest and highest of a coordinate, mm. */
type Range = readonly [number, number];

/** Room about the drawn things for names and dimension lines. */
const PAD = { x: 56, top: 32, bottom: 30 };
const PAD_Y = PAD.top + PAD.bottom;
/** Heights of a layout with the views under each other, and beside each other. */
const MOST_HEIGHT = { under: 540, beside: 400 };
/** Narrower sheets have their views under each other. */
const WIDE_PX = 560;
/** A view of something flat still has room for its names. */
const LEAST_MM = 240;

const rangeOf = (values: readonly number[]): Range => {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const more = Math.max(0, LEAST_MM - (high - low)) / 2;
  return [low - more, high + more];
};

const size = ([low, high]: Range): number => high - low;

/** Every point that has to be on the layout. */
function framed({ path, first, last, feetMm, rail, table, pivotMm }: DrawnRig): Vector[] {
  const ends = [first, last].flatMap(({ base, rear, subject, across, upright }) => [
    base,
    rear,
    subject,
    ...across,
    ...upright,
  ]);
  const feet = [-1, 1].flatMap((side) => [
    { x: side * (feetMm ?? 0), y: 0, z: 0 },
    { x: 0, y: side * (feetMm ?? 0), z: 0 },
  ]);
  const pivot = { x: 0, y: 0, z: pivotMm };
  return [...path, ...feet, pivot, ...ends, ...(rail ?? []), table?.middle ?? null].filter(
    (point) => point !== null,
  );
}

interface Extent {
  across: Range;
  ahead: Range;
  above: Range;
}

const extentOf = (rig: DrawnRig): Extent => {
  const points = framed(rig);
  return {
    across: rangeOf(points.map(({ x }) => x)),
    ahead: rangeOf(points.map(({ y }) => y)),
    above: rangeOf(points.map(({ z }) => z)),
  };
};

/** Scale with the views under each other, and beside each other. */
function scales({ across, ahead, above }: Extent, width: number) {
  const [wide, high, deep] = [size(ahead), size(above), size(across)];
  return {
    under: Math.min((width - 2 * PAD.x) / wide, (MOST_HEIGHT.under - 2 * PAD_Y) / (high + deep)),
    beside: Math.min((width - 4 * PAD.x) / (2 * wide), (MOST_HEIGHT.beside - PAD_Y) / Math.max(high, deep)),
  };
}

type Place = Omit<View, 'at' | 'id'>;

function viewOf(id: View['id'], place: Place, { across, ahead, above }: Extent, pxPerMm: number): View {
  const rows = id === 'side' ? above : across;
  const middle = { x: (ahead[0] + ahead[1]) / 2, y: (rows[0] + rows[1]) / 2 };
  const x0 = place.left + place.width / 2;
  const y0 = place.top + PAD.top + (place.height - PAD_Y) / 2;
  // Up is up from the side; from above, the rig's right lies lower.
  const sign = id === 'side' ? -1 : 1;
  return {
    id,
    ...place,
    at: ({ x, y, z }) => ({
      x: x0 + (y - middle.x) * pxPerMm,
      y: y0 + sign * ((id === 'side' ? z : x) - middle.y) * pxPerMm,
    }),
  };
}

/** The layout of a rig, as wide as it may be. */
export function layoutOf(rig: DrawnRig, width: number): Layout {
  const extent = extentOf(rig);
  const { under, beside } = scales(extent, width);
  const isBeside = width >= WIDE_PX && beside > under;
  const pxPerMm = isBeside ? beside : under;
  const heights = [extent.above, extent.across].map((rows) => size(rows) * pxPerMm + PAD_Y) as [
    number,
    number,
  ];
  const tallest = Math.max(...heights);
  const places: [Place, Place] = isBeside
    ? [
        { left: 0, top: 0, width: width / 2, height: tallest },
        { left: width / 2, top: 0, width: width / 2, height: tallest },
      ]
    : [
        { left: 0, top: 0, width, height: heights[0] },
        { left: 0, top: heights[0], width, height: heights[1] },
      ];
  return {
    width,
    height: isBeside ? tallest : heights[0] + heights[1],
    pxPerMm,
    side: viewOf('side', places[0], extent, pxPerMm),
    top: viewOf('top', places[1], extent, pxPerMm),
  };
}

/** The room behind the pane from above, to scale: wall and pane at the top, the room below. No DOM. */
import type { Plan } from '../../engine/plan/schema.ts';
import type { Patch } from '../../engine/sky/pane.ts';
import { cornersOf, type FloorPoint } from '../../engine/sky/patch.ts';

type Pane = Plan['pane'];

/** Where the drawing puts things, in its own units. */
export interface Room {
  width: number;
  height: number;
  /** Inner face of the wall. */
  wallY: number;
  /** Inner face of the opposite wall; null if it lies beyond the drawing. */
  backY: number | null;
  unitsPerMm: number;
  x: (alongMm: number) => number;
  y: (intoMm: number) => number;
}

/** A rectangle, in drawing units. */
export interface Rectangle {
  x: number;
  y: number;
  width: number;
  height: number;
}

const WIDTH = 348;
/** Room over the wall for words. */
const TOP = 30;
/** How thick a wall is drawn. */
export const WALL = 7;
/** No taller than this: a deep room becomes narrow instead. */
const MOST_HEIGHT = 250;

/** How far into the room is drawn: all of it, or as far as set, pane and head go three times. */
const depthOf = ({ roomDepthMm, setFarMm, widthMm, headMm }: Pane): number =>
  Math.min(roomDepthMm, 3 * Math.max(setFarMm, widthMm, headMm));

/** Half the wall that is drawn. */
const halfOf = ({ widthMm, setLeftMm, setRightMm }: Pane, depthMm: number): number =>
  Math.max(0.7 * depthMm, 1.15 * Math.max(widthMm / 2, Math.abs(setLeftMm), Math.abs(setRightMm)));

/** The drawing of a pane's room, whatever the sun does. */
export function roomOf(pane: Pane): Room {
  const depthMm = depthOf(pane);
  const unitsPerMm = Math.min(WIDTH / (2 * halfOf(pane, depthMm)), (MOST_HEIGHT - TOP - WALL) / depthMm);
  const y = (intoMm: number) => TOP + intoMm * unitsPerMm;
  return {
    width: WIDTH,
    height: y(depthMm) + WALL,
    wallY: TOP,
    backY: depthMm < pane.roomDepthMm ? null : y(depthMm),
    unitsPerMm,
    x: (alongMm) => WIDTH / 2 + alongMm * unitsPerMm,
    y,
  };
}

const pen = (value: number): string => value.toFixed(1);

const lineOf = ({ x, y }: Room, points: readonly FloorPoint[]): string =>
  points.map(({ alongMm, intoMm }) => `${pen(x(alongMm))} ${pen(y(intoMm))}`).join('L');

/** Outline of a patch. */
export const patchLine = (room: Room, pane: Pane, patch: Patch): string =>
  `M${lineOf(room, cornersOf(pane, patch))}Z`;

/** The edges of the sun's way over the floor, from the sides of the pane to the patch. */
export function rayLines(room: Room, pane: Pane, { nearMm, skew }: Patch): string {
  const [left, right, rightEnd, leftEnd] = cornersOf(pane, { nearMm: 0, farMm: nearMm, skew });
  return [
    [left, leftEnd],
    [right, rightEnd],
  ]
    .map((ends) => `M${lineOf(room, ends as FloorPoint[])}`)
    .join('');
}

/** The set. */
export const setRectangle = (
  { x, y, unitsPerMm }: Room,
  { setLeftMm, setRightMm, setNearMm, setFarMm }: Pane,
): Rectangle => ({
  x: x(setLeftMm),
  y: y(setNearMm),
  width: Math.max(0, setRightMm - setLeftMm) * unitsPerMm,
  height: Math.max(0, setFarMm - setNearMm) * unitsPerMm,
});

/** A round length that takes a quarter of the drawing at most, millimetres: 1, 2 or 5 times a power of ten. */
export function scaleBarMm({ width, unitsPerMm }: Pick<Room, 'width' | 'unitsPerMm'>): number {
  const mostMm = width / 4 / unitsPerMm;
  const power = 10 ** Math.floor(Math.log10(mostMm));
  return ([5, 2].find((times) => times * power <= mostMm) ?? 1) * power;
}

/** The rig's two views, worked out for one width: what is drawn in them and what is written where. No DOM. */
import type { PathSummary } from '../../engine/path/path.ts';
import type { Vector } from '../../engine/path/pose.ts';
import { type Box, boxOf, type PlacedName, type Spot, textWidth } from '../charts/names.ts';
import { dimensionsOf } from './dimensions.ts';
import { named, type Wanted, wantedNames } from './labels.ts';
import { type Layout, layoutOf, type View } from './layout.ts';
import { cameraAngle, fieldOf, lineOf, through, wayOf } from './shapes.ts';
import type { DrawnRig, Standing } from './standing.ts';

/** The camera at one frame, in one view. */
export interface DrawnCamera {
  /** Of the lens, pixels. */
  at: Spot;
  /** Degrees clockwise from the right; null if it looks at the reader or away. */
  angle: number | null;
  /** Outline of what it sees, and the line that it looks along. */
  field: string;
  sight: string;
  /** From the rear end, or the pivot, to the lens; empty without an arm. */
  arm: string;
  counterweight: Spot | null;
}

/** One view with everything in it that stays as it is while the cursor moves. */
export interface Plate {
  view: View;
  caption: string;
  path: string;
  first: DrawnCamera;
  /** null where the rig ends as it began. */
  last: DrawnCamera | null;
  /** Post and legs, from the side. */
  post: string;
  /** Height of the floor, from the side; null if it is seen from above. */
  floorY: number | null;
  /** Circle of the feet, from above. */
  feet: { at: Spot; radius: number } | null;
  rail: string;
  /** Way of the subject around the turntable, from above. */
  table: { at: Spot; radius: number } | null;
  pivot: Spot;
  subject: Spot | null;
  dimensions: string[];
  names: PlacedName[];
  /** Texts that interrupt their dimension lines. */
  measures: PlacedName[];
  /** What is written already: other names keep clear of it. */
  taken: readonly Box[];
}

export interface RigDrawing {
  layout: Layout;
  plates: readonly [Plate, Plate];
}

const CAPTIONS = { side: 'From its right side', top: 'From above' } as const;

/** A standing rig in a view. */
export function drawnCamera(view: View, rig: DrawnRig, standing: Standing): DrawnCamera {
  const { pose, base, rear, ahead } = standing;
  return {
    at: view.at(pose.position),
    angle: cameraAngle(view, standing),
    field: fieldOf(view, standing),
    sight: through(view, [pose.position, ahead]),
    arm: rig.hasArm ? through(view, [rear ?? base, pose.position]) : '',
    counterweight: rear && view.at(rear),
  };
}

const onFloor = (point: Vector): Vector => ({ ...point, z: 0 });

function postOf(view: View, { feetMm }: DrawnRig, pivot: Vector): string {
  if (view.id === 'top') return '';
  const post = through(view, [pivot, onFloor(pivot)]);
  if (feetMm === null) return post;
  const fork = { ...pivot, z: pivot.z * 0.8 };
  const foot = (side: number) => ({ x: 0, y: side * feetMm, z: 0 });
  return post + through(view, [foot(-1), fork, foot(1)]);
}

/** Room that a camera takes. */
const cameraBox = ({ x, y }: Spot): Box => ({ left: x - 9, right: x + 9, top: y - 8, bottom: y + 8 });

const sameStanding = (a: Standing, b: Standing): boolean =>
  [a.pose.position, a.ahead].every((point, i) => {
    const other = [b.pose.position, b.ahead][i] as Vector;
    return Math.hypot(point.x - other.x, point.y - other.y, point.z - other.z) < 0.5;
  });

function plateOf(layout: Layout, view: View, rig: DrawnRig, summary: PathSummary | null): Plate {
  const { path, first, last, rail, table, feetMm } = rig;
  const ends = !sameStanding(first, last);
  const pivot = { x: 0, y: 0, z: rig.pivotMm };
  const caption = CAPTIONS[view.id];
  const dimensions = summary
    ? dimensionsOf(layout, path, summary).filter((dimension) => dimension.view === view.id)
    : [];
  const taken: Box[] = [
    boxOf(view.left + textWidth(caption) / 2, view.top + 16, textWidth(caption)),
    ...[first, ...(ends ? [last] : [])].map(({ pose }) => cameraBox(view.at(pose.position))),
  ];
  const place = (wanted: readonly Wanted[]) =>
    wanted.flatMap(([text, spots]) => named(view, text, spots, taken) ?? []);
  const texts = (interrupts: boolean): Wanted[] =>
    dimensions.filter((d) => d.interrupts === interrupts).map(({ text, spots }) => [text, spots]);
  const measures = place(texts(true));
  const names = place([...texts(false), ...wantedNames(view, rig, ends)]);
  return {
    view,
    caption,
    path: wayOf(view, path),
    first: drawnCamera(view, rig, first),
    last: ends ? drawnCamera(view, rig, last) : null,
    post: postOf(view, rig, pivot),
    floorY: view.id === 'side' ? view.at({ x: 0, y: 0, z: 0 }).y : null,
    feet:
      view.id === 'top' && feetMm !== null
        ? { at: view.at({ x: 0, y: 0, z: 0 }), radius: feetMm * layout.pxPerMm }
        : null,
    rail: rail ? lineOf(rail.map(view.at)) : '',
    table:
      view.id === 'top' && table
        ? { at: view.at(table.middle), radius: Math.max(4, table.radiusMm * layout.pxPerMm) }
        : null,
    pivot: view.at(pivot),
    subject: first.subject && view.at(first.subject),
    dimensions: dimensions.map(({ line }) => line),
    names,
    measures,
    taken,
  };
}

/**
 * Both views of a rig.
 * @param summary - of the path; null if nothing is known of it
 * @param width - of the layout, px
 */
export function rigDrawing(rig: DrawnRig, summary: PathSummary | null, width: number): RigDrawing {
  const layout = layoutOf(rig, width);
  return {
    layout,
    plates: [plateOf(layout, layout.side, rig, summary), plateOf(layout, layout.top, rig, summary)],
  };
}

/** What has a name in a view of the rig, and where it is written. */
import type { Vector } from '../../engine/path/pose.ts';
import { type Box, type PlacedName, placeText, type Spot, textWidth } from '../charts/names.ts';
import type { View } from './layout.ts';
import { lengthText } from './rigText.ts';
import type { DrawnRig, Standing } from './standing.ts';

/** A text, and where it may stand, the best place first. */
export type Wanted = readonly [text: string, spots: readonly Spot[]];

/** Places around a spot for a text of that width, the best first. */
export function spotsAround({ x, y }: Spot, text: string): Spot[] {
  const half = textWidth(text) / 2;
  return [
    { x: x + half + 12, y: y - 6 },
    { x: x - half - 12, y: y - 6 },
    { x, y: y - 14 },
    { x, y: y + 24 },
    { x: x + half + 12, y: y + 16 },
    { x: x - half - 12, y: y + 16 },
    { x: x + half + 16, y: y - 22 },
    { x: x - half - 16, y: y - 22 },
  ];
}

/** Those of some spots at which a text stays in its view. */
const within = ({ left, top, width, height }: View, text: string, spots: readonly Spot[]): Spot[] => {
  const half = textWidth(text) / 2;
  return spots.filter(
    ({ x, y }) => x - half >= left && x + half <= left + width && y - 11 >= top && y + 4 <= top + height,
  );
};

/** A name at one of some spots, if one is free; it is taken then. */
export const named = (view: View, text: string, spots: readonly Spot[], taken: Box[]): PlacedName | null =>
  placeText(text, within(view, text, spots), [], taken);

function about(view: View, text: string, point: Vector | null): Wanted[] {
  return point ? [[text, spotsAround(view.at(point), text)]] : [];
}

/** How far the subject is away, on the line that the lens looks along. */
function away(view: View, { pose, ahead, subject, subjectMm }: Standing): Wanted[] {
  if (subjectMm === null) return [];
  const [a, b] = [view.at(pose.position), view.at(ahead)];
  const length = lengthText(subjectMm);
  const spot = { x: (a.x + 2 * b.x) / 3, y: (a.y + 2 * b.y) / 3 + 4 };
  return [[subject ? length : `Subject ${length} away`, [spot]]];
}

/** What is named in both views; the more important first. */
function ofRig(view: View, { first, last, rail }: DrawnRig, ends: boolean): Wanted[] {
  return [
    ...about(view, ends ? 'First' : 'First and last', first.pose.position),
    ...(ends ? about(view, 'Last', last.pose.position) : []),
    ...about(view, 'Subject', first.subject),
    ...about(view, 'Counterweight', first.rear),
    ...about(view, 'Slide', rail?.[1] ?? null),
  ];
}

/**
 * All names of a view.
 * @param ends - whether the rig ends elsewhere than it began
 */
export function wantedNames(view: View, rig: DrawnRig, ends: boolean): Wanted[] {
  const { first, last, table, feetMm, pivotMm, hasArm } = rig;
  const own =
    view.id === 'side'
      ? [
          ...away(view, first),
          ...(ends ? away(view, last) : []),
          ...about(view, 'Pivot', hasArm ? { x: 0, y: 0, z: pivotMm } : null),
        ]
      : [
          ...about(view, 'Turntable', table?.middle ?? null),
          ...about(view, 'Feet', feetMm === null ? null : { x: 0, y: -feetMm, z: 0 }),
        ];
  return [...ofRig(view, rig, ends), ...own];
}

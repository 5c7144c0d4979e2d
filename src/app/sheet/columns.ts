/** Columns of the exposure sheet. */
import type { Plan } from '../../engine/plan/schema.ts';
import type { Sheet, SheetAxis } from '../../engine/sheet/types.ts';
import { positionText, rangeOf } from './cells.ts';

export type ColumnKind =
  | 'exposure'
  | 'frames'
  | 'timecode'
  | 'text'
  | 'hold'
  | 'passes'
  | 'cues'
  | 'axis'
  | 'clock'
  | 'done'
  /** What happens with all that belongs to it, in two lines: for narrow screens. */
  | 'what';

export interface Column {
  id: string;
  kind: ColumnKind;
  heading: string;
  /** Least width, pixels. */
  widthPx: number;
  /** Takes what room is left. */
  grows?: boolean;
  /** Index of the axis, for those of the rig. */
  axis?: number;
}

/** Kinds of cell that can be edited, by the kind of their row. */
export const EDITABLE: Readonly<Record<'shot' | 'action' | 'exposure', readonly ColumnKind[]>> = {
  shot: ['text', 'what'],
  action: ['text', 'what', 'frames', 'hold', 'passes'],
  exposure: ['text', 'what', 'hold', 'passes', 'cues', 'axis'],
};

const DIGIT_PX = 8.6;
const PAD_PX = 16;

const digitsPx = (value: number, more = 0): number =>
  Math.ceil((String(value).length + more) * DIGIT_PX) + PAD_PX;

/** Beside its figure: the traced line, the side it arrives from, and the room between. */
const TRACED_PX = 92;

/** An axis is as wide as its longest figure asks for. */
function axisColumn(axis: SheetAxis, index: number): Column {
  const { low, high } = rangeOf(axis);
  const ends = [low, high].map((steps) => positionText(axis, steps / axis.stepsPerUnit).length);
  return {
    id: `axis:${axis.name}`,
    kind: 'axis',
    heading: `${axis.name}, ${axis.unit}`,
    widthPx: Math.max(136, TRACED_PX + Math.ceil(Math.max(...ends) * DIGIT_PX)),
    axis: index,
  };
}

/** Below this width of the table its rows have two lines each. */
export const NARROW_PX = 560;

/** The columns that a table of some width has. */
export function columnsOf(plan: Plan, sheet: Sheet, widthPx: number): Column[] {
  const longestShot = sheet.shots.reduce((most, { frames }) => Math.max(most, frames), 1);
  const number: Column = {
    id: 'exposure',
    kind: 'exposure',
    heading: 'Exp.',
    widthPx: Math.max(44, digitsPx(sheet.exposures)),
  };
  const done: Column = { id: 'done', kind: 'done', heading: 'Done', widthPx: 58 };
  if (widthPx < NARROW_PX)
    return [number, { id: 'what', kind: 'what', heading: 'Action', widthPx: 120, grows: true }, done];
  const passes = plan.sheet.passes.length > 1;
  return [
    number,
    {
      id: 'frames',
      kind: 'frames',
      heading: 'Frames',
      widthPx: digitsPx(longestShot, String(longestShot).length + 1),
    },
    { id: 'timecode', kind: 'timecode', heading: 'Timecode', widthPx: 112 },
    { id: 'text', kind: 'text', heading: 'Action', widthPx: 110, grows: true },
    { id: 'hold', kind: 'hold', heading: 'Hold', widthPx: 80 },
    { id: 'passes', kind: 'passes', heading: 'Passes', widthPx: passes ? 92 : 72 },
    ...sheet.columns.axes.map(axisColumn),
    { id: 'cues', kind: 'cues', heading: 'Cues', widthPx: 72 },
    { id: 'clock', kind: 'clock', heading: 'Clock', widthPx: 58 },
    done,
  ];
}

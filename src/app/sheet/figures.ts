/** The figures that stand in the cells of the exposure sheet, with the names of their workings. */
import { passesOf, timecodeAt } from '../../engine/sheet/texts.ts';
import { doneIn } from '../../engine/sheet/ticks.ts';
import { ofAction, ofExposure, ofShot } from '../../engine/working/names.ts';
import { durationText } from '../format/durations.ts';
import { plural, withUnit } from '../format/numbers.ts';
import { type CellFigure, type Chosen, chosenFigures } from '../working/cellFigures.ts';
import { framesText, positionAt, positionText } from './cells.ts';
import { clockText, spansOf } from './clock.ts';
import type { ColumnKind } from './columns.ts';
import type { Spot } from './rows.ts';
import type { Sheeted } from './sheeted.ts';

/** A figure, and the kind of column that it stands in; of an axis its index. */
interface Placed extends CellFigure {
  kind: ColumnKind;
  axis?: number;
}

const clockAt = ({ plan, sheet }: Sheeted, i: number): string =>
  clockText(sheet.columns.startMs[i] ?? Number.NaN, spansOf(plan, sheet));

/** Where an axis goes at an exposure. */
function positions({ sheet }: Sheeted, i: number, word = ''): Placed[] {
  return sheet.columns.axes.map((axis, a) => ({
    kind: 'axis',
    axis: a,
    name: `${axis.name}${word}`,
    text: withUnit(positionText(axis, positionAt(axis, i)), axis.unit === 'deg' ? '°' : axis.unit),
    of: ofExposure(i, `axes.${axis.name}.position`),
  }));
}

function ofAnExposure(of: Sheeted, i: number): Placed[] {
  const { plan, sheet } = of;
  const { firstFrame, frames } = sheet.columns;
  const held = frames[i] ?? 0;
  const name = (what: string) => ofExposure(i, what);
  return [
    { kind: 'frames', name: 'Frames', text: framesText(firstFrame[i] ?? 0, held), of: name('lastFrame') },
    { kind: 'timecode', name: 'Timecode', text: timecodeAt(plan, sheet, i), of: name('timecode') },
    { kind: 'hold', name: 'Hold', text: plural(held, 'frame'), of: name('holdFrames') },
    { kind: 'passes', name: 'Passes', text: String(passesOf(plan, sheet, i).length), of: name('passes') },
    ...positions(of, i),
    { kind: 'clock', name: 'Clock', text: clockAt(of, i), of: name('clock') },
  ];
}

function ofAnAction(of: Sheeted, a: number): Placed[] {
  const { plan, sheet } = of;
  const action = sheet.actions[a];
  if (!action || action.exposures === 0) return [];
  const { exposures, frames, firstExposure } = action;
  const [first, last] = [firstExposure - 1, firstExposure + exposures - 2];
  const name = (what: string) => ofAction(a, what);
  const done = doneIn(sheet.columns, action);
  return [
    { kind: 'frames', name: 'Frames', text: plural(frames, 'frame'), of: name('frames') },
    {
      kind: 'timecode',
      name: 'Timecode',
      text: timecodeAt(plan, sheet, first),
      of: ofExposure(first, 'timecode'),
    },
    { kind: 'hold', name: 'Exposures', text: plural(exposures, 'exposure'), of: name('exposures') },
    ...positions(of, first, ' from'),
    ...positions(of, last, ' to'),
    { kind: 'clock', name: 'Clock', text: clockAt(of, first), of: ofExposure(first, 'clock') },
    { kind: 'done', name: 'Done', text: plural(done, 'exposure'), of: name('done') },
  ];
}

function ofAShot({ sheet }: Sheeted, s: number): Placed[] {
  const shot = sheet.shots[s];
  if (!shot) return [];
  const { frames, exposures, setUpMin, timecode } = shot;
  const done = doneIn(sheet.columns, shot);
  const name = (what: string) => ofShot(s, what);
  return [
    { kind: 'frames', name: 'Frames', text: plural(frames, 'frame'), of: name('frames') },
    { kind: 'timecode', name: 'Timecode', text: timecode, of: name('timecode') },
    { kind: 'hold', name: 'Exposures', text: plural(exposures, 'exposure'), of: name('exposures') },
    { kind: 'hold', name: 'Set-up', text: durationText(setUpMin * 60), of: name('setUpMin') },
    { kind: 'done', name: 'Done', text: plural(done, 'exposure'), of: name('done') },
  ];
}

const ROWS = { shot: ofAShot, action: ofAnAction, exposure: ofAnExposure, pause: () => [] } as const;

/** What is chosen on the sheet: its row in words, and the figures of its cell, or of all of the row if that has none. */
export function figuresAt(
  of: Sheeted,
  { kind, index }: Spot,
  column: { kind: ColumnKind; axis?: number } | undefined,
): Chosen {
  const all: readonly Placed[] = ROWS[kind](of, index).filter(({ text }) => text !== '');
  const own = all.filter((one) => one.kind === column?.kind && one.axis === column.axis);
  const row = kind === 'exposure' ? `Exposure ${index + 1}` : rowText(of, kind, index);
  return chosenFigures(row, own, all);
}

const rowText = ({ sheet }: Sheeted, kind: Spot['kind'], index: number): string =>
  (kind === 'shot' ? sheet.shots[index]?.name : kind === 'action' ? sheet.actions[index]?.text : '') ||
  `${kind === 'shot' ? 'Shot' : 'Action'} ${index + 1}`;

/** The figures that stand in the cells of the exposure sheet, with the names of their workings. */
import { passesOf, timecodeAt } from '../../engine/sheet/texts.ts';
import { doneIn } from '../../engine/sheet/ticks.ts';
import { ofAction, ofBreak, ofExposure, ofShot, ofWorkDay } from '../../engine/working/names.ts';
import { durationText } from '../format/durations.ts';
import { plural, withUnit } from '../format/numbers.ts';
import { type CellFigure, type Chosen, chosenFigures } from '../working/cellFigures.ts';
import { framesText, positionAt, positionText } from './cells.ts';
import { clockText, dayText, momentText, spansOf } from './clock.ts';
import type { ColumnKind } from './columns.ts';
import { pausesOf } from './pauses.ts';
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

function ofAPause({ plan, sheet }: Sheeted, index: number): Placed[] {
  const pause = pausesOf(plan, sheet)[index];
  if (!pause) return [];
  const { kind, day, index: b, ms, toMs } = pause;
  const spans = spansOf(plan, sheet);
  const [begins, ends] = [clockText(ms, spans), momentText(toMs, spans, ms)];
  const lasts = durationText(Math.round((toMs - ms) / 60_000) * 60);
  const name = (what: string) => ofWorkDay(day, kind === 'break' ? ofBreak(b, what) : what);
  if (kind === 'break')
    return [
      { kind: 'text', name: 'Break', text: lasts, of: name('lengthS') },
      { kind: 'clock', name: 'Begins', text: begins, of: name('from') },
      { kind: 'text', name: 'Ends', text: ends, of: name('to') },
    ];
  const last = (sheet.days[day]?.lastExposure ?? 1) - 1;
  const frame = (sheet.columns.firstFrame[last] ?? 0) + (sheet.columns.frames[last] ?? 0) - 1;
  return [
    { kind: 'text', name: 'Until work goes on', text: lasts, of: name('nightS') },
    { kind: 'clock', name: 'Work ends', text: begins, of: name('to') },
    { kind: 'text', name: 'Last frame', text: String(frame), of: ofExposure(last, 'lastFrame') },
    { kind: 'text', name: 'Work goes on', text: ends, of: ofWorkDay(day + 1, 'from') },
  ];
}

const ROWS = { shot: ofAShot, action: ofAnAction, exposure: ofAnExposure, pause: ofAPause } as const;

/** What is chosen on the sheet: its row in words, and the figures of its cell, or of all of the row if that has none. */
export function figuresAt(
  of: Sheeted,
  { kind, index }: Spot,
  column: { kind: ColumnKind; axis?: number } | undefined,
): Chosen {
  const all: readonly Placed[] = ROWS[kind](of, index).filter(({ text }) => text !== '');
  // Wherever one is in a pause but at its clock, one is at its words: they have all of its figures.
  const whole = kind === 'pause' && column?.kind !== 'clock';
  const own = whole ? all : all.filter((one) => one.kind === column?.kind && one.axis === column.axis);
  return chosenFigures(rowText(of, kind, index), own, all);
}

function rowText({ plan, sheet }: Sheeted, kind: Spot['kind'], index: number): string {
  if (kind === 'shot') return sheet.shots[index]?.name || `Shot ${index + 1}`;
  if (kind === 'action') return sheet.actions[index]?.text || `Action ${index + 1}`;
  if (kind === 'exposure') return `Exposure ${index + 1}`;
  const pause = pausesOf(plan, sheet)[index];
  const day = pause ? dayText(pause.ms, spansOf(plan, sheet)) : '';
  return pause?.kind === 'break' ? `Break on ${day}` : `End of ${day}`;
}

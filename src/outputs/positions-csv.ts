/** Where every axis stands: one record a frame of a time-lapse, or an exposure of a stop-motion sheet. */
import type { Plan } from '../engine/plan/schema.ts';
import type { Schedule } from '../engine/schedule-types.ts';
import { placeOf } from '../engine/sheet/texts.ts';
import type { Sheet } from '../engine/sheet/types.ts';
import { isoAt } from '../engine/time/clock.ts';
import { axisColumns, type Column, csvTable, numbers, textCell } from './csv.ts';
import { clockCells } from './sheet-csv.ts';

function frameColumns({ columns, startMs, offsets }: Schedule): Column[] {
  const { elapsedS, intervalS, axes } = columns;
  const clock = (index: number) => isoAt(startMs + (elapsedS[index] ?? Number.NaN) * 1000, offsets);
  return [
    { heading: 'frame', cell: (index) => String(index + 1) },
    { heading: 'clock', cell: clock },
    numbers('elapsedS', elapsedS),
    numbers('intervalS', intervalS),
    ...axes.flatMap(axisColumns),
  ];
}

function exposureColumns(plan: Plan, sheet: Sheet): Column[] {
  const clock = clockCells(plan, sheet);
  const shots = sheet.shots.map(({ name }) => textCell(name));
  return [
    { heading: 'shot', cell: (index) => shots[sheet.columns.shot[index] ?? -1] ?? '' },
    { heading: 'exposure', cell: (index) => String(placeOf(sheet, index).exposure) },
    numbers('firstFrame', sheet.columns.firstFrame),
    { heading: 'clock', cell: (index) => clock(sheet.columns.startMs[index]) },
    ...sheet.columns.axes.flatMap(axisColumns),
  ];
}

/**
 * The table of positions as CSV, in chunks of whole records.
 *
 * The headings come first: `frame` (from 1), `clock` (ISO 8601 with the local offset), `elapsedS` (from the first
 * shutter opening), `intervalS` (to the next), then for each axis NAME `NAME.steps` (whole microsteps from its zero) and
 * `NAME.mm` or `NAME.deg`.
 * @param sheet - exposure sheet of a stop-motion plan; then a record is an exposure: `shot`, `exposure` and `firstFrame`
 *   (of the shot, from 1), `clock` (estimated), positions
 */
export const positionsCsv = (
  plan: Plan,
  made: Schedule,
  sheet: Sheet | null,
): Generator<string, void, undefined> =>
  sheet
    ? csvTable(exposureColumns(plan, sheet), sheet.exposures)
    : csvTable(frameColumns(made), made.totals.frames);

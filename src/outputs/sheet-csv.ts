/** The exposure sheet as a table: one record an exposure and pass, for a spreadsheet or another program. */
import type { Cue, Pass, Plan } from '../engine/plan/schema.ts';
import { hasPass } from '../engine/sheet/passes.ts';
import { cuesAt, exposureText, placeOf, tickAt, timecodeAt } from '../engine/sheet/texts.ts';
import type { Sheet, SheetAxis } from '../engine/sheet/types.ts';
import { isoAt, offsetSpans } from '../engine/time/clock.ts';
import { axisColumns, CSV_LINE_END, numberCell, textCell } from './csv.ts';

/** One column: its heading, and the cell of the exposure with that index; that of a pass where it is the pass's. */
interface Column {
  heading: string;
  cell: (index: number, pass: Pass) => string;
}

const EXPOSURES_A_CHUNK = 1000;

const SIDES: Readonly<Record<number, string>> = { 1: 'up', [-1]: 'down' };

const arrivesColumn = ({ name, from }: SheetAxis): Column => ({
  heading: `${name}.arrives`,
  cell: (index) => SIDES[from[index] ?? 0] ?? '',
});

const cuesText = (cues: readonly Cue[]): string =>
  cues.map(({ kind, text }) => `${kind}: ${text}`).join('; ');

/** Clock of an instant to the second, ISO 8601 with the local offset; empty for none. */
export function clockCells(
  { place }: Plan,
  { columns: { startMs, doneMs } }: Sheet,
): (ms: number | undefined) => string {
  let [fromMs, toMs] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const column of [startMs, doneMs])
    for (const ms of column) {
      if (ms < fromMs) fromMs = ms;
      if (ms > toMs) toMs = ms;
    }
  const spans = toMs < fromMs ? [] : offsetSpans(place.zone, fromMs, toMs, place.utcOffsetMin);
  return (ms) => (ms === undefined || Number.isNaN(ms) ? '' : isoAt(Math.round(ms / 1000) * 1000, spans));
}

function allColumns(plan: Plan, sheet: Sheet): Column[] {
  const { columns } = sheet;
  const { exposure: settings } = plan;
  const clock = clockCells(plan, sheet);
  const shots = sheet.shots.map(({ name }) => textCell(name));
  return [
    { heading: 'shot', cell: (index) => shots[columns.shot[index] ?? -1] ?? '' },
    { heading: 'exposure', cell: (index) => String(placeOf(sheet, index).exposure) },
    { heading: 'firstFrame', cell: (index) => String(columns.firstFrame[index]) },
    { heading: 'frames', cell: (index) => String(columns.frames[index]) },
    { heading: 'timecode', cell: (index) => textCell(timecodeAt(plan, sheet, index)) },
    { heading: 'action', cell: (index) => textCell(exposureText(plan, sheet, index)) },
    { heading: 'pass', cell: (_, pass) => textCell(pass.name) },
    ...columns.axes.flatMap(axisColumns),
    ...columns.axes.map(arrivesColumn),
    { heading: 'shutterS', cell: (_, { shutterS }) => numberCell(shutterS ?? settings.shutterS) },
    { heading: 'apertureF', cell: (_, { apertureF }) => numberCell(apertureF ?? settings.apertureF) },
    { heading: 'iso', cell: (_, { iso }) => numberCell(iso ?? settings.iso) },
    { heading: 'cues', cell: (index) => textCell(cuesText(cuesAt(plan, sheet, index))) },
    { heading: 'clock', cell: (index) => clock(columns.startMs[index]) },
    { heading: 'done', cell: (index) => clock(columns.doneMs[index]) },
    { heading: 'note', cell: (index) => textCell(tickAt(plan, sheet, index)?.note ?? '') },
  ];
}

/**
 * The exposure sheet as CSV, in chunks of whole records. An exposure has as many records as it has passes.
 *
 * The headings come first: `shot` (its name), `exposure` and `firstFrame` (of the shot, from 1), `frames` (it is held
 * for), `timecode`, `action` (what happens), `pass`; for each axis NAME `NAME.steps` and `NAME.mm` or `NAME.deg`, then
 * for each `NAME.arrives` (`up` or `down` its scale, empty where it stays); the pass's settings as marked; cues; clock
 * (estimated) and done (ISO 8601 with the local offset); note.
 */
export function* sheetCsv(plan: Plan, sheet: Sheet): Generator<string, void, undefined> {
  const columns = allColumns(plan, sheet);
  const { passes } = sheet.columns;
  yield columns.map(({ heading }) => textCell(heading)).join(',') + CSV_LINE_END;
  for (let from = 0; from < sheet.exposures; from += EXPOSURES_A_CHUNK) {
    let chunk = '';
    for (let index = from; index < Math.min(from + EXPOSURES_A_CHUNK, sheet.exposures); index += 1) {
      for (const [p, pass] of plan.sheet.passes.entries()) {
        if (!hasPass(passes[index] ?? 0, p)) continue;
        chunk += columns.map(({ cell }) => cell(index, pass)).join(',') + CSV_LINE_END;
      }
    }
    yield chunk;
  }
}

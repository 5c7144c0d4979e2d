/** Points of the user's own horizon, typed or pasted: two columns, azimuth and altitude, in any usual separation. */
import type { HorizonPoint } from '../../engine/plan/schema.ts';
import { numberText, readNumber } from '../format/numbers.ts';
import { infoAt } from '../store/infos.ts';

/** A row that cannot be used, counted from 1, and why. */
export interface RowFault {
  row: number;
  reason: string;
}

/** All points, or the rows at fault. */
export type HorizonRead = { points: HorizonPoint[] } | { faults: RowFault[] };

const MOST_POINTS = 720;

/** Cells of a row. A comma parts the cells only where nothing else does: '12,5;3,2' has decimal commas. */
function cellsOf(row: string): string[] {
  const separator = [/\s*[\t;|]\s*/, /,\s+/, /\s+/, /,/].find((mark) => mark.test(row));
  return (separator ? row.split(separator) : [row]).map((cell) => cell.replace(/\s*(?:°|deg)$/i, ''));
}

type Column = 'azimuthDeg' | 'altitudeDeg';

/** Why a value does not fit its column, or null. */
function rangeFault(column: Column, value: number): string | null {
  const { title, minimum = 0, maximum = 0 } = infoAt(`place.horizon.0.${column}`);
  return value >= minimum && value <= maximum
    ? null
    : `${title} ${numberText(value)}°. Allowed: ${numberText(minimum)}° to ${numberText(maximum)}°.`;
}

function readRow(cells: readonly string[], before: number): HorizonPoint | string {
  if (cells.length !== 2)
    return `${cells.length === 1 ? 'one column' : `${cells.length} columns`}. Allowed: azimuth and altitude.`;
  const [azimuthDeg, altitudeDeg] = cells.map((cell) => readNumber(cell));
  if (azimuthDeg == null || altitudeDeg == null)
    return `‘${azimuthDeg == null ? cells[0] : cells[1]}’ is no number.`;
  const fault = rangeFault('azimuthDeg', azimuthDeg) ?? rangeFault('altitudeDeg', altitudeDeg);
  if (fault) return fault;
  if (azimuthDeg <= before)
    return `the horizon doubles back: azimuth ${numberText(azimuthDeg)}° comes after ${numberText(before)}°. Allowed: each azimuth more than the one before.`;
  return { azimuthDeg, altitudeDeg };
}

/** Rows that say something, with their numbers; a first row without any number is a header. */
function rowsOf(text: string): { row: number; cells: string[] }[] {
  const rows = text
    .split(/\r\n|\r|\n/)
    .map((line, i) => ({ row: i + 1, line: line.trim() }))
    .filter(({ line }) => line !== '' && !line.startsWith('#'))
    .map(({ row, line }) => ({ row, cells: cellsOf(line) }));
  return /\d/.test(rows[0]?.cells.join() ?? '') ? rows : rows.slice(1);
}

/** Reads points of a horizon; no rows at all make an empty one. */
export function readHorizon(text: string): HorizonRead {
  const points: HorizonPoint[] = [];
  const faults: RowFault[] = [];
  for (const { row, cells } of rowsOf(text)) {
    const read = readRow(cells, points.at(-1)?.azimuthDeg ?? -1);
    if (typeof read === 'string') faults.push({ row, reason: read });
    else points.push(read);
  }
  if (points.length > MOST_POINTS)
    faults.push({
      row: MOST_POINTS + 1,
      reason: `${points.length} points. Allowed: at most ${MOST_POINTS}.`,
    });
  return faults.length > 0 ? { faults } : { points };
}

/** Points as rows of two columns, which can be read again and pasted into a sheet. */
export const horizonText = (points: readonly HorizonPoint[]): string =>
  points.map(({ azimuthDeg, altitudeDeg }) => `${azimuthDeg}\t${altitudeDeg}`).join('\n');

/** At most three faults in one line of text each. */
export function rowFaultsText(faults: readonly RowFault[]): string {
  const said = faults.slice(0, 3).map(({ row, reason }) => `Row ${row}: ${reason}`);
  const more = faults.length - said.length;
  return `${said.join('\n')}${more > 0 ? `\nAnd ${more} more.` : ''}`;
}

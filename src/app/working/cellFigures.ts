/** The figures of a table's cells, and the key that opens them. */
import { singleKeysOn } from '../singleKeys.ts';
import { showWorking } from '../store/view.ts';

/** A figure that stands in a cell. */
export interface CellFigure {
  /** What it is: as a rule the heading of its column. */
  name: string;
  /** As it stands there. */
  text: string;
  /** Name of its working. */
  of: string;
}

/** What is chosen in a table. */
export interface Chosen {
  /** Its row: `Frame 12`; empty while nothing is chosen. */
  row: string;
  figures: readonly CellFigure[];
  /** Whether they are of one cell, which the key opens too. */
  ofCell: boolean;
}

/** The figures of the chosen cell, or of all of its row if it has none. */
export const chosenFigures = (row: string, own: readonly CellFigure[], all: readonly CellFigure[]): Chosen =>
  own.length > 0 ? { row, figures: own, ofCell: true } : { row, figures: all, ofCell: false };

/** Opens the working of the chosen cell's figure. */
export const HOW_KEY = '?';

/**
 * Does what the key asks for, if it is the one.
 * @param figures - of the chosen cell
 * @returns whether a working was opened
 */
export function openByKey(key: string, figures: readonly CellFigure[]): boolean {
  const [first] = figures;
  if (key !== HOW_KEY || !first || !singleKeysOn()) return false;
  showWorking(first.of);
  return true;
}

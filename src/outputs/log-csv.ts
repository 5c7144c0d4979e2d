/** The log of a run as a table: RFC 4180, safe to open in a spreadsheet. */
import { CSV_LINE_END, numberCell, textCell } from './csv.ts';

/** One line of the log. */
export interface LogLine {
  /** By the run's clock, ISO 8601 with the local offset. */
  at: string;
  /** By the phone's clock, ISO 8601 in UTC. */
  phone: string;
  /** What kind of thing, in a word. */
  kind: string;
  /** Frame of the run, counted from 1; null before the first. */
  frame: number | null;
  text: string;
}

const HEADINGS = ['at', 'phone', 'kind', 'frame', 'what'];

/** The whole log, its first line first. */
export function logCsv(lines: readonly LogLine[]): string {
  const records = lines.map(({ at, phone, kind, frame, text }) =>
    [at, phone, textCell(kind), frame === null ? '' : numberCell(frame), textCell(text)].join(','),
  );
  return [HEADINGS.join(','), ...records, ''].join(CSV_LINE_END);
}

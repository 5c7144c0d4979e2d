/** The plan at the settings of its trigger around the present one, as a table in plain text. */
import { counted, seconds, withUnit } from '../engine/findings/words.ts';
import type { LadderRow } from '../engine/fixes/interval-ladder.ts';
import { plainText } from './paragraphs.ts';

const HEAD = [
  '',
  'Interval',
  'Dial',
  'Frames',
  'Clip',
  'Last frame',
  'Spare',
  'First exposure',
  'Last exposure',
  'Swaps',
  'Cards',
  'Findings',
];

/** Numbers stand to the right, words to the left. */
const WORDS = new Set([0, 5, 7, 8, 11]);

/** `2026-08-08 20:31:10` of an ISO time with its offset. */
const clockText = (iso: string): string => `${iso.slice(0, 10)} ${iso.slice(11, 19)}`;

function findingsText({ worst, counts }: LadderRow): string {
  if (worst === null) return 'none';
  const others = counts.stop + counts.warning + counts.note - 1;
  return `${worst.severity}: ${worst.id}${others > 0 ? `, ${counted(others, 'other')}` : ''}`;
}

const cells = (row: LadderRow): string[] => [
  row.present ? '>' : '',
  withUnit(row.intervalS, 's'),
  withUnit(row.dialS, 's'),
  String(row.frames),
  seconds(row.clipLengthS),
  clockText(row.lastFrameAt),
  withUnit(row.tightestSpareS, 's'),
  row.exposureFirst ?? '',
  row.exposureLast ?? '',
  String(row.swaps),
  String(row.cards),
  findingsText(row),
];

const DIAL = HEAD.indexOf('Dial');
const INTERVAL = HEAD.indexOf('Interval');

/** Whether a column says anything: a dial that is set to the interval itself says nothing more. */
function tells(rows: readonly string[][], c: number): boolean {
  if (c === DIAL) return rows.some((row) => row[DIAL] !== row[INTERVAL]);
  return c === 0 || rows.some((row) => row[c] !== '');
}

/**
 * The ladder as text: a line of headings, then a line a setting; `>` marks the present one. Columns that say nothing
 * in any row are left out.
 */
export function ladderText(rows: readonly LadderRow[]): string {
  const body = rows.map((row) => cells(row).map(plainText));
  const lines = [HEAD, ...body];
  const columns = HEAD.map((_, c) => c).filter((c) => tells(body, c));
  const widths = HEAD.map((_, c) => Math.max(...lines.map((line) => line[c]?.length ?? 0)));
  const cell = (line: readonly string[], c: number): string => {
    const text = line[c] ?? '';
    return WORDS.has(c) ? text.padEnd(widths[c] ?? 0) : text.padStart(widths[c] ?? 0);
  };
  return lines
    .map(
      (line) =>
        `${columns
          .map((c) => cell(line, c))
          .join('  ')
          .trimEnd()}\n`,
    )
    .join('');
}

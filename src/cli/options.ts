/** What the prompt was asked for. */
import { parseArgs } from 'node:util';

/** One fix of one finding. */
export interface FixAsked {
  /** What the finding is asked for by, as `--fixes` prints it. */
  id: string;
  /** Which of its fixes, counted from 1. */
  n: number;
}

/** What to print, and where to write. */
export interface Options {
  /** Plan file, or a link that carries a plan; `-` for standard input. */
  file: string;
  print: 'summary' | (typeof PRINTS)[number];
  /** The fix to make first, or null. */
  apply: FixAsked | null;
  /** Figure whose working is asked for, or `all`; null if none is. */
  working: string | null;
  /** Folder that every output is written to, or null. */
  outDir: string | null;
  /** Address that a printed link begins with; empty for the fragment alone. */
  page: string;
}

/** The help text. */
export const USAGE = `Usage: npm run -s plan -- FILE [PRINT] [--out DIR]

Works out the plan in FILE ('-' reads standard input; a link is one too) and prints a summary, or instead

  --json          one JSON object: totals, sources, cards, events, findings, margins
  --frames        the table of all frames as CSV
  --sheet         the exposure sheet of a stop-motion plan as CSV; of a time-lapse, its frames
  --run-sheet     what one takes along: what to bring, the clock of the day, settings, cautions
  --calendar      the day's blocks, and moments that need a hand, as a calendar (RFC 5545)
  --positions     where each axis stands at each frame as CSV
  --rs274         a part program for rigs that read it: run it first with nothing on the arm
  --link          the fragment of a link that carries the plan; with --page ADDRESS the whole link to the page there
  --fixes         the findings with their fixes, each tried, as JSON
  --apply ID:N    the plan file with fix N of finding ID made, as --fixes numbers them
  --ladder        a table of the plan at the settings of its trigger around the present one
  --working NAME  how a figure came about: its formula, the numbers put in, the source; NAME as in
                  totals.intervalS, margins.interval.left, frame.12.cameraS, sheet.exposure.7.clock,
                  days.2026-08-08.sunset; ladder.15.totals.frames with 15 s on the trigger; findings.cycle-overrun
                  for all that a finding states; all for all of them

  --out DIR       write every output that the plan has into DIR, and say what was written
  --help          print this

Exit code: 0 it can be shot; 1 at least one finding says 'stop'; 2 the file or the options are at fault.
`;

const PRINTS = [
  'json',
  'frames',
  'sheet',
  'run-sheet',
  'calendar',
  'positions',
  'rs274',
  'link',
  'fixes',
  'apply',
  'ladder',
  'working',
] as const;

/** An option, or the lack of one, that cannot be followed. */
export class OptionError extends Error {}

/**
 * Reads the words after the command.
 * @returns what is asked for; 'help' if that is the help text
 * @throws OptionError with a sentence for the person who typed them
 */
export function readOptions(words: readonly string[]): Options | 'help' {
  const { values, positionals } = parsed(words);
  if (values.help) return 'help';
  const [file, ...more] = positionals;
  if (file === undefined || more.length > 0) {
    throw new OptionError(`plan files: found ${positionals.length}; allowed: one, or - for standard input`);
  }
  const asked = PRINTS.filter((print) => values[print] !== undefined);
  if (asked.length > 1)
    throw new OptionError(
      `${asked.map((print) => `--${print}`).join(' ')}: found ${asked.length}; allowed: one of them`,
    );
  if (values.working === '')
    throw new OptionError('--working: found nothing; allowed: the name of a figure, or all');
  if (values.out === '') throw new OptionError('--out: found nothing; allowed: the name of a folder');
  return {
    file,
    print: asked[0] ?? 'summary',
    apply: values.apply === undefined ? null : fixAsked(values.apply),
    working: values.working ?? null,
    outDir: values.out ?? null,
    page: pageAt(values.page),
  };
}

/** `ID:N`; the name of an axis or a source within ID may have colons of its own. */
function fixAsked(word: string): FixAsked {
  const [, id, n] = /^(.+):([1-9]\d{0,3})$/su.exec(word) ?? [];
  if (id === undefined)
    throw new OptionError(
      `--apply: found '${word}'; allowed: a finding and which of its fixes, as --fixes prints them, such as cycle-overrun:1`,
    );
  return { id, n: Number(n) };
}

/** An address that a fragment can be put behind. */
function pageAt(address = ''): string {
  if (address === '' || (/^(https?|file):/i.test(address) && URL.canParse(address) && !address.includes('#')))
    return address;
  throw new OptionError(`--page: found ${address}; allowed: a web address without #`);
}

function parsed(words: readonly string[]) {
  try {
    return parseArgs({
      args: [...words],
      allowPositionals: true,
      options: {
        json: { type: 'boolean' },
        frames: { type: 'boolean' },
        sheet: { type: 'boolean' },
        'run-sheet': { type: 'boolean' },
        calendar: { type: 'boolean' },
        positions: { type: 'boolean' },
        rs274: { type: 'boolean' },
        link: { type: 'boolean' },
        page: { type: 'string' },
        fixes: { type: 'boolean' },
        apply: { type: 'string' },
        ladder: { type: 'boolean' },
        working: { type: 'string' },
        out: { type: 'string' },
        help: { type: 'boolean', short: 'h' },
      },
    });
  } catch (error) {
    throw new OptionError(error instanceof Error ? error.message : String(error));
  }
}

/** What the prompt was asked for. */
import { parseArgs } from 'node:util';

/** What to print, and where to write. */
export interface Options {
  /** Plan file; `-` for standard input. */
  file: string;
  print: 'summary' | 'json' | 'frames' | 'sheet' | 'working';
  /** Figure whose working is asked for, or `all`. */
  working?: string;
  /** Folder that every output is written to, or null. */
  outDir: string | null;
}

/** The help text. */
export const USAGE = `Usage: npm run -s plan -- FILE [--json | --frames | --sheet | --working NAME] [--out DIR]

Works out the plan in FILE ('-' reads standard input) and prints a summary.

  --json     print one JSON object: totals, sources, cards, events, findings, margins
  --frames   print the table of all frames as CSV
  --sheet    print the exposure sheet of a stop-motion plan as CSV; of a time-lapse, its frames
  --working NAME  print how a figure came about: its formula, the numbers put in, the source;
             NAME as in totals.intervalS, margins.interval.left, frame.12.cameraS; all for all of them
  --out DIR  write every output that the plan has into DIR, and say what was written
  --help     print this

Exit code: 0 it can be shot; 1 at least one finding says 'stop'; 2 the file or the options are at fault.
`;

const PRINTS = ['json', 'frames', 'sheet', 'working'] as const;

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
  const asked = PRINTS.filter((print) => values[print]);
  if (asked.length > 1)
    throw new OptionError(
      `${asked.map((print) => `--${print}`).join(' ')}: found ${asked.length}; allowed: one of them`,
    );
  if (values.working === '')
    throw new OptionError('--working: found nothing; allowed: the name of a figure, or all');
  if (values.out === '') throw new OptionError('--out: found nothing; allowed: the name of a folder');
  const options: Options = { file, print: asked[0] ?? 'summary', outDir: values.out ?? null };
  return values.working === undefined ? options : { ...options, working: values.working };
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
        working: { type: 'string' },
        out: { type: 'string' },
        help: { type: 'boolean', short: 'h' },
      },
    });
  } catch (error) {
    throw new OptionError(error instanceof Error ? error.message : String(error));
  }
}

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
  /** Plan file; `-` for standard input. */
  file: string;
  print: 'summary' | 'json' | 'frames' | 'sheet' | 'fixes' | 'ladder' | 'plan';
  /** The fix to make first, or null. */
  apply: FixAsked | null;
  /** Folder that every output is written to, or null. */
  outDir: string | null;
}

/** The help text. */
export const USAGE = `Usage: npm run -s plan -- FILE [--json | --frames | --sheet | --fixes | --apply ID:N | --ladder] [--out DIR]

Works out the plan in FILE ('-' reads standard input) and prints a summary.

  --json     print one JSON object: totals, sources, cards, events, findings, margins
  --frames   print the table of all frames as CSV
  --sheet    print the exposure sheet of a stop-motion plan as CSV; of a time-lapse, its frames
  --fixes    print the findings with their fixes, each tried, as JSON
  --apply ID:N
             make fix N of finding ID, as --fixes numbers them, and print the plan file with it
  --ladder   print a table of the plan at the settings of its trigger around the present one
  --out DIR  write every output that the plan has into DIR, and say what was written
  --help     print this

Exit code: 0 it can be shot; 1 at least one finding says 'stop'; 2 the file or the options are at fault.
`;

const PRINTS = ['json', 'frames', 'sheet', 'fixes', 'ladder'] as const;

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
  const apply = values.apply === undefined ? null : fixAsked(values.apply);
  const asked = [...PRINTS.filter((print) => values[print]), ...(apply ? (['apply'] as const) : [])];
  if (asked.length > 1)
    throw new OptionError(
      `${asked.map((print) => `--${print}`).join(' ')}: found ${asked.length}; allowed: one of them`,
    );
  if (values.out === '') throw new OptionError('--out: found nothing; allowed: the name of a folder');
  const print = asked[0] === 'apply' ? 'plan' : (asked[0] ?? 'summary');
  return { file, print, apply, outDir: values.out ?? null };
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

function parsed(words: readonly string[]) {
  try {
    return parseArgs({
      args: [...words],
      allowPositionals: true,
      options: {
        json: { type: 'boolean' },
        frames: { type: 'boolean' },
        sheet: { type: 'boolean' },
        fixes: { type: 'boolean' },
        ladder: { type: 'boolean' },
        apply: { type: 'string' },
        out: { type: 'string' },
        help: { type: 'boolean', short: 'h' },
      },
    });
  } catch (error) {
    throw new OptionError(error instanceof Error ? error.message : String(error));
  }
}

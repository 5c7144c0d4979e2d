/** What the sky prompt was asked for. */
import { parseArgs } from 'node:util';
import { type Fault, fieldInfo, foundText } from '../engine/plan/faults.ts';
import { readPlan } from '../engine/plan/parse.ts';
import { PLAN_FORMAT, PLAN_VERSION } from '../engine/plan/schema.ts';
import { OptionError } from './options.ts';

/** Where, which day, and what to print. */
export interface SkyOptions {
  latitudeDeg: number;
  longitudeDeg: number;
  /** IANA name. */
  zone: string;
  /** Local date, `yyyy-mm-dd`. */
  date: string;
  /** Milliseconds of the epoch for the sun's position, or null. */
  atMs: number | null;
  json: boolean;
}

/** The help text. */
export const SKY_USAGE = `Usage: npm run -s sky -- --lat N --lon N --zone ZONE --date YYYY-MM-DD [--at INSTANT] [--json]

Prints when the sun and the moon rise, set and pass through the twilights on a local day.

  --lat N           latitude in degrees, north positive
  --lon N           longitude in degrees, east positive
  --zone ZONE       IANA name of the time zone, such as Europe/Lisbon
  --date DATE       local date
  --at INSTANT      print the sun's position too: ISO 8601 with an offset or Z, such as 2026-08-08T20:31:10+02:00
  --json            print one JSON object
  --help            print this

Exit code: 0, or 2 if the options are at fault.
`;

/** Fields of a plan behind the options: they are checked as a plan is. */
const FIELDS = {
  lat: ['place', 'latitudeDeg'],
  lon: ['place', 'longitudeDeg'],
  zone: ['place', 'zone'],
  date: ['start', 'date'],
} as const;

type FieldOption = keyof typeof FIELDS;

const INSTANT =
  /^(\d{4}-\d\d-\d\d)T([01]\d|2[0-3]):[0-5]\d(:[0-5]\d(\.\d+)?)?(Z|[+-]([01]\d|2[0-3]):[0-5]\d)$/;
const INSTANT_ALLOWED = 'an instant such as 2026-08-08T20:31:10+02:00 or 2026-08-08T18:31:10Z';

/**
 * Reads the words after the command.
 * @returns what is asked for, or 'help', or the faults, with the option for a path
 * @throws OptionError for words that are no options
 */
export function readSkyOptions(words: readonly string[]): SkyOptions | 'help' | Fault[] {
  const values = parsed(words);
  if (values.help) return 'help';
  const given = {
    lat: numberOf(values.lat),
    lon: numberOf(values.lon),
    zone: values.zone,
    date: values.date,
  };
  const atMs = values.at === undefined ? null : instantMs(values.at);
  const faults = [...missing(given), ...planFaults(given)];
  if (Number.isNaN(atMs))
    faults.push({ path: '--at', found: foundText(values.at), allowed: INSTANT_ALLOWED });
  if (faults.length > 0) return faults;
  return {
    latitudeDeg: Number(given.lat),
    longitudeDeg: Number(given.lon),
    zone: String(given.zone),
    date: String(given.date),
    atMs,
    json: values.json ?? false,
  };
}

/** A number as it was typed; as text if it is none. */
const numberOf = (text: string | undefined): number | string | undefined =>
  text === undefined || text.trim() === '' || Number.isNaN(Number(text)) ? text : Number(text);

type Given = Readonly<Record<FieldOption, number | string | undefined>>;

const OPTIONS = Object.keys(FIELDS) as FieldOption[];

/** As it is said of a field in a file, without what only files have. */
const bare = (allowed: string): string => allowed.replace(', or null', '').replace('text in quotes: ', '');

const missing = (given: Given): Fault[] =>
  OPTIONS.filter((option) => given[option] === undefined).map((option) => ({
    path: `--${option}`,
    found: 'nothing',
    allowed:
      option === 'zone'
        ? 'an IANA zone name, such as Europe/Lisbon'
        : bare(fieldInfo(FIELDS[option]).allowed),
  }));

/** What a plan with each of these values would be told. */
const planFaults = (given: Given): Fault[] =>
  OPTIONS.filter((option) => given[option] !== undefined).flatMap((option) => {
    const [section, field] = FIELDS[option];
    const read = readPlan({
      format: PLAN_FORMAT,
      version: PLAN_VERSION,
      [section]: { [field]: given[option] },
    });
    if (read.ok) return [];
    return read.faults.map(({ found, allowed }) => ({ path: `--${option}`, found, allowed: bare(allowed) }));
  });

/** Milliseconds of the epoch; NaN if the text is no instant of the calendar. */
function instantMs(text: string): number {
  const date = INSTANT.exec(text)?.[1];
  if (date === undefined) return Number.NaN;
  const midnight = Date.parse(`${date}T00:00:00Z`);
  const real = Number.isFinite(midnight) && new Date(midnight).toISOString().startsWith(date);
  return real ? Date.parse(text) : Number.NaN;
}

/** Ties a negative number to the option before it, which would otherwise look like an option of its own. */
function tied(words: readonly string[]): string[] {
  const found: string[] = [];
  for (const word of words) {
    const before = found.at(-1);
    if (/^-[\d.]/.test(word) && before?.startsWith('--') && !before.includes('='))
      found.splice(-1, 1, `${before}=${word}`);
    else found.push(word);
  }
  return found;
}

function parsed(words: readonly string[]) {
  try {
    return parseArgs({
      args: tied(words),
      options: {
        lat: { type: 'string' },
        lon: { type: 'string' },
        zone: { type: 'string' },
        date: { type: 'string' },
        at: { type: 'string' },
        json: { type: 'boolean' },
        help: { type: 'boolean', short: 'h' },
      },
    }).values;
  } catch (error) {
    throw new OptionError(error instanceof Error ? error.message : String(error));
  }
}

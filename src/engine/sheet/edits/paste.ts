/**
 * Rows from a spreadsheet: tab-separated text, a row an exposure.
 *
 * Without headings the columns are what happens, frames held, passes, cues. With a first row of headings they are those
 * of the sheet's own table, in any order; what follows from the others (frame, timecode, clock) is passed over.
 */
import { MAX_FRAMES } from '../../plan/constants.ts';
import type { Fault } from '../../plan/fault.ts';
import type { Plan } from '../../plan/schema.ts';
import type { ExposurePlace } from '../texts.ts';
import { setAxisPosition } from './axis.ts';
import { CUE_KINDS, type NewCue, secondOfKind, setCue } from './cues.ts';
import { insertExposures, type NewExposure } from './exposures.ts';
import { holdsOf } from './pattern.ts';
import { Refused } from './refused.ts';
import { actionNumbered, exposuresOfShot, locate, shotNumbered } from './shots.ts';

/** The plan with the rows in it, or everything that is wrong with them. */
export type Pasted = { ok: true; plan: Plan; exposures: number } | { ok: false; faults: Fault[] };

/** Most rows that are taken at once. */
const MOST_ROWS = 5000;

/**
 * Cells of tab-separated text. One in quotes may hold tabs and line ends, and a quote twice for each of its own.
 */
export function tabCells(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  const cell = /(?:"([^"]*(?:""[^"]*)*)"(?=[\t\r\n]|$)|([^\t\r\n]*))(\t|\r\n|\r|\n|$)/gy;
  for (let found = cell.exec(text); found; found = cell.exec(text)) {
    row.push(found[1]?.replaceAll('""', '"') ?? found[2] ?? '');
    if (found[3] === '\t') continue;
    rows.push(row);
    row = [];
    if (found[3] === '' || cell.lastIndex >= text.length) break;
  }
  return rows;
}

/** What a column says. */
type Meaning =
  | { kind: 'text' | 'hold' | 'passes' | 'cues' | 'shot' | 'exposure' | 'nothing' }
  | { kind: 'axis'; axis: string };

const USUAL: readonly Meaning[] = [{ kind: 'text' }, { kind: 'hold' }, { kind: 'passes' }, { kind: 'cues' }];

/** In small letters: people write them either way. */
const HEADINGS: Readonly<Record<string, Meaning['kind'] & string>> = {
  action: 'text',
  frames: 'hold',
  hold: 'hold',
  pass: 'passes',
  passes: 'passes',
  cues: 'cues',
  shot: 'shot',
  exposure: 'exposure',
  firstframe: 'nothing',
  timecode: 'nothing',
  clock: 'nothing',
  done: 'nothing',
  note: 'nothing',
  shutters: 'nothing',
  aperturef: 'nothing',
  iso: 'nothing',
};

/** A text that was made safe for a spreadsheet, as it was. */
const unsafe = (text: string): string => (/^'[=+\-@\t\r]/.test(text) ? text.slice(1) : text);

function meaningOf(plan: Plan, heading: string): Meaning | null {
  const text = unsafe(heading.trim());
  const small = text.toLowerCase();
  const kind = Object.hasOwn(HEADINGS, small) ? HEADINGS[small] : undefined;
  if (kind) return { kind } as Meaning;
  for (const { name, unit } of plan.rig.axes) {
    if (text === `${name}.${unit}`) return { kind: 'axis', axis: name };
    if (text === `${name}.steps` || text === `${name}.arrives`) return { kind: 'nothing' };
  }
  return null;
}

const HAS_HEADINGS = new Set(['action', 'frames', 'hold']);

/** One row, read. */
interface Row extends NewExposure {
  cues: NewCue[];
  axes: { axis: string; position: number }[];
  /** Where it says that it belongs. */
  place: string;
}

/** Reads rows. */
class Reader {
  readonly faults: Fault[] = [];
  readonly #plan: Plan;
  readonly #hold: number;

  constructor(plan: Plan, hold: number) {
    this.#plan = plan;
    this.#hold = hold;
  }

  fault(row: number, column: number, found: string, allowed: string): void {
    const short = found.length > 40 ? `${found.slice(0, 39)}…` : found;
    this.faults.push({ path: `row ${row}, column ${column}`, found: JSON.stringify(short), allowed });
  }

  headings(cells: readonly string[]): Meaning[] {
    const names = ['action', 'frames', 'pass', 'cues'];
    const axes = this.#plan.rig.axes.map(({ name, unit }) => `${name}.${unit}`);
    return cells.map((cell, c) => {
      const meaning = meaningOf(this.#plan, cell);
      if (!meaning) this.fault(1, c + 1, cell, `one of ${[...names, ...axes].join(', ')}`);
      return meaning ?? { kind: 'nothing' };
    });
  }

  row(cells: readonly string[], meanings: readonly Meaning[], number: number): Row {
    const row: Row = { hold: this.#hold, text: null, passes: null, cues: [], axes: [], place: '' };
    cells.forEach((cell, c) => {
      const text = unsafe(cell.trim());
      const meaning = meanings[c];
      if (meaning === undefined) {
        if (text !== '') this.fault(number, c + 1, text, `at most ${meanings.length} columns`);
      } else if (text !== '') this.#cell(row, meaning, text, number, c + 1);
    });
    return row;
  }

  #cell(row: Row, meaning: Meaning, text: string, number: number, column: number): void {
    const refuse = (allowed: string) => this.fault(number, column, text, allowed);
    if (meaning.kind === 'text') {
      if (text.length > 200) refuse('text of at most 200 characters');
      else row.text = text;
    } else if (meaning.kind === 'hold') {
      const hold = /^\d{1,7}$/.test(text) ? Number(text) : 0;
      if (hold < 1 || hold > MAX_FRAMES) refuse(`a whole number of frames from 1 to ${MAX_FRAMES}`);
      else row.hold = hold;
    } else if (meaning.kind === 'passes') row.passes = this.#passes(text, refuse);
    else if (meaning.kind === 'cues') row.cues = cuesIn(text, refuse);
    else if (meaning.kind === 'axis') {
      const position = Number(text.replace('\u2212', '-').replace(/^([+-]?\d+),(\d+)$/, '$1.$2'));
      if (Number.isFinite(position)) row.axes.push({ axis: meaning.axis, position });
      else refuse('a number');
    } else if (meaning.kind === 'shot' || meaning.kind === 'exposure')
      row.place += `${meaning.kind} ${text} `;
  }

  #passes(text: string, refuse: (allowed: string) => void): string[] | null {
    const known = this.#plan.sheet.passes.map(({ name }) => name);
    const names = known.includes(text) ? [text] : text.split(/[,;]/).map((name) => unsafe(name.trim()));
    const unique = [...new Set(names.filter((name) => name !== ''))];
    if (unique.length > 0 && unique.every((name) => known.includes(name))) return unique;
    refuse(`passes of the production: ${known.join(', ')}`);
    return null;
  }
}

/** Cues of a cell: `sound: knock; light: key off`; without a kind it is another one. */
function cuesIn(text: string, refuse: (allowed: string) => void): NewCue[] {
  const cues = text.split(';').flatMap((part): NewCue[] => {
    const found = /^\s*(\w+):\s*(.*)$/s.exec(part);
    const kind = CUE_KINDS.find((name) => name === found?.[1]);
    const cue = { kind: kind ?? 'other', text: (kind ? (found?.[2] ?? '') : part).trim() };
    if (cue.text.length > 200) refuse('cues of at most 200 characters each');
    return cue.text === '' ? [] : [cue];
  });
  if (secondOfKind(cues)) refuse(`one cue of each kind: ${CUE_KINDS.join(', ')}`);
  return cues;
}

/** Rows of one exposure, a pass each, are one exposure. */
function joined(rows: readonly Row[]): Row[] {
  const exposures: Row[] = [];
  for (const row of rows) {
    const last = exposures.at(-1);
    if (row.place === '' || last?.place !== row.place) exposures.push(row);
    else last.passes = [...new Set([...(last.passes ?? []), ...(row.passes ?? [])])];
  }
  return exposures;
}

/**
 * Puts rows after an exposure of a shot, as exposures of its action; 0 is before the first.
 * @param text - tab-separated, as spreadsheets give it
 * @returns faults with row and column, counted from 1 as in the text; then nothing has been changed
 */
export function pasteRows(plan: Plan, place: ExposurePlace, text: string): Pasted {
  const cells = tabCells(text).filter((row, r, all) => r + 1 < all.length || row.some((cell) => cell !== ''));
  const refuse = (found: string, allowed: string): Pasted => ({
    ok: false,
    faults: [{ path: 'rows', found, allowed }],
  });
  if (cells.length === 0) return refuse('nothing', 'rows with tabs between their cells');
  if (cells.length > MOST_ROWS) return refuse(`${cells.length} rows`, `at most ${MOST_ROWS} rows`);
  try {
    const reader = new Reader(plan, usualHold(plan, place));
    const [first = []] = cells;
    const headed = first.some((cell) => HAS_HEADINGS.has(cell.trim().toLowerCase()));
    const meanings = headed ? reader.headings(first) : USUAL;
    const rows = cells.slice(headed ? 1 : 0).map((row, r) => reader.row(row, meanings, r + (headed ? 2 : 1)));
    if (reader.faults.length > 0) return { ok: false, faults: reader.faults };
    if (rows.length === 0) return refuse('headings only', 'rows under the headings');
    return { ok: true, ...pasted(plan, place, joined(rows)) };
  } catch (error) {
    if (error instanceof Refused) return { ok: false, faults: [error.fault] };
    throw error;
  }
}

/** Frames that the exposure before is held for. */
function usualHold(plan: Plan, { shot, exposure }: ExposurePlace): number {
  const own = shotNumbered(plan, shot);
  if (exposuresOfShot(plan, own) === 0) return plan.clip.holdFrames;
  const at = locate(plan, { shot, exposure: Math.max(1, exposure) });
  return holdsOf(plan, actionNumbered(own, at.action))[at.exposure - 1] as number;
}

function pasted(
  plan: Plan,
  { shot, exposure }: ExposurePlace,
  rows: readonly Row[],
): { plan: Plan; exposures: number } {
  let then = insertExposures(plan, { shot, exposure }, rows);
  rows.forEach((row, r) => {
    const place = { shot, exposure: exposure + r + 1 };
    for (const cue of row.cues) then = setCue(then, place, cue);
    for (const { axis, position } of row.axes) then = setAxisPosition(then, place, axis, position);
  });
  return { plan: then, exposures: rows.length };
}

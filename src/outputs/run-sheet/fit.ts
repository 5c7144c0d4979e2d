/**
 * Cuts a run sheet to what two pages hold: what is nearest in time stays, and what is left out is counted.
 *
 * Tables of settings go first, since all of them stand elsewhere; what keeps people and gear safe goes last or never:
 * what to bring, the steps of the day, the cautions and what stops the run are not cut at all.
 */
import { lastWhere } from '../../engine/search.ts';
import { firstAndLast } from './rig.ts';
import type { ClockLine, Left, RunSheet } from './types.ts';

/** A part that can be cut. */
interface Part {
  /** Lines of it that a sheet has. */
  count: (sheet: RunSheet) => number;
  /** The sheet with the first so many of them. */
  to: (sheet: RunSheet, count: number) => RunSheet;
}

const less = ({ left }: RunSheet, part: keyof Left, by: number): Left => ({
  ...left,
  [part]: left[part] + by,
});

/** A list of which the first ones stay. */
const list = <Key extends 'work' | 'shots' | 'sun' | 'findings'>(key: Key, part: keyof Left): Part => ({
  count: (sheet) => sheet[key].length,
  to: (sheet, count) => ({
    ...sheet,
    [key]: sheet[key].slice(0, count),
    left: less(sheet, part, sheet[key].length - count),
  }),
});

/** Lines of the clock of one kind. */
const ofClock = (kind: ClockLine['kind'], part: 'sky' | 'moments'): Part => ({
  count: ({ clock }) => clock.filter((line) => line.kind === kind).length,
  to: (sheet, count) => {
    let seen = 0;
    const clock = sheet.clock.filter((line) => {
      if (line.kind === kind) seen += 1;
      return line.kind !== kind || seen <= count;
    });
    return { ...sheet, clock, left: less(sheet, part, sheet.clock.length - clock.length) };
  },
});

const changes: Part = {
  count: (sheet) => sheet.changes.length,
  to: (sheet, count) => {
    const by = sheet.changes.slice(count).reduce((sum, change) => sum + change.count, 0);
    return { ...sheet, changes: sheet.changes.slice(0, count), left: less(sheet, 'changes', by) };
  },
};

/** The last keyframe stays: there the rig has to end. */
const keyframes: Part = {
  count: ({ rig }) => rig?.rows.length ?? 0,
  to: (sheet, count) => {
    if (!sheet.rig) return sheet;
    const rows = firstAndLast(sheet.rig.rows, count);
    const by = sheet.rig.rows.length - rows.length;
    return { ...sheet, rig: { ...sheet.rig, rows }, left: less(sheet, 'keyframes', by) };
  },
};

/** By letters, but between words. */
const notes: Part = {
  count: (sheet) => sheet.notes.length,
  to: (sheet, count) => {
    if (count >= sheet.notes.length) return sheet;
    const kept = sheet.notes.slice(0, count).replace(/\s+\S*$|[\ud800-\udbff]$/u, '');
    return { ...sheet, notes: `${kept}\u2026`, left: less(sheet, 'notes', sheet.notes.length - kept.length) };
  },
};

const PARTS = {
  changes,
  keyframes,
  notes,
  sky: ofClock('sky', 'sky'),
  settings: ofClock('settings', 'moments'),
  moments: ofClock('moment', 'moments'),
  days: list('work', 'days'),
  shots: list('shots', 'shots'),
  sun: list('sun', 'sun'),
  findings: list('findings', 'findings'),
} as const;
type PartName = keyof typeof PARTS;
type Counts = Record<PartName, number>;

/** How many findings there are of these severities: they come first. */
const graver =
  (...severities: string[]) =>
  ({ findings }: RunSheet): number =>
    findings.filter(({ severity }) => severities.includes(severity)).length;

/** What is cut, and down to what, in this order until it fits. */
const STEPS: readonly (readonly [PartName, number | ((sheet: RunSheet) => number)])[] = [
  ['changes', 12],
  ['keyframes', 6],
  ['sky', 0],
  ['shots', 12],
  ['days', 10],
  ['notes', 1000],
  ['findings', graver('stop', 'warning')],
  ['changes', 0],
  ['keyframes', 2],
  ['sun', 1],
  ['notes', 240],
  ['shots', 0],
  ['keyframes', 0],
  ['days', 2],
  ['sun', 0],
  ['findings', graver('stop')],
  ['settings', 0],
  ['moments', 0],
];

const NAMES = Object.keys(PARTS) as PartName[];

/**
 * The sheet, cut as far as it has to be.
 * @param fits - whether a sheet has room on its paper; a shorter one has if a longer one has
 */
export function fitRunSheet(sheet: RunSheet, fits: (sheet: RunSheet) => boolean): RunSheet {
  const most = Object.fromEntries(NAMES.map((name) => [name, PARTS[name].count(sheet)])) as Counts;
  const cut = (counts: Counts) => NAMES.reduce((one, name) => PARTS[name].to(one, counts[name]), sheet);
  let counts = most;
  let reached = 0;
  for (; reached < STEPS.length && !fits(cut(counts)); reached += 1) {
    const [name, least] = STEPS[reached] as (typeof STEPS)[number];
    const low = typeof least === 'number' ? least : least(sheet);
    counts = { ...counts, [name]: Math.min(counts[name], low) };
  }
  // What was cut last is given room first, then what was cut before it; notes never take it from the rest.
  const names = STEPS.slice(0, reached).map(([name]) => name);
  for (const name of [...names.filter((one) => one !== 'notes').reverse(), 'notes'] as const) {
    const now = counts;
    const roomFor = lastWhere(now[name], most[name] + 1, (count) => fits(cut({ ...now, [name]: count })));
    counts = { ...now, [name]: roomFor };
  }
  return cut(counts);
}

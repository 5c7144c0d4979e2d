/** What is said of the lines that there was no room for, and where they stand. */
import type { Left, RunSheet } from './types.ts';

/** What a line is, several lines are, and where they are. */
const WORDS: Readonly<Record<Exclude<keyof Left, 'notes'>, readonly [string, string, string]>> = {
  changes: ['change', 'changes', 'in the sheet of frames'],
  keyframes: ['keyframe', 'keyframes', 'in the table of positions'],
  moments: ['moment that needs a hand', 'moments that need a hand', 'in the sheet of frames'],
  sky: ['moment of sun and moon', 'moments of sun and moon', 'in the view of days'],
  sun: ['day of sun and moon', 'days of sun and moon', 'in the view of days'],
  findings: ['finding', 'findings', 'beside the plan'],
  days: ['day', 'days', 'beside the exposure sheet'],
  shots: ['shot', 'shots', 'in the exposure sheet'],
};

/** Lines of a part that are there. */
const SHOWN: Readonly<Record<keyof typeof WORDS, (sheet: RunSheet) => number>> = {
  changes: ({ changes }) => changes.length,
  keyframes: ({ rig }) => rig?.rows.length ?? 0,
  moments: ({ clock }) => clock.filter(({ kind }) => kind === 'moment' || kind === 'settings').length,
  sky: ({ clock }) => clock.filter(({ kind }) => kind === 'sky').length,
  sun: ({ sun }) => sun.length,
  findings: ({ findings }) => findings.length,
  days: ({ work }) => work.length,
  shots: ({ shots }) => shots.length,
};

/** `and 212 more changes: in the sheet of frames`; null if all of a part is there. */
export function leftText(sheet: RunSheet, part: keyof Left): string | null {
  const count = sheet.left[part];
  if (count === 0) return null;
  if (part === 'notes') return 'The rest of the notes is in the plan.';
  const [one, several, where] = WORDS[part];
  const words = `${count === 1 ? one : several}: ${where}`;
  return SHOWN[part](sheet) > 0 ? `and ${count} more ${words}` : `${count} ${words}`;
}

/** Those of several parts that have lines left out. */
export const leftTexts = (sheet: RunSheet, ...parts: (keyof Left)[]): string[] =>
  parts.flatMap((part) => leftText(sheet, part) ?? []);

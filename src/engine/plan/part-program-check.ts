/**
 * What a plan must say so that a part program (RS-274) can be written of it.
 *
 * Source: NIST RS274/NGC Interpreter, version 3 (Kramer, Proctor, Messina 2000, NISTIR 6556): section 2.1.2.1 (X, Y, Z
 * move along lines, A, B, C turn), 3.3 (at most 256 characters a line), 3.3.4 (comments do not nest).
 */
import { type Fault, foundText } from './fault.ts';
import type { Axis, Plan } from './schema.ts';

/** Longest line that the standard's interpreter reads. */
export const LONGEST_LINE = 256;

const WORDS = { mm: ['X', 'Y', 'Z'], deg: ['A', 'B', 'C'] } as const;

/** Letter of an axis in a part program. */
export type AxisWord = (typeof WORDS)['mm' | 'deg'][number];

/**
 * The letter of each axis: its own, else the first of its kind that no axis has asked for; null where none is left.
 */
export function axisWords({ axes }: Plan['rig']): (AxisWord | null)[] {
  const free = (words: readonly AxisWord[]) =>
    words.filter((word) => !axes.some((axis) => axis.word === word));
  const left = { mm: free(WORDS.mm), deg: free(WORDS.deg) };
  return axes.map(({ word, unit }) => (word === 'auto' ? (left[unit].shift() ?? null) : word));
}

/** Lines that fire the camera, without the empty ones. */
export const triggerLines = ({ partProgram }: Plan): string[] =>
  partProgram.triggerLines.split(/\r\n|\r|\n/).filter((line) => line.trim() !== '');

/** Two axes that ask for one letter. */
export function wordFaults({ rig: { axes } }: Plan): Fault[] {
  return axes.flatMap(({ word }, i) => {
    const before = axes.findIndex((axis) => axis.word === word);
    if (word === 'auto' || before === i) return [];
    const allowed = `a letter that ${axes[before]?.name} does not have, or "auto"`;
    return [{ path: `rig.axes[${i}].word`, found: foundText(word), allowed }];
  });
}

const PRINTABLE = /^[\t\x20-\x7E]*$/;

/** Trigger lines that no controller could read. */
export function triggerLineFaults(plan: Plan): Fault[] {
  return triggerLines(plan).flatMap((line) => {
    const fault = (found: string, allowed: string): Fault[] => [
      { path: 'partProgram.triggerLines', found, allowed },
    ];
    if (!PRINTABLE.test(line)) return fault(foundText(line), 'printable ASCII characters (RS-274)');
    if (line.length > LONGEST_LINE)
      return fault(
        `a line of ${line.length} characters`,
        `at most ${LONGEST_LINE} characters a line (RS-274)`,
      );
    return [];
  });
}

/** Words of a line, comments left out; null if its comments do not close, or nest. */
export function wordsOf(line: string): string | null {
  const bare = line.replace(/\([^()]*\)/g, '').replace(/\s/g, '');
  return /[()]/.test(bare) ? null : bare.toUpperCase();
}

const AXIS_WORD = /[XYZABC][-+.\d#[]/;
/** Units, distance mode, feed mode, end of program: what the program itself has set. */
const OWN_WORD = /G0*(?:20|21|90|91|93|94)(?![.\d])|M0*(?:2|30)(?!\d)|%/;

function triggerRefusals(plan: Plan): Fault[] {
  return triggerLines(plan).flatMap((line) => {
    const words = wordsOf(line);
    const path = 'partProgram.triggerLines';
    if (words === null)
      return [{ path, found: foundText(line), allowed: 'comments that close, and none within another' }];
    if (!AXIS_WORD.test(words) && !OWN_WORD.test(words)) return [];
    const allowed =
      'lines that move no axis, change neither units (G20, G21) nor distance mode (G90, G91) nor feed mode (G93, G94), and do not end the program (M2, M30)';
    return [{ path, found: foundText(line), allowed }];
  });
}

const KIND = { mm: 'lengths', deg: 'angles' } as const;

function wordRefusal(axis: Axis, word: AxisWord | null, i: number): Fault[] {
  const path = `rig.axes[${i}].word`;
  const own: readonly string[] = WORDS[axis.unit];
  const allowed = `three ${KIND[axis.unit]} at most, one for each of ${own.join(', ')}: other axes need a controller of their own`;
  if (word === null) return [{ path, found: `"auto", with no letter left for ${axis.name}`, allowed }];
  if (own.includes(word)) return [];
  const letters = `${own.join(', ')} or "auto": ${axis.name} moves in ${axis.unit}`;
  return [{ path, found: foundText(word), allowed: letters }];
}

/**
 * Why no part program can be written of a plan that is fine in all else.
 * @returns the faults; empty if one can be written
 */
export function partProgramFaults(plan: Plan): Fault[] {
  const words = axisWords(plan.rig);
  return [
    ...plan.rig.axes.flatMap((axis, i) => wordRefusal(axis, words[i] ?? null, i)),
    ...triggerRefusals(plan),
  ];
}

/** The figures in a sentence: which of its words they are, and the names of their workings. */
import type { Workings } from './make.ts';
import type { Said } from './said.ts';

/** A figure in a sentence. */
export interface Stated {
  /** Where it stands in it, and how it is written there. */
  from: number;
  text: string;
  /** Name of its working. */
  of: string;
}

/** Name of a figure that a sentence alone states. */
type Named = (what: string) => string;

/** Where a figure stands in a sentence, from a place on: not within a longer number; -1 if it does not. */
function placeOf(sentence: string, text: string, from: number): number {
  const at = sentence.indexOf(text, from);
  if (at === -1) return -1;
  const before = sentence.slice(Math.max(0, at - 1), at);
  const after = sentence.slice(at + text.length, at + text.length + 2);
  const within = /[\d.,:\u2212]/.test(before) || /^\d|^[.,:]\d/.test(after);
  return within ? placeOf(sentence, text, at + 1) : at;
}

/** The figures that a sentence states, in the order of the words; of two that read the same the first comes first. */
export function located(
  sentence: string,
  said: readonly (Omit<Stated, 'from'> & { lead: string })[],
): Stated[] {
  const found: Stated[] = [];
  for (const { text, of, lead } of said) {
    const before = found.findLast((each) => each.text === text);
    const led = placeOf(sentence, lead + text, before ? before.from + text.length - lead.length : 0);
    const from = led === -1 ? -1 : led + lead.length;
    const isFree = found.every(
      (each) => from >= each.from + each.text.length || from + text.length <= each.from,
    );
    if (from >= 0 && isFree) found.push({ from, text, of });
  }
  return found.sort((a, b) => a.from - b.from);
}

/** The same of what a sentence may state. */
export const statedOf = (sentence: string, said: readonly Said[], named: Named): Stated[] =>
  located(
    sentence,
    said.flatMap((each) => {
      const { text, lead = '' } = each;
      return text === null ? [] : [{ text, lead, of: 'of' in each ? each.of : named(each.what) }];
    }),
  );

/** Workings of what a sentence alone states, by their names within it. */
export const ownWorkings = (said: readonly Said[]): Workings =>
  Object.fromEntries(said.flatMap((each) => ('draft' in each ? [[each.what, each.draft]] : [])));

/** Names of the figures that a sentence alone states, and of those that only stand behind them. */
export function ownFigures(sentence: string, said: readonly Said[], named: Named): string[] {
  const stated = new Set(statedOf(sentence, said, named).map(({ of }) => of));
  return said.flatMap((each) => {
    if (!('draft' in each)) return [];
    const name = named(each.what);
    return each.text === null || stated.has(name) ? [name] : [];
  });
}

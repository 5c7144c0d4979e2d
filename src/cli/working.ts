/** How figures came about, at the prompt. */
import type { Finding } from '../engine/findings/types.ts';
import type { Plan } from '../engine/plan/schema.ts';
import type { Schedule } from '../engine/schedule-types.ts';
import { sheetFindingAsked, sheetStatedIn } from '../engine/sheet/finding-figures.ts';
import { findingFiguresOf } from '../engine/working/finding-figures.ts';
import { type FixesKnown, figuresOf, workingOf, workingText } from '../engine/working/working.ts';
import { askedBy } from '../outputs/fixes-json.ts';
import { remedyAsked } from './apply.ts';
import { OptionError } from './options.ts';

/** Neighbouring pairs of letters of a name. */
const pairsOf = (name: string): string[] =>
  Array.from({ length: Math.max(0, name.length - 1) }, (_, i) => name.slice(i, i + 2).toLowerCase());

/** How alike two names are, by the pairs of letters that they share: 0 to 1. */
function alike(a: string, b: string): number {
  const [ofA, ofB] = [pairsOf(a), pairsOf(b)];
  const shared = ofA.filter((pair) => ofB.includes(pair)).length;
  return (2 * shared) / Math.max(1, ofA.length + ofB.length);
}

/** Names, those most like another one first. */
const nearestFirst = (names: readonly string[], asked: string): string[] =>
  [...names].sort((a, b) => alike(b, asked) - alike(a, asked));

/**
 * The working of a figure as text, of all that a finding states, or of all of them, one after another.
 * @throws OptionError if the plan has no such figure: which there are, nearest first
 */
export function workingTexts(plan: Plan, worked: Schedule, name: string): Iterable<string> {
  if (name !== 'all') {
    const finding = findingAsked(worked, name);
    if (finding) return sentenceTexts(plan, worked, finding.message, findingFiguresOf(plan, worked, finding));
    const [, key] = /^sheet\.findings\.(.+)$/s.exec(name) ?? [];
    const onSheet = key === undefined ? null : sheetFindingAsked({ plan, made: worked }, key);
    if (onSheet) {
      const stated = sheetStatedIn(onSheet.of, onSheet.finding).map(({ of }) => of);
      return sentenceTexts(plan, worked, onSheet.finding.message, stated);
    }
    const fixes: FixesKnown = (id, n) => remedyAsked(plan, worked, id)?.fixes[n - 1] ?? null;
    const working = workingOf(plan, worked, name, undefined, fixes);
    if (working) return [workingText(working)];
    const names = nearestFirst(figuresOf(plan, worked), name);
    throw new OptionError(
      `--working: found '${name}'; allowed, nearest first:\n${names.map((each) => `  ${each}`).join('\n')}`,
    );
  }
  return allTexts(plan, worked);
}

/** The finding that `findings.ID` names, its ID as `--fixes` prints it. */
function findingAsked({ findings }: Schedule, name: string): Finding | undefined {
  const ids = askedBy(findings).map((id) => `findings.${id}`);
  return findings[ids.indexOf(name)];
}

/** A sentence, and how each of its figures came about. */
function* sentenceTexts(
  plan: Plan,
  worked: Schedule,
  sentence: string,
  figures: readonly string[],
): Generator<string> {
  yield `${sentence}\n\n`;
  for (const figure of new Set(figures)) {
    const working = workingOf(plan, worked, figure);
    if (working) yield `${workingText(working)}\n`;
  }
}

function* allTexts(plan: Plan, worked: Schedule): Generator<string> {
  for (const figure of figuresOf(plan, worked)) {
    const working = workingOf(plan, worked, figure);
    if (working) yield `${workingText(working)}\n`;
  }
}

/** Findings with what can be done about them, as JSON; and the plan with one of them done. */
import { type Finding, keyOf } from '../engine/findings/types.ts';
import type { Fix, Remedy } from '../engine/fixes/types.ts';
import type { Plan } from '../engine/plan/schema.ts';
import type { Schedule } from '../engine/schedule-types.ts';
import { keyOfSheetFinding, sheetFindingsOf, sheetStatedIn } from '../engine/sheet/finding-figures.ts';
import { findingFiguresOf } from '../engine/working/finding-figures.ts';
import { ofFix } from '../engine/working/names.ts';

/** What each finding is asked for by: its id where it is the only one of its kind, else with what it is about. */
export const askedBy = (findings: readonly Finding[]): string[] =>
  findings.map((finding) =>
    findings.filter(({ id }) => id === finding.id).length === 1 ? finding.id : keyOf(finding),
  );

const fixFields = (
  finding: string,
  { kind, label, cost: { text, parts, ...costs }, changes, alsoFixes }: Fix,
  index: number,
) => ({
  n: index + 1,
  kind,
  label,
  cost: text,
  costs,
  figures: parts.flatMap(({ of }) => (of === null ? [] : [ofFix(finding, index + 1, `cost.${of}`)])),
  changes,
  alsoFixes,
});

/** The findings of a stop-motion plan's exposure sheet. */
const onSheet = (plan: Plan, made: Schedule) =>
  sheetFindingsOf({ plan, made }).map(({ of, finding }) => ({
    id: keyOfSheetFinding(finding),
    severity: finding.severity,
    message: finding.message,
    exposure: finding.exposure,
    figures: [...new Set(sheetStatedIn(of, finding).map((stated) => stated.of))],
  }));

/**
 * The findings with their fixes as JSON text, indented, with a line end at the end.
 * @param remedies - one for each finding, in their order
 * @returns one object: `title`, `verdict`, `findings`, each with its `id` (what one of its fixes is asked for by),
 *   `severity`, `message`, `frame`, `at`, the names of the `figures` that its message states, its `fixes`, cheapest first, and `whyNone`, a sentence if there are none. A
 *   fix has its `n`, counted from 1, `kind`, `label`, `cost` in words, `costs` in figures, the names of the `figures` that the words state, `changes` (each a `path`,
 *   its value `from` and `to`), and the keys of what it `alsoFixes`. A stop-motion plan has besides `sheetFindings`,
 *   those of its exposure sheet, for which no ways out are looked for.
 */
export function fixesJson(plan: Plan, made: Schedule, remedies: Iterable<Remedy>): string {
  const { verdict, findings } = made;
  const found = [...remedies];
  const ids = askedBy(findings);
  const shown = findings.map((finding, i) => ({
    id: ids[i],
    severity: finding.severity,
    message: finding.message,
    frame: finding.frame,
    at: finding.at,
    figures: findingFiguresOf(plan, made, finding),
    fixes: found[i]?.fixes.map((fix, n) => fixFields(ids[i] as string, fix, n)) ?? [],
    whyNone: found[i]?.whyNone ?? null,
  }));
  const sheetFindings = plan.technique === 'stopMotion' ? onSheet(plan, made) : undefined;
  return `${JSON.stringify({ title: plan.title, verdict, findings: shown, sheetFindings }, null, 2)}\n`;
}

/** The figures in the sentences of a sheet's findings, and the names of their workings. */
import { aboutOf } from '../findings/types.ts';
import type { Worked, Workings } from '../working/make.ts';
import type { Said } from '../working/said.ts';
import { ownFigures, ownWorkings, type Stated, statedOf } from '../working/stated.ts';
import { type OfSheet, SHEET_SAYS } from './finding-working.ts';
import { knownSheet } from './known.ts';
import type { SheetFinding } from './types.ts';

/** What a finding of a sheet is told from others by: `card-full`, `source-short:Cells`. */
export function keyOfSheetFinding({ id, values }: SheetFinding): string {
  const about = aboutOf(values);
  return about === null ? id : `${id}:${about}`;
}

const saidOf = (of: OfSheet, finding: SheetFinding): readonly Said[] =>
  SHEET_SAYS[finding.id]?.(of, finding) ?? [];

/** Names of the figures of a finding. */
const named = (finding: SheetFinding) => (what: string) =>
  `sheet.findings.${keyOfSheetFinding(finding)}.${what}`;

/** The figures in the sentence of a sheet's finding that were worked out. */
export const sheetStatedIn = (of: OfSheet, finding: SheetFinding): Stated[] =>
  statedOf(finding.message, saidOf(of, finding), named(finding));

/** Plan, schedule and sheet; null if the plan is no stop-motion. */
function withSheet(of: Worked): OfSheet | null {
  const sheet = knownSheet(of.plan);
  return sheet && { ...of, sheet };
}

/** The findings of a plan's sheet, worst first; with the sheet. */
export function sheetFindingsOf(of: Worked): { of: OfSheet; finding: SheetFinding }[] {
  const known = withSheet(of);
  return known ? known.sheet.totals.findings.map((finding) => ({ of: known, finding })) : [];
}

/** A finding of a plan's sheet by its key, or its id where it is the only one of its kind; with the sheet. */
export function sheetFindingAsked(of: Worked, key: string): { of: OfSheet; finding: SheetFinding } | null {
  const all = sheetFindingsOf(of);
  const ofKind = all.filter(({ finding }) => finding.id === key);
  const one = ofKind.length === 1 ? ofKind[0] : undefined;
  return all.find(({ finding }) => keyOfSheetFinding(finding) === key) ?? one ?? null;
}

/** Workings of what a sheet's finding alone states. */
export function sheetFindingWorkings(of: Worked, key: string): Workings {
  const asked = sheetFindingAsked(of, key);
  return asked ? ownWorkings(saidOf(asked.of, asked.finding)) : {};
}

/** Names of the figures that the findings of a sheet alone state. */
export const sheetFindingsFiguresOf = (worked: Worked): string[] =>
  sheetFindingsOf(worked).flatMap(({ of, finding }) =>
    ownFigures(finding.message, saidOf(of, finding), named(finding)),
  );

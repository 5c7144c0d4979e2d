/** Every output that a plan has: for printing one, or writing all into a folder. */
import { existsSync } from 'node:fs';
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { serialisePlan } from '../engine/plan/parse.ts';
import { partProgramFaults } from '../engine/plan/part-program-check.ts';
import type { Plan } from '../engine/plan/schema.ts';
import type { Schedule } from '../engine/schedule-types.ts';
import { sheetOf } from '../engine/sheet/sheet.ts';
import type { Sheet } from '../engine/sheet/types.ts';
import { calendarText } from '../outputs/calendar.ts';
import { fileStem } from '../outputs/file-name.ts';
import { framesCsv } from '../outputs/frames-csv.ts';
import { partProgram } from '../outputs/part-program/program.ts';
import { positionsCsv } from '../outputs/positions-csv.ts';
import { runSheet } from '../outputs/run-sheet/run-sheet.ts';
import { runSheetText } from '../outputs/run-sheet/text.ts';
import { scheduleJson } from '../outputs/schedule-json.ts';
import { sheetCsv } from '../outputs/sheet-csv.ts';
import { summaryText } from '../outputs/summary.ts';

/** A plan and what it comes to. */
export interface Worked {
  plan: Plan;
  made: Schedule;
  /** Exposure sheet of a stop-motion plan, worked out once; null for a time-lapse. */
  sheet: Sheet | null;
  /** When it is written, milliseconds of the epoch. */
  nowMs: number;
}

/** What a plan comes to, now. */
export const workedOut = (plan: Plan, made: Schedule): Worked => ({
  plan,
  made,
  sheet: plan.technique === 'stopMotion' ? sheetOf(plan) : null,
  nowMs: Date.now(),
});

/** In pieces. */
type Text = Iterable<string>;

/** Outputs that are files of their own, too. */
export const OUTPUTS = {
  summary: ({ plan, made, sheet }: Worked): Text => [summaryText(plan, made, sheet)],
  json: ({ plan, made, sheet }: Worked): Text => [scheduleJson(plan, made, sheet)],
  frames: ({ plan, made }: Worked): Text => framesCsv(plan, made),
  sheet: ({ plan, made, sheet }: Worked): Text => (sheet ? sheetCsv(plan, sheet) : framesCsv(plan, made)),
  'run-sheet': ({ plan, made, sheet }: Worked): Text => [runSheetText(runSheet(plan, made, sheet))],
  calendar: ({ plan, made, sheet, nowMs }: Worked): Text => [
    calendarText({ plan, made, sheet, stampMs: nowMs }),
  ],
  positions: ({ plan, made, sheet }: Worked): Text => positionsCsv(plan, made, sheet),
  rs274: ({ plan, made, sheet }: Worked): Text => partProgram(plan, made, sheet),
};

type Output = [ending: string, text: string | Text];

function outputsOf(worked: Worked): Output[] {
  const of = (output: keyof typeof OUTPUTS) => OUTPUTS[output](worked);
  return [
    ['plan.json', serialisePlan(worked.plan)],
    ['summary.txt', of('summary')],
    ['schedule.json', of('json')],
    ['frames.csv', of('frames')],
    ...(worked.sheet ? ([['sheet.csv', of('sheet')]] as Output[]) : []),
    ['run-sheet.txt', of('run-sheet')],
    ['calendar.ics', of('calendar')],
    ['positions.csv', of('positions')],
    ...(partProgramFaults(worked.plan).length === 0 ? ([['program.ngc', of('rs274')]] as Output[]) : []),
  ];
}

/**
 * Writes all outputs. Files of the same names are replaced. A plan that no part program can be written of has none.
 * @param folder - made if it is missing
 * @returns after each file, a sentence that says what was written
 * @throws the system's error if a file cannot be written
 */
export async function* writeOutputs(folder: string, worked: Worked): AsyncGenerator<string, void, undefined> {
  await mkdir(folder, { recursive: true });
  for (const [ending, text] of outputsOf(worked)) {
    const path = join(folder, `${fileStem(worked.plan.title)}.${ending}`);
    const verb = existsSync(path) ? 'replaced' : 'wrote';
    await writeFile(path, text, 'utf8');
    yield `${verb} ${path}`;
  }
}

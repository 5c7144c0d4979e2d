/** Writes every output that a plan has into one folder. */
import { existsSync } from 'node:fs';
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { serialisePlan } from '../engine/plan/parse.ts';
import type { Plan } from '../engine/plan/schema.ts';
import type { Schedule } from '../engine/schedule-types.ts';
import { sheetOf } from '../engine/sheet/sheet.ts';
import { fileStem } from '../outputs/file-name.ts';
import { framesCsv } from '../outputs/frames-csv.ts';
import { scheduleJson } from '../outputs/schedule-json.ts';
import { sheetCsv } from '../outputs/sheet-csv.ts';
import { summaryText } from '../outputs/summary.ts';

type Output = [ending: string, text: string | Iterable<string>];

const sheetOutputs = (plan: Plan): Output[] =>
  plan.technique === 'stopMotion' ? [['sheet.csv', sheetCsv(plan, sheetOf(plan))]] : [];

/**
 * Writes the plan with every field filled in, the summary, the schedule and the table of frames. Files of the
 * same names are replaced.
 * @param folder - made if it is missing
 * @returns after each file, a sentence that says what was written
 * @throws the system's error if a file cannot be written
 */
export async function* writeOutputs(
  folder: string,
  plan: Plan,
  worked: Schedule,
): AsyncGenerator<string, void, undefined> {
  const outputs: Output[] = [
    ['plan.json', serialisePlan(plan)],
    ['summary.txt', summaryText(plan, worked)],
    ['schedule.json', scheduleJson(plan, worked)],
    ['frames.csv', framesCsv(plan, worked)],
    ...sheetOutputs(plan),
  ];
  await mkdir(folder, { recursive: true });
  for (const [ending, text] of outputs) {
    const path = join(folder, `${fileStem(plan.title)}.${ending}`);
    const verb = existsSync(path) ? 'replaced' : 'wrote';
    await writeFile(path, text, 'utf8');
    yield `${verb} ${path}`;
  }
}

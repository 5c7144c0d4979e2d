/** The sheet as a CSV file, the same as the prompt's. */
import { fileStem } from '../../outputs/file-name.ts';
import { framesCsv } from '../../outputs/frames-csv.ts';
import { sheetCsv } from '../../outputs/sheet-csv.ts';
import { sheetedNow } from '../sheet/sheeted.ts';
import { handOver } from '../store/files.ts';
import { currentPlan } from '../store/plan.ts';
import { hold, workedOut } from '../store/schedules.ts';
import { collected, inSlices } from './slices.ts';

function csvNow(): { name: string; chunks: Iterable<string> } {
  const plan = currentPlan();
  if (plan.technique === 'stopMotion')
    return { name: 'exposures', chunks: sheetCsv(plan, sheetedNow().sheet) };
  const { schedule } = workedOut(plan);
  hold('csv', schedule);
  return { name: 'frames', chunks: framesCsv(plan, schedule) };
}

/** Hands the present plan's sheet over as a CSV file. */
export async function saveCsv(): Promise<void> {
  const fileName = (name: string) => `${fileStem(currentPlan().title)}-${name}.csv`;
  const { name, chunks } = csvNow();
  const file = fileName(name);
  handOver(file, await inSlices(collected(chunks)), 'text/csv');
}

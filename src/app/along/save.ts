/** What leaves the page as a file, the same as at the prompt. */
import { partProgramFaults } from '../../engine/plan/part-program-check.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import type { Schedule } from '../../engine/schedule-types.ts';
import type { Sheet } from '../../engine/sheet/types.ts';
import { calendarText } from '../../outputs/calendar.ts';
import { fileStem } from '../../outputs/file-name.ts';
import { partProgram } from '../../outputs/part-program/program.ts';
import { positionsCsv } from '../../outputs/positions-csv.ts';
import { collected, inSlices } from '../print/slices.ts';
import { sheetedNow } from '../sheet/sheeted.ts';
import { handOver } from '../store/files.ts';
import { currentPlan } from '../store/plan.ts';
import { hold, workedOut } from '../store/schedules.ts';

interface Now {
  plan: Plan;
  made: Schedule;
  sheet: Sheet | null;
}

/** The present plan, worked out, its columns kept as they are while they are written. */
function now(): Now {
  const { plan, schedule: made } = workedOut(currentPlan());
  hold('along', made);
  return { plan, made, sheet: plan.technique === 'stopMotion' ? sheetedNow().sheet : null };
}

async function save({ plan }: Now, ending: string, type: string, chunks: Iterable<string>): Promise<void> {
  const name = `${fileStem(plan.title)}.${ending}`;
  handOver(name, await inSlices(collected(chunks)), type);
}

export function saveCalendar(): Promise<void> {
  const present = now();
  return save(present, 'ics', 'text/calendar', [calendarText({ ...present, stampMs: Date.now() })]);
}

export function savePositions(): Promise<void> {
  const present = now();
  return save(present, 'positions.csv', 'text/csv', positionsCsv(present.plan, present.made, present.sheet));
}

export function saveProgram(): Promise<void> {
  const present = now();
  if (partProgramFaults(present.plan).length > 0) return Promise.resolve();
  return save(present, 'ngc', 'text/plain', partProgram(present.plan, present.made, present.sheet));
}

/** The single figures of a schedule as one JSON object; the per-frame columns are in the table of frames. */
import type { Plan } from '../engine/plan/schema.ts';
import type { Schedule } from '../engine/schedule-types.ts';
import type { Sheet } from '../engine/sheet/types.ts';
import { cleanJson } from './clean.ts';

/** JSON has no infinity and would write null for it, which means 'there is none' here. */
function finite(key: string, value: unknown): unknown {
  if (typeof value === 'number' && !Number.isFinite(value)) {
    throw new RangeError(`schedule: ${key} is ${value}, which JSON cannot hold`);
  }
  return value;
}

/** The exposure sheet without its columns. */
function sheetFigures({ columns: _columns, ...figures }: Sheet): Omit<Sheet, 'columns'> {
  return figures;
}

/**
 * The schedule as JSON text, indented, with a line end at the end.
 * @param sheet - exposure sheet of a stop-motion plan, else null
 * @returns one object: `title`, `verdict`, `counts` of findings by severity, `totals`, `sources`, `cards`,
 *   `events`, `rig`, `findings`, `margins`; of a
 *   stop-motion plan also `sheet`: its shots, actions, days and totals. Energy figures of a mains source are null.
 * @throws RangeError if a figure is not finite
 */
export function scheduleJson(plan: Plan, schedule: Schedule, sheet: Sheet | null): string {
  const { verdict, counts, totals, sources, cards, events, rig, findings, margins } = schedule;
  const shown = {
    title: plan.title,
    verdict,
    counts,
    totals,
    sources,
    cards,
    events,
    rig,
    findings,
    margins,
  };
  const whole = sheet ? { ...shown, sheet: sheetFigures(sheet) } : shown;
  return `${cleanJson(JSON.stringify(whole, finite, 2))}\n`;
}

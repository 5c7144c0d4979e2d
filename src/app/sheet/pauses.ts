/** Where work stops on the sheet: for breaks, and at the end of each day. */

import type { Plan } from '../../engine/plan/schema.ts';
import { firstWhere } from '../../engine/search.ts';
import type { Sheet } from '../../engine/sheet/types.ts';
import { offsetInSpans } from '../../engine/time/clock.ts';
import { spansOf } from './clock.ts';

/** A stop after an exposure. */
export interface Pause {
  kind: 'break' | 'day';
  /** Index of the exposure after which it comes. */
  after: number;
  /** Index of the plan's break, or of the day that ends. */
  index: number;
  /** When it begins, milliseconds of the epoch. */
  ms: number;
}

/** First exposure of a stretch that is begun at or after an instant; its end if there is none. */
const begunFrom = (startMs: Float64Array, from: number, end: number, ms: number): number =>
  firstWhere(from, end, (i) => (startMs[i] as number) >= ms);

const known = new WeakMap<Sheet, Pause[]>();

/** All stops, in order. A break between two exposures of one day shows; one at its edges does not. */
export function pausesOf(plan: Plan, sheet: Sheet): Pause[] {
  const found = known.get(sheet) ?? lookUp(plan, sheet);
  known.set(sheet, found);
  return found;
}

function lookUp(plan: Plan, sheet: Sheet): Pause[] {
  const { startMs } = sheet.columns;
  const spans = spansOf(plan, sheet);
  const pauses: Pause[] = [];
  sheet.days.forEach(({ date, firstExposure, lastExposure, fromMs, toMs }, d) => {
    if (firstExposure === null || lastExposure === null) return;
    const offsetMs = offsetInSpans(fromMs, spans) * 60_000;
    plan.sheet.breaks.forEach(({ from }, index) => {
      const ms = Date.parse(`${date}T${from}:00Z`) - offsetMs;
      const next = begunFrom(startMs, firstExposure - 1, lastExposure, ms);
      if (next > firstExposure - 1 && next < lastExposure)
        pauses.push({ kind: 'break', after: next - 1, index, ms });
    });
    if (d + 1 < sheet.days.length) pauses.push({ kind: 'day', after: lastExposure - 1, index: d, ms: toMs });
  });
  return pauses.sort((a, b) => a.after - b.after || a.ms - b.ms);
}

/** Where work stops on the sheet: for breaks, and at the end of each day. */

import type { Plan } from '../../engine/plan/schema.ts';
import { firstWhere } from '../../engine/search.ts';
import type { Sheet } from '../../engine/sheet/types.ts';
import { instantOf } from '../../engine/time/day.ts';
import { spansOf } from './clock.ts';

/** A stop after an exposure. */
export interface Pause {
  kind: 'break' | 'day';
  /** Index of the exposure after which it comes. */
  after: number;
  /** Index of the day that it is on, or that ends. */
  day: number;
  /** Index of the plan's break, or of the day that ends. */
  index: number;
  /** When it begins and when it ends, milliseconds of the epoch. */
  ms: number;
  toMs: number;
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
  sheet.days.forEach(({ date, firstExposure, lastExposure, toMs }, d) => {
    if (firstExposure === null || lastExposure === null) return;
    const instant = (clock: string) => instantOf(Date.parse(`${date}T${clock}:00Z`), spans, 'first');
    plan.sheet.breaks.forEach(({ from, to }, index) => {
      const ms = instant(from);
      const next = begunFrom(startMs, firstExposure - 1, lastExposure, ms);
      if (next > firstExposure - 1 && next < lastExposure)
        pauses.push({ kind: 'break', after: next - 1, day: d, index, ms, toMs: instant(to) });
    });
    const then = sheet.days[d + 1];
    if (then)
      pauses.push({ kind: 'day', after: lastExposure - 1, day: d, index: d, ms: toMs, toMs: then.fromMs });
  });
  return pauses.sort((a, b) => a.after - b.after || a.ms - b.ms);
}

/** Ways out of what the clock says. */
import { numberIn } from '../fixes/build.ts';
import { dayLater, startEarlier, startLater, startMoved } from '../fixes/start-ways.ts';
import type { SubjectWays, WaysOut } from '../fixes/types.ts';
import type { Plan } from '../plan/schema.ts';
import { startOf } from './clock.ts';

const DAY_MS = 86_400_000;

/** Minutes to the nearest start on one side that the clock does show; clocks go forward by an hour as a rule. */
function minutesToClock(plan: Plan, side: 1 | -1): number {
  const away = Array.from({ length: 180 }, (_, i) => i + 1);
  const shown = (minutes: number) => {
    const there = startMoved(plan, side * minutes);
    return there !== null && startOf(there).kind !== 'skipped';
  };
  return away.find(shown) ?? 60;
}

const skipped: WaysOut = (_, plan) => [
  ...startLater(plan, minutesToClock(plan, 1)),
  ...startEarlier(plan, minutesToClock(plan, -1)),
];

const past: WaysOut = (finding, plan) =>
  dayLater(plan, Math.ceil((numberIn(finding, 'nowMs') - numberIn(finding, 'startMs')) / DAY_MS));

export const timeWays: SubjectWays<'clock-skipped' | 'clock-repeated' | 'clock-change' | 'start-past'> = {
  'clock-skipped': skipped,
  'clock-repeated': () => [],
  'clock-change': () => [],
  'start-past': past,
};

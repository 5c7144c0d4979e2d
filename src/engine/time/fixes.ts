/** Ways out of what the clock says. */
import { numberIn } from '../fixes/build.ts';
import { dayLater, startEarlier, startLater } from '../fixes/start-ways.ts';
import type { SubjectWays, WaysOut } from '../fixes/types.ts';

const DAY_MS = 86_400_000;

/** Clocks go forward by an hour as a rule. */
const skipped: WaysOut = (_, plan) => [...startLater(plan, 60), ...startEarlier(plan, 60)];

const past: WaysOut = (finding, plan) =>
  dayLater(plan, Math.ceil((numberIn(finding, 'nowMs') - numberIn(finding, 'startMs')) / DAY_MS));

export const timeWays: SubjectWays<'clock-skipped' | 'clock-repeated' | 'clock-change' | 'start-past'> = {
  'clock-skipped': skipped,
  'clock-repeated': () => [],
  'clock-change': () => [],
  'start-past': past,
};

/** The sheet in sentences. */

import { SEVERITIES } from '../../engine/findings/types.ts';
import { durationParts, type Part } from '../format/durations.ts';
import { NBSP, plural, withUnit } from '../format/numbers.ts';
import type { Standing } from '../icons.tsx';
import { clockText, dayText, momentText, spansOf } from './clock.ts';
import type { Sheeted } from './sheeted.ts';
import { tickedOf } from './ticked.ts';

/** A length of work in hours and minutes; a day of work is no day of the clock. Short ones to ten seconds. */
export function workParts(minutes: number): Part[] {
  const whole = Math.round(minutes);
  if (whole < 60) return durationParts(minutes < 10 ? Math.round(minutes * 6) * 10 : whole * 60, 0);
  const rest = whole % 60;
  const hours = { number: String(Math.floor(whole / 60)), unit: 'h' };
  return rest === 0 ? [hours] : [hours, { number: String(rest), unit: 'min' }];
}

/** `3 min 30 s`, `5 h 36 min`. */
export const minutesText = (minutes: number): string =>
  workParts(minutes)
    .map(({ number, unit }) => withUnit(number, unit))
    .join(NBSP);

/** How the work stands, in one sentence or two. */
export function statusText({ plan, sheet }: Sheeted): string {
  const { exposures, totals, days } = sheet;
  if (exposures === 0) return 'There are no exposures yet: insert an action.';
  const spans = spansOf(plan, sheet);
  const nowMs = lastTickMs({ plan, sheet }) ?? days[0]?.fromMs ?? totals.finishMs;
  const finish = momentText(totals.finishMs, spans, nowMs);
  if (totals.left === 0) return `All ${plural(exposures, 'exposure')} are in the camera.`;
  if (totals.done === 0) {
    const from = days[0] ? `${dayText(days[0].fromMs, spans)}, ${clockText(days[0].fromMs, spans)}` : '';
    return `${plural(exposures, 'exposure')}, ${minutesText(totals.workMin)} of work in ${plural(days.length, 'day')}: from ${from} to ${finish}.`;
  }
  const { plannedMin, realMin } = totals.pace;
  const behindMin = realMin - plannedMin;
  const apart =
    Math.abs(behindMin) < 0.5
      ? 'on time'
      : `${minutesText(Math.abs(behindMin))} ${behindMin > 0 ? 'behind' : 'ahead'}`;
  const yours = momentText(totals.finishAtPaceMs, spans, nowMs);
  return `${totals.done} of ${plural(exposures, 'exposure')} done, ${apart}. At the planned pace you finish at ${finish}, at yours ${yours}.`;
}

/** Worst of what the sheet has to say; a note while all goes well and there is work left. */
export function standingOf({ sheet }: Sheeted): Standing {
  const { findings, left } = sheet.totals;
  const worst = SEVERITIES.find((severity) => findings.some((finding) => finding.severity === severity));
  return worst ?? (left === 0 ? 'fine' : 'note');
}

/** When the last exposure was ticked; null if none is. */
export const lastTickMs = ({ sheet }: Sheeted): number | null => tickedOf(sheet).lastMs;

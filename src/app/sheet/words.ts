/** The sheet in sentences. */

import { SEVERITIES } from '../../engine/findings/types.ts';
import type { OffsetSpan } from '../../engine/schedule-types.ts';
import type { Pace, SheetDay } from '../../engine/sheet/types.ts';
import { ofWorkDay } from '../../engine/working/names.ts';
import { durationParts, type Part } from '../format/durations.ts';
import { NBSP, plural, withUnit } from '../format/numbers.ts';
import type { Standing } from '../icons.tsx';
import type { Piece } from '../working/sentence.ts';
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
export function statusPieces({ plan, sheet }: Sheeted): Piece[] {
  const { exposures, totals, days } = sheet;
  if (exposures === 0) return ['There are no exposures yet: insert an action.'];
  const spans = spansOf(plan, sheet);
  const nowMs = lastTickMs({ plan, sheet }) ?? days[0]?.fromMs ?? totals.finishMs;
  const all = { text: plural(exposures, 'exposure'), of: 'sheet.exposures' };
  const finish = { text: momentText(totals.finishMs, spans, nowMs), of: 'sheet.finishAt' };
  if (totals.left === 0) return ['All ', all, ' are in the camera.'];
  if (totals.done === 0) {
    const work = { text: minutesText(totals.workMin), of: 'sheet.workMin' };
    const inDays = { text: plural(days.length, 'day'), of: 'sheet.days' };
    return [
      all,
      ', ',
      work,
      ' of work in ',
      inDays,
      ': from ',
      ...fromPieces(days[0], spans),
      ' to ',
      finish,
      '.',
    ];
  }
  const done = { text: String(totals.done), of: 'sheet.done' };
  const yours = { text: momentText(totals.finishAtPaceMs, spans, nowMs), of: 'sheet.finishAtPace' };
  return [
    done,
    ' of ',
    all,
    ' done, ',
    ...apartPieces(totals.pace),
    '. At the planned pace you finish at ',
    finish,
    ', at yours ',
    yours,
    '.',
  ];
}

/** When the first day of work begins. */
const fromPieces = (first: SheetDay | undefined, spans: readonly OffsetSpan[]): Piece[] =>
  first
    ? [
        {
          text: `${dayText(first.fromMs, spans)}, ${clockText(first.fromMs, spans)}`,
          of: ofWorkDay(0, 'from'),
        },
      ]
    : [];

/** How far the work is behind or ahead of what was planned. */
function apartPieces({ plannedMin, realMin }: Pace): Piece[] {
  const behindMin = realMin - plannedMin;
  if (Math.abs(behindMin) < 0.5) return ['on time'];
  const apart = { text: minutesText(Math.abs(behindMin)), of: 'sheet.pace.behindMin' };
  return [apart, behindMin > 0 ? ' behind' : ' ahead'];
}

/** Worst of what the sheet has to say; a note while all goes well and there is work left. */
export function standingOf({ sheet }: Sheeted): Standing {
  const { findings, left } = sheet.totals;
  const worst = SEVERITIES.find((severity) => findings.some((finding) => finding.severity === severity));
  return worst ?? (left === 0 ? 'fine' : 'note');
}

/** When the last exposure was ticked; null if none is. */
export const lastTickMs = ({ sheet }: Sheeted): number | null => tickedOf(sheet).lastMs;

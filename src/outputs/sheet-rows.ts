/** What the exposure sheet comes to, in plain words: shots, days, and when it is done. */
import { counted, figure } from '../engine/findings/words.ts';
import type { Plan } from '../engine/plan/schema.ts';
import type { Sheet, SheetDay, SheetShot } from '../engine/sheet/types.ts';
import { isoIn } from '../engine/time/clock.ts';

type Row = readonly [label: string, text: string];

/** More days than this are counted, not listed. */
const MOST_DAYS = 31;

/** `2026-11-28 15:02`. */
const moment = ({ place }: Plan, ms: number): string => isoIn(ms, place).slice(0, 16).replace('T', ' ');

const shotRow = (shot: SheetShot): Row => [
  shot.name,
  `${counted(shot.exposures, 'exposure')} over ${counted(shot.frames, 'frame')}, from ${shot.timecode}`,
];

function dayRow(plan: Plan, sheet: Sheet, day: SheetDay): Row {
  const clock = (ms: number) => moment(plan, ms).slice(11);
  const ends =
    day.lastExposure === null || day.frame === null
      ? 'setting up'
      : `ends with exposure ${day.lastExposure}, frame ${day.frame} of ${sheet.shots[day.shot ?? 0]?.name}`;
  return [day.date, `${clock(day.fromMs)} to ${clock(day.toMs)}, ${ends}`];
}

function work(plan: Plan, { totals }: Sheet): Row[] {
  const { done, left, workMin, days, finishMs, finishAtPaceMs, pace } = totals;
  const planned = `${figure(workMin / 60)} h over ${counted(days, 'day')}, done ${moment(plan, finishMs)}`;
  const soFar = `${counted(done, 'exposure')} in the camera, ${left} to go; at the pace so far (${figure(pace.factor)} of the planned time) done ${moment(plan, finishAtPaceMs)}`;
  return [['Work', planned], ...(done > 0 ? ([['So far', soFar]] as Row[]) : [])];
}

/** Rows on the sheet. */
export function sheetRows(plan: Plan, sheet: Sheet): Row[] {
  const listed = sheet.days.slice(0, MOST_DAYS).map((day) => dayRow(plan, sheet, day));
  const more = sheet.days.length - listed.length;
  return [
    ...sheet.shots.map(shotRow),
    ...work(plan, sheet),
    ...listed,
    ...(more > 0 ? ([['…', `and ${counted(more, 'day')} more`]] as Row[]) : []),
    ...sheet.totals.findings.map(({ severity, message }): Row => [severity, message]),
  ];
}

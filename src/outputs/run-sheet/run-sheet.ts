/**
 * The run sheet: one or two pages to take along, of what the plan comes to on the day.
 *
 * For stop-motion it is the cover page of the exposure sheet: days, what to bring, set-ups.
 */
import { counted, withUnit } from '../../engine/findings/words.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import type { Schedule } from '../../engine/schedule-types.ts';
import type { Sheet, SheetDay } from '../../engine/sheet/types.ts';
import { offsetInSpans, offsetText } from '../../engine/time/clock.ts';
import { cautionsOf } from '../cautions.ts';
import { dayBlocks } from '../day-blocks.ts';
import { bringLines } from './bring.ts';
import { clockLines } from './clock.ts';
import { changeLines, dialLines, passLines } from './dials.ts';
import { rigTable } from './rig.ts';
import { planSentence, sheetSentence } from './sentence.ts';
import { sunLines } from './sky.ts';
import type { FindingLine, Left, RunSheet, SheetLine, WorkLine } from './types.ts';
import { dateWords, type When, whenOf } from './when.ts';

/** More working days than this are counted at once. */
const MOST_DAYS = 24;

const zoneText = ({ place }: Plan, { offsets, startMs }: Schedule): string => {
  const offset = offsetText(offsetInSpans(startMs, offsets));
  return place.utcOffsetMin === null ? `${place.zone}, UTC${offset}` : `UTC${offset}`;
};

function factsOf(plan: Plan, made: Schedule): string[] {
  const { name, latitudeDeg: lat, longitudeDeg: lon } = plan.place;
  const where = lat === null || lon === null ? '' : `${lat.toFixed(4)}, ${lon.toFixed(4)}`;
  return [dateWords(made.totals.firstFrameAt.slice(0, 10)), name.trim(), where, zoneText(plan, made)].filter(
    (fact) => fact !== '',
  );
}

const findingLines = (
  list: readonly { severity: string; message: string; at?: string | null }[],
): FindingLine[] =>
  list.map(({ severity, message, at }) => ({
    severity,
    text: at ? `${message} (${at.slice(11, 19)})` : message,
  }));

const NOTHING_LEFT: Left = {
  changes: 0,
  keyframes: 0,
  moments: 0,
  sky: 0,
  sun: 0,
  findings: 0,
  days: 0,
  shots: 0,
  notes: 0,
};

/** What both kinds have. */
const common = (plan: Plan, made: Schedule, sheet: Sheet | null) => ({
  title: plan.title,
  facts: factsOf(plan, made),
  bring: bringLines(plan, made, sheet),
  cautions: cautionsOf(plan, made),
  notes: plan.notes.trim(),
});

function timeLapse(plan: Plan, made: Schedule): RunSheet {
  const blocks = dayBlocks(plan, made);
  const span = { fromMs: blocks[0]?.fromMs ?? made.startMs, toMs: blocks.at(-1)?.toMs ?? made.startMs };
  const when = whenOf(plan, span.fromMs, span.toMs);
  const { lines, left } = clockLines(plan, made);
  const changes = changeLines(made, when);
  const rig = rigTable(plan, made, when);
  return {
    ...common(plan, made, null),
    sentence: planSentence(plan, made),
    verdict: made.verdict,
    dials: dialLines(plan, made),
    clock: lines,
    work: [],
    shots: [],
    changes: changes.lines,
    changesGrouped: changes.grouped,
    rig: rig.table,
    sun: sunLines(plan, span),
    findings: findingLines(made.findings),
    left: { ...NOTHING_LEFT, moments: left, keyframes: rig.left },
  };
}

function workLine(sheet: Sheet, day: SheetDay, when: When): WorkLine {
  const { firstExposure, lastExposure, frame, shot, energyWh } = day;
  const packs = energyWh.flatMap(({ source, packs: count }) => (count ? [`${count} x ${source}`] : []));
  const setting = firstExposure === null || lastExposure === null;
  return {
    date: dateWords(day.date),
    from: when.minute(day.fromMs),
    to: when.minute(day.toMs),
    exposures: setting ? 'setting up' : `${firstExposure} to ${lastExposure}`,
    ends: setting || frame === null ? '' : `frame ${frame} of ${sheet.shots[shot ?? 0]?.name}`,
    packs: packs.join(', '),
  };
}

const shotLines = (plan: Plan, { shots }: Sheet): SheetLine[] =>
  shots.map(({ name, exposures, frames, setUpMin, timecode }) => ({
    label: name,
    text: `set up in ${withUnit(setUpMin, 'min')}, ${counted(plan.sheet.testFrames, 'test frame')}, then ${counted(exposures, 'exposure')} for ${counted(frames, 'frame')}, from ${timecode}`,
  }));

function stopMotion(plan: Plan, made: Schedule, sheet: Sheet): RunSheet {
  const { days, totals } = sheet;
  const span = { fromMs: days[0]?.fromMs ?? made.startMs, toMs: days.at(-1)?.toMs ?? made.startMs };
  const when = whenOf(plan, span.fromMs, span.toMs);
  return {
    ...common(plan, made, sheet),
    sentence: sheetSentence(plan, sheet),
    verdict: `Done on ${dateWords(when.date(totals.finishMs))} at ${when.minute(totals.finishMs)}, at the planned pace.`,
    dials: passLines(plan),
    clock: [],
    work: days.slice(0, MOST_DAYS).map((day) => workLine(sheet, day, when)),
    shots: shotLines(plan, sheet),
    changes: [],
    changesGrouped: false,
    rig: null,
    sun: [],
    findings: findingLines(totals.findings),
    left: { ...NOTHING_LEFT, days: Math.max(0, days.length - MOST_DAYS) },
  };
}

/**
 * What the run sheet says. Pure: the same plan gives the same sheet.
 * @param sheet - exposure sheet of a stop-motion plan, else null
 */
export const runSheet = (plan: Plan, made: Schedule, sheet: Sheet | null): RunSheet =>
  sheet ? stopMotion(plan, made, sheet) : timeLapse(plan, made);

/** The exposure sheet of a stop-motion plan for paper. */
import type { Pass, Plan } from '../../engine/plan/schema.ts';
import type { Schedule } from '../../engine/schedule-types.ts';
import { hasPass } from '../../engine/sheet/passes.ts';
import { cuesAt, exposureText, passesOf, tickAt, timecodeAt } from '../../engine/sheet/texts.ts';
import type { SheetAxis } from '../../engine/sheet/types.ts';
import { isoAt } from '../../engine/time/clock.ts';
import { cautionsOf } from '../../outputs/cautions.ts';
import { dateOf } from '../format/clock.ts';
import { shutterText } from '../format/exposure.ts';
import { plural } from '../format/numbers.ts';
import { rateText } from '../format/rate.ts';
import { framesText, positionAt, positionText } from '../sheet/cells.ts';
import { clockText, dayText, momentText, spansOf } from '../sheet/clock.ts';
import { type Pause, pausesOf } from '../sheet/pauses.ts';
import { type RowHeights, rowsOf, type SheetRows } from '../sheet/rows.ts';
import type { Sheeted } from '../sheet/sheeted.ts';
import { minutesText } from '../sheet/words.ts';
import type { PrintColumn, PrintDocument, PrintList, PrintRow, PrintRows } from './document.ts';
import { emsOf } from './ems.ts';

/** Exposures to print, by index; both ends belong to it. */
export interface PrintRange {
  first: number;
  last: number;
}

export const wholeSheet = ({ sheet }: Sheeted): PrintRange => ({ first: 0, last: sheet.exposures - 1 });

/** Width of the widest cell over some rows, looking at no more than 500 of them. */
function widest(text: (index: number) => string, { first, last }: PrintRange): number {
  const stride = Math.max(1, Math.ceil((last - first + 1) / 500));
  if (last < first) return 0;
  let most = emsOf(text(last));
  for (let index = first; index < last; index += stride) most = Math.max(most, emsOf(text(index)));
  return most;
}

/** If the names of all passes are wider than this, they are told by their numbers. */
const WIDEST_PASSES_EM = 11;

const settingsText = ({ exposure }: Plan, { shutterS, apertureF, iso }: Pass): string =>
  `${shutterText(shutterS ?? exposure.shutterS)}, f/${apertureF ?? exposure.apertureF}, ISO ${iso ?? exposure.iso}`;

const numbersPasses = ({ sheet }: Plan): boolean =>
  emsOf(sheet.passes.map(({ name }) => name).join(', ')) > WIDEST_PASSES_EM;

function passesText(plan: Plan): string {
  const numbered = numbersPasses(plan);
  const { passes } = plan.sheet;
  const texts = passes.map(
    (pass, p) => `${numbered ? `${p + 1} ` : ''}${pass.name} ${settingsText(plan, pass)}`,
  );
  return `${passes.length === 1 ? 'Pass' : 'Passes'}: ${texts.join('; ')}`;
}

function passColumn({ plan, sheet }: Sheeted, range: PrintRange): PrintColumn[] {
  if (plan.sheet.passes.length === 1) return [];
  const numbers = (i: number) =>
    plan.sheet.passes.flatMap((_, p) => (hasPass(sheet.columns.passes[i] ?? 0, p) ? [p + 1] : [])).join(' ');
  const text = numbersPasses(plan) ? numbers : (i: number) => passesOf(plan, sheet, i).join(', ');
  return [{ id: 'passes', heading: 'Passes', em: widest(text, range), text }];
}

/** Cues that begin in full, those that go on by their kind. */
function cueText({ plan, sheet }: Sheeted, i: number): string {
  const first = sheet.columns.firstFrame[i] ?? 0;
  return cuesAt(plan, sheet, i)
    .map(({ kind, text, frame, frames }) =>
      frame < first
        ? `${kind} \u2026`
        : `${kind}: ${text}${frames > 1 ? `, ${plural(frames, 'frame')}` : ''}`,
    )
    .join('; ');
}

function cueColumn(of: Sheeted): PrintColumn[] {
  const has = of.plan.sheet.shots.some(({ cues }) => cues.length > 0);
  return has ? [{ id: 'cues', heading: 'Cues', em: 0, grows: 0.8, text: (i) => cueText(of, i) }] : [];
}

/** What stands over the rows is not said at length in each of them. */
const LONGEST_AGAIN = 44;

const shortened = (text: string): string =>
  text.length <= LONGEST_AGAIN
    ? text
    : `${text.slice(0, LONGEST_AGAIN - 1).replace(/[\s,;:.]+\S*$/, '')}\u2026`;

/** What happens, with what was noted while shooting. */
function happens({ plan, sheet }: Sheeted, i: number): string {
  const text = exposureText(plan, sheet, i);
  const again = text === sheet.actions[sheet.columns.action[i] ?? -1]?.text;
  const tick = tickAt(plan, sheet, i);
  const retakes = tick && tick.retakes > 0 ? [plural(tick.retakes, 'retake')] : [];
  const noted = [...retakes, ...(tick?.note ? [tick.note] : [])].join(': ');
  return `${again ? shortened(text) : text}${noted && ` (${noted})`}`;
}

const axisColumn = (axis: SheetAxis, range: PrintRange): PrintColumn => {
  const text = (i: number) => positionText(axis, positionAt(axis, i));
  return {
    id: `axis:${axis.name}`,
    heading: `${axis.name}, ${axis.unit}`,
    em: widest(text, range),
    figure: true,
    movable: true,
    text,
    arrives: (i) => axis.from[i] ?? 0,
  };
};

function columnsOf(of: Sheeted, range: PrintRange): PrintColumn[] {
  const { plan, sheet } = of;
  const { columns } = sheet;
  const spans = spansOf(plan, sheet);
  const frames = (i: number) => framesText(columns.firstFrame[i] ?? 0, columns.frames[i] ?? 0);
  const figures = (id: string, heading: string, text: (i: number) => string): PrintColumn => ({
    id,
    heading,
    figure: true,
    em: widest(text, range),
    text,
  });
  return [
    { ...figures('exposure', 'No.', (i) => String(i + 1)), leads: true },
    { ...figures('frames', 'Frames', frames), leads: true },
    { ...figures('timecode', 'Timecode', (i) => timecodeAt(plan, sheet, i)), leads: true },
    { id: 'text', heading: 'What happens', em: 0, grows: 1.2, text: (i) => happens(of, i) },
    figures('hold', 'Hold', (i) => String(columns.frames[i])),
    ...passColumn(of, range),
    ...columns.axes.map((axis) => axisColumn(axis, range)),
    ...cueColumn(of),
    figures('clock', 'Clock', (i) => clockText(columns.startMs[i] ?? Number.NaN, spans)),
  ];
}

function shotRow({ plan, sheet }: Sheeted, index: number): PrintRow {
  const { name, frames, exposures, timecode, setUpMin } = sheet.shots[
    index
  ] as Sheeted['sheet']['shots'][number];
  const tests = plan.sheet.testFrames > 0 ? `, ${plural(plan.sheet.testFrames, 'test frame')}` : '';
  const aside = `${plural(frames, 'frame')}, ${plural(exposures, 'exposure')}, from ${timecode}; set-up ${minutesText(setUpMin)}${tests}`;
  return { kind: 'shot', text: sheet.shots.length > 1 ? `Shot ${index + 1}: ${name}` : name, aside };
}

function actionRow({ sheet }: Sheeted, index: number): PrintRow {
  const { text, firstExposure, exposures, firstFrame, frames, holdsText, lastShort } = sheet.actions[
    index
  ] as Sheeted['sheet']['actions'][number];
  const short = lastShort ? ', the last one shorter' : '';
  const aside = `exposures ${framesText(firstExposure, exposures)}, frames ${framesText(firstFrame, frames)}, ${holdsText}${short}`;
  return { kind: 'action', text: text || 'No name yet', aside };
}

function pauseRow({ plan, sheet }: Sheeted, { kind, index, ms }: Pause): PrintRow {
  const spans = spansOf(plan, sheet);
  if (kind === 'break') {
    const rest = plan.sheet.breaks[index];
    return { kind: 'break', text: `Break ${clockText(ms, spans)} to ${rest?.to ?? ''}` };
  }
  const day = sheet.days[index];
  const next = sheet.days[index + 1];
  const on = next ? ` Next: ${dayText(next.fromMs, spans, ms)}, ${clockText(next.fromMs, spans)}.` : '';
  const work = day ? `, after ${minutesText(day.workMin)} of work` : '';
  return { kind: 'day', text: `End of ${dayText(ms, spans)}, ${clockText(ms, spans)}${work}.${on}` };
}

/** Nothing is drawn: rows have no height yet. */
const NO_HEIGHTS: RowHeights = { shot: 0, action: 0, exposure: 0, next: 0, pause: 0 };

function rowOf(of: Sheeted, rows: SheetRows, pauses: readonly Pause[], row: number): PrintRow {
  const { kind, index } = rows.spotAt(row);
  if (kind === 'shot') return shotRow(of, index);
  if (kind === 'action') return actionRow(of, index);
  if (kind === 'pause') return pauseRow(of, pauses[index] as Pause);
  return { kind: 'line', index, done: !Number.isNaN(of.sheet.columns.doneMs[index] as number) };
}

/** Rows of some exposures, begun with the shot and the action that they are of. */
function rowsFor(of: Sheeted, { first, last }: PrintRange): PrintRows {
  const { sheet } = of;
  const pauses = pausesOf(of.plan, sheet);
  const rows = rowsOf(sheet, pauses, () => true, -1, NO_HEIGHTS);
  const begins = rows.rowOf({ kind: 'exposure', index: first });
  let end = rows.rowOf({ kind: 'exposure', index: last }) + 1;
  while (end < rows.count && rows.spotAt(end).kind === 'pause') end += 1;
  const heads = [
    shotRow(of, sheet.columns.shot[first] ?? 0),
    actionRow(of, sheet.columns.action[first] ?? 0),
  ];
  return {
    count: sheet.exposures === 0 ? 0 : heads.length + end - begins,
    at: (row) => heads[row] ?? rowOf(of, rows, pauses, begins + row - heads.length),
  };
}

function factsOf({ plan, sheet }: Sheeted): string[] {
  const { totals, days, exposures, frames } = sheet;
  const spans = spansOf(plan, sheet);
  const fromMs = days[0]?.fromMs ?? totals.finishMs;
  return [
    `${rateText(plan.clip.frameRate)} fps`,
    plural(frames, 'frame'),
    plural(exposures, 'exposure'),
    `${minutesText(totals.workMin)} of work in ${plural(days.length, 'day')}`,
    `${dateOf(isoAt(fromMs, spans))}, ${clockText(fromMs, spans)}, to ${momentText(totals.finishMs, spans, fromMs)}`,
    ...(totals.done > 0 ? [`${totals.done} done, ${totals.left} left`] : []),
    ...(plan.place.name ? [plan.place.name] : []),
  ];
}

const ARRIVES = 'Triangle beside a position: it is arrived at going up, or down, the scale of its axis.';

function remarksOf({ plan, sheet }: Sheeted, { first, last }: PrintRange): string[] {
  const part = first > 0 || last < sheet.exposures - 1;
  const arrives = sheet.columns.axes.some(({ from }) => from.some((side) => side !== 0));
  return [
    ...(part ? [`Exposures ${first + 1} to ${last + 1} of ${sheet.exposures} only.`] : []),
    `${passesText(plan)}. Clock: estimated beginning; of what is ticked, when it was.`,
    ...(arrives ? [ARRIVES] : []),
    ...(plan.sheet.notes.trim() ? [plan.sheet.notes] : []),
  ];
}

function listsOf({ plan, sheet }: Sheeted, schedule: Schedule): PrintList[] {
  const findings = sheet.totals.findings.map(({ message }) => message);
  return [
    ...(findings.length > 0 ? [{ title: 'To know', items: findings }] : []),
    { title: 'Cautions', items: cautionsOf(plan, schedule) },
  ];
}

/**
 * The exposure sheet for paper.
 * @param schedule - the plan's, for its cautions
 */
export function exposureDocument(of: Sheeted, schedule: Schedule, range = wholeSheet(of)): PrintDocument {
  return {
    title: of.plan.title,
    kind: 'Exposure sheet',
    facts: factsOf(of),
    remarks: remarksOf(of, range),
    columns: columnsOf(of, range),
    rows: rowsFor(of, range),
    lists: listsOf(of, schedule),
  };
}

/** Exposures of the next day of work, from the first that is not done. */
export function nextDayRange({ sheet }: Sheeted): PrintRange | null {
  const next = sheet.columns.doneMs.findIndex((ms) => Number.isNaN(ms));
  const day = sheet.days.find(({ lastExposure }) => lastExposure !== null && lastExposure > next);
  return next < 0 || !day ? null : { first: next, last: (day.lastExposure as number) - 1 };
}

/** Exposures of the shot that is next. */
export function nextShotRange({ sheet }: Sheeted): PrintRange | null {
  const next = sheet.columns.doneMs.findIndex((ms) => Number.isNaN(ms));
  const shot = sheet.shots[sheet.columns.shot[next] ?? -1];
  if (!shot || sheet.shots.length === 1) return null;
  return { first: shot.firstExposure - 1, last: shot.firstExposure + shot.exposures - 2 };
}

/** `exposures 1 to 76`. */
export const rangeText = ({ first, last }: PrintRange): string => `exposures ${first + 1} to ${last + 1}`;

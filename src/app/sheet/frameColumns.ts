/** Columns of the table of a time-lapse's frames. */

import { rungWords } from '../../engine/exposure/ramp-words.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import type { AxisColumns, Schedule } from '../../engine/schedule-types.ts';
import { firstWhere } from '../../engine/search.ts';
import { ofFrame } from '../../engine/working/names.ts';
import { frameMoment, momentOf } from '../charts/cursor.ts';
import { fixed, secondsText, signed } from '../charts/format.ts';
import { bytesUnit } from '../format/bytes.ts';
import { readClock } from '../format/clock.ts';
import { durationText } from '../format/durations.ts';
import { type CellFigure, type Chosen, chosenFigures } from '../working/cellFigures.ts';
import { positionAt, positionText } from './cells.ts';

/** One column; its cell is that of a frame's index. */
export interface FrameColumn {
  id: string;
  heading: string;
  widthPx: number;
  grows?: boolean;
  /** Figures stand to the right. */
  figure?: boolean;
  text: (index: number) => string;
  /** Name of the working of a frame's figure, without the frame. */
  of?: string;
  /** Drawn down the rows, and its place among the axes. */
  axis?: { columns: AxisColumns; n: number };
}

const figure = (
  id: string,
  heading: string,
  widthPx: number,
  text: (index: number) => string,
  of?: string,
): FrameColumn => ({
  id,
  heading,
  widthPx,
  figure: true,
  text,
  ...(of !== undefined && { of }),
});

function settings({ exposure, columns }: Schedule): FrameColumn[] {
  if (!exposure) return [];
  const at = (index: number) => exposure.rungs[columns.rung?.[index] ?? 0];
  const text = (index: number) => {
    const rung = at(index);
    return rung ? rungWords(rung) : '';
  };
  return [{ id: 'settings', heading: 'Settings', widthPx: 170, text, of: 'evSettings' }];
}

function sun({ columns: { sky } }: Schedule): FrameColumn[] {
  if (!sky) return [];
  const { sunAltitudeDeg } = sky;
  return [
    figure(
      'sun',
      'Sun, deg',
      76,
      (index) => signed(sunAltitudeDeg[index] ?? Number.NaN, 1),
      'sunAltitudeDeg',
    ),
  ];
}

const axes = ({ columns }: Schedule): FrameColumn[] =>
  columns.axes.map((axis, n) => ({
    id: `axis:${axis.name}`,
    heading: `${axis.name}, ${axis.unit}`,
    widthPx: 148,
    text: () => '',
    of: `axes.${axis.name}.position`,
    axis: { columns: axis, n },
  }));

const energy = ({ columns, sources }: Schedule): FrameColumn[] =>
  columns.sources
    .filter((_, s) => sources[s]?.kind === 'battery')
    .map(({ name, leftWh }) =>
      figure(
        `energy:${name}`,
        `${name}, Wh`,
        Math.max(92, name.length * 8 + 48),
        (index) => fixed(leftWh[index] ?? 0, 1),
        `sources.${name}.leftWh`,
      ),
    );

function card({ columns, cards }: Schedule, plan: Plan): FrameColumn[] {
  const most = Math.max(0, ...cards.map(({ usableBytes }) => usableBytes));
  const { unit, size } = bytesUnit(most);
  const name = (index: number) => plan.storage.cards[columns.cardIndex[index] ?? 0]?.name ?? '';
  const text = (index: number) => `${name(index)}  ${fixed((columns.cardBytes[index] ?? 0) / size, 1)}`;
  return [figure('card', `Card, ${unit}`, 116, text, 'cardBytes')];
}

function events({ events: all }: Schedule): FrameColumn {
  const texts = new Map<number, string>();
  for (const { frame, text } of all) {
    const before = texts.get(frame);
    texts.set(frame, before === undefined ? text : `${before}; ${text}`);
  }
  return {
    id: 'event',
    heading: 'What happens',
    widthPx: 170,
    grows: true,
    text: (index) => texts.get(index + 1) ?? '',
  };
}

/** All columns that the plan has something for. */
export function frameColumns(plan: Plan, schedule: Schedule): FrameColumn[] {
  const { columns, totals } = schedule;
  const digits = String(totals.frames).length;
  const longClock = frameMoment(schedule, totals.frames - 1).length;
  return [
    figure('frame', 'Frame', Math.max(60, digits * 9 + 20), (index) => String(index + 1)),
    figure('clock', 'Clock', longClock * 9 + 20, (index) => frameMoment(schedule, index), 'clock'),
    ...settings(schedule),
    ...axes(schedule),
    ...sun(schedule),
    ...energy(schedule),
    ...card(schedule, plan),
    figure(
      'spare',
      'Spare, s',
      76,
      (index) => {
        const spareS = columns.spareS[index] ?? 0;
        return spareS < 0 ? `\u2212${secondsText(-spareS)}` : secondsText(spareS);
      },
      'spareS',
    ),
    events(schedule),
  ];
}

/** Finds a frame by its number, or the first from a clock time on, after the one that one is at. */
export function findFrame(
  schedule: Schedule,
  asked: string,
  at: number,
): { index: number; text: string } | { error: string } {
  const { frames } = schedule.totals;
  const text = asked.trim();
  if (/^\d+$/.test(text) && text.length !== 0) {
    const index = Number(text) - 1;
    if (index < 0 || index >= frames) return { error: `There are frames 1 to ${frames}.` };
    return { index, text: `Frame ${text}, ${frameMoment(schedule, index)}.` };
  }
  const clock = readClock(text);
  if (clock === null) return { error: 'Type a frame, or a clock time such as 21:43.' };
  const index = frameFromClock(schedule, clock, at);
  if (index === null) return { error: `The run does not come to ${text}.` };
  return { index, text: `Frame ${index + 1}, ${frameMoment(schedule, index)}.` };
}

const DAY_MS = 86_400_000;

/** First frame from a local clock time on: the next time that it comes, else the first. */
function frameFromClock(schedule: Schedule, clock: string, at: number): number | null {
  const { startMs, offsets, columns, totals } = schedule;
  const offsetMs = (offsets[0]?.offsetMin ?? 0) * 60_000;
  const [h = 0, m = 0, s = 0] = clock.split(':').map(Number);
  const midnight = Math.floor((startMs + offsetMs) / DAY_MS) * DAY_MS - offsetMs;
  const days = Math.ceil((momentOf(schedule, totals.frames - 1) - midnight) / DAY_MS);
  const moments = Array.from(
    { length: days + 1 },
    (_, d) => midnight + d * DAY_MS + (h * 3600 + m * 60 + s) * 1000,
  );
  const found = moments
    .filter((ms) => ms >= startMs)
    .map((ms) => firstFrom(columns.elapsedS, (ms - startMs) / 1000))
    .filter((index) => index < totals.frames);
  return found.find((index) => index > at) ?? found[0] ?? null;
}

const firstFrom = (elapsedS: Float64Array, wantedS: number): number =>
  firstWhere(0, elapsedS.length, (k) => (elapsedS[k] as number) >= wantedS);

/** The run in one line. */
export const runText = ({ totals }: Schedule): string => `every ${durationText(totals.intervalS, 3)}`;

/** What is chosen among the frames: the figures of one cell, or of all of the row. @param column - id; null for all */
export function figuresOfFrame(
  columns: readonly FrameColumn[],
  index: number,
  column: string | null,
): Chosen {
  const textOf = ({ axis, text }: FrameColumn) =>
    axis ? positionText(axis.columns, positionAt(axis.columns, index)) : text(index);
  const figuresIn = (some: readonly FrameColumn[]): CellFigure[] =>
    some.flatMap((one) =>
      one.of === undefined ? [] : [{ name: one.heading, text: textOf(one), of: ofFrame(index, one.of) }],
    );
  const own = figuresIn(columns.filter(({ id }) => id === column));
  return chosenFigures(`Frame ${index + 1}`, own, figuresIn(columns));
}

/**
 * Column that a key leads to; null for all of the row, which lies before the first.
 * @returns undefined for any other key
 */
export function columnBeside(
  columns: readonly { id: string }[],
  column: string | null,
  key: string,
): string | null | undefined {
  if (key !== 'ArrowLeft' && key !== 'ArrowRight') return undefined;
  const c = columns.findIndex(({ id }) => id === column);
  const to = Math.min(columns.length - 1, c + (key === 'ArrowRight' ? 1 : -1));
  return columns[to]?.id ?? null;
}

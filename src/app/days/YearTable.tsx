/** The same year as a table. */
import type { DayOfYear } from '../../engine/sky/year.ts';
import { eventFigure, ofDate, ofWindow } from '../../engine/working/names.ts';
import { ChartTable } from '../charts/ChartTable.tsx';
import type { TableColumn } from '../charts/chart.ts';
import type { CellFigure } from '../working/cellFigures.ts';
import type { Calendar } from './calendar.ts';
import { longDate, minuteAt, verdictPieces, verdictText, windowsText } from './words.ts';

interface YearTableProps {
  calendar: Calendar;
  days: readonly DayOfYear[];
  /** First shutter opening to the last closing, seconds; null if no window is asked for. */
  runS: number | null;
}

/** Sunrises or sunsets of a day: a day may have two of a kind. */
function eventFigures(
  day: DayOfYear,
  event: string,
  name: string,
  offsets: Calendar['offsets'],
): CellFigure[] {
  return day.events
    .filter((one) => one.name === event && one.ms !== null)
    .map((one) => ({
      name,
      text: minuteAt(one.ms ?? 0, offsets),
      of: ofDate(day.date, eventFigure(day.events, one)),
    }));
}

/** Both ends of each window of a day, where they lie on that day. */
function windowFigures(
  { windows, date, startMs, endMs }: DayOfYear,
  offsets: Calendar['offsets'],
): CellFigure[] {
  return windows.flatMap(({ fromMs, toMs }, w) =>
    (
      [
        ['from', fromMs],
        ['to', toMs],
      ] as const
    )
      .filter(([, ms]) => ms > startMs && ms < endMs)
      .map(([what, ms]) => ({
        name: `Window ${what}`,
        text: minuteAt(ms, offsets),
        of: ofWindow(date, w, what),
      })),
  );
}

/** Columns of the year's days, with the figures that stand in their cells. */
export function yearColumns({ calendar: { offsets }, days, runS }: YearTableProps): TableColumn[] {
  const at = (ms: number) => minuteAt(ms, offsets);
  const event = (day: DayOfYear, name: string) =>
    day.events
      .filter((one) => one.name === name)
      .map(({ ms, noEvent }) => (ms === null ? (noEvent ?? '') : at(ms)))
      .join(', ');
  const column = (
    heading: string,
    text: (day: DayOfYear) => string,
    figures: (day: DayOfYear) => readonly CellFigure[] = () => [],
  ): TableColumn => ({
    heading,
    cell: (index) => text(days[index] as DayOfYear),
    figures: (index) => figures(days[index] as DayOfYear),
  });
  const sun = (heading: string, name: string) =>
    column(
      heading,
      (day) => event(day, name),
      (day) => eventFigures(day, name, heading, offsets),
    );
  const light = [
    column('Date', ({ date }) => longDate(date)),
    sun('Sunrise', 'sunrise'),
    sun('Sunset', 'sunset'),
  ];
  if (runS === null) return light;
  const verdict = (day: DayOfYear): CellFigure[] =>
    verdictPieces(day, runS).flatMap((piece) =>
      typeof piece === 'string' ? [] : [{ name: verdictText(day, runS), ...piece }],
    );
  return [
    ...light,
    column(
      'Windows',
      (day) => windowsText(day, offsets),
      (day) => windowFigures(day, offsets),
    ),
    column('Run', (day) => verdictText(day, runS), verdict),
  ];
}

export function YearTable(props: YearTableProps) {
  return (
    <ChartTable
      caption={`Days of ${props.calendar.year}`}
      columns={yearColumns(props)}
      rows={props.days.map((_, index) => index)}
    />
  );
}

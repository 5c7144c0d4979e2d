/** The same year as a table. */
import type { DayOfYear } from '../../engine/sky/year.ts';
import { ChartTable } from '../charts/ChartTable.tsx';
import type { TableColumn } from '../charts/chart.ts';
import type { Calendar } from './calendar.ts';
import { longDate, minuteAt, verdictText, windowsText } from './words.ts';

interface YearTableProps {
  calendar: Calendar;
  days: readonly DayOfYear[];
  /** First shutter opening to the last closing, seconds; null if no window is asked for. */
  runS: number | null;
}

function columnsOf({ calendar: { offsets }, days, runS }: YearTableProps): TableColumn[] {
  const at = (ms: number) => minuteAt(ms, offsets);
  const event = (day: DayOfYear, name: string) =>
    day.events
      .filter((one) => one.name === name)
      .map(({ ms, noEvent }) => (ms === null ? (noEvent ?? '') : at(ms)))
      .join(', ');
  const column = (heading: string, text: (day: DayOfYear) => string): TableColumn => ({
    heading,
    cell: (index) => text(days[index] as DayOfYear),
  });
  const light = [
    column('Date', ({ date }) => longDate(date)),
    column('Sunrise', (day) => event(day, 'sunrise')),
    column('Sunset', (day) => event(day, 'sunset')),
  ];
  if (runS === null) return light;
  return [
    ...light,
    column('Windows', (day) => windowsText(day, offsets)),
    column('Run', (day) => verdictText(day, runS)),
  ];
}

export function YearTable(props: YearTableProps) {
  return (
    <ChartTable
      caption={`Days of ${props.calendar.year}`}
      columns={columnsOf(props)}
      rows={props.days.map((_, index) => index)}
    />
  );
}

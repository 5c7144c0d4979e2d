import type { OffsetSpan } from '../../engine/schedule-types.ts';
import type { Span } from '../../engine/sky/spans.ts';
import type { DayOfYear } from '../../engine/sky/year.ts';
import { ofWindow } from '../../engine/working/names.ts';
import { StandingIcon } from '../icons.tsx';
import { How } from '../working/How.tsx';
import { Pieces } from '../working/Pieces.tsx';
import { dayMonth, minuteAt, shortDate, standingOf, verdictPieces } from './words.ts';

const MOST_AFTER = 8;

interface DaysAfterProps {
  days: readonly DayOfYear[];
  runS: number;
  offsets: readonly OffsetSpan[];
  onDate: (date: string) => void;
}

interface BeginsProps {
  day: DayOfYear;
  longest: Span;
  offsets: readonly OffsetSpan[];
}

/** When a window begins on a day; one that goes on from the day before has its figure there. */
function Begins({ day, longest, offsets }: BeginsProps) {
  const clock = minuteAt(longest.fromMs, offsets);
  const w = day.windows.findIndex(({ fromMs }) => fromMs === longest.fromMs);
  if (longest.fromMs <= day.startMs) return clock;
  return (
    <How of={ofWindow(day.date, w, 'from')} what={`${clock}, window of ${dayMonth(day.date)} begins`}>
      {clock}
    </How>
  );
}

export function DaysAfter({ days, runS, offsets, onDate }: DaysAfterProps) {
  if (days.length === 0) return null;
  return (
    <section className="after">
      <h3>Days after</h3>
      <table>
        <thead className="vh">
          <tr>
            <th scope="col">Day</th>
            <th scope="col">Longest window</th>
            <th scope="col">Run</th>
          </tr>
        </thead>
        <tbody>
          {days.slice(0, MOST_AFTER).map((day) => (
            <tr key={day.date}>
              <td>
                <button type="button" className="link" onClick={() => onDate(day.date)}>
                  {shortDate(day.date)}
                </button>
              </td>
              <td className="m">
                {day.longest && <Begins day={day} longest={day.longest} offsets={offsets} />}
              </td>
              <td>
                <span className={`sev ${standingOf(day)}`}>
                  <StandingIcon standing={standingOf(day)} size={14} />
                </span>{' '}
                <Pieces pieces={verdictPieces(day, runS)} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

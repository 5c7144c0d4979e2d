import type { OffsetSpan } from '../../engine/schedule-types.ts';
import type { DayOfYear } from '../../engine/sky/year.ts';
import { StandingIcon } from '../icons.tsx';
import { minuteAt, shortDate, standingOf, verdictText } from './words.ts';

const MOST_AFTER = 8;

interface DaysAfterProps {
  days: readonly DayOfYear[];
  runS: number;
  offsets: readonly OffsetSpan[];
  onDate: (date: string) => void;
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
              <td className="m">{day.longest && minuteAt(day.longest.fromMs, offsets)}</td>
              <td>
                <span className={`sev ${standingOf(day)}`}>
                  <StandingIcon standing={standingOf(day)} size={14} />
                </span>{' '}
                {verdictText(day, runS)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

import type { Plan } from '../../engine/plan/schema.ts';
import type { OffsetSpan } from '../../engine/schedule-types.ts';
import { siteOf } from '../../engine/sky/windows.ts';
import type { DayOfYear } from '../../engine/sky/year.ts';
import { offsetInSpans } from '../../engine/time/clock.ts';
import { ofDate } from '../../engine/working/names.ts';
import { offsetText } from '../format/clock.ts';
import { SavePicture } from '../picture/SavePicture.tsx';
import { How } from '../working/How.tsx';
import { type Calendar, isSkipped } from './calendar.ts';
import { DayStrip } from './DayStrip.tsx';
import { DaysAfter } from './DaysAfter.tsx';
import { DayWindows } from './DayWindows.tsx';
import { aimOf, startOn } from './day.ts';
import { Ephemeris } from './Ephemeris.tsx';
import { UseButtons } from './UseButtons.tsx';
import { longDate } from './words.ts';

interface DayPanelProps {
  plan: Plan;
  calendar: Calendar;
  light: DayOfYear;
  /** First shutter opening to the last closing, seconds; null if no window is asked for. */
  runS: number | null;
  /** Days after it, as far as they are known. */
  after: readonly DayOfYear[];
  onDate: (date: string) => void;
}

function offsetsText(light: DayOfYear, offsets: readonly OffsetSpan[]): string {
  const [first, last] = [light.startMs, light.endMs - 1].map((ms) => offsetInSpans(ms, offsets));
  const text = `UTC${offsetText(first ?? 0)}`;
  return first === last ? text : `${text}, then ${offsetText(last ?? 0)}`;
}

function SkippedDay({ title, zone }: { title: string; zone: string }) {
  return (
    <section className="panel day" aria-labelledby="day-title">
      <header>
        <h2 id="day-title">{title}</h2>
      </header>
      <p className="win">The calendar of {zone} leaves this day out.</p>
    </section>
  );
}

export function DayPanel({ plan, calendar, light, runS, after, onDate }: DayPanelProps) {
  const { offsets } = calendar;
  const site = siteOf(plan);
  const title = longDate(light.date);
  if (isSkipped(light)) return <SkippedDay title={title} zone={plan.place.zone} />;
  const plannedMs = startOn(plan, light.date);
  const aim = runS === null ? null : aimOf(plan, light, runS, plannedMs);
  return (
    <section className="panel day" aria-labelledby="day-title">
      <header>
        <h2 id="day-title">{title}</h2>
        <span className="s">
          <How of={ofDate(light.date, 'offsetMin')} what={offsetsText(light, offsets)}>
            {offsetsText(light, offsets)}
          </How>
        </span>
        <SavePicture of={title} sentence={offsetsText(light, offsets)} small />
      </header>
      <DayStrip light={light} offsets={offsets} runS={runS} />
      {runS !== null && <DayWindows {...{ plan, light, runS, offsets, aim, plannedMs }} />}
      <UseButtons {...{ plan, light, aim, plannedMs, offsets }} />
      {site && <Ephemeris light={light} site={site} offsets={offsets} />}
      {runS !== null && <DaysAfter {...{ runS, offsets, onDate }} days={after} />}
    </section>
  );
}

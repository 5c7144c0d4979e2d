/** Days: the year's light at the plan's place, the windows in it, and the day that the plan goes to. */
import { type ReactNode, useMemo, useState } from 'react';
import type { Plan } from '../../engine/plan/schema.ts';
import { siteOf } from '../../engine/sky/windows.ts';
import { type DayOfYear, dayOfYear } from '../../engine/sky/year.ts';
import { TableSwitch } from '../charts/ChartTable.tsx';
import { SavePicture } from '../picture/SavePicture.tsx';
import { usePlan, useSchedule } from '../store/plan.ts';
import { Carpet } from './Carpet.tsx';
import { calendarOf, dayOf, inYear, isSkipped, monthStarts } from './calendar.ts';
import { carpetCaption } from './clauses.ts';
import { DayPanel } from './DayPanel.tsx';
import { Legend } from './Legend.tsx';
import { NoPlace } from './NoPlace.tsx';
import { Outcome } from './Outcome.tsx';
import { Sentence } from './Sentence.tsx';
import { putOnDay } from './UseButtons.tsx';
import { useYear } from './useYear.ts';
import { YearTable } from './YearTable.tsx';
import './days.css';

/** The chosen date: the plan's until another is chosen, and again when the plan's changes. */
function useDate(planDate: string): [string, (date: string) => void] {
  const [chosen, setChosen] = useState({ date: planDate, planDate });
  const date = chosen.planDate === planDate ? chosen.date : planDate;
  return [date, (to) => setChosen({ date: to, planDate })];
}

/** From the first shutter opening to the last closing, seconds. */
function useRunS(): number {
  const { totals, columns } = useSchedule();
  return totals.eventDurationS + (columns.exposureS.at(-1) ?? 0);
}

interface YearProps {
  plan: Plan;
  /** First shutter opening to the last closing, seconds. */
  runS: number;
  date: string;
  onDate: (date: string) => void;
}

/** The sentence, and what came of it. */
function Find({ runS, date, onDate, children }: Omit<YearProps, 'plan'> & { children?: ReactNode }) {
  const year = Number(date.slice(0, 4));
  return (
    <section className="strip" aria-labelledby="find-title">
      <h2 id="find-title" className="vh">
        Find a day
      </h2>
      <Sentence runS={runS} year={year} onYear={(to) => onDate(inYear(date, to))} />
      {children}
    </section>
  );
}

function Year({ plan, runS: longS, date, onDate }: YearProps) {
  const year = Number(date.slice(0, 4));
  const known = useYear(plan, year, longS);
  const { place, window } = plan;
  const calendar = useMemo(() => calendarOf(place, year), [place, year]);
  const [asTable, setAsTable] = useState(false);
  const runS = window.used ? longS : null;
  const day = dayOf(date);
  const starts = monthStarts(year);
  const days = known.days.slice(0, starts[known.months]) as DayOfYear[];
  const ofYear = days[day];
  // Until its month has come, the day is worked out by itself.
  const light = useMemo(() => ofYear ?? dayOfYear(plan, date, longS), [ofYear, plan, date, longS]);
  const planDay = Number(plan.start.date.slice(0, 4)) === year ? dayOf(plan.start.date) : null;
  const onDay = (to: number) => onDate(calendar.days[to]?.date ?? date);
  return (
    <>
      <Find runS={longS} date={date} onDate={onDate}>
        <Outcome {...{ plan, days, light, runS }} months={known.months} failed={known.failed} />
      </Find>
      <div className="two">
        <section className="panel year-light" aria-labelledby="year-title">
          <header>
            <h2 id="year-title">The year’s light</h2>
            <p className="s">One line a day, midnight to midnight.{runS !== null && ' Ink marks windows.'}</p>
            <TableSwitch of="the year’s light" on={asTable} onChange={setAsTable} />
            {!asTable && <SavePicture of="The year’s light" sentence={carpetCaption(plan, year, runS)} />}
          </header>
          {asTable ? (
            <YearTable calendar={calendar} days={days} runS={runS} />
          ) : (
            <>
              <Carpet
                {...{ calendar, known, runS, day, planDay, onDay }}
                onUse={() => light && !isSkipped(light) && putOnDay(date)}
              />
              <Legend days={days} asksWindow={runS !== null} asksMoon={window.moon !== 'any'} />
            </>
          )}
        </section>
        {light && <DayPanel {...{ plan, calendar, light, runS, onDate }} after={days.slice(day + 1)} />}
      </div>
    </>
  );
}

export default function DaysView() {
  const plan = usePlan((present) => present);
  const runS = useRunS();
  const [date, onDate] = useDate(plan.start.date);
  return (
    <main className="page days">
      {siteOf(plan) ? (
        <Year {...{ plan, runS, date, onDate }} />
      ) : (
        <>
          <Find {...{ runS, date, onDate }} />
          <NoPlace />
        </>
      )}
    </main>
  );
}

/** The days of work: where each ends, what it draws, and when the sun is on the set. */
import { useState } from 'react';
import type { SheetDay } from '../../engine/sheet/types.ts';
import { bytesText } from '../format/bytes.ts';
import { numberText, plural } from '../format/numbers.ts';
import { SavePicture } from '../picture/SavePicture.tsx';
import { clockText, dayText, spansOf } from './clock.ts';
import { goToExposure } from './commands.ts';
import type { Sheeted } from './sheeted.ts';
import { minutesText } from './words.ts';

const SHOWN = 14;

const whText = (wh: number): string =>
  wh >= 1000 ? `${numberText(wh / 1000, 2)}\u00A0kWh` : `${numberText(wh, 0)}\u00A0Wh`;

function energyText({ energyWh }: SheetDay): string {
  return energyWh
    .filter(({ wh }) => wh > 0)
    .map(
      ({ source, wh, packs }) =>
        `${source} ${whText(wh)}${packs === null ? '' : `, ${plural(packs, 'pack')}`}`,
    )
    .join('; ');
}

function Day({ of: { plan, sheet }, day }: { of: Sheeted; day: SheetDay }) {
  const spans = spansOf(plan, sheet);
  const { lastExposure, frame, shot } = day;
  const where = sheet.shots.length > 1 && shot !== null ? ` of ${sheet.shots[shot]?.name}` : '';
  const energy = energyText(day);
  return (
    <li>
      <p className="line">
        <b>{dayText(day.fromMs, spans)}</b>
        <span className="m">
          {clockText(day.fromMs, spans)}–{clockText(day.toMs, spans)}
        </span>
      </p>
      {lastExposure === null ? (
        <p className="s">Setting up.</p>
      ) : (
        <button type="button" className="link s" onClick={() => goToExposure(lastExposure - 1)}>
          Ends with exposure {lastExposure}, frame {frame}
          {where}
        </button>
      )}
      <p className="s">
        {minutesText(day.workMin)} of work{energy && `; ${energy}`}
      </p>
      {day.sunSpans.map(({ fromMs, toMs }) => (
        <p key={fromMs} className="s sun">
          Sun on the set {clockText(fromMs, spans)} to {clockText(toMs, spans)}
        </p>
      ))}
    </li>
  );
}

export function CalendarPanel({ of }: { of: Sheeted }) {
  const { days, totals } = of.sheet;
  const [all, setAll] = useState(false);
  const shown = all ? days : days.slice(0, SHOWN);
  return (
    <section className="panel days-panel" aria-labelledby="work-days-title">
      <header>
        <h2 id="work-days-title">Days of work</h2>
        <span className="s">
          {plural(days.length, 'day')}, {whText(totals.energyWh)}, {bytesText(totals.storageBytes)}
        </span>
        <SavePicture of="Days of work" small />
      </header>
      <ul className={`plain${all && days.length > SHOWN ? ' long' : ''}`}>
        {shown.map((day) => (
          <Day key={day.date} of={of} day={day} />
        ))}
      </ul>
      {days.length > shown.length && (
        <button type="button" className="link more-days" onClick={() => setAll(true)}>
          Show all {days.length} days
        </button>
      )}
    </section>
  );
}

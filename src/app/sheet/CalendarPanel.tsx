/** The days of work: where each ends, what it draws, and when the sun is on the set. */
import { useState } from 'react';
import type { SheetDay } from '../../engine/sheet/types.ts';
import { ofWorkDay } from '../../engine/working/names.ts';
import { bytesText } from '../format/bytes.ts';
import { numberText, plural } from '../format/numbers.ts';
import { SavePicture } from '../picture/SavePicture.tsx';
import { Pieces } from '../working/Pieces.tsx';
import type { Piece } from '../working/sentence.ts';
import { clockText, dayText, spansOf } from './clock.ts';
import { goToExposure } from './commands.ts';
import type { Sheeted } from './sheeted.ts';
import { minutesText } from './words.ts';

const SHOWN = 14;

const whText = (wh: number): string =>
  wh >= 1000 ? `${numberText(wh / 1000, 2)}\u00A0kWh` : `${numberText(wh, 0)}\u00A0Wh`;

/** What each source gives on a day, and the packs that takes. */
function energyPieces({ energyWh }: SheetDay, d: number): Piece[] {
  return energyWh
    .filter(({ wh }) => wh > 0)
    .flatMap(({ source, wh, packs }): Piece[] => [
      `; ${source} `,
      { text: whText(wh), of: ofWorkDay(d, `sources.${source}.wh`) },
      ...(packs === null
        ? []
        : [', ', { text: plural(packs, 'pack'), of: ofWorkDay(d, `sources.${source}.packs`) }]),
    ]);
}

function Day({ of: { plan, sheet }, day, d }: { of: Sheeted; day: SheetDay; d: number }) {
  const spans = spansOf(plan, sheet);
  const { lastExposure, frame, shot } = day;
  const where = sheet.shots.length > 1 && shot !== null ? ` of ${sheet.shots[shot]?.name}` : '';
  const clock = (ms: number, what: string): Piece => ({ text: clockText(ms, spans), of: ofWorkDay(d, what) });
  return (
    <li>
      <p className="line">
        <b>{dayText(day.fromMs, spans)}</b>
        <span className="m">
          <Pieces pieces={[clock(day.fromMs, 'from'), '–', clock(day.toMs, 'to')]} />
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
        <Pieces
          pieces={[
            { text: minutesText(day.workMin), of: ofWorkDay(d, 'workMin') },
            ' of work',
            ...energyPieces(day, d),
          ]}
        />
      </p>
      {day.sunSpans.map(({ fromMs, toMs }, n) => (
        <p key={fromMs} className="s sun">
          <Pieces
            pieces={[
              'Sun on the set ',
              clock(fromMs, `sun.${n + 1}.from`),
              ' to ',
              clock(toMs, `sun.${n + 1}.to`),
            ]}
          />
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
          <Pieces
            pieces={[
              { text: plural(days.length, 'day'), of: 'sheet.days' },
              ', ',
              { text: whText(totals.energyWh), of: 'sheet.energyWh' },
              ', ',
              { text: bytesText(totals.storageBytes), of: 'sheet.storageBytes' },
            ]}
          />
        </span>
        <SavePicture of="Days of work" small />
      </header>
      <ul className={`plain${all && days.length > SHOWN ? ' long' : ''}`}>
        {shown.map((day, d) => (
          <Day key={day.date} of={of} day={day} d={d} />
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

/** When the work begins and ends. */
import { ofWorkDay } from '../../engine/working/names.ts';
import { ArrowRight } from '../icons.tsx';
import { How } from '../working/How.tsx';
import { clockText, dayText, spansOf } from './clock.ts';
import type { Sheeted } from './sheeted.ts';

export function SheetWhen({ of: { plan, sheet } }: { of: Sheeted }) {
  const spans = spansOf(plan, sheet);
  const fromMs = sheet.days[0]?.fromMs ?? sheet.totals.finishMs;
  const toMs = sheet.totals.finishMs;
  const sameDay = dayText(fromMs, spans) === dayText(toMs, spans);
  return (
    <div className="when">
      <p className="c">
        <span>
          {sheet.days.length > 0 ? (
            <How of={ofWorkDay(0, 'from')} what={`${clockText(fromMs, spans)}, work begins`}>
              {clockText(fromMs, spans)}
            </How>
          ) : (
            clockText(fromMs, spans)
          )}
        </span>
        <ArrowRight />
        <span>
          <How of="sheet.finishAt" what={`${clockText(toMs, spans)}, finish as planned`}>
            {clockText(toMs, spans)}
          </How>
        </span>
      </p>
      <p className="l">
        <b>{dayText(fromMs, spans)}</b>
        {!sameDay && <span>ends {dayText(toMs, spans, fromMs)}</span>}
      </p>
    </div>
  );
}

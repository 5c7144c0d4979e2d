/** How fast it really goes. */
import { takesMin } from '../../engine/sheet/texts.ts';
import type { Sheet } from '../../engine/sheet/types.ts';
import { ofExposure } from '../../engine/working/names.ts';
import { fixed } from '../charts/format.ts';
import { SavePicture } from '../picture/SavePicture.tsx';
import { momentText, spansOf } from './clock.ts';
import { Fact } from './Fact.tsx';
import { type Pause, pausesOf } from './pauses.ts';
import type { Sheeted } from './sheeted.ts';
import { tickedOf } from './ticked.ts';
import { lastTickMs } from './words.ts';

/** Real minutes of an exposure, from the tick before to its own. */
export interface Took {
  index: number;
  minutes: number;
}

const MOST_BARS = 31;
const MINUTE_MS = 60_000;

/** What the last exposures took, as far as no break and no night lies between. */
export function tookOf(sheet: Sheet, pauses: readonly Pause[]): Took[] {
  const { doneMs } = sheet.columns;
  const stops = pauses.map(({ ms }) => ms);
  return Array.from(tickedOf(sheet).inTime.slice(-MOST_BARS - 1)).flatMap((index, n, list) => {
    const [fromMs, toMs] = [doneMs[list[n - 1] ?? -1], doneMs[index] as number];
    if (fromMs === undefined || stops.some((ms) => ms > fromMs && ms <= toMs)) return [];
    return [{ index, minutes: (toMs - fromMs) / MINUTE_MS }];
  });
}

const HEIGHT_PX = 72;
const BAR_PX = 8;

function Bars({ took, plannedMin }: { took: readonly Took[]; plannedMin: number }) {
  const most = Math.max(plannedMin * 1.6, ...took.map(({ minutes }) => minutes)) || 1;
  const y = (minutes: number) => Math.floor(HEIGHT_PX - (minutes / most) * HEIGHT_PX);
  const width = MOST_BARS * BAR_PX;
  const slow = took.reduce<Took | null>(
    (worst, one) => (worst && worst.minutes >= one.minutes ? worst : one),
    null,
  );
  const words = `Minutes of the last ${took.length} exposures; ${fixed(plannedMin, 1)} planned${slow ? `, the longest ${fixed(slow.minutes, 1)} at exposure ${slow.index + 1}` : ''}.`;
  return (
    <svg className="bars" viewBox={`0 0 ${width} ${HEIGHT_PX + 1}`} role="img" aria-label={words}>
      {took.map(({ index, minutes }, n) => (
        <rect
          key={index}
          x={n * BAR_PX + 1}
          y={y(minutes)}
          width={BAR_PX - 2}
          height={HEIGHT_PX - y(minutes)}
          fill={minutes > plannedMin * 1.4 ? 'var(--s-verm)' : 'var(--used)'}
        />
      ))}
      <path d={`M0 ${HEIGHT_PX}H${width}`} stroke="var(--edge)" />
      <path d={`M0 ${y(plannedMin)}H${width}`} stroke="var(--act)" strokeWidth="2" />
    </svg>
  );
}

export function PacePanel({ of }: { of: Sheeted }) {
  const { plan, sheet } = of;
  const { totals } = sheet;
  if (totals.done === 0) return null;
  const spans = spansOf(plan, sheet);
  const took = tookOf(sheet, pausesOf(plan, sheet));
  const nowMs = lastTickMs(of) ?? totals.finishMs;
  const at = took.at(-1)?.index ?? 0;
  const plannedMin = takesMin(sheet, at);
  const { pace } = totals;
  return (
    <section className="panel" aria-labelledby="pace-title">
      <header>
        <h2 id="pace-title">Pace</h2>
        <span className="s">minutes an exposure</span>
        {took.length > 0 && <SavePicture of="Pace" sentence="minutes an exposure" small />}
      </header>
      <div className="pad">
        {took.length > 0 && <Bars took={took} plannedMin={plannedMin} />}
        <dl className="facts">
          <Fact of={ofExposure(at, 'takesMin')} name="Planned" text={`${fixed(plannedMin, 1)} min`} rule />
          {pace.plannedMin > 0 ? (
            <Fact
              of={ofExposure(at, 'atPaceMin')}
              name="So far"
              text={`${fixed(plannedMin * pace.factor, 1)} min`}
            />
          ) : (
            <div>
              <dt>So far</dt>
              <dd className="m">from the second tick on</dd>
            </div>
          )}
          <Fact
            of="sheet.finishAt"
            name="Finish as planned"
            text={momentText(totals.finishMs, spans, nowMs)}
          />
          <Fact
            of="sheet.finishAtPace"
            name="Finish at your pace"
            text={momentText(totals.finishAtPaceMs, spans, nowMs)}
          />
        </dl>
      </div>
    </section>
  );
}

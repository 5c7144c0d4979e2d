/** The chosen day: its light, its windows, what sun and moon do, and the way to put the plan there. */
import { type ReactNode, useMemo } from 'react';
import type { Plan } from '../../engine/plan/schema.ts';
import type { OffsetSpan } from '../../engine/schedule-types.ts';
import { moonEvents, type NoEvent, type SkyEvent } from '../../engine/sky/day.ts';
import { EVENT_WORDS } from '../../engine/sky/findings.ts';
import { moonAt, sunAt } from '../../engine/sky/position.ts';
import type { Span } from '../../engine/sky/spans.ts';
import { type BestStart, type Site, siteOf, windowSpans } from '../../engine/sky/windows.ts';
import type { DayOfYear } from '../../engine/sky/year.ts';
import { clockAt, offsetInSpans } from '../../engine/time/clock.ts';
import { offsetText } from '../format/clock.ts';
import { numberText, withUnit } from '../format/numbers.ts';
import { ArrowRight, StandingIcon, StandingTag } from '../icons.tsx';
import { type Calendar, isSkipped, stretchesOf } from './calendar.ts';
import { aimOf, isWithin, lightText, plannedText, startOn, windowName } from './day.ts';
import { BAND_TOKENS } from './paint.ts';
import { UseButtons } from './UseButtons.tsx';
import {
  haveText,
  lengthS,
  litText,
  longDate,
  minuteAt,
  shortDate,
  standingOf,
  verdictText,
} from './words.ts';

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

const STRIP_HOURS = [0, 6, 12, 18, 24];

/** The day's light from midnight to midnight, with its windows. */
function DayStrip({
  light,
  offsets,
  runS,
}: {
  light: DayOfYear;
  offsets: readonly OffsetSpan[];
  runS: number | null;
}) {
  const place = ({ fromH, toH }: { fromH: number; toH: number }) => ({
    x: `${(fromH / 24) * 100}%`,
    width: `${((toH - fromH) / 24) * 100}%`,
  });
  const placed = (span: Span) => stretchesOf(span, light, offsets);
  return (
    <div className="day-strip">
      <svg width="100%" height="40" aria-hidden="true">
        {light.bands.flatMap((span) =>
          placed(span).map((stretch) => (
            <rect
              key={stretch.fromH}
              {...place(stretch)}
              height="40"
              fill={`var(${BAND_TOKENS[span.band]})`}
              shapeRendering="crispEdges"
            />
          )),
        )}
        {runS !== null &&
          light.windows.flatMap((span) =>
            placed(span).map((stretch) => (
              <g key={stretch.fromH} className={lengthS(span) >= runS ? 'holds' : 'short'}>
                <rect {...place(stretch)} y="10" height="20" />
                <rect {...place(stretch)} y="10" height="20" />
              </g>
            )),
          )}
      </svg>
      <div className="m" aria-hidden="true">
        {STRIP_HOURS.map((hour) => (
          <span key={hour}>{String(hour).padStart(2, '0')}</span>
        ))}
      </div>
    </div>
  );
}

const DAY_MS = 86_400_000;

/** The whole of a window that the day has a part of, from the day before to the day after. */
function useWhole(plan: Plan, { startMs, endMs }: DayOfYear): (part: Span) => Span {
  const spans = useMemo(() => windowSpans(plan, startMs - DAY_MS, endMs + DAY_MS), [plan, startMs, endMs]);
  return (part) => spans.find(({ fromMs, toMs }) => fromMs <= part.fromMs && toMs >= part.fromMs) ?? part;
}

function otherDayText({ fromMs, toMs }: Span, { startMs, endMs }: DayOfYear): string {
  if (fromMs < startMs) return 'It begins the day before. ';
  return toMs > endMs ? 'It ends the day after. ' : '';
}

interface WindowBlockProps {
  /** The day's part of it, and the whole. */
  part: Span;
  whole: Span;
  light: DayOfYear;
  runS: number;
  offsets: readonly OffsetSpan[];
  /** What it comes to, and how the planned start lies in it, if it is the one that counts. */
  counts: ReactNode;
}

function WindowBlock({ part, whole, light, runS, offsets, counts }: WindowBlockProps) {
  const holds = lengthS(part) >= runS;
  return (
    <section className={`win${counts ? ' on' : ''}`}>
      <div className="wh">
        <h3>{windowName(part, light)}</h3>
        <StandingTag standing={holds ? 'fine' : 'warning'} text={holds ? 'Fits' : 'Too short'} />
      </div>
      <p className="wt m">
        {clockAt(whole.fromMs, offsets)}
        <ArrowRight />
        <span className="vh">to</span>
        {clockAt(whole.toMs, offsets)}
      </p>
      <p className="s">
        {otherDayText(whole, light)}
        {counts || `${haveText(lengthS(whole))} of light.`}
      </p>
    </section>
  );
}

interface AimProps {
  /** The window that the start aims at; null if none holds the run. */
  aim: BestStart | null;
  plannedMs: number;
}

/** What the light comes to, and how the planned start lies in it. */
function Counts({
  whole,
  light,
  runS,
  offsets,
  aim,
  plannedMs,
}: Omit<WindowBlockProps, 'part' | 'counts'> & AimProps) {
  const planned = aim && `The plan ${plannedText(plannedMs, aim, offsets)}.`;
  return (
    <>
      {lightText(whole, light, aim, runS, offsets)}{' '}
      {aim && !isWithin(plannedMs, aim) ? <b className="miss">{planned}</b> : planned}
    </>
  );
}

function Windows({
  plan,
  calendar: { offsets },
  light,
  runS,
  ...start
}: DayPanelProps & AimProps & { runS: number }) {
  const whole = useWhole(plan, light);
  const { aim, plannedMs } = start;
  const counting = aim?.span ?? light.longest;
  if (light.windows.length === 0 || light.verdict === 'moon')
    return (
      <section className="win on">
        <StandingTag standing={standingOf(light)} text={verdictText(light, runS)} />
      </section>
    );
  return light.windows.map((part) => (
    <WindowBlock
      key={part.fromMs}
      {...{ part, light, runS, offsets }}
      whole={whole(part)}
      counts={
        part.fromMs === counting?.fromMs && (
          <Counts {...{ light, runS, offsets, aim, plannedMs }} whole={whole(part)} />
        )
      }
    />
  ));
}

const NEVER: Readonly<Partial<Record<NoEvent, string>>> = {
  'above all day': 'The sun does not set.',
  'below all day': 'The sun does not rise.',
};

/** What does not happen on the day. */
function Missing({ events }: { events: readonly SkyEvent[] }) {
  const missing = events.filter(({ ms }) => ms === null);
  if (missing.length === 0) return null;
  const names = missing.map(({ name }) => EVENT_WORDS[name as keyof typeof EVENT_WORDS]).join(', ');
  const why = NEVER[missing.find(({ name }) => name === 'sunrise')?.noEvent ?? 'not on this day'];
  return (
    <p className="s missing">
      {why} Not on this day: {names}.
    </p>
  );
}

/** Sun and moon through the day. */
function Ephemeris({
  light,
  site,
  offsets,
}: {
  light: DayOfYear;
  site: Site;
  offsets: readonly OffsetSpan[];
}) {
  const { latitudeDeg, longitudeDeg } = site;
  const events = useMemo(() => {
    const all: SkyEvent[] = [...light.events, ...moonEvents(light, latitudeDeg, longitudeDeg)];
    return all.sort((a, b) => (a.ms ?? Number.POSITIVE_INFINITY) - (b.ms ?? Number.POSITIVE_INFINITY));
  }, [light, latitudeDeg, longitudeDeg]);
  const azimuth = (name: string, ms: number) => {
    const { azimuthDeg } = (name.startsWith('moon') ? moonAt : sunAt)(ms, latitudeDeg, longitudeDeg);
    return withUnit(numberText(azimuthDeg, 0), '°');
  };
  return (
    <section className="ephemeris">
      <h3 className="vh">Sun and moon</h3>
      <dl>
        {events.map(({ name, ms }) =>
          ms === null ? null : (
            <div key={`${name} ${ms}`}>
              <dt>{EVENT_WORDS[name as keyof typeof EVENT_WORDS]}</dt>
              <dd className="m">{clockAt(ms, offsets)}</dd>
              <dd className="m az">{azimuth(name, ms)}</dd>
            </div>
          ),
        )}
        <div>
          <dt>moon</dt>
          <dd className="w2">{litText(light)}</dd>
        </div>
      </dl>
      <Missing events={events} />
    </section>
  );
}

const MOST_AFTER = 8;

/** The days that follow, to compare with. */
function DaysAfter({ calendar, after, runS, onDate }: DayPanelProps & { runS: number }) {
  if (after.length === 0) return null;
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
          {after.slice(0, MOST_AFTER).map((day) => (
            <tr key={day.date}>
              <td>
                <button type="button" className="link" onClick={() => onDate(day.date)}>
                  {shortDate(day.date)}
                </button>
              </td>
              <td className="m">{day.longest && minuteAt(day.longest.fromMs, calendar.offsets)}</td>
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

export function DayPanel(props: DayPanelProps) {
  const { plan, calendar, light, runS } = props;
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
        <span className="s">{offsetsText(light, offsets)}</span>
      </header>
      <DayStrip light={light} offsets={offsets} runS={runS} />
      {runS !== null && <Windows {...props} {...{ runS, aim, plannedMs }} />}
      <UseButtons {...{ plan, light, aim, plannedMs, offsets }} />
      {site && <Ephemeris light={light} site={site} offsets={offsets} />}
      {runS !== null && <DaysAfter {...props} runS={runS} />}
    </section>
  );
}

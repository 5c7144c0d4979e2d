/** The windows of a day, and how the run lies in the one that counts. */
import { type ReactNode, useMemo } from 'react';
import type { Plan } from '../../engine/plan/schema.ts';
import type { OffsetSpan } from '../../engine/schedule-types.ts';
import type { Span } from '../../engine/sky/spans.ts';
import { type BestStart, windowSpans } from '../../engine/sky/windows.ts';
import type { DayOfYear } from '../../engine/sky/year.ts';
import { clockAt } from '../../engine/time/clock.ts';
import { ArrowRight, StandingTag } from '../icons.tsx';
import { isWithin, lightText, plannedText, windowName } from './day.ts';
import { haveText, lengthS, standingOf, verdictText } from './words.ts';

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

export interface AimProps {
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

interface WindowsProps extends AimProps {
  plan: Plan;
  light: DayOfYear;
  /** First shutter opening to the last closing, seconds. */
  runS: number;
  offsets: readonly OffsetSpan[];
}

export function DayWindows({ plan, offsets, light, runS, ...start }: WindowsProps) {
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

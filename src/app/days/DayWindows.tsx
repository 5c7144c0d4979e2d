/** The windows of a day, and how the run lies in the one that counts. */
import { type ReactNode, useMemo } from 'react';
import type { Plan } from '../../engine/plan/schema.ts';
import type { OffsetSpan } from '../../engine/schedule-types.ts';
import type { Span } from '../../engine/sky/spans.ts';
import { type BestStart, windowSpans } from '../../engine/sky/windows.ts';
import type { DayOfYear } from '../../engine/sky/year.ts';
import { clockAt } from '../../engine/time/clock.ts';
import { ofWindow } from '../../engine/working/names.ts';
import { ArrowRight, StandingIcon, StandingTag } from '../icons.tsx';
import { How } from '../working/How.tsx';
import { Pieces } from '../working/Pieces.tsx';
import { isWithin, lightPieces, plannedPieces, windowName } from './day.ts';
import { haveText, lengthS, standingOf, verdictPieces } from './words.ts';

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
  /** Which of the day's it is, counted from 0. */
  w: number;
  /** The day's part of it, and the whole. */
  part: Span;
  whole: Span;
  light: DayOfYear;
  runS: number;
  offsets: readonly OffsetSpan[];
  /** What it comes to, and how the planned start lies in it, if it is the one that counts. */
  counts: ReactNode;
}

function WindowBlock({ w, part, whole, light, runS, offsets, counts }: WindowBlockProps) {
  const holds = lengthS(part) >= runS;
  const of = (what: string) => ofWindow(light.date, w, what);
  const edge = (ms: number, what: string, words: string) => (
    <How of={of(what)} what={`${clockAt(ms, offsets)}, ${words}`}>
      {clockAt(ms, offsets)}
    </How>
  );
  return (
    <section className={`win${counts ? ' on' : ''}`}>
      <div className="wh">
        <h3>{windowName(part, light)}</h3>
        <StandingTag standing={holds ? 'fine' : 'warning'} text={holds ? 'Fits' : 'Too short'} />
      </div>
      <p className="wt m">
        {edge(whole.fromMs, 'from', 'window begins')}
        <ArrowRight />
        <span className="vh">to</span>
        {edge(whole.toMs, 'to', 'window ends')}
      </p>
      <p className="s">
        {otherDayText(whole, light)}
        {counts || <Pieces pieces={[{ text: haveText(lengthS(whole)), of: of('lengthS') }, ' of light.']} />}
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
  w,
  whole,
  light,
  runS,
  offsets,
  aim,
  plannedMs,
}: Omit<WindowBlockProps, 'part' | 'counts'> & AimProps) {
  const planned = aim && (
    <Pieces pieces={['The plan ', ...plannedPieces(plannedMs, light, aim, offsets), '.']} />
  );
  return (
    <>
      <Pieces pieces={lightPieces(whole, light, w, aim, runS, offsets)} />{' '}
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
        <p>
          <span className={`sev ${standingOf(light)}`}>
            <StandingIcon standing={standingOf(light)} />
          </span>{' '}
          <Pieces pieces={verdictPieces(light, runS)} />
        </p>
      </section>
    );
  return light.windows.map((part, w) => (
    <WindowBlock
      key={part.fromMs}
      {...{ w, part, light, runS, offsets }}
      whole={whole(part)}
      counts={
        part.fromMs === counting?.fromMs && (
          <Counts {...{ w, light, runS, offsets, aim, plannedMs }} whole={whole(part)} />
        )
      }
    />
  ));
}

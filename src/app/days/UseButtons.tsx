/** The way from a day into the plan. */

import type { Edit } from '../../engine/plan/paths.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import type { OffsetSpan } from '../../engine/schedule-types.ts';
import type { BestStart } from '../../engine/sky/windows.ts';
import type { DayOfYear } from '../../engine/sky/year.ts';
import { clockAt } from '../../engine/time/clock.ts';
import { enterAll } from '../fields/entry.ts';
import { StandingIcon } from '../icons.tsx';
import { startText as tiedText } from '../sections/summary.ts';
import { endGesture } from '../store/plan.ts';
import { betterOffsetMin, dayEdits, handyStart, isWithin, startEdits } from './day.ts';
import { dayMonth } from './words.ts';

/** Changes the plan's start, as one step. */
function put(edits: readonly Edit[]): void {
  endGesture();
  enterAll(edits);
}

/** Puts the plan on a day. */
export const putOnDay = (date: string): void => put(dayEdits(date));

interface UseButtonsProps {
  plan: Plan;
  light: DayOfYear;
  /** The window that the start aims at; null if none holds the run, or none is asked for. */
  aim: BestStart | null;
  /** The start as planned on that day. */
  plannedMs: number;
  offsets: readonly OffsetSpan[];
}

/** What would have to change in the start for the run to fit on that day. */
interface Better {
  text: string;
  edits: readonly Edit[];
}

const withoutSeconds = (clock: string): string => clock.replace(/:00$/, '');

/** A start that fits, if the planned one does not: by the clock, or as before by the sky. */
function betterStart({ plan, light: { date }, aim, plannedMs, offsets }: UseButtonsProps): Better | null {
  if (aim === null || isWithin(plannedMs, aim)) return null;
  if (plan.start.tiedTo === 'clock') {
    const ms = handyStart(aim, offsets);
    return { text: `at ${withoutSeconds(clockAt(ms, offsets))}`, edits: startEdits(ms, offsets) };
  }
  const offsetMin = betterOffsetMin(plan.start.offsetMin, plannedMs, aim);
  if (offsetMin === null) return null;
  const text = tiedText({ ...plan.start, offsetMin });
  return { text, edits: [...dayEdits(date), ['start.offsetMin', offsetMin]] };
}

export function UseButtons(props: UseButtonsProps) {
  const { plan, light } = props;
  const { date } = light;
  const there = plan.start.date === date;
  const better = betterStart(props);
  return (
    <div className="use">
      <button
        type="button"
        className={`btn main${there ? ' done' : ''}`}
        aria-disabled={there}
        onClick={() => there || putOnDay(date)}
      >
        {there && <StandingIcon standing="fine" />}
        {there ? `The plan is on ${dayMonth(date)}` : `Use ${dayMonth(date)}`}
      </button>
      {better && (
        <button type="button" className="btn" onClick={() => put(better.edits)}>
          {there ? 'Start' : `Use ${dayMonth(date)}, start`} {better.text}
        </button>
      )}
      {plan.start.tiedTo === 'sky' && <p className="s">The plan starts {tiedText(plan.start)}.</p>}
    </div>
  );
}

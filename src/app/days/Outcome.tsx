/** What came of the sentence: how many days fit, and whether the chosen one does. */
import type { Plan } from '../../engine/plan/schema.ts';
import type { DayOfYear } from '../../engine/sky/year.ts';
import { enterAll } from '../fields/entry.ts';
import { type Standing, StandingIcon } from '../icons.tsx';
import { endGesture } from '../store/plan.ts';
import { Pieces } from '../working/Pieces.tsx';
import type { Piece } from '../working/sentence.ts';
import { unreachable } from './clauses.ts';
import { aimOf, isWithin, missPiece, startOn } from './day.ts';
import { countPieces, countsOf, monthName, standingOf, yearPieces } from './words.ts';

interface OutcomeProps {
  plan: Plan;
  /** The days that are worked out. */
  days: readonly DayOfYear[];
  light: DayOfYear | null;
  /** Months that are worked out. */
  months: number;
  failed: boolean;
  /** First shutter opening to the last closing, seconds; null if no window is asked for. */
  runS: number | null;
}

/** An altitude that the sun does not reach, with the nearest that it does. */
function Nearest({ plan }: { plan: Plan }) {
  const found = unreachable(plan.window, plan.place.latitudeDeg ?? 0);
  if (!found) return null;
  const take = () => {
    endGesture();
    enterAll([found.edit]);
  };
  return (
    <>
      <span>{found.text}</span>
      <button type="button" className="btn" onClick={take}>
        {found.offer}
      </button>
    </>
  );
}

/** How the planned start misses the window that it aims at on the plan's own day. */
function missOf(plan: Plan, light: DayOfYear, runS: number): Piece | null {
  if (light.date !== plan.start.date) return null;
  const plannedMs = startOn(plan, light.date);
  const aim = aimOf(plan, light, runS, plannedMs);
  return aim && !isWithin(plannedMs, aim) ? missPiece(plannedMs, light.date, aim) : null;
}

function said({ plan, days, light, months, failed, runS }: OutcomeProps): [Piece[], Standing | null] {
  if (failed) return [['This browser could not work out the year. Single days still work.'], 'warning'];
  if (months < 12 || runS === null || !light) return [[], null];
  const miss = missOf(plan, light, runS);
  return [yearPieces(days, light, runS, miss), miss ? 'warning' : standingOf(light)];
}

export function Outcome(props: OutcomeProps) {
  const { plan, days, light, months, failed, runS } = props;
  const [sentence, standing] = said(props);
  return (
    <div className="verdict">
      {standing && (
        <span className={`sev ${standing}`}>
          <StandingIcon standing={standing} />
        </span>
      )}
      {/* Heard once, when it is done; the months on the way are for the eye. */}
      <p role="status">
        <Pieces pieces={sentence} />
      </p>
      {months < 12 && !failed && (
        <p>
          Working out {monthName(months)}, {months + 1} of 12
        </p>
      )}
      {months === 12 && runS === null && <p>Choose a day for its light.</p>}
      {runS !== null && <Nearest plan={plan} />}
      {sentence.length > 0 && !failed && light && (
        <span className="r">
          {countPieces(countsOf(days), Number(light.date.slice(0, 4))).map((piece) => (
            <span key={piece.of}>
              <Pieces pieces={[piece]} />
            </span>
          ))}
        </span>
      )}
    </div>
  );
}

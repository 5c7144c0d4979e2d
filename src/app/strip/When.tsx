/** First and last frame on the local clock, the date and the place. */
import type { Plan } from '../../engine/plan/schema.ts';
import type { Schedule } from '../../engine/schedule-types.ts';
import { clockOf, dateOf, daysBetween } from '../format/clock.ts';
import { plural } from '../format/numbers.ts';
import { ArrowRight } from '../icons.tsx';
import { goToField } from '../store/goTo.ts';
import { How } from '../working/How.tsx';

export function When({ plan, schedule }: { plan: Plan; schedule: Schedule }) {
  const { firstFrameAt, lastFrameAt } = schedule.totals;
  const days = daysBetween(firstFrameAt, lastFrameAt);
  return (
    <div className="when">
      <button
        type="button"
        className="c"
        aria-label={`From ${clockOf(firstFrameAt)} to ${clockOf(lastFrameAt)}: change the start`}
        onClick={() => goToField('place', 'start.time')}
      >
        <span>{clockOf(firstFrameAt)}</span>
        <ArrowRight />
        <span>{clockOf(lastFrameAt)}</span>
      </button>
      <p className="l">
        <How of="totals.lastFrameAt" what={`${dateOf(firstFrameAt)}, first and last frame`}>
          <b>{dateOf(firstFrameAt)}</b>
        </How>
        {days > 0 && <span>ends {plural(days, 'day')} later</span>}
        {plan.place.name && <span className="where">{plan.place.name}</span>}
      </p>
    </div>
  );
}

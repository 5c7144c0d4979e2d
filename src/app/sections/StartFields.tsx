/** When it starts: by the clock, or so long before or after something in the sky. */
import type { Plan } from '../../engine/plan/schema.ts';
import type { NoEvent } from '../../engine/sky/day.ts';
import { skyStart } from '../../engine/sky/start.ts';
import { isoIn } from '../../engine/time/clock.ts';
import { Choice, Segments } from '../fields/ChoiceField.tsx';
import { enterAll } from '../fields/entry.ts';
import { NumberField } from '../fields/NumberField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { wordText } from '../fields/words.ts';
import { clockOf, dateOf, offsetText, readClock } from '../format/clock.ts';
import { endGesture, usePlan, useSchedule } from '../store/plan.ts';
import { Pieces } from '../working/Pieces.tsx';
import { Facts } from './parts.tsx';
import { startText } from './summary.ts';

/** The clock as a plan writes it. */
export const readTime = (text: string): string => readClock(text) ?? text;
/** Without seconds, if there are none. */
export const showTime = (time: string): string => (time.length === 8 ? time.replace(/:00$/, '') : time);

/** The offset in use, which always shows: a machine's zone data can be out of date. */
export function OffsetFacts() {
  const [first, ...later] = useSchedule().offsets.map(({ offsetMin }, i) => ({
    text: offsetText(offsetMin),
    of: `offsets.${i + 1}.offsetMin`,
  }));
  if (!first) return null;
  const changes = later.flatMap((offset) => [', then ', offset]);
  return <Facts of={[['The clock is ', first, ' from UTC at the start', ...changes, '.']]} />;
}

const SIDES = [
  ['Before', -1],
  ['After', 1],
] as const;

/** Which side of the event; a start at the event itself is on neither. */
function Side() {
  const offsetMin = usePlan((plan) => plan.start.offsetMin);
  const turn = (sign: number) => {
    endGesture();
    enterAll([['start.offsetMin', sign * Math.abs(offsetMin || 30)]]);
  };
  return (
    <fieldset className="seg full">
      <legend className="vh">Side of the event</legend>
      {SIDES.map(([word, sign]) => (
        <button
          key={word}
          type="button"
          aria-pressed={Math.sign(offsetMin) === sign}
          onClick={() => turn(sign)}
        >
          {word}
        </button>
      ))}
    </fieldset>
  );
}

/** The first frame's clock, or why there is none. */
function Outcome() {
  const plan = usePlan((present) => present);
  const found = skyStart(plan);
  const { event } = plan.start;
  if ('noEvent' in found)
    return (
      <p className="hint" role="status">
        {noEventText(found.noEvent, event)}
      </p>
    );
  const ms = Math.round(found.ms / 1000) * 1000;
  const at = isoIn(ms, plan.place);
  return (
    <p className="hint" role="status">
      <Pieces
        pieces={[
          `${wordText(startText(plan.start))}: `,
          { text: clockOf(at), of: 'totals.firstFrameAt' },
          ` on ${dateOf(at)}.`,
        ]}
      />
    </p>
  );
}

/** Why the start cannot go by the sky. */
function noEventText(noEvent: NoEvent | 'no place', event: Plan['start']['event']): string {
  if (noEvent === 'no place')
    return 'Sun and moon need a place on the map. Until there is one, the clock counts.';
  const body = event.startsWith('moon') ? 'moon' : 'sun';
  const why: Readonly<Record<NoEvent, string>> = {
    'above all day': `: the ${body} stays higher all day`,
    'below all day': `: the ${body} stays lower all day`,
    'not on this day': '',
    'no such day': ': the calendar of this place leaves the day out',
  };
  return `There is no ${wordText(event).toLowerCase()} on this day${why[noEvent]}. The clock counts instead.`;
}

function BySky() {
  return (
    <>
      <Choice path="start.event" wide />
      <NumberField path="start.offsetMin" label="From the event" wide />
      <div className="fld w2">
        <span className="lab" aria-hidden="true">
          Side of the event
        </span>
        <Side />
      </div>
      <Outcome />
    </>
  );
}

export function StartFields() {
  const tiedTo = usePlan((plan) => plan.start.tiedTo);
  return (
    <>
      <Segments path="start.tiedTo" />
      <TextField path="start.date" type="date" />
      <TextField
        path="start.time"
        id="start.time"
        label={tiedTo === 'sky' ? 'If it does not happen, at' : 'First frame at'}
        read={readTime}
        show={showTime}
      />
      {tiedTo === 'sky' && <BySky />}
    </>
  );
}

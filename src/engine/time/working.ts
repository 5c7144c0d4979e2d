/** How the times of the first and the last frame came about. */
import { startFor } from '../schedule.ts';
import type { OffsetSpan } from '../schedule-types.ts';
import { EVENT_WORDS } from '../sky/names.ts';
import { skyStart } from '../sky/start.ts';
import { DEFINITION, type Draft, sameAs, term, type Worked, type Workings } from '../working/make.ts';
import { isoAt, offsetInSpans, offsetText } from './clock.ts';
import { CLOCK_SOURCE, changePart, daysPart, some, termsOf, textOf } from './moment-working.ts';

const DAY_S = 86_400;
const HOUR_S = 3600;

/** Seconds since local midnight of an ISO time with its offset. */
function localS(iso: string): number {
  const [hours = '0', minutes = '0', seconds = '0'] = iso.slice(11).split(/[+-]/)[0]?.split(':') ?? [];
  return Number(hours) * HOUR_S + Number(minutes) * 60 + Number(seconds);
}

/** Offset from UTC at an instant, whole minutes, in seconds. */
const offsetS = ({ made }: Worked, ms: number): number => Math.round(offsetInSpans(ms, made.offsets)) * 60;

/** Local midnights between local times counted in seconds: how many days they are apart. */
const daysOn = (seconds: number): number => Math.floor(seconds / DAY_S);

const SECONDS = 'Seconds since local midnight.';

/** Seconds of the local clock that the start goes by, before a delay, and what that is. */
function startClock({ plan, made }: Worked): { seconds: number; words: string; remarks: string[] } {
  const bySky = plan.start.tiedTo === 'sky' ? skyStart(plan) : null;
  const { event, offsetMin, time } = plan.start;
  const start = startFor(plan);
  if (!bySky || !('ms' in bySky)) {
    const [hours, minutes, seconds = 0] = time.split(':').map(Number);
    const typedS = (hours ?? 0) * HOUR_S + (minutes ?? 0) * 60 + seconds;
    return { seconds: typedS, words: 'start as typed', remarks: [] };
  }
  const local = start.startMs / 1000 + offsetS({ plan, made }, start.startMs) - offsetMin * 60;
  return {
    seconds: local - DAY_S * daysOn(local),
    words: EVENT_WORDS[event],
    remarks: [
      `The ${EVENT_WORDS[event]} comes from the path of suncalc’s positions on the local day; the start is to whole seconds.`,
    ],
  };
}

function firstFrame(of: Worked): Draft {
  const { plan, made } = of;
  const { firstFrameAt } = made.totals;
  const value = localS(firstFrameAt);
  const start = startFor(plan);
  const clock = startClock(of);
  const bySky = clock.words !== 'start as typed';
  const offsetMin = bySky ? plan.start.offsetMin : 0;
  const delayS = (made.startMs - start.startMs) / 1000;
  const before = clock.seconds + offsetMin * 60 + delayS;
  // A local time that the clock skips slides forward; a change of the clock while it is put off counts as well.
  const slid = value - before;
  const days = -Math.round(slid / DAY_S);
  const changeS = slid + days * DAY_S;
  const parts = some([
    { text: ' + 60 * offsetMin', term: term('offsetMin', 'minutes after it', offsetMin, 'min') },
    { text: ' + delayS', term: term('delayS', 'put off by', delayS, 's') },
    changePart('+', changeS),
    daysPart('-', days),
  ]);
  return {
    title: 'First frame',
    value,
    unit: 's',
    label: firstFrameAt,
    expression: `clockS${textOf(parts)}`,
    terms: [term('clockS', clock.words, clock.seconds, 's'), ...termsOf(parts)],
    frame: 1,
    remarks: [`${firstFrameAt}. ${SECONDS}`, ...clock.remarks],
    source: CLOCK_SOURCE,
  };
}

function lastFrame(of: Worked): Draft {
  const { made } = of;
  const { firstFrameAt, lastFrameAt, eventDurationS, frames } = made.totals;
  const firstS = localS(firstFrameAt);
  const value = localS(lastFrameAt);
  const lastMs = Math.round(made.startMs + eventDurationS * 1000);
  const changeS = offsetS(of, lastMs) - offsetS(of, made.startMs);
  const localEndS = firstS + eventDurationS + changeS;
  const days = Math.round((localEndS - value) / DAY_S);
  const roundedS = Math.abs(value + days * DAY_S - localEndS) < 1e-9 ? 0 : value + days * DAY_S - localEndS;
  const parts = some([
    changePart('+', changeS),
    { text: ' + roundedS', term: term('roundedS', 'rounding to whole milliseconds', roundedS, 's') },
    daysPart('-', days),
  ]);
  return {
    title: 'Last frame',
    value,
    unit: 's',
    label: lastFrameAt,
    expression: `firstFrameS + eventS${textOf(parts)}`,
    terms: [
      term('firstFrameS', 'first frame', firstS, 's', 'totals.firstFrameAt'),
      term('eventS', 'event', eventDurationS, 's', 'totals.eventDurationS'),
      ...termsOf(parts),
    ],
    frame: frames,
    remarks: [
      `${lastFrameAt}. ${SECONDS}`,
      `The offset from UTC is then ${offsetText(offsetS(of, lastMs) / 60)}.`,
    ],
    source: CLOCK_SOURCE,
  };
}

/** Offset from UTC from an instant of the run on, as the clock has it. */
function offset({ place }: Worked['plan'], { fromMs, offsetMin }: OffsetSpan, changed: boolean): Draft {
  const typed = place.utcOffsetMin !== null;
  const words = typed ? 'offset as typed' : `offset of ${place.zone}`;
  const from = isoAt(fromMs, [{ fromMs, offsetMin }]);
  return sameAs(changed ? 'Offset from UTC, changed' : 'Offset from UTC', words, offsetMin, 'min', null, {
    label: offsetText(offsetMin),
    remarks: [changed ? `From ${from} on.` : 'At the start of the run.'],
    source: typed ? DEFINITION : 'IANA zone data of this machine.',
  });
}

/** Workings of the clock. */
export const timeWorkings = (of: Worked): Workings => ({
  ...Object.fromEntries(
    of.made.offsets.map((span, i) => [`offsets.${i + 1}.offsetMin`, () => offset(of.plan, span, i > 0)]),
  ),
  'totals.firstFrameAt': () => firstFrame(of),
  'totals.lastFrameAt': () => lastFrame(of),
});

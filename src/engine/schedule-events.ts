/** The moments of a run that matter, in order of time. */
import type { RampChange } from './exposure/ramp.ts';
import { rampWords, rungWords } from './exposure/ramp-words.ts';
import { lostBefore, type Run } from './run.ts';
import type { ScheduleEvent } from './schedule-types.ts';
import { EVENT_WORDS } from './sky/names.ts';
import { isoAt, offsetText } from './time/clock.ts';

/** What happens at the opening of a frame, counted from 1. */
function eventAt(
  run: Run,
  kind: ScheduleEvent['kind'],
  frame: number,
  text: string,
  lostFrames = 0,
): ScheduleEvent {
  const elapsedS = run.columns.elapsedS[frame - 1] ?? 0;
  return { kind, frame, elapsedS, at: run.at(frame), text, lostFrames };
}

/** A run over many days would drown in sunsets. */
const MOST_SKY_EVENTS = 40;

const skyEvents = (run: Run): ScheduleEvent[] =>
  (run.sky?.events ?? []).slice(0, MOST_SKY_EVENTS).flatMap(({ name, ms }): ScheduleEvent[] => {
    if (ms === null) return [];
    const elapsedS = (ms - run.start.startMs) / 1000;
    const at = isoAt(Math.round(ms / 1000) * 1000, run.offsets);
    return [
      { kind: 'sky', frame: run.frameFrom(elapsedS), elapsedS, at, text: EVENT_WORDS[name], lostFrames: 0 },
    ];
  });

type ChangeWords = Required<Pick<ScheduleEvent, 'text' | 'from' | 'to'>>;

function wordsFor(change: RampChange): ChangeWords {
  const byHand = change.by === 'hand' ? ', by hand' : '';
  return {
    text: `${rampWords(change)}${byHand}`,
    from: rungWords(change.from),
    to: rungWords(change.to),
  };
}

/** A long run changes to and fro between the same rungs: each change is put into words once. */
function changeWords(rungs: number): (change: RampChange) => ChangeWords {
  const known = new Map<number, ChangeWords>();
  return (change) => {
    const key = change.from.index * rungs + change.to.index;
    const found = known.get(key);
    if (found) return found;
    const words = wordsFor(change);
    known.set(key, words);
    return words;
  };
}

function exposureChanges(run: Run): ScheduleEvent[] {
  const { ramp, columns } = run;
  if (ramp === null) return [];
  const wordsOf = changeWords(ramp.ladder.rungs.length);
  const { changeS } = run.plan.exposure.ramp;
  return ramp.changes.map((change): ScheduleEvent => {
    const { frame } = change;
    const { text, from, to } = wordsOf(change);
    const lostFrames = change.by === 'hand' ? lostBefore(run, frame, changeS) : 0;
    const elapsedS = columns.elapsedS[frame - 1] ?? 0;
    // Written out, not put together from parts: a long run has thousands.
    return { kind: 'exposureChange', frame, elapsedS, at: run.at(frame), text, lostFrames, from, to };
  });
}

const swaps = (run: Run): ScheduleEvent[] =>
  run.sources.flatMap(({ source, summary }) =>
    summary.swapFrames.map((frame, i) => {
      const lost = lostBefore(run, frame, source.swapS);
      return eventAt(run, 'swap', frame, `${source.name}: swap to pack ${i + 2}`, lost);
    }),
  );

const cardChanges = (run: Run): ScheduleEvent[] =>
  run.storage.changeFrames.map((frame) => {
    const name = run.storage.cards[run.columns.cardIndex[frame - 1] ?? 0]?.name ?? 'the next card';
    const lost = lostBefore(run, frame, run.plan.storage.cardChangeS);
    return eventAt(run, 'cardChange', frame, `change to ${name}`, lost);
  });

const clockChanges = (run: Run): ScheduleEvent[] =>
  run.clockChanges.map(({ frame, fromMin, toMin }) => {
    const text = `clocks change from ${offsetText(fromMin)} to ${offsetText(toMin)}`;
    return eventAt(run, 'clockChange', frame, text);
  });

/** All events of a run. */
export function eventsOf(run: Run): ScheduleEvent[] {
  const events = [
    eventAt(run, 'firstFrame', 1, 'first frame'),
    ...skyEvents(run),
    ...exposureChanges(run),
    ...swaps(run),
    ...cardChanges(run),
    ...clockChanges(run),
    eventAt(run, 'lastFrame', run.pace.frames, 'last frame'),
  ];
  // Sorting is stable: what falls on one frame stays in the order above.
  return events.sort((a, b) => a.frame - b.frame);
}

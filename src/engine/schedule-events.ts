/** The moments of a run that matter, in order of time. */
import { lostBefore, type Run } from './run.ts';
import type { ScheduleEvent } from './schedule-types.ts';
import { offsetText } from './time/clock.ts';

type Moment = Omit<ScheduleEvent, 'elapsedS' | 'at'>;

const swaps = (run: Run): Moment[] =>
  run.sources.flatMap(({ source, summary }) =>
    summary.swapFrames.map((frame, i) => ({
      kind: 'swap' as const,
      frame,
      text: `${source.name}: swap to pack ${i + 2}`,
      lostFrames: lostBefore(run, frame, source.swapS),
    })),
  );

const cardChanges = (run: Run): Moment[] =>
  run.storage.changeFrames.map((frame) => ({
    kind: 'cardChange' as const,
    frame,
    text: `change to ${run.storage.cards[run.columns.cardIndex[frame - 1] ?? 0]?.name ?? 'the next card'}`,
    lostFrames: lostBefore(run, frame, run.plan.storage.cardChangeS),
  }));

const clockChanges = (run: Run): Moment[] =>
  run.clockChanges.map(({ frame, fromMin, toMin }) => ({
    kind: 'clockChange' as const,
    frame,
    text: `clocks change from ${offsetText(fromMin)} to ${offsetText(toMin)}`,
    lostFrames: 0,
  }));

/** All events of a run. */
export function eventsOf(run: Run): ScheduleEvent[] {
  const { frames } = run.pace;
  const moments: Moment[] = [
    { kind: 'firstFrame', frame: 1, text: 'first frame', lostFrames: 0 },
    ...swaps(run),
    ...cardChanges(run),
    ...clockChanges(run),
    { kind: 'lastFrame', frame: frames, text: 'last frame', lostFrames: 0 },
  ];
  // Sorting is stable: what falls on one frame stays in the order above.
  return moments
    .sort((a, b) => a.frame - b.frame)
    .map((moment) => ({
      ...moment,
      elapsedS: run.columns.elapsedS[moment.frame - 1] ?? 0,
      at: run.at(moment.frame),
    }));
}

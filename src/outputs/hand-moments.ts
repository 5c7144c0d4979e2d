/** The moments of a run that need a hand: swaps, cards, settings, the pane. */
import type { Plan } from '../engine/plan/schema.ts';
import type { Schedule, ScheduleEvent } from '../engine/schedule-types.ts';
import { firstWhere } from '../engine/search.ts';
import type { Sheet } from '../engine/sheet/types.ts';

/** One of them. */
export interface HandMoment {
  kind: 'swap' | 'cardChange' | 'exposureChange' | 'pane';
  /** Milliseconds of the epoch: the opening of the frame that it has to be done before, or the sun's. */
  ms: number;
  /** First frame after it, counted from 1. */
  frame: number;
  /** What to do. */
  text: string;
  lostFrames: number;
}

/** Frames whose settings are changed by hand. */
const handFrames = ({ exposure }: Schedule): ReadonlySet<number> =>
  new Set(exposure?.changes.filter(({ by }) => by === 'hand').map(({ frame }) => frame));

/** Whether an event needs a hand. */
export function needsHand(made: Schedule): (event: ScheduleEvent) => boolean {
  const byHand = handFrames(made);
  return ({ kind, frame }) =>
    kind === 'swap' || kind === 'cardChange' || (kind === 'exposureChange' && byHand.has(frame));
}

const PANE = 'black out the pane: the sun reaches the set if the sky is clear';

/** Whether sun on the set is not what the plan asks for. */
const unwanted = ({ pane, window }: Plan): boolean =>
  pane.used && !(window.used && window.sunOnPane === 'onSet');

const paneMoment = (ms: number, frame: number): HandMoment => ({
  kind: 'pane',
  ms,
  frame,
  text: PANE,
  lostFrames: 0,
});

/** When the sun comes through the pane onto the set within the run: it has to be blacked out by then. */
function paneMoments(plan: Plan, { sky, startMs, columns, totals }: Schedule): HandMoment[] {
  if (!unwanted(plan)) return [];
  return (sky?.setHits ?? []).map(({ fromMs }) => {
    const before = firstWhere(
      0,
      totals.frames - 1,
      (k) => startMs + (columns.elapsedS[k] ?? 0) * 1000 >= fromMs,
    );
    return paneMoment(fromMs, before + 1);
  });
}

/** All of them, in order of time. */
export function handMoments(plan: Plan, made: Schedule): HandMoment[] {
  const byHand = needsHand(made);
  const moments = made.events.flatMap((event): HandMoment[] => {
    const { kind, frame, elapsedS, text, lostFrames } = event;
    if (!byHand(event) || (kind !== 'swap' && kind !== 'cardChange' && kind !== 'exposureChange')) return [];
    return [{ kind, frame, text, lostFrames, ms: made.startMs + elapsedS * 1000 }];
  });
  return [...moments, ...paneMoments(plan, made)].sort((a, b) => a.ms - b.ms);
}

/** Those of a stop-motion sheet: the pane, on each day that the sun comes in. The rest is on the sheet. */
export const sheetMoments = (plan: Plan, { days }: Sheet): HandMoment[] =>
  unwanted(plan)
    ? days.flatMap(({ sunSpans, firstExposure }) =>
        sunSpans.map(({ fromMs }) => paneMoment(fromMs, firstExposure ?? 1)),
      )
    : [];

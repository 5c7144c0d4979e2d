/** What there is to do during a run, and what is only worth knowing. */
import { rungWords } from '../exposure/ramp-words.ts';
import type { Schedule, ScheduleEvent } from '../schedule-types.ts';
import { framesUpTo, madeOf, opensMs, type Stretch } from './stretch.ts';

/** One moment of a run. */
export interface Moment {
  /** Stable while its stretch stays as it is. */
  key: string;
  kind: ScheduleEvent['kind'] | 'sunOnSet';
  /** In a few words, a capital first. */
  text: string;
  /** Frame of the whole run, counted from 1, before which it has to be done, or at which it happens. */
  frame: number;
  atMs: number;
  /** A hand has to do it, in the interval before the frame: from `openMs`, and it is announced one interval sooner. */
  byHand: boolean;
  openMs: number;
  announceMs: number;
  /** Frames that the trigger fires in vain meanwhile. */
  lostFrames: number;
}

/** How a thing to do stands. */
export type Standing = 'later' | 'soon' | 'due' | 'overdue' | 'done';

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const HANDS: readonly ScheduleEvent['kind'][] = ['swap', 'cardChange'];

const changedByHand = ({ exposure }: Schedule): ReadonlySet<number> =>
  new Set(exposure?.changes.filter(({ by }) => by === 'hand').map(({ frame }) => frame));

type Place = Pick<Moment, 'key' | 'frame' | 'atMs' | 'openMs' | 'announceMs'>;

function placeOf(
  stretch: Stretch,
  made: Schedule,
  event: Pick<ScheduleEvent, 'kind' | 'frame' | 'text'>,
): Place {
  const { frame } = event;
  const opens = (index: number) => opensMs(made, Math.max(0, index));
  return {
    key: `${stretch.framesBefore} ${stretch.startMs} ${event.kind} ${frame} ${event.text}`,
    frame: stretch.framesBefore + frame,
    atMs: opens(frame - 1),
    openMs: opens(frame - 2),
    announceMs: opens(frame - 3),
  };
}

function momentOf(
  stretch: Stretch,
  made: Schedule,
  hands: ReadonlySet<number>,
  event: ScheduleEvent,
): Moment {
  const byHand = HANDS.includes(event.kind) || (event.kind === 'exposureChange' && hands.has(event.frame));
  const place = placeOf(stretch, made, event);
  const atMs = event.kind === 'sky' ? made.startMs + event.elapsedS * 1000 : place.atMs;
  const { kind, text, lostFrames } = event;
  return { ...place, kind, text: capital(text), atMs, byHand, lostFrames };
}

/** Sun on the set: the pane is blacked out by hand before it comes. */
function paneMoments(stretch: Stretch, made: Schedule): Moment[] {
  return (made.sky?.setHits ?? []).map(({ fromMs }): Moment => {
    const elapsedS = (fromMs - made.startMs) / 1000;
    const frame = made.columns.elapsedS.filter((atS) => atS < elapsedS).length;
    const text = 'Black out the pane: sun on the set';
    const place = placeOf(stretch, made, { kind: 'sky', frame: Math.max(1, frame), text });
    return { ...place, kind: 'sunOnSet', text, atMs: fromMs, byHand: true, lostFrames: 0 };
  });
}

const momentsOfOne = (stretch: Stretch): Moment[] => {
  const made = madeOf(stretch);
  const hands = changedByHand(made);
  const known = made.events.filter(({ kind }) => stretch.framesBefore === 0 || kind !== 'firstFrame');
  return [...known.map((event) => momentOf(stretch, made, hands, event)), ...paneMoments(stretch, made)];
};

/** What a hand has to do before the first frame of a stretch, in a few words each: the settings too, if hands set them. */
export function beforeFirst(stretch: Stretch): string[] {
  const { plan, framesBefore } = stretch;
  const made = madeOf(stretch);
  const { used, steps } = plan.exposure.ramp;
  const rung = made.exposure?.rungs[made.columns.rung?.[0] ?? 0];
  const set = used && rung && steps.some(({ by }) => by === 'hand') ? [`Set ${rungWords(rung)}`] : [];
  const due = momentsOfOne(stretch).filter(({ byHand, frame }) => byHand && frame <= framesBefore + 1);
  return [...due.map(({ text }) => text), ...set];
}

/**
 * The moments of a run, in order of time.
 * @param stretches - of the run, in order; what one says beyond the beginning of the next no longer counts
 */
export function momentsOf(stretches: readonly Stretch[]): Moment[] {
  const all = stretches.flatMap((stretch, i) => {
    const next = stretches[i + 1];
    const upTo = next ? next.framesBefore : framesUpTo(stretch);
    return momentsOfOne(stretch).filter(
      ({ frame, kind }) => frame <= upTo && !(next !== undefined && kind === 'lastFrame'),
    );
  });
  return all.sort((a, b) => a.atMs - b.atMs);
}

/**
 * How a thing to do stands at an instant.
 * @param done - keys of those that were acknowledged
 */
export function standingOf(moment: Moment, done: ReadonlySet<string>, nowMs: number): Standing {
  if (done.has(moment.key)) return 'done';
  if (nowMs >= moment.atMs) return moment.byHand ? 'overdue' : 'done';
  if (nowMs >= moment.openMs) return 'due';
  return nowMs >= moment.announceMs ? 'soon' : 'later';
}

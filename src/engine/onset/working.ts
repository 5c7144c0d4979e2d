/**
 * How the figures of a run that is being shot came about.
 *
 * They depend on the present and on what has happened, which no plan knows: whoever asks says both. Frames are those of
 * the whole run, names of other figures those of the stretch under way.
 */

import {
  type Moment as At,
  betweenDraft,
  laterDraft,
  momentDraft,
  secondsPart,
} from '../time/moment-working.ts';
import { DEFINITION, type Draft, term, type Workings } from '../working/make.ts';
import { ofOnset } from '../working/names.ts';
import { endOf, framesDraft, outcomeWorkings } from './end-working.ts';
import type { OnSet } from './on-set.ts';
import { frameS } from './state.ts';
import { lastOpensMs, madeOf, opensMs } from './stretch.ts';
import { todoWorkings } from './todo-working.ts';

export type { OnSet, StepBefore } from './on-set.ts';

const now = ({ nowMs }: OnSet): At => ({ ms: nowMs, figure: null, words: 'now' });
const firstFrame = ({ stretch }: OnSet): At => ({ ms: stretch.startMs, figure: null, words: 'first frame' });

/** Until the first frame, or since it was due. */
function toFirst(of: OnSet): Draft {
  const { place } = of.plan;
  return of.stretch.startMs >= of.nowMs
    ? betweenDraft('First frame in', place, now(of), firstFrame(of))
    : betweenDraft('First frame was due, since', place, firstFrame(of), now(of));
}

/** Opening of the frame after the one under way; null once there is none. */
const nextMs = ({ nowMs, instant }: OnSet): number | null =>
  instant.toNextS === null ? null : nowMs + instant.toNextS * 1000;

function nextOpening(of: OnSet, ms: number): Draft {
  const { stretch, instant, plan, begun } = of;
  const made = madeOf(stretch);
  const title = `Frame ${begun + 1} opens`;
  // What another stretch goes on with is planned for its own instant.
  if (Math.abs(opensMs(made, instant.index + 1) - ms) > 1) return momentDraft(title, plan.place, ms);
  return laterDraft(
    title,
    plan.place,
    {
      ms: stretch.startMs,
      figure: null,
      words: stretch.framesBefore === 0 ? 'frame 1 opened' : 'it went on',
    },
    ms,
    [
      secondsPart(
        'elapsedS',
        `intervals of ${instant.index + 1} frames since`,
        made.columns.elapsedS[instant.index + 1] ?? 0,
      ),
    ],
    'rounding to whole milliseconds',
  );
}

/** Until the next shutter opening, or of the last frame until camera and rig are done. */
function toNext(of: OnSet): Draft {
  const { place } = of.plan;
  const ms = nextMs(of);
  if (ms !== null)
    return betweenDraft('Next shutter in', place, now(of), {
      ms,
      figure: ofOnset('nextAt'),
      words: `frame ${of.begun + 1} opens`,
    });
  const doneMs = of.nowMs + (Number.isFinite(of.instant.untilS) ? of.instant.untilS : 0) * 1000;
  return betweenDraft('Last frame, done in', place, now(of), {
    ms: doneMs,
    figure: null,
    words: 'camera and rig are done',
  });
}

function paused(of: OnSet, pausedMs: number): Workings {
  const { place } = of.plan;
  const since: At = { ms: pausedMs, figure: ofOnset('pausedAt'), words: 'paused' };
  return {
    [ofOnset('pausedAt')]: () =>
      momentDraft('Paused since', place, pausedMs, {
        remarks: ['As it was pressed, by the clock of this device.'],
      }),
    [ofOnset('pausedS')]: () => betweenDraft('Paused for', place, since, now(of)),
  };
}

const begun = ({ begun: value, stretch }: OnSet): Draft => ({
  ...framesDraft(
    'Frames begun',
    value,
    value > stretch.framesBefore ? stretch.framesBefore : 0,
    'shutter openings up to now',
    value > stretch.framesBefore ? value - stretch.framesBefore : value,
  ),
  remarks: ['By the clock, from when frame 1 fired; the one under way counts.'],
});

const frames = ({ frames: value, last }: OnSet): Draft =>
  framesDraft('Frames of the run', value, last.framesBefore, 'frames planned', value - last.framesBefore);

const frameTerms = (of: OnSet) => [
  term('begun', 'frames begun', of.begun, 'frames', ofOnset('begun')),
  term('frames', 'frames of the run', of.frames, 'frames', ofOnset('frames')),
];

const left = (of: OnSet): Draft => ({
  title: 'Frames left',
  value: of.frames - of.begun,
  unit: 'frames',
  expression: 'frames - begun',
  terms: frameTerms(of).toReversed(),
  source: DEFINITION,
});

const percent = (of: OnSet): Draft => ({
  title: 'Shot',
  unit: '%',
  expression: 'floor(100 * begun / max(1, frames))',
  terms: frameTerms(of),
  source: DEFINITION,
});

/** How late the end is against the plan. */
function late(of: OnSet): Draft {
  const { place } = of.plan;
  const [isMs, plannedMs] = [lastOpensMs(of.last), lastOpensMs(of.planned)];
  const is: At = { ms: isMs, figure: ofOnset('endAt'), words: 'end' };
  const planned: At = { ms: plannedMs, figure: null, words: 'end as planned' };
  return isMs >= plannedMs
    ? betweenDraft('End, late by', place, planned, is)
    : betweenDraft('End, early by', place, is, planned);
}

/** When camera and rig are done with the last frame. */
function doneAt(of: OnSet): Draft {
  const opens = lastOpensMs(of.last);
  const made = madeOf(of.last);
  const lastS = frameS(made, made.totals.frames - 1);
  return laterDraft(
    'Done with the last frame',
    of.plan.place,
    { ms: opens, figure: ofOnset('endAt'), words: 'last frame opens' },
    opens + lastS * 1000,
    [secondsPart('lastS', 'longer lane of the last frame', lastS)],
  );
}

/** What is shot so far, on the card. */
const bytes = (of: OnSet): Draft => ({
  title: 'Bytes of one copy',
  unit: 'bytes',
  expression: 'frameBytes * begun',
  terms: [
    term(
      'frameBytes',
      'bytes of a frame',
      madeOf(of.stretch).totals.frameBytes,
      'bytes',
      'totals.frameBytes',
    ),
    term('begun', 'frames begun', of.begun, 'frames', ofOnset('begun')),
  ],
  source: DEFINITION,
});

/** Workings of a run at an instant; their names begin with `onset.`. */
export const onsetWorkings = (of: OnSet): Workings => {
  const ms = nextMs(of);
  return {
    [ofOnset('toFirstS')]: () => toFirst(of),
    [ofOnset('toNextS')]: () => toNext(of),
    ...(ms !== null && { [ofOnset('nextAt')]: () => nextOpening(of, ms) }),
    ...(of.pausedMs !== null && paused(of, of.pausedMs)),
    [ofOnset('begun')]: () => begun(of),
    [ofOnset('frames')]: () => frames(of),
    [ofOnset('left')]: () => left(of),
    [ofOnset('percent')]: () => percent(of),
    [ofOnset('endAt')]: () => endOf('End', of.plan, of.last),
    [ofOnset('doneAt')]: () => doneAt(of),
    [ofOnset('lateS')]: () => late(of),
    [ofOnset('bytes')]: () => bytes(of),
    ...(of.outcome && outcomeWorkings(of, of.outcome)),
    ...todoWorkings(of),
  };
};

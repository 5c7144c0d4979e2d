/**
 * How the figures of a run that is being shot came about.
 *
 * They depend on the present and on what has happened, which no plan knows: whoever asks says both. Frames are those of
 * the whole run, names of other figures those of the stretch under way.
 */

import type { Plan } from '../plan/schema.ts';
import {
  type Moment as At,
  betweenDraft,
  laterDraft,
  momentDraft,
  secondsPart,
} from '../time/moment-working.ts';
import { parseRate, toNumber } from '../time/ratio.ts';
import { DEFINITION, type Draft, sameAs, term, type Workings } from '../working/make.ts';
import { ofOnset } from '../working/names.ts';
import type { Outcome } from './outcome.ts';
import type { Instant } from './state.ts';
import { framesUpTo, lastOpensMs, madeOf, opensMs, type Stretch } from './stretch.ts';
import type { Moment } from './todo.ts';

/** One thing that is done before the first frame; milliseconds of the epoch. */
export interface StepBefore {
  name: string;
  fromMs: number;
  toMs: number;
}

/** A run at an instant. Times are milliseconds of the epoch by the run's own clock. */
export interface OnSet {
  /** The plan with which it began. */
  plan: Plan;
  nowMs: number;
  /** Since when it is paused; null if it is not. */
  pausedMs: number | null;
  /** The stretch under way; before the first frame the one that is planned. */
  stretch: Stretch;
  /** The stretch planned last, and the first as it was planned. */
  last: Stretch;
  planned: Stretch;
  instant: Instant;
  /** Frames of the whole run that have been begun, and that it has. */
  begun: number;
  frames: number;
  moments: readonly Moment[];
  stepsBefore: readonly StepBefore[];
  /** What the run would become, if that is asked for: its figures, and the frames lost so far. */
  outcome?: Pick<Outcome, 'stretch' | 'now'> & { lost: number };
}

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

const framesDraft = (title: string, value: number, before: number, words: string, own: number): Draft => ({
  title,
  value,
  unit: 'frames',
  expression: before === 0 ? 'own' : 'before + own',
  terms: [
    ...(before === 0 ? [] : [term('before', 'frames of what was shot before', before, 'frames')]),
    term('own', words, own, 'frames'),
  ],
  source: DEFINITION,
});

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

/** The opening of the last frame of a stretch, from that of its first. */
function endOf(title: string, { place }: Plan, stretch: Stretch): Draft {
  const made = madeOf(stretch);
  const elapsedS = made.columns.elapsedS.at(-1) ?? 0;
  return {
    ...laterDraft(
      title,
      place,
      { ms: stretch.startMs, figure: null, words: `frame ${stretch.framesBefore + 1} opens` },
      lastOpensMs(stretch),
      [secondsPart('elapsedS', 'intervals from there to the last frame', elapsedS)],
      'rounding to whole milliseconds',
    ),
    remarks: [`Opening of frame ${framesUpTo(stretch)}, the last.`],
  };
}

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

function momentWorkings(of: OnSet, moment: Moment): Workings {
  const { place } = of.plan;
  const { key, text, atMs } = moment;
  const at = ofOnset(`moment.${key}.at`);
  const beginning = of.last.framesBefore < moment.frame ? of.last : of.stretch;
  const made = madeOf(beginning);
  const index = moment.frame - beginning.framesBefore - 1;
  const opens = index >= 0 && Math.abs(opensMs(made, index) - atMs) <= 1;
  const clock = (): Draft =>
    opens
      ? {
          ...laterDraft(
            text,
            place,
            { ms: beginning.startMs, figure: null, words: `frame ${beginning.framesBefore + 1} opens` },
            atMs,
            [
              secondsPart(
                'elapsedS',
                `intervals to frame ${moment.frame}`,
                made.columns.elapsedS[index] ?? 0,
              ),
            ],
            'rounding to whole milliseconds',
          ),
          remarks: [`At the opening of frame ${moment.frame}.`],
        }
      : momentDraft(text, place, atMs, { remarks: [`In the course of frame ${moment.frame}.`] });
  const inS = (): Draft => {
    const then: At = { ms: atMs, figure: at, words: text };
    return atMs >= of.nowMs
      ? betweenDraft(`${text}, in`, place, now(of), then)
      : betweenDraft(`${text}, was due`, place, then, now(of));
  };
  return { [at]: clock, [ofOnset(`moment.${key}.inS`)]: inS };
}

/** When a step before the first frame begins: that far before it. */
function step(of: OnSet, n: number): Draft {
  const { stepsBefore, plan, stretch } = of;
  const own = stepsBefore[n] as StepBefore;
  const minutes = stepsBefore.slice(n).map(({ name, fromMs, toMs }, i) => ({
    text: ` - 60 * step${i + 1}Min`,
    term: term(`step${i + 1}Min`, name, (toMs - fromMs) / 60_000, 'min'),
  }));
  return laterDraft(
    own.name,
    plan.place,
    { ms: stretch.startMs, figure: null, words: 'first frame' },
    own.fromMs,
    minutes,
    'rounding to whole milliseconds',
  );
}

/** What the run would become. */
function outcomeWorkings(
  { plan }: OnSet,
  { stretch, now: then, lost }: NonNullable<OnSet['outcome']>,
): Workings {
  const { holdFrames, handlesFrames, frameRate } = plan.clip;
  const own = madeOf(stretch).totals.frames;
  const frames = (): Draft =>
    framesDraft('Frames then', then.frames, stretch.framesBefore, 'frames planned from there', own);
  const clip = (): Draft => ({
    title: 'Clip then',
    value: then.clipS,
    unit: 's',
    expression: 'max(0, (frames - lost) * holdFrames - 2 * handlesFrames) / frameRate',
    terms: [
      term('frames', 'frames then', then.frames, 'frames', ofOnset('then.frames')),
      term('lost', 'frames lost', lost, 'frames'),
      term('holdFrames', 'frames that an exposure is held for', holdFrames, 'frames'),
      term('handlesFrames', 'frames of a handle', handlesFrames, 'frames'),
      term('frameRate', 'frame rate', toNumber(parseRate(frameRate)), 'fps'),
    ],
    remarks: ['Screen time, handles and lost frames left out.'],
    source: DEFINITION,
  });
  const dial = (): Draft =>
    sameAs('Trigger then', 'what to set on the trigger', then.dialS, 's', null, {
      remarks: [`An interval of ${then.intervalS} s from frame ${stretch.framesBefore + 1} on.`],
    });
  return {
    [ofOnset('then.frames')]: frames,
    [ofOnset('then.clipS')]: clip,
    [ofOnset('then.endAt')]: () => endOf('End then', plan, stretch),
    [ofOnset('then.dialS')]: dial,
  };
}

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
    [ofOnset('lateS')]: () => late(of),
    [ofOnset('bytes')]: () => bytes(of),
    ...(of.outcome && outcomeWorkings(of, of.outcome)),
    ...Object.assign({}, ...of.moments.map((moment) => momentWorkings(of, moment))),
    ...Object.fromEntries(of.stepsBefore.map((_, n) => [ofOnset(`step.${n + 1}.at`), () => step(of, n)])),
  };
};

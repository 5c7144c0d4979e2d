/** How the end of a run came about, as it is planned and as it would become. */
import type { Plan } from '../plan/schema.ts';
import { laterDraft, secondsPart } from '../time/moment-working.ts';
import { parseRate, toNumber } from '../time/ratio.ts';
import { DEFINITION, type Draft, sameAs, term, type Workings } from '../working/make.ts';
import { ofOnset } from '../working/names.ts';
import type { OnSet } from './on-set.ts';
import { framesUpTo, lastOpensMs, madeOf, type Stretch } from './stretch.ts';

/** Frames of what was shot before, and of the rest. */
export const framesDraft = (
  title: string,
  value: number,
  before: number,
  words: string,
  own: number,
): Draft => ({
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

/** The opening of the last frame of a stretch, from that of its first. */
export function endOf(title: string, { place }: Plan, stretch: Stretch): Draft {
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

/** What the run would become. */
export function outcomeWorkings(
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

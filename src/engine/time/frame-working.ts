/** When one frame is shot, and where it stands in the clip: how both came about. */
import {
  DEFINITION,
  type Draft,
  ofFrame,
  sameAs,
  term,
  type Worked,
  type Workings,
} from '../working/make.ts';
import { clockSeconds, laterDraft, secondsPart } from './moment-working.ts';
import { parseRate, toNumber } from './ratio.ts';

/** The local clock at which its shutter opens: the run's start, and the intervals since. */
function clock({ plan, made: { startMs, columns } }: Worked, k: number): Draft {
  const elapsedS = columns.elapsedS[k] as number;
  // Milliseconds of the epoch leave no digits for less than one: that is added to the clock itself.
  const wholeMs = Math.round(startMs + elapsedS * 1000);
  return {
    ...laterDraft(
      'Clock',
      plan.place,
      { ms: startMs, figure: 'totals.firstFrameAt', words: 'first frame' },
      wholeMs,
      [secondsPart('elapsedS', 'since the first frame', elapsedS, ofFrame(k, 'elapsedS'))],
    ),
    value: clockSeconds(plan.place, wholeMs) + (elapsedS - (wholeMs - startMs) / 1000),
  };
}

/** Seconds from the head of the clip, without its handles: before it below zero. */
function inClip({ plan }: Worked, k: number): Draft {
  const { frameRate, holdFrames, handlesFrames } = plan.clip;
  const rate = toNumber(parseRate(frameRate));
  const title = 'In the clip';
  if (k === 0 && handlesFrames === 0) return sameAs(title, 'the clip begins with it', 0, 's', null);
  return {
    title,
    unit: 's',
    expression: '(before * holdFrames - handlesFrames) / frameRate',
    terms: [
      term('before', 'frames shot before it', k, 'frames'),
      term('holdFrames', 'frames of the clip that each is held for', holdFrames, 'frames'),
      term('handlesFrames', 'handle at the head', handlesFrames, 'frames'),
      term('frameRate', 'frame rate', rate, 'fps', 'totals.frameRate'),
    ],
    remarks: ['Below zero it lies in the handle at the head.'],
    source: DEFINITION,
  };
}

/** Workings of the time of one frame, counted from 0. */
export const frameTimeWorkings = (of: Worked, k: number): Workings => ({
  clock: () => clock(of, k),
  clipS: () => inClip(of, k),
});

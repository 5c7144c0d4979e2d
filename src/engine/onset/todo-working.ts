/** How the clock of what is to be done came about: in the course of a run, and before its first frame. */
import { frameLostWorkings } from '../cycle/lost-working.ts';
import type { Plan } from '../plan/schema.ts';
import type { Schedule } from '../schedule-types.ts';
import {
  type Moment as At,
  betweenDraft,
  laterDraft,
  momentDraft,
  secondsPart,
} from '../time/moment-working.ts';
import { type Draft, term, type Workings } from '../working/make.ts';
import { ofOnset } from '../working/names.ts';
import type { OnSet, StepBefore } from './on-set.ts';
import { madeOf, opensMs } from './stretch.ts';
import type { Moment } from './todo.ts';

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
      ? betweenDraft(`${text}, in`, place, { ms: of.nowMs, figure: null, words: 'now' }, then)
      : betweenDraft(`${text}, was due`, place, then, { ms: of.nowMs, figure: null, words: 'now' });
  };
  const lost = lostDraft(beginning.plan, made, index, moment);
  return {
    [at]: clock,
    [ofOnset(`moment.${key}.inS`)]: inS,
    ...(lost && { [ofOnset(`moment.${key}.lost`)]: lost }),
  };
}

/** How the frames that work by hand loses came about; of a stretch, so that none of its numbers leads on. */
function lostDraft(
  plan: Plan,
  made: Schedule,
  index: number,
  { kind, text, lostFrames }: Moment,
): (() => Draft) | null {
  const workings = lostFrames > 0 ? Object.entries(frameLostWorkings({ plan, made }, index)) : [];
  const ofKind = `lost.${kind}`;
  const [, draft] =
    workings.find(([what]) =>
      kind === 'swap'
        ? text.toLowerCase().startsWith(`${what.slice(ofKind.length + 1).toLowerCase()}: `)
        : what === ofKind,
    ) ?? [];
  if (!draft) return null;
  return () => {
    const own = draft();
    return { ...own, terms: own.terms.map((each) => ({ ...each, figure: null })) };
  };
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

/** Workings of what is to be done. */
export const todoWorkings = (of: OnSet): Workings => ({
  ...Object.assign({}, ...of.moments.map((moment) => momentWorkings(of, moment))),
  ...Object.fromEntries(of.stepsBefore.map((_, n) => [ofOnset(`step.${n + 1}.at`), () => step(of, n)])),
});

/** What a run becomes when the rest is planned again: said before it is accepted. */
import { type Finding, keyOf } from '../findings/types.ts';
import type { Plan } from '../plan/schema.ts';
import { parseRate, toNumber } from '../time/ratio.ts';
import { type Happened, KEEPS, type Keep, replanned } from './rest.ts';
import { framesUpTo, lastOpensMs, madeOf, opensMs, type Stretch } from './stretch.ts';

/** The figures of a whole run. */
export interface Figures {
  /** Frames, those that were lost included. */
  frames: number;
  /** Screen time without handles, seconds, lost frames left out. */
  clipS: number;
  /** Opening of the last frame, milliseconds of the epoch. */
  endMs: number;
  /** Interval of the stretch under way, and what to set on the trigger, seconds. */
  intervalS: number;
  dialS: number;
}

/** Figures with the rest planned again, and the findings that this brings and takes away, worst first. */
export interface Outcome {
  stretch: Stretch;
  now: Figures;
  before: Figures;
  came: Finding[];
  went: Finding[];
  /** The rest as it was planned, of which the latter are; null if it cannot be had. */
  restWas: Stretch | null;
}

/** One thing that can be kept, and what follows; or why it cannot. */
export type Option = { keep: Keep } & (Outcome | { why: string });

/** What a run has come to. */
export interface Given {
  /** The plan with which the run began: its handles count for the whole clip. */
  plan: Plan;
  /** The stretch under way. */
  of: Stretch;
  /** The same as it was planned: what the options are compared with. */
  was: Stretch;
  /** Frames lost so far, those to be made up for included. */
  lost: number;
  happened: Happened;
}

/** The figures of a run that ends with a stretch. */
export function figuresOf(plan: Plan, last: Stretch, lost: number): Figures {
  const { handlesFrames, holdFrames, frameRate } = plan.clip;
  const { intervalS, dialS } = madeOf(last).totals;
  const frames = framesUpTo(last);
  const clipFrames = (frames - lost) * holdFrames - 2 * handlesFrames;
  const clipS = Math.max(0, clipFrames / toNumber(parseRate(frameRate)));
  return { frames, clipS, endMs: lastOpensMs(last), intervalS, dialS };
}

/** The rest as it was planned; null if it cannot be had. */
function restAsPlanned(was: Stretch, shot: number): Stretch | null {
  if (shot === 0) return was;
  const made = madeOf(was);
  const nextMs = opensMs(made, shot);
  const rest = replanned(was, { shot, nextMs, endMs: lastOpensMs(was), more: 0 }, 'clipAndInterval');
  return 'stretch' in rest ? rest.stretch : null;
}

const without = (findings: readonly Finding[], others: readonly Finding[]): Finding[] => {
  const keys = new Set(others.map((finding) => `${keyOf(finding)} ${finding.severity}`));
  return findings.filter((finding) => !keys.has(`${keyOf(finding)} ${finding.severity}`));
};

/** What a run becomes with a stretch in place of what is left of it. */
export function outcomeOf({ plan, was, lost, happened }: Given, stretch: Stretch): Outcome {
  const restWas = restAsPlanned(was, happened.shot);
  const found = restWas ? madeOf(restWas).findings : [];
  const { findings } = madeOf(stretch);
  return {
    stretch,
    now: figuresOf(plan, stretch, lost),
    before: figuresOf(plan, was, lost - happened.more),
    came: without(findings, found),
    went: without(found, findings),
    restWas,
  };
}

/** Every way to go on, in the order of {@link KEEPS}. */
export const optionsOf = (given: Given): Option[] =>
  KEEPS.map((keep): Option => {
    const rest = replanned(given.of, given.happened, keep);
    return 'why' in rest ? { keep, why: rest.why } : { keep, ...outcomeOf(given, rest.stretch) };
  });

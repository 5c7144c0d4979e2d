/** Edits of the pacing strip: which figure is worked out, and what happens when one types into it. */
import { paceOf } from '../../engine/pacing/pacing.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import { decimalRatio, floor, over, parseRate, times } from '../../engine/time/ratio.ts';

/** The three figures of which one is worked out. */
export type Free = Plan['pacing']['workedOut'];

const FIELD = { event: 'eventS', interval: 'intervalS', clip: 'clipLengthS' } as const;

const SHORTEST_S = 0.01;

/**
 * Clip length that makes just so many frames, seconds.
 *
 * Rounded down to a microsecond where the rate has no exact decimal, so that counting up gives `frames` again.
 */
export function clipLengthFor(plan: Plan, frames: number): number {
  const { frameRate, handlesFrames, holdFrames } = plan.clip;
  const clipFrames = Math.max(0, frames * holdFrames - 2 * handlesFrames);
  const exact = over(times(decimalRatio(clipFrames), decimalRatio(1_000_000)), parseRate(frameRate));
  return Math.max(SHORTEST_S, Number(floor(exact)) / 1_000_000);
}

/** What each of the three figures is now, whether typed or worked out. */
export function paceFigures(plan: Plan): Record<Free, number> {
  const pace = paceOf(plan);
  const { workedOut, eventS, clipLengthS } = plan.pacing;
  return {
    event: workedOut === 'event' ? Math.max(SHORTEST_S, pace.eventDurationS) : eventS,
    interval: Math.max(SHORTEST_S, pace.intervalS),
    clip: workedOut === 'clip' ? clipLengthFor(plan, pace.frames) : clipLengthS,
  };
}

/** Makes one figure the worked-out one; the old one keeps its value and becomes the user's. */
export function workOut(plan: Plan, figure: Free): Plan {
  const old = plan.pacing.workedOut;
  if (old === figure) return plan;
  const pacing = { ...plan.pacing, workedOut: figure, [FIELD[old]]: paceFigures(plan)[old] };
  return { ...plan, pacing };
}

/** What is worked out instead, when someone types into the worked-out figure and no other was before. */
const otherThan = (figure: Free): Free => (figure === 'interval' ? 'clip' : 'interval');

/**
 * Puts a typed value into one of the three figures.
 * @param before - the figure that was worked out before the present one, if any
 */
export function typeFigure(plan: Plan, figure: Free, seconds: number, before: Free | null): Plan {
  const next = before !== null && before !== figure ? before : otherThan(figure);
  const base = plan.pacing.workedOut === figure ? workOut(plan, next) : plan;
  return { ...base, pacing: { ...base.pacing, [FIELD[figure]]: seconds } };
}

/** Path of a figure's field in the plan. */
export const figurePath = (figure: Free): string => `pacing.${FIELD[figure]}`;

/** Name of the frames figure, as draft and as gesture. */
export const FRAMES = 'pacing.frames';

/** Path of the frame rate. */
export const RATE = 'clip.frameRate';

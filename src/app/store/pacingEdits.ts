/** The pacing strip's edits, bound to the store: they know which figure was worked out before. */

import { setAt } from '../../engine/plan/paths.ts';
import { enterText, faultsText, readField } from '../fields/entry.ts';
import type { Codec } from '../format/allowed.ts';
import { durationText, readDuration } from '../format/durations.ts';
import { readNumber } from '../format/numbers.ts';
import { COMMON_RATES, readRate } from '../format/rate.ts';
import { infoAt } from './infos.ts';
import {
  clipLengthFor,
  FRAMES,
  type Free,
  figurePath,
  paceFigures,
  RATE,
  typeFigure,
  workOut,
} from './pacing.ts';
import { change, currentPlan, endGesture, planStore } from './plan.ts';

let before: Free | null = null;
planStore.subscribe(({ plan }, { plan: old }) => {
  if (plan.pacing.workedOut !== old.pacing.workedOut) before = old.pacing.workedOut;
});

const seconds: Codec = {
  text: (value) => durationText(value),
  unit: () => '',
  read: readDuration,
  kind: 'a length of time',
};

/** Puts seconds into a figure. @returns why they do not fit, or null */
export function enterFigure(figure: Free, value: number, gesture = figurePath(figure)): string | null {
  const next = typeFigure(currentPlan(), figure, value, before);
  return faultsText(change(next, gesture), figurePath(figure));
}

/** Puts typed text into a figure. @returns why it does not fit, or null */
export function typeSeconds(figure: Free, text: string): string | null {
  const read = readField(text, infoAt(figurePath(figure)), seconds, 0);
  return 'error' in read ? read.error : enterFigure(figure, read.value ?? 0);
}

/** Sets the clip to a number of frames to shoot. */
export function typeFrames(text: string): string | null {
  const frames = readNumber(text);
  if (frames === null || !Number.isInteger(frames) || frames < 1)
    return 'Allowed: a whole number, 1 or more.';
  return enterFigure('clip', clipLengthFor(currentPlan(), frames), FRAMES);
}

/** Puts a typed frame rate in. @returns why it does not fit, or null */
export const typeRate = (text: string): string | null =>
  enterText(RATE, readRate(text), (plan, rate) => setAt(plan, RATE, rate));

/** Goes to the next or the last of the common frame rates. */
export function stepRate(rate: string, steps: number): string | null {
  const at = COMMON_RATES.indexOf(rate);
  const next = Math.min(COMMON_RATES.length - 1, Math.max(0, at + Math.sign(steps)));
  return typeRate(COMMON_RATES[next] ?? rate);
}

/** Makes a figure the worked-out one, as a step of its own. */
export function chooseWorkedOut(figure: Free): void {
  endGesture();
  change(workOut(currentPlan(), figure));
}

/** The next value of a figure when it is stepped. */
function steppedFigure(figure: Free, steps: number): number {
  const plan = currentPlan();
  const { minimum = 0.01, maximum = Number.POSITIVE_INFINITY, step = 1 } = infoAt(figurePath(figure));
  const by = figure === 'interval' ? plan.trigger.stepS : step;
  const next = Number((paceFigures(plan)[figure] + steps * by).toFixed(9));
  return Math.min(maximum, Math.max(minimum, next));
}

/** Steps a figure. @returns why it does not fit, or null */
export const stepFigure = (figure: Free, steps: number): string | null =>
  enterFigure(figure, steppedFigure(figure, steps));

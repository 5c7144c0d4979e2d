/** The rows of the interval ladder as they are read. */
import type { Finding } from '../../engine/findings/types.ts';
import type { LadderRow } from '../../engine/fixes/interval-ladder.ts';
import { clockOf, daysBetween } from '../format/clock.ts';
import { durationText } from '../format/durations.ts';
import { MINUS, plural } from '../format/numbers.ts';

/** `cycle overrun`, `travel: Boom`, `ramp step idle: step 3`: what a finding is about, in a few words. */
export function shortFinding({ id, about }: Pick<Finding, 'id' | 'about'>): string {
  const words = id.replaceAll('-', ' ');
  if (about === null) return words;
  return `${words}: ${/^\d+$/.test(about) ? `step ${about}` : about}`;
}

/** Settings at the first frame, and at the last where they are others. */
export function exposureLines({ exposureFirst, exposureLast }: LadderRow): string[] {
  if (exposureFirst === null) return ['–'];
  if (exposureLast === null || exposureFirst === exposureLast) return [exposureFirst];
  return [exposureFirst, `to ${exposureLast}`];
}

/** Clock of the last frame, with the days gone by since the run's first. */
export function endText({ lastFrameAt }: LadderRow, firstFrameAt: string): string {
  const days = daysBetween(firstFrameAt, lastFrameAt);
  return days > 0 ? `${clockOf(lastFrameAt)} +${plural(days, 'day')}` : clockOf(lastFrameAt);
}

/** What is to be set on the trigger, and the interval where it is another. */
export function settingText({ dialS, intervalS }: LadderRow): { dial: string; interval: string } {
  const dial = durationText(dialS, 3);
  const interval = durationText(intervalS, 3);
  return { dial, interval: interval === dial ? '' : interval };
}

/** A length of time that may be missing. */
export const signedDuration = (seconds: number): string =>
  `${seconds < 0 ? MINUS : ''}${durationText(Math.abs(seconds))}`;

/** Row that a key leads to; null for any other key. */
export function rowAfterKey(key: string, row: number, rows: number): number | null {
  const to = { ArrowDown: row + 1, ArrowUp: row - 1, Home: 0, End: rows - 1 }[key];
  return to === undefined ? null : Math.max(0, Math.min(rows - 1, to));
}

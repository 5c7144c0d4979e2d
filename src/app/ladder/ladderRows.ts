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

/** Settings at the first frame, and at the last where they are others; with the frame, counted from 1. */
export function exposureLines({
  exposureFirst,
  exposureLast,
  frames,
}: Pick<LadderRow, 'exposureFirst' | 'exposureLast' | 'frames'>): { text: string; frame: number | null }[] {
  if (exposureFirst === null) return [{ text: '–', frame: null }];
  const first = { text: exposureFirst, frame: 1 };
  if (exposureLast === null || exposureFirst === exposureLast) return [first];
  return [first, { text: `to ${exposureLast}`, frame: frames }];
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

/** A button of the table: its row, and its place in that. */
export interface ButtonAt {
  row: number;
  button: number;
}

/**
 * Button that a key leads to: a row's setting is its first, the figures come after it. Up and down keep to the column.
 * @param counts - how many buttons each row has
 * @returns null for any other key
 */
export function buttonAfterKey(
  key: string,
  { row, button }: ButtonAt,
  counts: readonly number[],
): ButtonAt | null {
  const to = {
    ArrowDown: { row: row + 1, button },
    ArrowUp: { row: row - 1, button },
    ArrowRight: { row, button: button + 1 },
    ArrowLeft: { row, button: button - 1 },
    Home: { row: 0, button },
    End: { row: counts.length - 1, button },
  }[key];
  if (to === undefined) return null;
  const inRow = Math.max(0, Math.min(counts.length - 1, to.row));
  return { row: inRow, button: Math.max(0, Math.min((counts[inRow] ?? 1) - 1, to.button)) };
}

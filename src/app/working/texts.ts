/** Values of workings as the page writes them. */
import type { Schedule } from '../../engine/schedule-types.ts';
import { readable, type Term, type Working } from '../../engine/working/working.ts';
import { bytesText } from '../format/bytes.ts';
import { clockOf, dateOf } from '../format/clock.ts';

const SECONDS_OF_DAY = {
  'totals.firstFrameAt': 'firstFrameAt',
  'totals.lastFrameAt': 'lastFrameAt',
} as const;

const isOfDay = (figure: string | null): figure is keyof typeof SECONDS_OF_DAY =>
  figure !== null && Object.hasOwn(SECONDS_OF_DAY, figure);

/** Days, hours and minutes say more than their seconds from here on. */
const LONG_S = 120;
const MEGABYTE = 1e6;

/** What a large value is in the unit that one thinks in; nothing for others. */
function largeText(value: number, unit: string): string {
  if (unit === 'bytes' && value >= MEGABYTE) return bytesText(value);
  if (unit !== 's' || Math.abs(value) < LONG_S) return '';
  const seconds = Math.abs(value);
  const two = (part: number) => String(Math.floor(part)).padStart(2, '0');
  return `${value < 0 ? '\u2212' : ''}${Math.floor(seconds / 3600)}:${two((seconds / 60) % 60)}:${two(seconds % 60)}`;
}

/**
 * A value with its unit; beside it, where it is large, what people call it.
 * @param schedule - for a moment, which the page writes by the clock
 */
export function valueText(
  of: Pick<Working | Term, 'value' | 'unit' | 'figure'>,
  schedule?: Schedule,
): string {
  const { value, unit, figure } = of;
  if (schedule && isOfDay(figure)) {
    const iso = schedule.totals[SECONDS_OF_DAY[figure]];
    return `${clockOf(iso)}, ${dateOf(iso)}`;
  }
  const large = largeText(value, unit);
  const text = readable(value, unit);
  return large === '' || large === text ? text : `${text} (${large})`;
}

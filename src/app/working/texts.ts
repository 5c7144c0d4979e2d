/** Values of workings as the page writes them. */
import { readable, type Term, type Working } from '../../engine/working/working.ts';
import { bytesText } from '../format/bytes.ts';
import { clockOf, dateOf } from '../format/clock.ts';

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

const MOMENT = /^\d{4}-\d\d-\d\dT/;

/** What people write in place of a number: clock and date of a moment, a timecode as it is. */
const labelText = (label: string): string =>
  MOMENT.test(label) ? `${clockOf(label)}, ${dateOf(label)}` : label;

/** A value with its unit; beside it, where it is large, what people call it. */
export function valueText({
  value,
  unit,
  label,
}: Pick<Term, 'value' | 'unit'> & Partial<Pick<Working, 'label'>>): string {
  if (label) return labelText(label);
  const large = largeText(value, unit);
  const text = readable(value, unit);
  return large === '' || large === text ? text : `${text} (${large})`;
}

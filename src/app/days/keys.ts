/** Keys that go from day to day of a year. */

interface Pressed {
  key: string;
  altKey: boolean;
  ctrlKey: boolean;
  metaKey: boolean;
}

const DAYS: Readonly<Record<string, number>> = { ArrowLeft: -1, ArrowRight: 1, ArrowUp: -7, ArrowDown: 7 };
const MONTHS: Readonly<Record<string, number>> = { PageUp: -1, PageDown: 1 };

/** The same day of another month, or that month's last. */
export function dayInMonth(starts: readonly number[], day: number, by: number): number {
  const month = starts.findIndex((start) => start > day) - 1;
  const to = Math.max(0, Math.min(11, month + by));
  const [first, end] = [starts[to] as number, starts[to + 1] as number];
  return Math.min(first + day - (starts[month] as number), end - 1);
}

/**
 * Where a key leads, within the year.
 * @param starts - place in the year of the first day of each month, and of the end
 * @returns null if the key leads nowhere
 */
export function afterKey(pressed: Pressed, day: number, starts: readonly number[]): number | null {
  const { key, altKey, ctrlKey, metaKey } = pressed;
  if (altKey || ctrlKey || metaKey) return null;
  const last = (starts.at(-1) as number) - 1;
  if (key === 'Home') return 0;
  if (key === 'End') return last;
  const months = MONTHS[key];
  if (months !== undefined) return dayInMonth(starts, day, months);
  const days = DAYS[key];
  return days === undefined ? null : Math.max(0, Math.min(last, day + days));
}

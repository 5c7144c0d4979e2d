/** Numbers as they stand in a sentence: short, with their unit behind a no-break space, a true minus sign. */

const NO_BREAK = '\u00A0';
const MINUS = '\u2212';

const plain = (value: number, decimals: number): string => {
  const fixed = value.toFixed(decimals);
  const trimmed = decimals > 0 ? fixed.replace(/\.?0+$/, '') : fixed;
  return trimmed === '-0' ? '0' : trimmed.replace('-', MINUS);
};

/** A number to at most three decimals, fewer where it is large. */
export function figure(value: number): string {
  const size = Math.abs(value);
  if (size !== 0 && size < 0.001)
    return value.toExponential(1).replace('e-', `${NO_BREAK}×${NO_BREAK}10^${MINUS}`);
  return plain(value, size < 1 ? 3 : size < 100 ? 2 : size < 1000 ? 1 : 0);
}

/** A number with its unit; degrees carry their sign without a space. */
export const withUnit = (value: number, unit: string): string =>
  unit.startsWith('deg')
    ? `${figure(value)}${unit.replace('deg', '°')}`
    : `${figure(value)}${NO_BREAK}${unit}`;

/** Seconds below two minutes with decimals, longer as h:mm:ss. */
export function seconds(valueS: number): string {
  if (Math.abs(valueS) < 120) return withUnit(valueS, 's');
  const whole = Math.round(Math.abs(valueS));
  const two = (value: number) => String(value).padStart(2, '0');
  const text = `${Math.floor(whole / 3600)}:${two(Math.floor(whole / 60) % 60)}:${two(whole % 60)}`;
  return valueS < 0 ? `${MINUS}${text}` : text;
}

/** Bytes in decimal units: 42 MB, 64 GB. */
export function bytes(value: number): string {
  const units = ['bytes', 'kB', 'MB', 'GB', 'TB', 'PB'];
  let size = value;
  let unit = 0;
  while (Math.abs(size) >= 1000 && unit < units.length - 1) {
    size /= 1000;
    unit += 1;
  }
  return `${plain(size, size < 100 ? 1 : 0)}${NO_BREAK}${units[unit]}`;
}

/** A share as a percentage. */
export const percent = (share: number): string => `${plain(share * 100, share < 0.1 ? 1 : 0)}${NO_BREAK}%`;

/** A count with its noun: 1 frame, 3 frames. */
export const counted = (count: number, noun: string): string =>
  `${count}${NO_BREAK}${noun}${count === 1 ? '' : 's'}`;

/** The first sentence of a message, without its full stop. */
export const gist = (message: string): string => (message.split(/\.\s/)[0] ?? message).replace(/\.$/, '');

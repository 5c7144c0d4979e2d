/** Lengths of time as text and back. */
import { decimalsFor, NBSP, numberText, readNumber, withUnit } from './numbers.ts';

/** One number with its unit, e.g. `30` and `min`. */
export interface Part {
  number: string;
  unit: string;
}

const UNITS = [
  { unit: 'd', seconds: 86_400 },
  { unit: 'h', seconds: 3600 },
  { unit: 'min', seconds: 60 },
] as const;

/**
 * A length of time in its units: 5400 s is 1 h 30 min.
 * @param seconds - 0 or more
 * @param decimals - most digits behind the point of the seconds; by default about three digits in all
 */
export function durationParts(seconds: number, decimals = decimalsFor(seconds)): Part[] {
  const factor = 10 ** decimals;
  let rest = Math.round(seconds * factor) / factor;
  if (rest < 60) return [{ number: numberText(rest, decimals), unit: 's' }];
  const parts: Part[] = [];
  for (const { unit, seconds: size } of UNITS) {
    const whole = Math.floor(rest / size);
    if (whole > 0) parts.push({ number: String(whole), unit });
    rest -= whole * size;
  }
  const left = numberText(rest, decimals);
  if (left !== '0') parts.push({ number: left, unit: 's' });
  return parts;
}

/** A length of time in one line: `1 h 30 min`, `0.5 s`. */
export const durationText = (seconds: number, decimals?: number): string =>
  durationParts(seconds, decimals)
    .map((part) => withUnit(part.number, part.unit))
    .join(NBSP);

/** A least time, rounded up: rounded down it would not be enough. */
export function atLeastText(seconds: number): string {
  const factor = 10 ** decimalsFor(seconds);
  return durationText(Math.ceil(seconds * factor - 1e-6) / factor);
}

/** A length of time with all its digits, for editing. */
export const exactDuration = (seconds: number): string => durationText(seconds, 6);

/** Hours, minutes and seconds with colons: `1:29:50`; parts of a second are dropped. */
export function colonText(seconds: number): string {
  const whole = Math.floor(seconds + 1e-9);
  const two = (value: number) => String(value).padStart(2, '0');
  return `${Math.floor(whole / 3600)}:${two(Math.floor(whole / 60) % 60)}:${two(whole % 60)}`;
}

const SECONDS_IN: Readonly<Record<string, number>> = {
  d: 86_400,
  day: 86_400,
  days: 86_400,
  h: 3600,
  hr: 3600,
  hrs: 3600,
  hour: 3600,
  hours: 3600,
  m: 60,
  min: 60,
  mins: 60,
  minute: 60,
  minutes: 60,
  s: 1,
  sec: 1,
  secs: 1,
  second: 1,
  seconds: 1,
  ms: 0.001,
};

// '1:30' is a minute and a half, as on a stop watch; hours need all three parts.
function readColons(text: string): number | null {
  const match = /^(?:(\d+):)?(\d+):(\d{1,2}(?:[.,]\d+)?)$/.exec(text);
  if (!match) return null;
  const [, hours, minutes = '', seconds = ''] = match;
  const s = Number(seconds.replace(',', '.'));
  if (s >= 60 || (hours !== undefined && Number(minutes) >= 60)) return null;
  return Number(hours ?? 0) * 3600 + Number(minutes) * 60 + s;
}

const PIECE = /^([\d.,]+(?:\/[\d.,]+)?)([a-z]*)/;

// A bare number behind a unit counts the next smaller one: '1h30' has 30 minutes.
const nextSmaller = (unitS: number): number | undefined =>
  unitS === 86_400 ? 3600 : unitS === 3600 ? 60 : unitS === 60 ? 1 : undefined;

/**
 * Reads a length of time: `14`, `2,5`, `1/15`, `40 min`, `1h30`, `90m`, `1:30:00`, `1 h 29 min 50 s`.
 * @returns seconds, or null if the text is no length of time
 */
export function readDuration(text: string): number | null {
  let rest = text.trim().toLowerCase().replace(/\s/g, '');
  if (rest.includes(':')) return readColons(rest);
  let totalS = 0;
  let before = Number.POSITIVE_INFINITY;
  if (rest === '') return null;
  while (rest !== '') {
    const [all, number = '', unit = ''] = PIECE.exec(rest) ?? [];
    const value = readNumber(number);
    const unitS =
      unit === '' ? (before === Number.POSITIVE_INFINITY ? 1 : nextSmaller(before)) : SECONDS_IN[unit];
    if (all === undefined || value === null || unitS === undefined || unitS >= before) return null;
    totalS += value * unitS;
    before = unitS;
    rest = rest.slice(all.length);
  }
  // Thousandths of a microsecond would only come from adding up binary fractions.
  return text.includes('/') ? totalS : Number(totalS.toFixed(9));
}

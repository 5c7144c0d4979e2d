/** What is measured beside the rig, read as it is typed, and what follows from it. */
import { dampingFromSwings, frequencyFromSag, frequencyFromSwings } from '../../engine/ringing/measure.ts';
import { allowedText, type Codec } from '../format/allowed.ts';
import { numberText } from '../format/numbers.ts';
import { codecOf } from '../format/quantity.ts';

/** One thing to type: what it is called, and what it can be. */
export interface Entry {
  label: string;
  unit: string;
  minimum: number;
  maximum: number;
  whole?: boolean;
}

export const SAG: Entry = { label: 'Sinks by', unit: 'mm', minimum: 0.001, maximum: 1000 };
export const FIRST: Entry = { label: 'First swing', unit: 'mm', minimum: 0.001, maximum: 100_000 };
export const LATER: Entry = { label: 'Later swing', unit: 'mm', minimum: 0.001, maximum: 100_000 };
export const BETWEEN: Entry = { label: 'Swings between', unit: '', minimum: 0.5, maximum: 10_000 };
export const COUNTED: Entry = { label: 'Swings counted', unit: '', minimum: 0.5, maximum: 10_000 };
export const SECONDS: Entry = { label: 'Took', unit: 's', minimum: 0.01, maximum: 3600 };
export const FRAMES: Entry = { label: 'Frames', unit: '', minimum: 1, maximum: 10_000, whole: true };

/** A value, nothing yet, or why the text is none. */
export interface Typed {
  value: number | null;
  error: string | null;
}

const codec = ({ unit }: Entry): Codec => codecOf('', unit);

/** Reads what was typed; nothing is no error yet. */
export function readEntry(text: string, entry: Entry): Typed {
  if (text.trim() === '') return { value: null, error: null };
  const value = codec(entry).read(text, 0);
  const { minimum, maximum, whole = false } = entry;
  const allowed = allowedText(
    { title: entry.label, minimum, maximum, whole, optional: false, allowed: '' },
    codec(entry),
  );
  if (value === null || !Number.isFinite(value))
    return { value: null, error: `Not ${codec(entry).kind}. ${allowed}` };
  const fits = value >= minimum && value <= maximum && (!whole || Number.isInteger(value));
  return fits ? { value, error: null } : { value: null, error: allowed };
}

const rounded = (value: number, digits: number): number => Number(value.toPrecision(digits));

/** Natural frequency from the sag that the payload adds, Hz in four digits. */
export const sagHz = (sagMm: number): number => rounded(frequencyFromSag(sagMm), 4);

/** Natural frequency from swings counted, Hz in four digits. */
export const swingsHz = (swings: number, seconds: number): number =>
  rounded(frequencyFromSwings(swings, seconds), 4);

/** Damping ratio from a swing and a later one, in three digits. @throws RangeError if it does not die away */
export const swingsDamping = (first: number, later: number, swings: number): number =>
  rounded(dampingFromSwings(first, later, swings), 3);

/** Why two swings give no damping; null if they do. */
export const dyingError = (first: number | null, later: number | null): string | null =>
  first !== null && later !== null && later >= first
    ? `Allowed: less than ${FIRST.label}, ${numberText(first)} mm. A ring dies away.`
    : null;

/** Seconds of write a frame, to the thousandth, from a number of frames that took some time. */
export const writeSOf = (frames: number, seconds: number): number => Number((seconds / frames).toFixed(3));

/** Whole bytes a second onto the card. */
export const bytesPerSOf = (frames: number, seconds: number, frameBytes: number): number =>
  Math.round((frames * frameBytes) / seconds);

/** Full swings and seconds from a tap at each swing; null before the second tap. */
export function tapped(tapsMs: readonly number[]): { swings: number; seconds: number } | null {
  const [first, last] = [tapsMs[0], tapsMs.at(-1)];
  if (first === undefined || last === undefined || tapsMs.length < 2) return null;
  return { swings: tapsMs.length - 1, seconds: Number(((last - first) / 1000).toFixed(2)) };
}

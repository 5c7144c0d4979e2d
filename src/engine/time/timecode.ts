/**
 * SMPTE timecode of a frame, drop-frame included.
 *
 * Source: SMPTE ST 12-1 as quoted by published known pairs: at 30000/1001 the labels ;00 and ;01 are left out
 * at each minute but every tenth; at 60000/1001 four labels, at 120000/1001 eight. 24000/1001 has no
 * drop-frame. A frame is a whole number and the rate a ratio: nothing is computed from 29.97.
 */
import { ceil, parseRate } from './ratio.ts';

/** Labels counted in a second: 30 for 30000/1001. */
export const labelsPerSecond = (rate: string): number => Number(ceil(parseRate(rate)));

/** Whether the rate has drop-frame timecode: 30000/1001, 60000/1001 or 120000/1001. */
export function hasDropFrame(rate: string): boolean {
  const { num, den } = parseRate(rate);
  return [30_000n, 60_000n, 120_000n].some((labels) => num * 1001n === den * labels);
}

interface Counting {
  perSecond: number;
  /** Labels left out at a minute that is not a tenth. */
  dropped: number;
  framesPerMinute: number;
  framesPerTen: number;
}

function counting(rate: string, dropFrame: boolean): Counting {
  if (dropFrame && !hasDropFrame(rate)) {
    throw new RangeError(`drop-frame: found rate ${rate}, allowed: 30000/1001, 60000/1001, 120000/1001`);
  }
  const perSecond = labelsPerSecond(rate);
  const dropped = dropFrame ? perSecond / 15 : 0;
  const framesPerMinute = 60 * perSecond - dropped;
  return { perSecond, dropped, framesPerMinute, framesPerTen: 10 * framesPerMinute + dropped };
}

const two = (value: number) => String(value).padStart(2, '0');

/** Digits of a label's frame part: two, three where a second has more than a hundred frames. */
const frameDigits = (perSecond: number): number => (perSecond > 100 ? 3 : 2);

/**
 * Timecode labels at a rate, hours wrapping after 24.
 * @param rate - frames a second, e.g. `30000/1001`
 * @param dropFrame - by default where the rate has it
 * @returns label of a frame, a whole number from 0 at 00:00:00:00: `hh:mm:ss:ff`, or `hh:mm:ss;ff` for drop-frame. It
 *   throws a RangeError for a frame that is not a whole number from 0
 * @throws RangeError for drop-frame at a rate without it
 */
export function timecodes(rate: string, dropFrame = hasDropFrame(rate)): (frameIndex: number) => string {
  const { perSecond, dropped, framesPerMinute, framesPerTen } = counting(rate, dropFrame);
  const digits = frameDigits(perSecond);
  const sign = dropFrame ? ';' : ':';
  return (frameIndex) => {
    if (!Number.isInteger(frameIndex) || frameIndex < 0) {
      throw new RangeError(`frame: found ${frameIndex}, allowed: a whole number from 0`);
    }
    const tens = Math.floor(frameIndex / framesPerTen);
    const rest = frameIndex % framesPerTen;
    // The first minute of ten keeps all its labels; each later one begins with labels left out.
    const minutesOver = Math.max(0, Math.floor((rest - dropped) / framesPerMinute));
    const label = frameIndex + dropped * (9 * tens + minutesOver);
    const s = Math.floor(label / perSecond);
    const clock = `${two(Math.floor(s / 3600) % 24)}:${two(Math.floor(s / 60) % 60)}:${two(s % 60)}`;
    return `${clock}${sign}${String(label % perSecond).padStart(digits, '0')}`;
  };
}

/** Timecode label of one frame. See {@link timecodes}. */
export const timecode = (frameIndex: number, rate: string, dropFrame = hasDropFrame(rate)): string =>
  timecodes(rate, dropFrame)(frameIndex);

/**
 * Frame that a timecode label names.
 * @param label - `hh:mm:ss:ff`, or `hh:mm:ss;ff` for drop-frame
 * @throws RangeError if the text is no label, or names a frame that does not exist
 */
export function frameOfTimecode(label: string, rate: string): number {
  const match = /^(\d\d):([0-5]\d):([0-5]\d)([:;])(\d{2,3})$/.exec(label);
  const allowed = 'hh:mm:ss:ff, or hh:mm:ss;ff for drop-frame';
  if (!match) throw new RangeError(`timecode: found '${label}', allowed: ${allowed}`);
  const [hours = 0, minutes = 0, seconds = 0] = match.slice(1, 4).map(Number);
  const frames = Number(match[5]);
  const { perSecond, dropped } = counting(rate, match[4] === ';');
  const minute = hours * 60 + minutes;
  const missing = seconds === 0 && minute % 10 !== 0 && frames < dropped;
  const digits = match[5]?.length === frameDigits(perSecond);
  if (hours > 23 || frames >= perSecond || missing || !digits) {
    throw new RangeError(`timecode: found '${label}', which does not exist at ${rate}`);
  }
  return (minute * 60 + seconds) * perSecond + frames - dropped * (minute - Math.floor(minute / 10));
}

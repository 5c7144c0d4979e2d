/** Shutter times and f-numbers as they are marked on a camera. */
import {
  APERTURE_THIRDS,
  ISO_THIRDS,
  markSeconds,
  SHUTTER_THIRDS,
  shutterStop,
} from '../../engine/exposure/stops.ts';
import { exactDuration, readDuration } from './durations.ts';
import { numberText, withUnit } from './numbers.ts';

/** A shutter time as marked: `1/60`, `0.5`, `30`; one that no dial has with its unit, if that is not seconds. */
export function shutterMark(seconds: number): string {
  const stop = shutterStop(seconds);
  if (stop) return stop.mark;
  const parts = 1 / seconds;
  if (seconds < 0.3 && Math.abs(parts - Math.round(parts)) < 1e-6) return `1/${Math.round(parts)}`;
  return seconds < 60 ? numberText(seconds) : exactDuration(seconds);
}

/** A shutter time as marked, with its unit. */
export function shutterText(seconds: number): string {
  const mark = shutterMark(seconds);
  return /[a-z]/.test(mark) ? mark : withUnit(mark, 's');
}

/** Reads a shutter time: `1/60`, `0.5`, `2 min`. */
export const readShutter = (text: string): number | null => readDuration(text);

/** Marked shutter times in third stops, seconds, shortest first. */
export const SHUTTER_SERIES: readonly number[] = SHUTTER_THIRDS.map(({ mark }) =>
  markSeconds(mark),
).reverse();

/** Marked f-numbers in third stops, widest first. */
export const APERTURE_SERIES: readonly number[] = APERTURE_THIRDS.map(({ mark }) => Number(mark));

/** Marked ISO speeds in third stops, slowest first. */
export const ISO_SERIES: readonly number[] = ISO_THIRDS.map(({ mark }) => Number(mark));

/** The member of an ascending series that lies `steps` places above a value. */
export function stepInSeries(series: readonly number[], value: number, steps: number): number {
  const near = (a: number, b: number) => Math.abs(a / b - 1) < 1e-3;
  const at = series.findIndex((member) => near(member, value));
  const above = series.findIndex((member) => member > value);
  const from =
    at >= 0 ? at : steps > 0 ? (above < 0 ? series.length : above) - 1 : above < 0 ? series.length : above;
  return series[Math.min(series.length - 1, Math.max(0, from + steps))] ?? value;
}

/** Shutter times and f-numbers as they are marked on a camera. */
import { shutterStop } from '../../engine/exposure/stops.ts';
import { exactDuration } from './durations.ts';
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

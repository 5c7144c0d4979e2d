/** One line of facts for each folded group of Place & light, and of the camera's view. */
import type { HorizonPoint, Plan } from '../../engine/plan/schema.ts';
import { wordText } from '../fields/words.ts';
import { numberText, plural, withUnit } from '../format/numbers.ts';
import { facts } from './summary.ts';

/** `−4°`. */
export const degrees = (value: number): string => withUnit(numberText(value, 1), '°');

/** `from −6° to 3°`, `at least −6°`, or nothing. */
function rangeText(low: number | null, high: number | null): string {
  if (low !== null && high !== null) return `from ${degrees(low)} to ${degrees(high)}`;
  if (low !== null) return `at least ${degrees(low)}`;
  return high === null ? '' : `at most ${degrees(high)}`;
}

const spanText = (from: string, to: string): string =>
  from && to ? `${from} to ${to}` : from ? `not before ${from}` : to && `not after ${to}`;

export function windowText(window: Plan['window']): string {
  if (!window.used) return 'Not asked for';
  const altitude = rangeText(window.sunAltitudeMinDeg, window.sunAltitudeMaxDeg);
  const azimuth = rangeText(window.sunAzimuthFromDeg, window.sunAzimuthToDeg);
  const text = facts(
    altitude && `sun ${altitude}`,
    azimuth && `azimuth ${azimuth}`,
    spanText(window.clockFrom, window.clockTo),
    window.sunAndHorizon !== 'any' && `${window.sunAndHorizon} own horizon`,
    window.sunOnPane !== 'any' && `sun ${wordText(window.sunOnPane).toLowerCase()}`,
    window.moon !== 'any' && `moon ${wordText(window.moon).toLowerCase()}`,
  );
  return text === '' ? 'Any time will do' : wordText(text);
}

export const paneText = ({ used, facingDeg, widthMm, sillMm, headMm }: Plan['pane']): string =>
  used
    ? `Faces ${degrees(facingDeg)}, ${numberText(widthMm, 0)} × ${withUnit(numberText(headMm - sillMm, 0), 'mm')}`
    : 'None';

export const lampsText = ({ mainsHz, depthShare }: Plan['lamps']): string =>
  mainsHz === 'none'
    ? 'None on the mains'
    : `${wordText(mainsHz)}, ripple ${withUnit(numberText(depthShare * 100, 0), '%')}`;

export function viewText({ used, azimuthDeg, altitudeDeg, stars, starTrailMaxPx }: Plan['view']): string {
  const text = facts(
    used && `lens to ${degrees(azimuthDeg)}, up ${degrees(altitudeDeg)}`,
    stars && `stars trail at most ${withUnit(numberText(starTrailMaxPx), 'px')}`,
  );
  return text === '' ? 'Not watched' : wordText(text);
}

/** The highest point of a horizon. */
export const highestOf = (points: readonly HorizonPoint[]): HorizonPoint | null =>
  points.reduce<HorizonPoint | null>(
    (high, point) => (high && high.altitudeDeg >= point.altitudeDeg ? high : point),
    null,
  );

export function horizonSummary(points: readonly HorizonPoint[]): string {
  const highest = highestOf(points);
  if (!highest) return 'Level all round';
  return `${plural(points.length, 'point')}, up to ${degrees(highest.altitudeDeg)} at ${degrees(highest.azimuthDeg)}`;
}

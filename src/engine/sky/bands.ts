/**
 * The sky band: what light there is, by the sun's geometric altitude.
 *
 * The user's own golden and blue hours come first, golden before blue; then day down to sunset and the three
 * twilights of `day.ts`.
 */
import type { Plan } from '../plan/schema.ts';
import { crossings } from './crossings.ts';
import { SUNRISE_ALTITUDE_DEG, sineDeg, sineOf, turnsOf } from './day.ts';
import { type BodyPath, sunPath } from './path.ts';
import type { Span } from './spans.ts';

export type LightBand = 'day' | 'golden' | 'blue' | 'civil' | 'nautical' | 'astronomical' | 'night';

/** One colour of the sky band. */
export interface BandSpan extends Span {
  band: LightBand;
}

/** The band of an altitude of the sun. */
export function bandOf(altitudeDeg: number, sky: Plan['sky']): LightBand {
  if (altitudeDeg >= sky.goldenLowDeg && altitudeDeg < sky.goldenHighDeg) return 'golden';
  if (altitudeDeg >= sky.blueLowDeg && altitudeDeg < sky.blueHighDeg) return 'blue';
  if (altitudeDeg >= SUNRISE_ALTITUDE_DEG) return 'day';
  if (altitudeDeg >= -6) return 'civil';
  if (altitudeDeg >= -12) return 'nautical';
  return altitudeDeg >= -18 ? 'astronomical' : 'night';
}

/** The bands between two instants of a path, in order of time, without gaps. */
export function bandsOn(path: BodyPath, fromMs: number, toMs: number, sky: Plan['sky']): BandSpan[] {
  const height = sineOf(path);
  const turns = turnsOf(height, fromMs, toMs);
  const { goldenLowDeg, goldenHighDeg, blueLowDeg, blueHighDeg } = sky;
  const edges = [goldenLowDeg, goldenHighDeg, blueLowDeg, blueHighDeg, SUNRISE_ALTITUDE_DEG, -6, -12, -18];
  const levels = [...new Set(edges)];
  const cuts = levels.flatMap((deg) => crossings(height, turns, sineDeg(deg)).map(({ ms }) => ms));
  const ends = [...cuts.sort((a, b) => a - b), toMs];
  const spans: BandSpan[] = [];
  let beginMs = fromMs;
  for (const endMs of ends) {
    const middle = height((beginMs + endMs) / 2);
    const band = bandOf((Math.asin(Math.max(-1, Math.min(1, middle))) * 180) / Math.PI, sky);
    const last = spans.at(-1);
    if (last?.band === band) last.toMs = endMs;
    else if (endMs > beginMs) spans.push({ band, fromMs: beginMs, toMs: endMs });
    beginMs = endMs;
  }
  return spans;
}

/**
 * The bands between two instants.
 * @param sky - the user's golden and blue altitudes
 * @returns in order of time, without gaps, neighbours differ
 */
export const lightBands = (
  fromMs: number,
  toMs: number,
  latitudeDeg: number,
  longitudeDeg: number,
  sky: Plan['sky'],
): BandSpan[] => bandsOn(sunPath(fromMs, toMs, latitudeDeg, longitudeDeg), fromMs, toMs, sky);

/** What the window asks for, as parts of a sentence. */

import type { Edit } from '../../engine/plan/paths.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import { numberText, withUnit } from '../format/numbers.ts';
import { degrees } from '../sections/lightText.ts';
import { needText } from './words.ts';

type Window = Plan['window'];

/** `from −12° to 3°`. */
export function altitudeClause({ sunAltitudeMinDeg: least, sunAltitudeMaxDeg: most }: Window): string {
  if (least !== null && most !== null) return `from ${degrees(least)} to ${degrees(most)}`;
  if (least !== null) return `at ${degrees(least)} or higher`;
  return most === null ? 'at any height' : `at ${degrees(most)} or lower`;
}

/** `between 240° and 300°`. */
export function azimuthClause({ sunAzimuthFromDeg: from, sunAzimuthToDeg: to }: Window): string {
  if (from === null && to === null) return 'in any direction';
  return `between azimuth ${degrees(from ?? 0)} and ${degrees(to ?? 360)}`;
}

/** `from 18:00 to 23:00`. */
export function clockClause({ clockFrom: from, clockTo: to }: Window): string {
  if (from && to) return `from ${from} to ${to}`;
  if (from) return `not before ${from}`;
  return to ? `not after ${to}` : 'at any hour';
}

const HORIZON: Readonly<Record<Window['sunAndHorizon'], string>> = {
  any: 'horizon ignored',
  above: 'over my horizon',
  below: 'under my horizon',
};
export const horizonClause = ({ sunAndHorizon }: Window): string => HORIZON[sunAndHorizon];

const PANE: Readonly<Record<Window['sunOnPane'], string>> = {
  any: 'on or off the set',
  onSet: 'on the set',
  offSet: 'off the set',
};
export const paneClause = ({ sunOnPane }: Window): string => PANE[sunOnPane];

/** `down or at most 25 % lit`. */
export function moonClause({ moon, moonLitMaxShare }: Window): string {
  if (moon === 'any') return 'anywhere';
  const lit = withUnit(numberText(moonLitMaxShare * 100, 0), '%');
  return moon === 'down' ? 'down' : `down or at most ${lit} lit`;
}

/** What of a clause asks for nothing. */
const NOTHING = ['at any height', 'in any direction', HORIZON.any, PANE.any, 'at any hour', 'anywhere'];

/** The year and what is looked for in it, for a picture of the carpet. */
export function carpetCaption({ window, pane }: Plan, year: number, runS: number | null): string {
  if (runS === null) return `${year}, one line a day`;
  const asks = (...clauses: string[]) => clauses.filter((clause) => !NOTHING.includes(clause)).join(', ');
  const sun = asks(
    altitudeClause(window),
    azimuthClause(window),
    horizonClause(window),
    pane.used ? paneClause(window) : PANE.any,
    clockClause(window),
  );
  const moon = asks(moonClause(window));
  const asked = [sun && `the sun ${sun}`, moon && `the moon ${moon}`].filter(Boolean).join(' and ');
  return `${year}, one line a day: ${needText(runS)}${asked && ` with ${asked}`}`;
}

/** A light that people ask for by name. */
export interface NamedLight {
  name: string;
  edits: readonly Edit[];
}

const altitudes = (least: number | null, most: number | null): Edit[] => [
  ['window.used', true],
  ['window.sunAltitudeMinDeg', least],
  ['window.sunAltitudeMaxDeg', most],
];

/** Lights by the user's own golden and blue hour, by sunrise and sunset, and by astronomical twilight. */
export const namedLights = ({ goldenLowDeg, goldenHighDeg, blueLowDeg, blueHighDeg }: Plan['sky']) =>
  [
    { name: 'Golden hour', edits: altitudes(goldenLowDeg, goldenHighDeg) },
    { name: 'Blue hour', edits: altitudes(blueLowDeg, blueHighDeg) },
    { name: 'Sun up', edits: altitudes(0, null) },
    { name: 'Dark sky', edits: altitudes(null, -18) },
  ] satisfies NamedLight[];

/** The earth's axis leans by so much (mean obliquity of 2000, rounded; it falls by 0.013° a century). */
const OBLIQUITY_DEG = 23.44;

/** Something that the sun never does at a place, and the nearest that it does. */
export interface OutOfReach {
  text: string;
  offer: string;
  edit: Edit;
}

/** An altitude asked for that the sun never reaches at a latitude; the nearest that it does, to half a degree. */
export function unreachable(
  { sunAltitudeMinDeg: least, sunAltitudeMaxDeg: most }: Window,
  latitudeDeg: number,
): OutOfReach | null {
  const highest = 90 - Math.max(0, Math.abs(latitudeDeg) - OBLIQUITY_DEG);
  const half = Math.floor(highest * 2) / 2;
  if (least !== null && least > highest)
    return {
      text: `The sun gets no higher than ${degrees(highest)} here.`,
      offer: `Ask for ${degrees(half)} or higher`,
      edit: ['window.sunAltitudeMinDeg', half],
    };
  if (most !== null && most < -highest)
    return {
      text: `The sun gets no lower than ${degrees(-highest)} here.`,
      offer: `Ask for ${degrees(-half)} or lower`,
      edit: ['window.sunAltitudeMaxDeg', -half],
    };
  return null;
}

/** Settings and their changes in a few words, as they are marked. */
import { withUnit } from '../findings/words.ts';
import type { RampStep } from '../plan/schema.ts';
import type { Rung } from './ladder.ts';
import type { RampChange } from './ramp.ts';

const NO_BREAK = '\u00A0';

/** A shutter time as its mark: 1/60, 0.5 s. */
const shutter = (mark: string): string => (mark.includes('/') ? mark : `${mark}${NO_BREAK}s`);

/** The settings of a rung: `1/60, f/8, ISO 100`. */
export const rungWords = ({ shutterMark, apertureF, iso }: Rung): string =>
  `${shutter(shutterMark)}, f/${apertureF}, ISO${NO_BREAK}${iso}`;

/** What changes, setting by setting: `shutter 1/30 to 1/25`, `ISO 100 to 125`, `f/8 to f/5.6`. */
export function rampWords({ from, to }: Pick<RampChange, 'from' | 'to'>): string {
  const parts: string[] = [];
  if (from.shutterS !== to.shutterS) parts.push(`shutter ${from.shutterMark} to ${shutter(to.shutterMark)}`);
  if (from.apertureF !== to.apertureF) parts.push(`f/${from.apertureF} to f/${to.apertureF}`);
  if (from.iso !== to.iso) parts.push(`ISO${NO_BREAK}${from.iso} to ${to.iso}`);
  return parts.join(', ');
}

const NAMES = { shutter: 'shutter', iso: 'ISO', aperture: 'aperture' } as const;

/** A step of a ramp by its place, counted from 1: `Step 2 of the ramp (ISO)`. */
export const stepWords = (stepIndex: number, setting: RampStep['setting']): string =>
  `Step ${stepIndex + 1} of the ramp (${NAMES[setting]})`;

/** A setting's value as marked. */
export const valueWords = (setting: RampStep['setting'], value: number): string =>
  setting === 'aperture' ? `f/${value}` : setting === 'iso' ? `ISO${NO_BREAK}${value}` : withUnit(value, 's');

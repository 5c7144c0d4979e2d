/** Amounts of data in decimal units, as cards and camera makers count them. */
import { decimalsFor, numberText, readNumber, withUnit } from './numbers.ts';

const SIZES = [
  ['TB', 1e12],
  ['GB', 1e9],
  ['MB', 1e6],
  ['kB', 1e3],
  ['B', 1],
] as const;

/** The unit that leaves one to three digits before the point. */
export function bytesUnit(bytes: number): { unit: string; size: number } {
  const [unit, size] = SIZES.find(([, least]) => Math.abs(bytes) >= least) ?? ['MB', 1e6];
  return { unit, size };
}

/** An amount of data: `52.5 MB`. */
export function bytesText(bytes: number, decimals?: number): string {
  const { unit, size } = bytesUnit(bytes);
  const value = bytes / size;
  return withUnit(numberText(value, decimals ?? decimalsFor(value)), unit);
}

/**
 * Reads an amount of data: `64 GB`, `52.5MB`, `500`.
 * @param bareSize - bytes that a number without a unit counts
 * @returns bytes, or null if the text is no amount of data
 */
export function readBytes(text: string, bareSize: number): number | null {
  const match = /^([^a-z]+)([kmgt]?b)?(?:\/s)?$/i.exec(text.trim());
  const value = match ? readNumber(match[1] ?? '') : null;
  if (!match || value === null) return null;
  const size = SIZES.find(([unit]) => unit.toLowerCase() === match[2]?.toLowerCase())?.[1] ?? bareSize;
  return Math.round(value * size);
}

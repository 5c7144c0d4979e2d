/** What one pack holds: rated, at the temperature, and down to the reserve. */
import type { Source } from '../plan/schema.ts';
import type { SourceSummary } from '../schedule-types.ts';

/** Rated energy of one pack, watt-hours: as printed, else nominal volts x ampere-hours. */
export const ratedWh = (source: Source): number =>
  source.energyWh ?? (source.voltageV * source.capacityMah) / 1000;

/**
 * Share of the rated capacity at a temperature, along the source's curve.
 *
 * Straight lines between its points, level beyond its ends. The default curve is common practice, no source:
 * the data sheet of the cells knows better.
 */
export function capacityShare(source: Source, temperatureC: number): number {
  const points = [...source.capacityCurve].sort((a, b) => a.temperatureC - b.temperatureC);
  const above = points.findIndex((point) => point.temperatureC >= temperatureC);
  const upper = points[above === -1 ? points.length - 1 : above];
  const lower = points[above - 1];
  if (!upper) return 1;
  if (!lower || above === -1) return upper.share;
  const along = (temperatureC - lower.temperatureC) / (upper.temperatureC - lower.temperatureC);
  return lower.share + along * (upper.share - lower.share);
}

/** Energy of a full pack at a temperature, watt-hours; Infinity for mains. */
export const fullWh = (source: Source, temperatureC: number): number =>
  source.kind === 'mains' ? Number.POSITIVE_INFINITY : ratedWh(source) * capacityShare(source, temperatureC);

/**
 * How passenger aircraft take a lithium pack, by its rated watt-hours: to 100 in the cabin, to 160 with the
 * carrier's approval, above that not as baggage.
 *
 * Source: the limits of the IATA guidance for passengers, second-hand. They change from year to year: the
 * carrier's present rules come first. Nominal volts x ampere-hours count, never the charging voltage.
 */
export function flightRule(source: Source): SourceSummary['flight'] {
  if (source.kind === 'mains') return null;
  const wh = ratedWh(source);
  if (wh <= 100) return 'cabin';
  return wh <= 160 ? 'ask the carrier' : 'not as baggage';
}

/**
 * Neutral-density filters: density, stops and factor name the same glass.
 *
 * A filter of density D lets 10^-D of the light through, which is D / log10(2) stops; one of factor n lets 1/n
 * through, which is log2(n) stops. Source: definition of optical density, as in “Neutral density filter” of
 * camera-wiki.org (V2). Density 0.3 is therefore 0.9966 stops, and factor 1000 is 9.966, sold as 10.
 * No photographic filter is eye protection, whatever its density.
 */

/** Stops that a filter of an optical density takes. */
export const filterStopsOfDensity = (density: number): number => density / Math.log10(2);

/** Optical density of a filter that takes so many stops. */
export const densityOfStops = (stops: number): number => stops * Math.log10(2);

/** Stops that a filter takes which lets one part in `factor` through: 8 is 3 stops. */
export const filterStopsOfFactor = (factor: number): number => Math.log2(factor);

/** How many times less light comes through. */
export const factorOfStops = (stops: number): number => 2 ** stops;

/** The name by factor, to the nearest whole one: 3 stops is ND8, 9.966 is ND1000. */
export const factorName = (stops: number): string => `ND${Math.round(factorOfStops(stops))}`;

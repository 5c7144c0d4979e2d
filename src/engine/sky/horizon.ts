/** The user's own horizon: hills, houses and trees, as points around the compass. */
import type { HorizonPoint } from '../plan/schema.ts';

/** Height of the horizon, degrees, at an azimuth. */
export type Horizon = (azimuthDeg: number) => number;

/**
 * The horizon through points, straight between neighbours, around north as well.
 * @param points - rising azimuths from 0 to 360, as a plan has them; none is a flat horizon at 0
 */
export function horizonOf(points: readonly HorizonPoint[]): Horizon {
  const first = points[0];
  const last = points.at(-1);
  if (!first || !last) return () => 0;
  // One point more on either side, so that north lies between two.
  const azimuths = [
    last.azimuthDeg - 360,
    ...points.map((point) => point.azimuthDeg),
    first.azimuthDeg + 360,
  ];
  const altitudes = [last.altitudeDeg, ...points.map((point) => point.altitudeDeg), first.altitudeDeg];
  return (azimuthDeg) => {
    let low = 0;
    let high = azimuths.length - 1;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if ((azimuths[middle] as number) <= azimuthDeg) low = middle;
      else high = middle;
    }
    const from = azimuths[low] as number;
    const width = (azimuths[high] as number) - from;
    const share = width > 0 ? (azimuthDeg - from) / width : 0;
    return (altitudes[low] as number) + share * ((altitudes[high] as number) - (altitudes[low] as number));
  };
}

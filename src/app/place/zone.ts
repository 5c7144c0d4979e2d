/** The time zone at a position, found without a network. */
import zoneAt from '@photostructure/tz-lookup';
import type { Position } from './position.ts';

/** Name by which this browser knows a zone, or null if it knows it not. */
function canonical(zone: string): string | null {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: zone }).resolvedOptions().timeZone;
  } catch {
    return null;
  }
}

/**
 * The zone at a position, if it is another than the plan's.
 * @returns an IANA name that this browser knows; null if the plan's zone is that of the place, by whatever name
 */
export function otherZone({ latitudeDeg, longitudeDeg }: Position, planZone: string): string | null {
  const zone = zoneAt(latitudeDeg, longitudeDeg);
  const known = canonical(zone);
  return known === null || known === canonical(planZone) ? null : zone;
}

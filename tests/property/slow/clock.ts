/** Local clocks straight from the machine's zone data, by asking what a clock on the wall shows. */
import type { Plan } from '../../../src/engine/plan/schema.ts';

/** What a wall clock shows at an instant, written as if it were UTC: milliseconds. */
function wallClock(zone: string): (ms: number) => number {
  // Swedish writes dates and times in the order of ISO 8601.
  const format = new Intl.DateTimeFormat('sv-SE', {
    timeZone: zone,
    dateStyle: 'short',
    timeStyle: 'medium',
  });
  return (ms) => Date.parse(`${format.format(ms).replace(' ', 'T')}Z`);
}

/** Offset from UTC of a zone at an instant, milliseconds. */
export function offsetsOf(zone: string): (ms: number) => number {
  const wall = wallClock(zone);
  return (ms) => wall(ms) - Math.floor(ms / 1000) * 1000;
}

/** Every instant at which the wall clock shows the plan's start, earliest first: none, one or two. */
export function wallInstants({ start, place }: Plan): number[] {
  const wall = wallClock(place.zone);
  const shown = Date.parse(`${start.date}T${start.time}Z`);
  const instants: number[] = [];
  // Every offset of whole ten minutes or quarters of an hour: since 1970 the zones drawn here have no other.
  for (let minutes = 900; minutes >= -900; minutes -= 5) {
    const instant = shown - minutes * 60_000;
    if (wall(instant) === shown) instants.push(instant);
  }
  return instants;
}

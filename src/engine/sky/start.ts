/** A start that goes by the sky: so many minutes after an event of the local date. */
import type { Plan } from '../plan/schema.ts';
import { localDay } from '../time/day.ts';
import { moonEventsOn, type NoEvent, type SkyEvent, sunEventsOn } from './day.ts';
import { moonPath, sunPath } from './path.ts';

/** When the run starts, or why it does not. */
export type SkyStart = { ms: number } | { noEvent: NoEvent | 'no place' };

const MINUTE_MS = 60_000;

/**
 * The instant of the plan's event on the plan's date, plus its minutes.
 *
 * If the event comes twice that day, `start.whenRepeated` says which is meant.
 * @returns milliseconds of the epoch, or why the event does not happen; the plan's `tiedTo` is not asked
 */
export function skyStart(plan: Plan): SkyStart {
  const { latitudeDeg, longitudeDeg, zone, utcOffsetMin } = plan.place;
  if (latitudeDeg === null || longitudeDeg === null) return { noEvent: 'no place' };
  const day = localDay(plan.start.date, zone, utcOffsetMin);
  const { event, whenRepeated, offsetMin } = plan.start;
  const found: SkyEvent[] =
    event === 'moonrise' || event === 'moonset'
      ? moonEventsOn(moonPath(day.startMs, day.endMs, latitudeDeg, longitudeDeg), day)
      : sunEventsOn(sunPath(day.startMs, day.endMs, latitudeDeg, longitudeDeg), day, [event]);
  return startAt(found, event, whenRepeated, offsetMin);
}

/** So many minutes after the event of a name among those of a day. */
export function startAt(
  events: readonly SkyEvent[],
  name: string,
  whenRepeated: 'first' | 'second',
  offsetMin: number,
): SkyStart {
  const wanted = events.filter((event) => event.name === name);
  const chosen = whenRepeated === 'second' ? wanted.at(-1) : wanted[0];
  if (chosen && chosen.ms !== null) return { ms: chosen.ms + offsetMin * MINUTE_MS };
  return { noEvent: chosen?.noEvent ?? 'not on this day' };
}

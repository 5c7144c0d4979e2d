/** Sun and moon of the days of a shoot. */
import type { Plan } from '../../engine/plan/schema.ts';
import type { Schedule } from '../../engine/schedule-types.ts';
import { moonEvents, sunEvents } from '../../engine/sky/day.ts';
import { EVENT_WORDS } from '../../engine/sky/names.ts';
import { sunAt } from '../../engine/sky/position.ts';
import type { Span } from '../../engine/sky/spans.ts';
import { dayAt, localDays } from '../../engine/time/day.ts';
import type { SheetLine } from './types.ts';
import { dateWords, whenOf } from './when.ts';

/** Longer shoots have their suns in the calendar: here only those of the first days. */
const MOST_DAYS = 3;
const DAY_MS = 86_400_000;

interface SkyMoment {
  ms: number;
  text: string;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** All that sun and moon do on the days of a span, in order of time; nothing without a place. */
function eventsOver({ place }: Plan, { fromMs, toMs }: Span) {
  const { latitudeDeg: lat, longitudeDeg: lon, zone, utcOffsetMin } = place;
  if (lat === null || lon === null) return [];
  const first = dayAt(fromMs, zone, utcOffsetMin);
  const count = Math.min(MOST_DAYS, Math.ceil((toMs - first.startMs) / DAY_MS) + 1);
  return localDays(first.date, count, zone, utcOffsetMin)
    .filter(({ startMs, endMs }) => startMs <= toMs && endMs > startMs)
    .map((day) => ({
      day,
      moments: [...sunEvents(day, lat, lon), ...moonEvents(day, lat, lon)]
        .flatMap(({ name, ms }) => (ms === null ? [] : [{ name, ms }]))
        .sort((a, b) => a.ms - b.ms),
      azimuth: (ms: number) => Math.round(sunAt(ms, lat, lon).azimuthDeg) % 360,
    }));
}

/** What sun and moon do within a span; of a long one, within the run as far as the schedule follows it. */
export function skyMoments(plan: Plan, made: Schedule, span: Span): SkyMoment[] {
  if (span.toMs - span.fromMs > (MOST_DAYS - 1) * DAY_MS)
    return made.events
      .filter(({ kind }) => kind === 'sky')
      .map(({ elapsedS, text }) => ({ ms: made.startMs + elapsedS * 1000, text: capital(text) }));
  return eventsOver(plan, span)
    .flatMap(({ moments }) => moments)
    .filter(({ ms }) => ms >= span.fromMs && ms <= span.toMs)
    .map(({ name, ms }) => ({ ms, text: capital(EVENT_WORDS[name]) }));
}

/** Sun and moon of each day, in a line; with where the sun then is. */
export function sunLines(plan: Plan, span: Span): SheetLine[] {
  const when = whenOf(plan, span.fromMs - 2 * DAY_MS, span.toMs + 2 * DAY_MS);
  return eventsOver(plan, span).map(({ day, moments, azimuth }) => {
    const said = moments.map(({ name, ms }) => {
      const where = name === 'sunrise' || name === 'sunset' ? ` at ${azimuth(ms)}\u00B0` : '';
      return `${EVENT_WORDS[name]} ${when.second(ms)}${where}`;
    });
    const none = 'neither sun nor moon rises, sets or passes a twilight';
    return { label: dateWords(day.date), text: said.length > 0 ? capital(said.join(', ')) : none };
  });
}

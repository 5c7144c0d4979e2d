/** What sun and moon do through a day. */
import { useMemo } from 'react';
import type { OffsetSpan } from '../../engine/schedule-types.ts';
import { moonEvents, type NoEvent, type SkyEvent } from '../../engine/sky/day.ts';
import { EVENT_WORDS } from '../../engine/sky/names.ts';
import { moonAt, sunAt } from '../../engine/sky/position.ts';
import type { Site } from '../../engine/sky/windows.ts';
import type { DayOfYear } from '../../engine/sky/year.ts';
import { clockAt } from '../../engine/time/clock.ts';
import { eventFigure, ofDate } from '../../engine/working/names.ts';
import { numberText, withUnit } from '../format/numbers.ts';
import { How } from '../working/How.tsx';
import { litText } from './words.ts';

const NEVER: Readonly<Partial<Record<NoEvent, string>>> = {
  'above all day': 'The sun does not set.',
  'below all day': 'The sun does not rise.',
};

/** What does not happen on the day. */
function Missing({ events }: { events: readonly SkyEvent[] }) {
  const missing = events.filter(({ ms }) => ms === null);
  if (missing.length === 0) return null;
  const names = missing.map(({ name }) => EVENT_WORDS[name as keyof typeof EVENT_WORDS]).join(', ');
  const why = NEVER[missing.find(({ name }) => name === 'sunrise')?.noEvent ?? 'not on this day'];
  return (
    <p className="s missing">
      {why} Not on this day: {names}.
    </p>
  );
}

export function Ephemeris({
  light,
  site,
  offsets,
}: {
  light: DayOfYear;
  site: Site;
  offsets: readonly OffsetSpan[];
}) {
  const { latitudeDeg, longitudeDeg } = site;
  const events = useMemo(() => {
    const all: SkyEvent[] = [...light.events, ...moonEvents(light, latitudeDeg, longitudeDeg)];
    return all.sort((a, b) => (a.ms ?? Number.POSITIVE_INFINITY) - (b.ms ?? Number.POSITIVE_INFINITY));
  }, [light, latitudeDeg, longitudeDeg]);
  const azimuth = (name: string, ms: number) => {
    const { azimuthDeg } = (name.startsWith('moon') ? moonAt : sunAt)(ms, latitudeDeg, longitudeDeg);
    return withUnit(numberText(azimuthDeg, 0), '°');
  };
  return (
    <section className="ephemeris">
      <h3 className="vh">Sun and moon</h3>
      <dl>
        {events.map((event) => {
          const { name, ms } = event;
          if (ms === null) return null;
          const words = EVENT_WORDS[name as keyof typeof EVENT_WORDS];
          const of = ofDate(light.date, eventFigure(events, event));
          const clock = clockAt(ms, offsets);
          return (
            <div key={`${name} ${ms}`}>
              <dt>{words}</dt>
              <dd className="m">
                <How of={of} what={`${clock}, ${words}`}>
                  {clock}
                </How>
              </dd>
              <dd className="m az">
                <How of={`${of}.azimuthDeg`} what={`${azimuth(name, ms)}, azimuth at ${words}`}>
                  {azimuth(name, ms)}
                </How>
              </dd>
            </div>
          );
        })}
        <div>
          <dt>moon</dt>
          <dd className="w2">
            <How of={ofDate(light.date, 'moonLitShare')} what={`${litText(light)}, moon`}>
              {litText(light)}
            </How>
          </dd>
        </div>
      </dl>
      <Missing events={events} />
    </section>
  );
}

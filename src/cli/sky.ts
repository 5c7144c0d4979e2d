/** Sun and moon at a prompt: `npm run -s sky -- --lat N --lon N --zone ZONE --date YYYY-MM-DD`. */
import { faultSentence } from '../engine/plan/faults.ts';
import { moonEvents, type SkyEvent, sunEvents } from '../engine/sky/day.ts';
import { type SkyPosition, sunAt } from '../engine/sky/position.ts';
import { isoIn } from '../engine/time/clock.ts';
import { localDay } from '../engine/time/day.ts';
import { OptionError } from './options.ts';
import { readSkyOptions, SKY_USAGE, type SkyOptions } from './sky-options.ts';

const AT_FAULT = 2;

const complain = (sentence: string): void => {
  process.stderr.write(`${sentence}\n`);
};

/** What is printed of an event. */
interface PrintedEvent {
  name: string;
  /** ISO 8601 with the local offset, to the second; null if it does not happen. */
  at: string | null;
  /** Why not; null if it happens. */
  noEvent: string | null;
}

/** Everything that is printed. */
interface PrintedSky {
  latitudeDeg: number;
  longitudeDeg: number;
  zone: string;
  date: string;
  events: PrintedEvent[];
  moon: PrintedEvent[];
  sun?: SkyPosition & { at: string };
}

function iso(zone: string, ms: number): string {
  const second = Math.round(ms / 1000) * 1000;
  return isoIn(second, { zone, utcOffsetMin: null });
}

function skyOf({ latitudeDeg, longitudeDeg, zone, date, atMs }: SkyOptions): PrintedSky {
  const day = localDay(date, zone);
  const printed = ({ name, ms, noEvent }: SkyEvent): PrintedEvent => ({
    name,
    at: ms === null ? null : iso(zone, ms),
    noEvent,
  });
  const events = sunEvents(day, latitudeDeg, longitudeDeg).map(printed);
  const moon = moonEvents(day, latitudeDeg, longitudeDeg).map(printed);
  const place = { latitudeDeg, longitudeDeg, zone, date };
  if (atMs === null) return { ...place, events, moon };
  return {
    ...place,
    events,
    moon,
    sun: { at: iso(zone, atMs), ...sunAt(atMs, latitudeDeg, longitudeDeg) },
  };
}

function tableOf({ latitudeDeg, longitudeDeg, zone, date, events, moon, sun }: PrintedSky): string {
  const lines = [...events, ...moon].map(
    ({ name, at, noEvent }) => `${name.padEnd(17)} ${at === null ? `none (${noEvent})` : at}`,
  );
  const position = sun && [
    '',
    `Sun at ${sun.at}`,
    `geometric altitude ${sun.geometricAltitudeDeg.toFixed(3)}°`,
    `apparent altitude  ${sun.apparentAltitudeDeg.toFixed(3)}°`,
    `azimuth            ${sun.azimuthDeg.toFixed(3)}°`,
  ];
  return [`${date}, ${latitudeDeg}°, ${longitudeDeg}°, ${zone}`, '', ...lines, ...(position ?? [])].join(
    '\n',
  );
}

function main(words: readonly string[]): number {
  try {
    const options = readSkyOptions(words);
    if (options === 'help') {
      process.stdout.write(SKY_USAGE);
      return 0;
    }
    if (Array.isArray(options)) {
      for (const fault of options) complain(faultSentence(fault));
      return AT_FAULT;
    }
    const sky = skyOf(options);
    process.stdout.write(`${options.json ? JSON.stringify(sky, null, 2) : tableOf(sky)}\n`);
    return 0;
  } catch (error) {
    if (!(error instanceof OptionError)) throw error;
    complain(error.message);
    complain('--help shows how it is used');
    return AT_FAULT;
  }
}

process.exitCode = main(process.argv.slice(2));

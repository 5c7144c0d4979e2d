/** The light of the run on a strip of pixels: its bands, what sun and moon do, and the windows. */
import type { LightBand } from '../../engine/sky/bands.ts';
import { SUNRISE_ALTITUDE_DEG } from '../../engine/sky/day.ts';
import { EVENT_WORDS } from '../../engine/sky/names.ts';
import type { FrameStretch } from '../../engine/sky/run.ts';
import type { Span } from '../../engine/sky/spans.ts';
import { clockAt } from '../../engine/time/clock.ts';
import type { RunView } from './runView.ts';

/** A stretch of one light. */
export interface PlacedBand {
  band: LightBand;
  x: number;
  width: number;
  /** Its name, and the same in one word. */
  name: string;
  short: string;
}

/** Something that sun or moon do. */
export interface PlacedEvent {
  x: number;
  /** 'Sunset', '20:47'. */
  name: string;
  clock: string;
  /** Whose it is: a change of the light is the sun's. */
  body: 'sun' | 'moon';
  /** Geometric altitude at which it happens; null if that is another each time. */
  altitudeDeg: number | null;
}

/** A window, or another stretch with its clock, as far as it lies over the plot. */
export interface PlacedWindow {
  fromX: number;
  toX: number;
  words: string;
}

/** The light of a run, placed. */
export interface SkyBand {
  bands: PlacedBand[];
  events: PlacedEvent[];
  /** null if no window is asked for. */
  windows: PlacedWindow[] | null;
  /** When the sun reaches the set. */
  setHits: PlacedWindow[];
  /** When it is in the picture. */
  inFrame: PlacedWindow[];
}

/** Colours of the bands in the theme, and of words on them. */
export const BAND_LOOKS: Readonly<Record<LightBand, { fill: string; text: string }>> = {
  day: { fill: 'var(--b-day)', text: 'var(--on-b-light)' },
  golden: { fill: 'var(--b-golden)', text: 'var(--on-b-light)' },
  blue: { fill: 'var(--b-blue)', text: 'var(--on-b-light)' },
  civil: { fill: 'var(--b-civil)', text: 'var(--on-b-light)' },
  nautical: { fill: 'var(--b-nautical)', text: 'var(--on-b-light)' },
  astronomical: { fill: 'var(--b-astro)', text: 'var(--on-b-dark)' },
  night: { fill: 'var(--b-night)', text: 'var(--on-b-dark)' },
};

/** Names of the bands, and the same in one word. */
export const BAND_NAMES: Readonly<Record<LightBand, [name: string, short: string]>> = {
  day: ['Day', 'Day'],
  golden: ['Golden hour', 'Golden'],
  blue: ['Blue hour', 'Blue'],
  civil: ['Civil twilight', 'Civil'],
  nautical: ['Nautical twilight', 'Nautical'],
  astronomical: ['Astronomical twilight', 'Astro.'],
  night: ['Night', 'Night'],
};

/** The moon's are not the same to the last hundredth: near enough to be drawn. */
const ALTITUDES: Readonly<Partial<Record<keyof typeof EVENT_WORDS, number>>> = {
  moonrise: SUNRISE_ALTITUDE_DEG,
  moonset: SUNRISE_ALTITUDE_DEG,
  sunrise: SUNRISE_ALTITUDE_DEG,
  sunset: SUNRISE_ALTITUDE_DEG,
  civilDawn: -6,
  civilDusk: -6,
  nauticalDawn: -12,
  nauticalDusk: -12,
  astronomicalDawn: -18,
  astronomicalDusk: -18,
};

const DAY_S = 86_400;
/** A day that is narrower shows no light of its own. */
const DAY_PX = 12;
/** A day with its events needs as much. */
const EVENTS_DAY_PX = 90;

/** The light over a view; null without a place. No bands where a day is too narrow to show them. */
export function skyBand(view: RunView): SkyBand | null {
  const { sky } = view.schedule;
  if (sky === null) return null;
  const dayPx = view.x(DAY_S) - view.x(0);
  const lastS = Number(view.elapsedS[view.elapsedS.length - 1]);
  // Of a very long run the schedule knows the light of its beginning only.
  const whole = sky.run.toMs >= view.schedule.startMs + lastS * 1000;
  return {
    bands: whole && dayPx >= DAY_PX ? bandsOf(view) : [],
    events: whole && dayPx >= EVENTS_DAY_PX ? eventsOf(view) : [],
    windows: sky.windows && placedSpans(view, 'Window', sky.windows),
    setHits: placedSpans(view, 'Sun on the set', sky.setHits),
    inFrame: placedSpans(view, 'Sun in frame', sky.inFrame.map(spanOfFrames(view))),
  };
}

const xOfMs = ({ schedule, x }: RunView, ms: number): number => x((ms - schedule.startMs) / 1000);

/** The first and the last light go on to the edges of the plot. */
function bandsOf(view: RunView): PlacedBand[] {
  const bands = view.schedule.sky?.bands ?? [];
  return bands.map(({ band, fromMs, toMs }, i) => {
    const x = i === 0 ? 0 : xOfMs(view, fromMs);
    const to = i === bands.length - 1 ? view.widthPx : xOfMs(view, toMs);
    const [name, short] = BAND_NAMES[band];
    return { band, x, width: to - x, name, short };
  });
}

function eventsOf(view: RunView): PlacedEvent[] {
  const { sky, offsets } = view.schedule;
  return (sky?.events ?? []).flatMap(({ name, ms }) => {
    if (ms === null) return [];
    const words = EVENT_WORDS[name];
    return [
      {
        x: xOfMs(view, ms),
        name: words.charAt(0).toUpperCase() + words.slice(1),
        clock: clockAt(ms, offsets).slice(0, 5),
        body: name.startsWith('moon') ? 'moon' : 'sun',
        altitudeDeg: ALTITUDES[name] ?? null,
      },
    ];
  });
}

/** From the opening of the first frame to that of the last. */
const spanOfFrames =
  ({ schedule, elapsedS }: RunView) =>
  ({ firstFrame, lastFrame }: FrameStretch): Span => {
    const msOf = (frame: number) => schedule.startMs + Number(elapsedS[frame - 1]) * 1000;
    return { fromMs: msOf(firstFrame), toMs: msOf(lastFrame) };
  };

const clockWords = (from: string, to: string): string => (from === to ? `at ${from}` : `${from} to ${to}`);

function placedSpans(view: RunView, name: string, spans: readonly Span[]): PlacedWindow[] {
  const clock = (ms: number) => clockAt(ms, view.schedule.offsets).slice(0, 5);
  return spans
    .map(({ fromMs, toMs }) => ({
      fromX: Math.max(0, xOfMs(view, fromMs)),
      toX: Math.min(view.widthPx, xOfMs(view, toMs)),
      words: `${name} ${clockWords(clock(fromMs), clock(toMs))}`,
    }))
    .filter(({ fromX, toX }) => toX >= fromX);
}

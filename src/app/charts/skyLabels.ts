/** Words on the sky: what sun and moon do, and the name of each light, where there is room for them. */
import { type Box, boxOf, overlap, type PlacedName, placeNames, roomAround, textWidth } from './names.ts';
import { EDGE_PX } from './runView.ts';
import { BAND_LOOKS, type PlacedBand, type PlacedEvent, type SkyBand } from './skyBand.ts';
import type { Trace } from './trace.ts';

/** Words that stand on the sky: one line or two, from `x` on, the first on foot `y`. */
export interface SkyText {
  x: number;
  y: number;
  lines: readonly string[];
  /** Words of an event stand out against the name of a light. */
  strong: boolean;
  fill: string;
}

/** What is drawn on the sky beside the curves. */
export interface SkyDrawing {
  texts: SkyText[];
  /** Where the light changes. */
  rules: number[];
  /** Moments on the curves. */
  dots: { x: number; y: number }[];
}

/** The plot that the words stand in. */
interface Plot {
  widthPx: number;
  heightPx: number;
  traces: readonly Trace[];
  y(altitudeDeg: number): number;
}

const FIRST_PX = 19;
const ROW_PX = 17;
const LINE_PX = 15;
/** A curve may pass behind the edge of a word. */
const CROSSED_PX = -4;
const GAP_PX = 8;
/** Words of an event are bold. */
const STRONG = 1.12;

/** A stretch of the sky on which words have one colour. */
interface Ground {
  from: number;
  to: number;
  fill: string;
}

/** Everything that is drawn on the sky beside the curves. */
export function skyDrawing(band: SkyBand, plot: Plot): SkyDrawing {
  const rules = band.events.filter(isRule).map(({ x }) => x);
  const dots = band.events.flatMap(({ x, altitudeDeg }) =>
    altitudeDeg === null ? [] : { x, y: plot.y(altitudeDeg) },
  );
  const lines = [...rules, EDGE_PX, plot.widthPx - EDGE_PX];
  const grounds = groundsOf(band.bands);
  const taken: Box[] = [];
  const events = inOrder(band.events).flatMap((event) => eventText(event, grounds, lines, taken, plot));
  const names = band.bands.flatMap((one) => bandText(one, lines, taken, plot));
  const curves = placeNames(plot.traces, taken, plot).flatMap((name) => curveText(name, grounds));
  return { texts: [...events, ...names, ...curves], rules, dots };
}

const isRule = ({ body, altitudeDeg }: PlacedEvent): boolean => body === 'sun' && altitudeDeg !== null;

/** Sunrise and sunset first, then the twilights: what is asked for most gets the room. */
function inOrder(events: readonly PlacedEvent[]): PlacedEvent[] {
  const rank = (event: PlacedEvent) => (isRule(event) ? -Number(event.altitudeDeg) : 100);
  return [...events].sort((a, b) => rank(a) - rank(b));
}

function groundsOf(bands: readonly PlacedBand[]): Ground[] {
  const grounds: Ground[] = [];
  for (const { band, x, width } of bands) {
    const { text: fill } = BAND_LOOKS[band];
    const last = grounds.at(-1);
    if (last?.fill === fill) last.to = x + width;
    else grounds.push({ from: x, to: x + width, fill });
  }
  return grounds;
}

/** Feet of words that stand in a plot, from the top. */
function rowsFor(lines: number, heightPx: number): number[] {
  const count = Math.max(1, Math.floor((heightPx - FIRST_PX - (lines - 1) * LINE_PX - 6) / ROW_PX) + 1);
  return Array.from({ length: count }, (_, n) => FIRST_PX + n * ROW_PX);
}

function eventText(
  event: PlacedEvent,
  grounds: readonly Ground[],
  rules: readonly number[],
  taken: Box[],
  plot: Plot,
): SkyText[] {
  const { x, name, clock } = event;
  const spots = [[`${name} ${clock}`], [name, clock]].flatMap((lines) => {
    const width = Math.max(...lines.map(textWidth)) * STRONG;
    return rowsFor(lines.length, plot.heightPx).flatMap((y) =>
      [x + GAP_PX, x - GAP_PX - width].map((left) => ({
        lines,
        y,
        box: textBox(left, y, width, lines.length),
      })),
    );
  });
  const free = spots.filter(({ box }) => fillOn(grounds, box) !== undefined && isFree(box, rules, taken));
  const best = roomiest(free, plot.traces, isRule(event) ? CROSSED_PX : 0);
  if (!best) return [];
  taken.push(best.box);
  const { box, y, lines } = best;
  return [{ x: box.left, y, lines, strong: true, fill: fillOn(grounds, box) ?? '' }];
}

function bandText(
  { band, x, width, name, short }: PlacedBand,
  rules: readonly number[],
  taken: Box[],
  plot: Plot,
) {
  const left = Math.max(x, EDGE_PX) + GAP_PX;
  const spots = [name, short].flatMap((text) =>
    [plot.heightPx - 13, FIRST_PX, FIRST_PX + ROW_PX].map((y) => ({
      text,
      y,
      box: textBox(left, y, textWidth(text), 1),
    })),
  );
  const free = spots.filter(({ box }) => box.right <= x + width - 4 && isFree(box, rules, taken));
  const best = roomiest(free, plot.traces, CROSSED_PX);
  if (!best) return [];
  taken.push(best.box);
  return [{ x: left, y: best.y, lines: [best.text], strong: false, fill: BAND_LOOKS[band].text }];
}

function curveText({ text, x, y }: PlacedName, grounds: readonly Ground[]): SkyText[] {
  const box = boxOf(x, y, textWidth(text));
  const fill = grounds.length === 0 ? 'var(--ink)' : fillOn(grounds, box);
  return fill === undefined ? [] : [{ x: box.left, y, lines: [text], strong: false, fill }];
}

/** The colour of words in a box; none if it lies over two grounds. */
const fillOn = (grounds: readonly Ground[], { left, right }: Box): string | undefined =>
  grounds.find(({ from, to }) => left >= from && right <= to)?.fill;

const textBox = (left: number, foot: number, width: number, lines: number): Box => {
  const box = boxOf(left + width / 2, foot, width);
  return { ...box, bottom: box.bottom + (lines - 1) * LINE_PX };
};

const isFree = (box: Box, rules: readonly number[], taken: readonly Box[]): boolean =>
  !taken.some((other) => overlap(box, other)) && !rules.some((x) => x > box.left - 2 && x < box.right + 2);

/** The first that keeps clear of the curves; else the one with most room, if that is not less than `least`. */
function roomiest<T extends { box: Box }>(
  spots: readonly T[],
  traces: readonly Trace[],
  least: number,
): T | undefined {
  let best: T | undefined;
  let most = least;
  for (const spot of spots) {
    const room = roomAround(spot.box, traces, []);
    if (room >= 0) return spot;
    if (room < most) continue;
    best = spot;
    most = room;
  }
  return best;
}

/**
 * The carpet as pixels: the light of each day, its windows, and how long the longest of them is. One drawing for
 * the whole year; what moves, and all text, lies over it.
 */
import type { OffsetSpan } from '../../engine/schedule-types.ts';
import type { LightBand } from '../../engine/sky/bands.ts';
import { both, type Span } from '../../engine/sky/spans.ts';
import type { DayOfYear } from '../../engine/sky/year.ts';
import { BAND_LOOKS } from '../charts/skyBand.ts';
import { isSkipped, type Stretch, stretchesOf } from './calendar.ts';
import { type Box, boxAt, type Plot } from './plot.ts';
import { lengthS } from './words.ts';

/** What is painted. */
export interface Picture {
  plot: Plot;
  /** One entry a day of the year; a day that is not known yet is left out. */
  days: readonly (DayOfYear | undefined)[];
  offsets: readonly OffsetSpan[];
  /** Days, counted from the first, whose windows are known. */
  windowsTo: number;
  /** How long the run is; null if no window is asked for. */
  runS: number | null;
  /** Longest window that the profile has room for, seconds. */
  profileS: number;
  /** Device pixels of a CSS pixel. */
  devicePx: number;
}

/** What a picture is painted with. */
export interface Brush {
  fill: (box: Box) => void;
  /** Takes a colour of the theme, `var(--name)`. */
  colour: (variable: string) => void;
  hatch: () => void;
}

/** A brush in device pixels, so that no edge is blurred. */
function brushOf(context: CanvasRenderingContext2D, devicePx: number, look: CSSStyleDeclaration): Brush {
  const whole = (px: number) => Math.round(px * devicePx);
  const colours = new Map<string, string>();
  // A canvas knows no variables of the style sheet.
  const colourOf = (variable: string): string => {
    const known = colours.get(variable) ?? look.getPropertyValue(variable.slice('var('.length, -1));
    colours.set(variable, known);
    return known;
  };
  return {
    fill: ({ x, y, width, height }) => {
      const [left, top] = [whole(x), whole(y)];
      context.fillRect(left, top, whole(x + width) - left, whole(y + height) - top);
    },
    colour: (variable) => {
      context.fillStyle = colourOf(variable);
    },
    hatch: () => {
      context.fillStyle = hatching(context, devicePx, colourOf('var(--edge)')) ?? '';
    },
  };
}

/** Thin strokes upwards: light that is there, but not for long enough. */
function hatching(context: CanvasRenderingContext2D, devicePx: number, colour: string): CanvasPattern | null {
  const size = Math.round(6 * devicePx);
  const tile = document.createElement('canvas');
  tile.width = size;
  tile.height = size;
  const stroke = tile.getContext('2d');
  if (!stroke) return null;
  stroke.strokeStyle = colour;
  stroke.lineWidth = devicePx;
  for (const shift of [-size, 0, size]) {
    stroke.moveTo(shift - 1, size + 1);
    stroke.lineTo(shift + size + 1, -1);
  }
  stroke.stroke();
  return context.createPattern(tile, 'repeat');
}

/** A day's line within the picture. */
interface Line {
  day: DayOfYear;
  along: number;
  /** Its windows are known, not only its light. */
  known: boolean;
}

function linesOf({ plot: { rows }, days, windowsTo }: Picture): Line[] {
  return days
    .slice(rows.first, rows.first + rows.count)
    .flatMap((day, i) =>
      day && !isSkipped(day) ? [{ day, along: rows.at[i] as number, known: rows.first + i < windowsTo }] : [],
    );
}

function paintLight({ plot, offsets }: Picture, lines: readonly Line[], brush: Brush): void {
  const hourPx = plot.clockPx / 24;
  for (const { day, along } of lines) {
    for (const span of day.bands) {
      brush.colour(BAND_LOOKS[span.band].fill);
      for (const { fromH, toH } of stretchesOf(span, day, offsets))
        brush.fill(boxAt(plot, along, plot.rows.rowPx, fromH * hourPx, (toH - fromH) * hourPx));
    }
  }
}

const DOT_PX = 2.5;

/** A window's part in one light, on the clock of the day. */
interface Inked extends Stretch {
  band: LightBand;
}

const inkedParts = (window: Span, day: DayOfYear, offsets: readonly OffsetSpan[]): Inked[] =>
  day.bands.flatMap(({ band, ...light }) =>
    both([window], [light]).flatMap((part) =>
      stretchesOf(part, day, offsets).map((stretch) => ({ ...stretch, band })),
    ),
  );

/** Of a window that does not hold the run only the ends are inked. */
function endsOf(parts: readonly Inked[], hourPx: number): Inked[] {
  const dotH = DOT_PX / hourPx;
  const [first, last] = [parts[0], parts.at(-1)];
  if (!first || !last) return [];
  return [
    { ...first, toH: Math.min(first.toH, first.fromH + dotH) },
    { ...last, fromH: Math.max(last.fromH, last.toH - dotH) },
  ];
}

function paintWindows(
  { plot, offsets, runS, devicePx }: Picture,
  lines: readonly Line[],
  brush: Brush,
): void {
  if (runS === null) return;
  const hourPx = plot.clockPx / 24;
  // Every other half of a line is left bare, so that the light shows through the ink.
  const inkPx = Math.floor((plot.rows.rowPx / 2) * devicePx) / devicePx;
  for (const { day, along } of lines) {
    for (const window of day.windows) {
      const parts = inkedParts(window, day, offsets);
      for (const { band, fromH, toH } of lengthS(window) >= runS ? parts : endsOf(parts, hourPx)) {
        brush.colour(BAND_LOOKS[band].text);
        brush.fill(boxAt(plot, along, inkPx, fromH * hourPx, (toH - fromH) * hourPx));
      }
    }
  }
}

function paintProfile({ plot, runS, profileS }: Picture, lines: readonly Line[], brush: Brush): void {
  if (runS === null) return;
  for (const holds of [true, false]) {
    if (holds) brush.colour('var(--used)');
    else brush.hatch();
    for (const { day, along } of lines) {
      const longS = day.longest ? lengthS(day.longest) : 0;
      if (longS === 0 || longS >= runS !== holds) continue;
      const depth = Math.min(1, longS / profileS) * plot.profilePx;
      brush.fill(boxAt(plot, along, plot.rows.rowPx, plot.profileAtPx, depth));
    }
  }
}

/** Paints a picture onto a canvas, in the colours of the theme. */
export function paint(canvas: HTMLCanvasElement, picture: Picture): void {
  const { devicePx, plot } = picture;
  const { width, height } = plot;
  canvas.width = Math.round(width * devicePx);
  canvas.height = Math.round(height * devicePx);
  const context = canvas.getContext('2d');
  if (!context) return;
  paintWith(picture, brushOf(context, devicePx, getComputedStyle(canvas)));
}

/** Paints a picture with any brush, what lies below first. */
export function paintWith(picture: Picture, brush: Brush): void {
  const lines = linesOf(picture);
  paintLight(picture, lines, brush);
  const inked = lines.filter(({ known }) => known);
  paintWindows(picture, inked, brush);
  paintProfile(picture, inked, brush);
}

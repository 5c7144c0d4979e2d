/**
 * Where the carpet's parts lie. Along it go the days, across it the hours of the clock and, beside them, the length
 * of the windows; on a phone it is turned, so that the days go from left to right.
 */

/** The days that are shown: the whole year, or a season. */
export interface Rows {
  /** Place in the year of the first day shown. */
  first: number;
  count: number;
  /** Pixels that one day takes. */
  rowPx: number;
  /** Where each day begins, pixels; one more entry for the end. */
  at: readonly number[];
  /** The months shown, 0 to 11, with their days. */
  months: readonly MonthBlock[];
}

/** The block of one month. */
export interface MonthBlock {
  month: number;
  /** Place in the year of its first day, and of the day after its last. */
  first: number;
  end: number;
  atPx: number;
  lengthPx: number;
}

const GAP_PX = 7;

/**
 * Lays days out, month by month.
 * @param starts - place in the year of the first day of each month, and of the end
 * @param months - first month and the one after the last
 */
export function rowsOf(
  starts: readonly number[],
  [from, to]: readonly [number, number],
  rowPx: number,
): Rows {
  const first = starts[from] as number;
  const months = starts.slice(from, to).map((start, i) => {
    const end = starts[from + i + 1] as number;
    const atPx = (start - first) * rowPx + i * GAP_PX;
    return { month: from + i, first: start, end, atPx, lengthPx: (end - start) * rowPx };
  });
  const at = months.flatMap((block) =>
    Array.from({ length: block.end - block.first }, (_, i) => block.atPx + i * rowPx),
  );
  const last = months.at(-1) as MonthBlock;
  return { first, count: at.length, rowPx, at: [...at, last.atPx + last.lengthPx], months };
}

/** Pixels that the gaps between so many months take. */
export const gapsPx = (months: number): number => (months - 1) * GAP_PX;

/** Place in the year of the day nearest to a pixel along the carpet. */
export function dayAtPx({ first, count, rowPx, at }: Rows, px: number): number {
  let nearest = 0;
  for (let i = 0; i < count; i += 1) {
    if (Math.abs((at[i] as number) + rowPx / 2 - px) < Math.abs((at[nearest] as number) + rowPx / 2 - px))
      nearest = i;
  }
  return first + nearest;
}

/** Middle of a day's line, pixels along the carpet; null if it is not shown. */
export function middleOf({ first, count, rowPx, at }: Rows, day: number): number | null {
  const i = day - first;
  return i < 0 || i >= count ? null : (at[i] as number) + rowPx / 2;
}

/** The whole drawing. */
export interface Plot {
  rows: Rows;
  turned: boolean;
  /** From the corner of the drawing to that of the carpet. */
  left: number;
  top: number;
  width: number;
  height: number;
  /** Pixels of 24 hours. */
  clockPx: number;
  /** The length of windows: from the edge of the carpet to its nought, and how long it is; none without a window. */
  profileAtPx: number;
  profilePx: number;
}

/** A rectangle in the drawing. */
export interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** A rectangle from its place along and across. */
export function boxAt(plot: Plot, along: number, lengthPx: number, across: number, depthPx: number): Box {
  return plot.turned
    ? { x: plot.left + along, y: plot.top + across, width: lengthPx, height: depthPx }
    : { x: plot.left + across, y: plot.top + along, width: depthPx, height: lengthPx };
}

const PHONE_PX = 600;

interface Wanted {
  widthPx: number;
  devicePx: number;
  starts: readonly number[];
  /** The quarter of the year that is in sight where not all of it is, 0 to 3. */
  season: number;
  /** Whether the length of the windows is drawn too. */
  profile: boolean;
}

/** The plot for a width: the year down the page, or on a phone one season across it. */
export function plotOf(wanted: Wanted): Plot {
  return wanted.widthPx < PHONE_PX ? turnedPlot(wanted) : uprightPlot(wanted);
}

function uprightPlot({ widthPx, starts, profile }: Wanted): Plot {
  const left = 58;
  const profilePx = profile ? Math.round(Math.min(150, widthPx * 0.15)) : 0;
  const clockPx = widthPx - left - 16 - (profile ? profilePx + 28 : 0);
  const rows = rowsOf(starts, [0, 12], widthPx > 1500 ? 3 : 2);
  const height = (rows.at.at(-1) as number) + 60;
  const size = { left, top: 30, width: widthPx, height };
  return { rows, turned: false, ...size, clockPx, profileAtPx: clockPx + 28, profilePx };
}

function turnedPlot({ widthPx, devicePx, starts, season, profile }: Wanted): Plot {
  const left = 30;
  const months = [season * 3, season * 3 + 3] as const;
  const count = (starts[months[1]] as number) - (starts[months[0]] as number);
  const room = (widthPx - left - 2 - gapsPx(3)) / count;
  const rowPx = Math.floor(room * devicePx) / devicePx;
  const clockPx = 24 * 17;
  const [top, gap] = [26, 30];
  const profilePx = profile ? 64 : 0;
  const height = top + clockPx + (profile ? gap + profilePx : 0) + 10;
  const size = { left, top, width: widthPx, height };
  const rows = rowsOf(starts, months, rowPx);
  return { rows, turned: true, ...size, clockPx, profileAtPx: clockPx + gap, profilePx };
}

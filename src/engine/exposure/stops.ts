/**
 * Marked and exact stops.
 *
 * A camera marked 30 s exposes for 32 s: the marks are rounded names, the exact values are powers of two
 * (shutter, ISO) or of the square root of two (f-number). Computing goes by the exact values.
 *
 * Source: the third- and half-stop series in common use, exact values 2^(k/3), 2^(k/2) seconds, f-numbers
 * 2^(k/6), 2^(k/4). That cameras expose the exact value was measured by users, not stated by makers; a camera
 * that differs has its own correction in the plan.
 */

/** One stop of a series: the mark on the dial and the exact value behind it. */
export interface Stop {
  mark: string;
  /** Seconds, f-number or ISO. */
  exact: number;
}

const series = (marks: string, exactAt: (index: number) => number): readonly Stop[] =>
  marks.split(' ').map((mark, index) => ({ mark, exact: exactAt(index) }));

/** Shutter times in third stops, longest first. */
export const SHUTTER_THIRDS = series(
  '30 25 20 15 13 10 8 6 5 4 3.2 2.5 2 1.6 1.3 1 0.8 0.6 0.5 0.4 0.3 1/4 1/5 1/6 1/8 1/10 1/13 1/15 1/20 1/25 ' +
    '1/30 1/40 1/50 1/60 1/80 1/100 1/125 1/160 1/200 1/250 1/320 1/400 1/500 1/640 1/800 1/1000 1/1250 1/1600 ' +
    '1/2000 1/2500 1/3200 1/4000 1/5000 1/6400 1/8000',
  (index) => 2 ** ((15 - index) / 3),
);

/** Shutter times in half stops, longest first. */
export const SHUTTER_HALVES = series(
  '30 20 15 10 8 6 4 3 2 1.5 1 0.7 0.5 0.3 1/4 1/6 1/8 1/10 1/15 1/20 1/30 1/45 1/60 1/90 1/125 1/180 1/250 ' +
    '1/350 1/500 1/750 1/1000 1/1500 1/2000 1/3000 1/4000 1/6000 1/8000',
  (index) => 2 ** ((10 - index) / 2),
);

/** F-numbers in third stops, widest first. */
export const APERTURE_THIRDS = series(
  '1 1.1 1.2 1.4 1.6 1.8 2 2.2 2.5 2.8 3.2 3.5 4 4.5 5 5.6 6.3 7.1 8 9 10 11 13 14 16 18 20 22 25 29 32',
  (index) => 2 ** (index / 6),
);

/** F-numbers in half stops, widest first. */
export const APERTURE_HALVES = series(
  '1 1.2 1.4 1.7 2 2.4 2.8 3.3 4 4.8 5.6 6.7 8 9.5 11 13 16 19 22 27 32',
  (index) => 2 ** (index / 4),
);

/** ISO speeds in third stops, slowest first. */
export const ISO_THIRDS = series(
  '50 64 80 100 125 160 200 250 320 400 500 640 800 1000 1250 1600 2000 2500 3200 4000 5000 6400 8000 10000 ' +
    '12800 16000 20000 25600 32000 40000 51200',
  (index) => 100 * 2 ** ((index - 3) / 3),
);

/** ISO speeds in half stops, slowest first. Marks from memory. */
export const ISO_HALVES = series(
  '50 70 100 140 200 280 400 560 800 1100 1600 2200 3200 4500 6400 9000 12800 18000 25600 36000 51200',
  (index) => 100 * 2 ** ((index - 2) / 2),
);

/** Every third stop of a third-stop series that begins on a full stop. */
export const fullStops = (thirds: readonly Stop[]): readonly Stop[] => thirds.filter((_, i) => i % 3 === 0);

/** Number that a mark names, seconds for a shutter time: `1/60` gives 0.01666…, `0.5` gives 0.5. */
export function markSeconds(mark: string): number {
  const [num = '', den = '1'] = mark.split('/');
  return Number(num) / Number(den);
}

// Marks are told apart by a hundredth of a stop: '0.0167' still means 1/60.
export const SAME_MARK_STOPS = 0.01;

/** Series with the base-2 logarithms of their marks: worked out once, since every exposure of a plan is looked up. */
const dialOf = (...dials: (readonly Stop[])[]): readonly { stop: Stop; log2: number }[] =>
  dials.flat().map((stop) => ({ stop, log2: Math.log2(markSeconds(stop.mark)) }));

const SHUTTER_DIAL = dialOf(SHUTTER_THIRDS, SHUTTER_HALVES);
const APERTURE_DIAL = dialOf(APERTURE_THIRDS, APERTURE_HALVES);
const ISO_DIAL = dialOf(ISO_THIRDS, ISO_HALVES);

function stopIn(dial: ReturnType<typeof dialOf>, marked: number): Stop | null {
  const wanted = Math.log2(marked);
  return dial.find(({ log2 }) => Math.abs(wanted - log2) < SAME_MARK_STOPS)?.stop ?? null;
}

/**
 * The stop that a shutter time in marked seconds names, in third stops first, then half stops.
 * @returns the stop, or null if no dial has that mark
 */
export const shutterStop = (markedS: number): Stop | null => stopIn(SHUTTER_DIAL, markedS);

/**
 * Exact shutter time of a marked one: 30 gives 32, 1/60 gives 1/64. A time that is no mark stays as it is.
 * @param markedS - seconds as marked, positive
 */
export const exactShutterS = (markedS: number): number => shutterStop(markedS)?.exact ?? markedS;

/** Exact f-number of a marked one: f/11 is 11.31. One that is no mark stays as it is. */
export const exactApertureF = (markedF: number): number => stopIn(APERTURE_DIAL, markedF)?.exact ?? markedF;

/** Exact ISO speed of a marked one: 125 is 126. One that is no mark stays as it is. */
export const exactIso = (markedIso: number): number => stopIn(ISO_DIAL, markedIso)?.exact ?? markedIso;

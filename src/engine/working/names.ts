/** Names of figures. */

/** Name of a figure of one frame. @param k - counted from 0 */
export const ofFrame = (k: number, what: string): string => `frame.${k + 1}.${what}`;

/** Name of a figure of one exposure of the sheet. @param i - counted from 0 */
export const ofExposure = (i: number, what: string): string => `sheet.exposure.${i + 1}.${what}`;

/** Name of a figure of one action of the sheet. @param a - counted from 0 */
export const ofAction = (a: number, what: string): string => `sheet.action.${a + 1}.${what}`;

/** Name of a figure of one shot of the sheet. @param s - counted from 0 */
export const ofShot = (s: number, what: string): string => `sheet.shot.${s + 1}.${what}`;

/** Name of a figure of one day of work on the sheet. @param d - counted from 0 */
export const ofWorkDay = (d: number, what: string): string => `sheet.day.${d + 1}.${what}`;

/** Name of a figure of one break of a day of work, behind that day's. @param b - of the plan, counted from 0 */
export const ofBreak = (b: number, what: string): string => `break.${b + 1}.${what}`;

/** So many swaps of a source have a figure each, `swap.1` and on. */
export const MOST_SWAPS = 3;

/** Name of a figure of the sky on a date, `yyyy-mm-dd`. */
export const ofDate = (date: string, what: string): string => `days.${date}.${what}`;

/** Name of a figure of the sun at an instant, by UTC. @param ms - whole seconds */
export const ofSun = (ms: number, what: string): string =>
  `sun.${new Date(ms).toISOString().replace('.000Z', 'Z')}.${what}`;

/** Name of how many days of a year there are of a kind. */
export const ofYear = (year: number, what: string): string => `days.${year}.${what}`;

/** Name of a figure of a window of a date. @param w - counted from 0 */
export const ofWindow = (date: string, w: number, what: string): string =>
  ofDate(date, `window.${w + 1}.${what}`);

/** What the days of a year are counted by, and the figure of each. */
export const VERDICT_FIGURES = {
  fits: 'fits',
  'too short': 'tooShort',
  moon: 'brightMoon',
  'no window': 'noWindow',
} as const;

/** Name of an event's figure on a day that may have two of a kind. @param events - of the day, in order of time */
export function eventFigure(
  events: readonly { name: string; ms: number | null }[],
  { name, ms }: { name: string; ms: number | null },
): string {
  const first = events.find((one) => one.name === name);
  return first === undefined || first.ms === ms ? name : `${name}.second`;
}

/** Name of a figure at another setting of the trigger. @param dialS - as the trigger shows it, seconds */
export const ofSetting = (dialS: number, figure: string): string =>
  `ladder.${Number(dialS.toPrecision(12))}.${figure}`;

/**
 * Name of a figure of the plan with a way out of a finding taken; or of what that costs, `cost.frames`.
 * @param finding - its key, or what `--fixes` calls it
 * @param n - which of its ways out, counted from 1
 */
export const ofFix = (finding: string, n: number, figure: string): string => `fix.${finding}.${n}.${figure}`;

/** Whether a name is that of a figure of another plan than the one that is open. */
export const isElsewhere = (figure: string): boolean => /^(ladder|fix)\./.test(figure);

/** Name of a figure of a run that is being shot. */
export const ofOnset = (what: string): string => `onset.${what}`;
